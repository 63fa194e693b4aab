package lapyard.bench;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.function.IntFunction;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.plan.Garden;
import lapyard.working.Look;
import lapyard.working.Progress;

/**
 * What a job sheet takes: the seven beds of a sample after one size has changed, what was searched for before at hand as in the
 * server, and gardens of beds that all differ, with nothing at hand; the whole, then a first look. A main class; processor time of its thread and of the process, a second thread and the
 * collector among it, medians.
 * Arguments: the seed, then the numbers of beds.
 */
public final class JobSheetSpeed {
    private static final long BYTES = 40_000_000;
    private static final OperatingSystemMXBean PROCESS = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private JobSheetSpeed() {}

    public static void main(String[] args) throws IOException {
        long seed = args.length > 0 ? Long.parseLong(args[0]) : 1;
        String sample = Files.readString(Files.exists(Path.of("samples")) ? Path.of("samples/village-hall.json") : Path.of("../samples/village-hall.json"));
        Garden hall = Gardens.garden(sample);
        told("village hall, the first of the process", 1, i -> hall, null);
        told("village hall, nothing at hand, warming up", 12, i -> hall, null);
        told("village hall, nothing at hand", 12, i -> hall, null);
        SearchMemory memory = new SearchMemory(BYTES);
        Random random = new Random(seed);
        Garden[] changed = new Garden[60];
        for (int i = 0; i < changed.length; i++) changed[i] = changed(sample, random);
        told("village hall, the first one changed", 1, i -> changed[59], memory);
        told("village hall, one size changed, warming up", 20, i -> changed[i], memory);
        told("village hall, one size changed", 39, i -> changed[20 + i], memory);
        SearchMemory looked = new SearchMemory(BYTES);
        Job.prepare(hall, w -> Progress.UNHEARD, looked);
        told("a first look, village hall, one size changed, warming up", 20, i -> changed[i], looked, Look.FIRST);
        told("a first look, village hall, one size changed", 39, i -> changed[20 + i], looked, Look.FIRST);
        int[] beds = args.length > 1 ? Arrays.stream(args).skip(1).mapToInt(Integer::parseInt).toArray() : new int[] {7, 60, 200, 1000};
        for (int many : beds) {
            int times = Math.max(3, Math.min(20, 400 / many));
            Garden[] gardens = new Garden[2 * times];
            for (int i = 0; i < gardens.length; i++) gardens[i] = Gardens.garden(differing(many, new Random(seed * 100 + i)));
            told(many + " beds that all differ, warming up", times, i -> gardens[i], null);
            told(many + " beds that all differ", times, i -> gardens[times + i], null);
            told("a first look, " + many + " beds that all differ, warming up", times, i -> gardens[i], null, Look.FIRST);
            told("a first look, " + many + " beds that all differ", times, i -> gardens[times + i], null, Look.FIRST);
        }
    }

    /** @param memory none: each has its own */
    private static void told(String what, int times, IntFunction<Garden> gardens, SearchMemory memory) {
        told(what, times, gardens, memory, Look.WHOLE);
    }

    private static void told(String what, int times, IntFunction<Garden> gardens, SearchMemory memory, Look look) {
        double[] ms = new double[times];
        double[] process = new double[times];
        double[] wall = new double[times];
        String total = "";
        for (int i = 0; i < times; i++) {
            Garden garden = gardens.apply(i);
            long cpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            long all = PROCESS.getProcessCpuTime();
            long from = System.nanoTime();
            JobSheet sheet = Job.prepare(garden, w -> Progress.UNHEARD, look, memory == null ? new SearchMemory(12L << 20) : memory);
            ms[i] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpu) / 1e6;
            process[i] = (PROCESS.getProcessCpuTime() - all) / 1e6;
            wall[i] = (System.nanoTime() - from) / 1e6;
            total = String.valueOf(sheet.slip().total());
        }
        Arrays.sort(ms);
        Arrays.sort(process);
        Arrays.sort(wall);
        System.out.printf("%-60s %4d times: %8.1f ms of its thread, most %8.1f; %8.1f of the process; %8.1f ms wall; last total %s%n", what, times, ms[times / 2], ms[times - 1],
                process[times / 2], wall[times / 2], total);
    }

    /** The type of two beds or the joined border, one size less by up to 200 mm in steps of 1. */
    private static Garden changed(String sample, Random random) throws IOException {
        ObjectNode garden = (ObjectNode) new JsonMapper().readTree(sample);
        ObjectNode bed = (ObjectNode) (random.nextBoolean() ? garden.path("types").get(0) : garden.path("beds").get(6));
        String side = random.nextBoolean() ? "width" : "depth";
        bed.put(side, bed.get(side).asInt() - 1 - random.nextInt(200));
        return Gardens.garden(garden.toString());
    }

    /** Rectangles and Ls of whole centimetres in rows; timber and rolls of the usual catalogue, so that long walls are joined. */
    static String differing(int beds, Random random) {
        StringBuilder placed = new StringBuilder();
        for (int bed = 0; bed < beds; bed++) {
            int width = 1200 + 10 * random.nextInt(300);
            int depth = 900 + 10 * random.nextInt(150);
            String shape = random.nextInt(4) > 0 ? "\"width\":" + width + ",\"depth\":" + depth
                    : "\"outline\":[[0,0],[%d,0],[%d,%d],[%d,%d],[%d,%d],[0,%d]]".formatted(
                            width + 900, width + 900, depth, 900, depth, 900, depth + 900, depth + 900);
            placed.append(bed == 0 ? "" : ",").append("{%s,\"courses\":%d,\"at\":[%d,%d]}".formatted(
                    shape, 1 + random.nextInt(4), bed % 40 * 6200, bed / 40 * 4200));
        }
        return "{\"beds\":[" + placed + "]}";
    }
}
