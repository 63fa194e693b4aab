package lapyard.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import lapyard.job.Costing;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.SearchMemory;
import lapyard.layout.LaidOut;
import lapyard.layout.LayOut;
import lapyard.plan.Garden;
import lapyard.plan.Give;
import lapyard.plan.Giving;
import lapyard.plan.LayoutWishes;
import lapyard.plan.Wish;
import lapyard.sizes.Resize;
import lapyard.sizes.SizeAnswer;
import lapyard.sizes.SizeLook;
import lapyard.sizes.SizesThatGive;
import lapyard.working.Progress;

/**
 * Sizes that give and yards laid out, on gardens made anew from a seed: a main class. Arguments: the seed, then how many
 * gardens of each kind, then {@code longer} for looks of 5 s against 20 s alone, {@code yards} for yards alone or {@code hall} for the village hall alone;
 * {@code samples} beside {@code server}.
 */
public final class SizesAndYards {
    private static final int BYTES = 40_000_000;

    private SizesAndYards() {}

    public static void main(String[] args) throws IOException {
        long seed = args.length > 0 ? Long.parseLong(args[0]) : 1;
        int many = args.length > 1 ? Integer.parseInt(args[1]) : 6;
        String only = args.length > 2 ? args[2] : "";
        if (only.isEmpty() || only.equals("longer")) for (int i = 0; i < many; i++) longer(i + 1, new Random(seed * 3000 + i));
        if (only.isEmpty() || only.equals("yards")) yards();
        if (only.equals("hall")) hall(5);
        if (!only.isEmpty()) return;
        for (int i = 0; i < many; i++) twoBeds(new Random(seed * 1000 + i));
        hall(5);
        for (int i = 0; i < many; i++) cutToFit(new Random(seed * 2000 + i));
    }

    /** Five beds of sizes of their own, every side giving 100: what a longer look finds besides. */
    private static void longer(int number, Random random) {
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < 5; i++) {
            beds.append(i == 0 ? "" : ",").append("{\"width\":%d,\"depth\":%d,\"courses\":%d,\"at\":[%d,0]}".formatted(
                    1400 + 10 * random.nextInt(200), 800 + 10 * random.nextInt(60), 1 + random.nextInt(3), i * 5000));
        }
        Garden garden = Gardens.garden("{\"beds\":[" + beds + "]}");
        for (int seconds : new int[] {5, 20}) {
            Clock clock = new Clock();
            SizesThatGive given = SizesThatGive.of(garden, giving(garden, new Give(-100, 0, -100, 0, 5)), SizeLook.ofSeconds(seconds, garden.beds().size()), Progress.UNHEARD,
                    new SearchMemory(BYTES));
            BigDecimal saved = given.front().stream().map(SizeAnswer::saved).max(BigDecimal::compareTo).orElse(BigDecimal.ZERO);
            BigDecimal single = given.front().stream().filter(one -> one.changes().size() == 1).map(SizeAnswer::saved).max(BigDecimal::compareTo)
                    .orElse(BigDecimal.ZERO);
            System.out.printf("garden %d, look of %d s: now %s, saves %s (one change %s) of at most %s, %d answers%s, %s%n", number, seconds,
                    given.now().slip().total(), saved, single, given.now().slip().total().subtract(given.bound()), given.front().size(),
                    given.early() ? ", ended early" : "", clock.told());
        }
    }

    private static void yards() {
        told("12 x 9 m", Gardens.garden("""
                {"ground":{"outline":[[0,0],[12000,0],[12000,9000],[0,9000]],"access":{"path":900,"reach":1200,"turning":0}},
                 "beds":[{"width":2400,"depth":1200}]}"""), 900);
        field();
    }

    private static Giving giving(Garden garden, Give give) {
        Map<String, Give> byBed = new HashMap<>();
        garden.beds().forEach(bed -> byBed.put(bed.id(), give));
        return new Giving(byBed, List.of(), false, false);
    }

    /** Every combination of sizes worked out whole, beside what a look of 20 s finds. */
    private static void twoBeds(Random random) {
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < 2; i++) {
            beds.append(i == 0 ? "" : ",").append("{\"width\":%d,\"depth\":%d,\"courses\":%d,\"at\":[%d,0]}".formatted(
                    1400 + 10 * random.nextInt(150), 800 + 10 * random.nextInt(60), 1 + random.nextInt(3), i * 5000));
        }
        Garden garden = Gardens.garden("{\"beds\":[" + beds + "]}");
        double step = 5 * (1 + random.nextInt(8));
        Clock clock = new Clock();
        SizesThatGive given = SizesThatGive.of(garden, giving(garden, new Give(-3 * step, 0, -3 * step, 0, step)), SizeLook.ofSeconds(20, 2),
                Progress.UNHEARD, new SearchMemory(BYTES));
        String took = clock.told();
        SearchMemory memory = new SearchMemory(BYTES);
        BigDecimal best = given.now().slip().total();
        for (int code = 0; code < 256; code++) {
            List<Resize> changes = new ArrayList<>();
            for (int side = 0, rest = code; side < 4; side++, rest /= 4) {
                if (rest % 4 > 0) changes.add(new Resize(given.sides().get(side), -step * (rest % 4)));
            }
            best = best.min(Costing.of(SizesThatGive.changed(garden, changes), memory).total());
        }
        BigDecimal now = given.now().slip().total();
        BigDecimal found = given.front().stream().map(SizeAnswer::total).min(BigDecimal::compareTo).orElse(now);
        System.out.printf("two beds, step %.0f: now %s, found %s, best of 256 %s, bound %s%s, %s%n", step, now, found, best, given.bound(),
                given.proven() ? " (proved)" : "", took);
    }

    /** Seven beds of five shapes, every side giving 100 both ways. */
    private static void hall(double seconds) throws IOException {
        Garden garden = Gardens.garden(Files.readString(Path.of("../samples/village-hall.json")));
        for (String warm : List.of("cold", "warm")) {
            Clock clock = new Clock();
            Map<String, Give> byBed = new HashMap<>();
            garden.beds().forEach(bed -> byBed.put(bed.id(), new Give(-100, 100, -100, 100, 5)));
            SizesThatGive given = SizesThatGive.of(garden, new Giving(byBed, List.of(), true, true), SizeLook.ofSeconds(seconds, garden.beds().size()), Progress.UNHEARD,
                    new SearchMemory(BYTES));
            BigDecimal saved = given.front().stream().map(SizeAnswer::saved).max(BigDecimal::compareTo).orElse(BigDecimal.ZERO);
            System.out.printf("village hall, look of %.0f s, %s: %d answers, saves %s, at most %s, %s%n", seconds, warm, given.front().size(), saved,
                    given.now().slip().total().subtract(given.bound()), clock.told());
        }
    }

    /** Rows and columns that fill a yard to the last millimetre: the number is known. */
    private static void cutToFit(Random random) {
        int w = 1500 + 50 * random.nextInt(40);
        int d = 900 + 50 * random.nextInt(8);
        int path = 900 + 50 * random.nextInt(8);
        int across = 2 + random.nextInt(4);
        int deep = 2 + random.nextInt(4);
        int width = across * (w + path) - path;
        int depth = deep * (d + path) - path + 1200;
        Garden garden = Gardens.garden(("{\"ground\":{\"outline\":[[0,0],[%d,0],[%d,%d],[0,%d]],\"access\":{\"path\":%d,\"turning\":0}},"
                + "\"beds\":[{\"width\":%d,\"depth\":%d}]}").formatted(width, width, depth, depth, path, w, d));
        told("yard cut to fit " + across * deep, garden, path);
    }

    /** Sixty beds of 2400 x 1200 in a field, a gate in its side. */
    private static void field() {
        Garden garden = Gardens.garden("""
                {"ground":{"outline":[[0,0],[26000,0],[26000,22000],[0,22000]],"keepClear":[{"kind":"gate","hinge":[0,9000],"leaf":2000,"closed":90}]},
                 "beds":[{"width":2400,"depth":1200}]}""");
        told("field", garden, 1200);
    }

    private static void told(String name, Garden garden, double path) {
        Clock clock = new Clock();
        int most = name.equals("field") ? 60 : Wish.AS_MANY_AS_FIT;
        LaidOut laid = LayOut.of(garden, new LayoutWishes(List.of(new Wish(garden.beds().get(0), 0, most)), Set.of(), path, 0,
                LayoutWishes.NONE.ranking()), 30, Progress.UNHEARD, new SearchMemory(BYTES));
        long stops = laid.proposals().stream().filter(one -> !Job.stops(one.garden()).isEmpty()).count();
        System.out.printf("%s: %s beds of at most %d, %d proposals, %d refused, %s%s%n", name,
                laid.proposals().stream().map(one -> String.valueOf(one.figures().beds())).toList(), laid.mostBeds(), laid.proposals().size(), stops,
                clock.told(), laid.complete() ? "" : ", not every order");
    }

    private static final class Clock {
        private final long wallNs = System.nanoTime();
        private final long cpuNs = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        private final long allNs = all();

        private static long all() {
            return ManagementFactory.getPlatformMXBean(com.sun.management.OperatingSystemMXBean.class).getProcessCpuTime();
        }

        String told() {
            return "%.1f s wall, %.1f s of its thread, %.1f s of all threads and the compiler".formatted((System.nanoTime() - wallNs) / 1e9,
                    (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpuNs) / 1e9, (all() - allNs) / 1e9);
        }
    }
}
