package lapyard.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;

/** Finds a cheap layout and proves what every layout costs. */
final class RollSearch {
    /** @param boundCoins proved: no layout of all pieces costs less */
    record Answer(Layout layout, long boundCoins) {}

    /** Starts with few pieces on a roll, and the share of the work left that they may take. */
    private static final int FEW_STARTS = 3;
    private static final double FEW_SHARE = 0.08;
    /** How dense bands are asked to be, from the first start to the last. */
    private static final double LOOSEST = 0.7;
    private static final double DENSEST = 1.6;

    /** From so many pieces on straight cuts leave little to gain; the part of a free search that they take. */
    private static final int VERY_MANY = 500;
    private static final int MANY_IN_SHORT = 100;
    private static final double MOST_STRAIGHT = 0.7;
    private static final double LEAST_STRAIGHT = 0.15;
    /** A search over skylines tries so often with little effort, and then with such a part of what it took so far. */
    private static final int FIRST_TRIES = 150;
    private static final int LATER_TRIES = 25;

    /** The share of the work left that a bound by bars may take; where pieces share few widths it is worth extra work. */
    private static final double BARS_SHARE = 0.05;
    private static final double LANED_BARS = 0.5;
    /** The share of the work that lanes along the rolls may take besides, and after a beam. */
    private static final double LANES_SHARE = 1.0;
    private static final double LANES_AFTER_BEAM = 0.25;

    /** The share of the work that a beam over straight cuts may take: of a quick search besides it, of a long one within it. */
    private static final double BEAM_SHARE = 1.0;
    private static final double LONG_BEAM_SHARE = 0.15;
    /** The share of a quick search that bands get after a beam. */
    private static final double BANDS_AFTER_BEAM = 0.4;

    /** The share of the work that a look at all layouts within a length may take besides. */
    private static final double WITHIN_SHARE = 0.5;
    /** The same for prices, in a long search that no clock ends. */
    private static final double PRICES_SHARE = 3.0;
    /** The share of the work that a look at all layouts of any length may take: of a long search, a quick one, and one that may look within a length. */
    private static final double LONG_SMALL_SHARE = 0.6;
    private static final double SMALL_SHARE = 0.9;
    private static final double SMALL_BEFORE_WITHIN = 0.3;

    /** So many rolls are tried with lanes, and so many lengths of each. */
    private static final int MOST_LANED = 2;
    private static final int LANE_LENGTHS = 3;

    private static final int MOST_SLICES = 8;
    /** Piece sides across a slice that gives bands of few enough and of enough pieces, found by trying. */
    private static final double SIDES_A_SLICE = 4.5;
    /** Share of the width that slices may leave over. */
    private static final double MOST_LOST = 0.005;
    private static final int BEST_SLICED = 3;
    private static final double SLICED_SHARE = 0.8;

    private final RollJob job;
    private final RollBudget work;
    private final CutSearch.Pace pace;
    private final boolean many;
    private final boolean laned;
    /** Whether all layouts within a length may be looked at: by straight cuts on one roll. */
    private final boolean within;
    private long bound;
    private Layout best;
    /** The best that straight cuts do, as bands. */
    private Layout.Banded banded;

    private Layout bandedLayout;

    private RollSearch(RollJob job, RollBudget work) {
        this.job = job;
        this.work = work;
        this.pace = CutSearch.Pace.of(work);
        this.many = job.pieces() >= CutSearch.MANY;
        this.laned = Lengthwise.pays(job);
        this.bound = RollBound.coins(job);
        this.within = job.problem.straightCuts() && job.rolls.size() == 1 && job.rolls.get(0).stepCoins() > 0 && job.rolls.get(0).runs() > 0;
    }

    static Answer answer(RollJob job, RollBudget work) {
        if (job.types.length == 0) return new Answer(new Layout(job, List.of()), 0);
        return new RollSearch(job, work).answer();
    }

    private Answer answer() {
        boolean free = !job.problem.straightCuts();
        // should the table turn out larger than foreseen, enough must be left for a search
        SmallRolls small = SmallRolls.of(job, work.share(!quick() ? LONG_SMALL_SHARE : within ? SMALL_BEFORE_WITHIN : SMALL_SHARE));
        Layout exact = small == null ? null : small.cheapest(work);
        if (exact != null) {
            take(exact);
            if (!free) return new Answer(best, best.coins);
            if (!done()) {
                SmallFree.Answer proof = new SmallFree(job, small, exact, bound, work.share(0.6)).answer();
                take(proof.layout());
                bound = Math.max(bound, proof.boundCoins());
                tell();
            }
        } else {
            starts();
            if (!done() && best.area == job.area() && (laned || pace == CutSearch.Pace.THOROUGH)) {
                bound = BarBound.coins(job, bound, best.coins, laned ? work.besides(LANED_BARS) : work.share(BARS_SHARE));
                tell();
            }
            straightCuts(free ? work.share(straightShare()) : work);
        }
        if (best == null) best = new Layout(job, List.of());
        if (free && best.area == job.area()) {
            skylines(work);
        }
        return new Answer(best, best.area == job.area() ? bound : 0);
    }

    /** The part of a free search in which straight cuts are looked at. */
    private double straightShare() {
        return job.pieces() >= (quick() ? MANY_IN_SHORT : VERY_MANY) ? MOST_STRAIGHT : LEAST_STRAIGHT;
    }

    private boolean quick() {
        return pace == CutSearch.Pace.QUICK;
    }

    private boolean done() {
        return work.over() || best != null && best.area == job.area() && best.coins <= bound;
    }

    private void take(Layout found) {
        Layout layout = found.joined(job);
        if (!layout.betterThan(best)) return;
        boolean cheaper = best == null || best.area != job.area() || layout.coins < best.coins;
        best = layout;
        if (cheaper) tell();
    }

    private void tell() {
        if (best.area == job.area()) work.progress().reached(job.money(best.coins), job.money(Math.min(bound, best.coins)));
    }

    private void take(Layout.Banded found) {
        Layout layout = found.layout(job);
        take(layout);
        if (layout.betterThan(bandedLayout)) {
            banded = found;
            bandedLayout = layout;
        }
    }

    private void starts() {
        for (RollJob.Roll roll : job.rolls) for (Shelves.Lie lie : Shelves.Lie.values()) take(shelves(roll, lie));
    }

    /** Betters the shortest sliced starts. */
    private void sliced(Start start, long least, long seed, RollBudget mine) {
        RollJob.Roll roll = start.roll();
        long shortest = roll.stepCoins() == 0 ? 0 : job.unitsIn(roll, least / roll.stepCoins());
        List<SlicedStart> best = start.sliced().stream().limit(quick() ? 1 : BEST_SLICED).toList();
        for (int i = 0; i < best.size() && !done(); i++) {
            SlicedStart one = best.get(i);
            one.banded = new CutSearch(one.slice, one.banded, one.slices * shortest, false, seed, pace, mine.share(1.0 / (best.size() - i))).search();
            Layout.Banded run = one.run(roll);
            if (run != null) take(run);
        }
    }

    /** A start on one roll that holds everything. */
    private record Start(RollJob.Roll roll, Layout.Banded banded, Layout layout, List<SlicedStart> sliced) {}

    /** Starts on each roll, then roll by roll, the cheapest start first; then with pieces moving between rolls. */
    private void straightCuts(RollBudget part) {
        List<Start> alone = new ArrayList<>();
        List<RollJob.Roll> order = new ArrayList<>(job.rolls);
        // a start with many pieces takes more of a quick search, so the rolls that can be cheapest come first
        if (many) order.sort(Comparator.comparingLong(roll -> RollBound.alone(job, roll)));
        double share = many ? pace.startShare() : FEW_SHARE;
        // many pieces of many widths lie best in matched bands
        boolean beamed = job.pieces() <= CutBeamSearch.MOST_PIECES && (laned || !many);
        // besides, so that what bands find without lanes is found with them too
        RollBudget forLanes = part.besides(beamed && quick() ? LANES_AFTER_BEAM : LANES_SHARE);
        RollBudget forAll = part.besides(WITHIN_SHARE);
        RollBudget forPrices = part.besides(PRICES_SHARE);
        RollBudget forBeam = quick() ? part.besides(BEAM_SHARE) : part.share(LONG_BEAM_SHARE);
        for (RollJob.Roll roll : order) {
            if (roll.runs() == 0 || RollBound.alone(job, roll) >= best.coins && best.area == job.area()) continue;
            Start start = start(roll, part.share(share));
            if (start != null) alone.add(start);
        }
        alone.sort(Comparator.comparing(Start::layout));
        if (beamed) beams(alone, forBeam);
        allWithin(forAll, forPrices);
        if (laned) lanes(alone, forLanes);
        boolean mixing = job.rolls.size() > 1 || job.rolls.get(0).longest() != RollJob.NO_LIMIT;
        for (int i = 0; i < alone.size() && !done() && !part.over(); i++) {
            Start start = alone.get(i);
            long least = Math.max(bound, RollBound.alone(job, start.roll()));
            if (least >= best.coins) continue;
            RollBudget mine = part.share((mixing ? 0.4 : 1) * (beamed && quick() ? BANDS_AFTER_BEAM : 1));
            if (!quick() || !start.sliced().isEmpty() && start.sliced().get(0).slices > 1) {
                sliced(start, least, 1 + i, mine.share(SLICED_SHARE));
            }
            if (!done()) take(new CutSearch(job, start.banded(), least, false, 1 + i, pace, mine).search());
        }
        if (mixing && !done() && banded != null) take(new CutSearch(job, banded, bound, true, 99, pace, part).search());
    }

    /**
     * Looks at all layouts by straight cuts within the least length that is not ruled out, or rules it out by prices, and so on step by
     * step: until a layout is found, which then is proved, or the best is.
     */
    private void allWithin(RollBudget part, RollBudget forPrices) {
        if (!within || best.area != job.area()) return;
        RollJob.Roll roll = job.rolls.get(0);
        CutWithin all = CutWithin.of(job, Math.max(roll.width(), job.unitsIn(roll, best.coins / roll.stepCoins())), part);
        while (!done()) {
            // several runs laid end to end take no more steps than apart
            long length = job.unitsIn(roll, bound / roll.stepCoins());
            boolean look = all != null && !part.over();
            Block found = look ? all.fit(roll.width(), length) : null;
            if (found != null && found.height <= roll.longest()) take(new Layout.Banded(List.of(new Layout.BandedRun(roll, List.of(found)))));
            if (found != null) return;
            if (!(look && all.finished()) && (quick() || work.timed() || !PricedParts.ruleOut(job, roll.width(), length, forPrices))) return;
            bound += roll.stepCoins();
            tell();
        }
    }

    /** Lays everything on one roll by a beam over straight cuts. */
    private void beams(List<Start> alone, RollBudget part) {
        List<RollJob.Roll> rolls = alone.stream().map(Start::roll).filter(roll -> roll.stepCoins() > 0).limit(MOST_LANED).toList();
        for (int i = 0; i < rolls.size() && !done(); i++) {
            RollJob.Roll roll = rolls.get(i);
            long least = (Math.max(bound, RollBound.alone(job, roll)) + roll.stepCoins() - 1) / roll.stepCoins();
            long below = (best.coins + roll.stepCoins() - 1) / roll.stepCoins();
            Layout.Run run = CutBeamSearch.shorter(job, roll, least, below, 1 + i, part.share(1.0 / (rolls.size() - i)));
            if (run != null) take(new Layout(job, List.of(run)));
        }
    }

    /** Lays everything in lanes along a roll, in lengths from the least to the longest that would be cheaper. */
    private void lanes(List<Start> alone, RollBudget part) {
        List<RollJob.Roll> rolls = alone.stream().map(Start::roll).filter(roll -> roll.stepCoins() > 0).limit(MOST_LANED).toList();
        for (int i = 0; i < rolls.size(); i++) {
            RollJob.Roll roll = rolls.get(i);
            long low = (Math.max(bound, RollBound.alone(job, roll)) + roll.stepCoins() - 1) / roll.stepCoins();
            long high = Math.min((best.coins - 1) / roll.stepCoins(), roll.longest() == RollJob.NO_LIMIT ? Long.MAX_VALUE : job.steps(roll, roll.longest()));
            List<Long> steps = LongStream.range(0, LANE_LENGTHS).map(n -> low + (high - low) * n / (LANE_LENGTHS - 1)).distinct().boxed().toList();
            RollBudget mine = part.share(1.0 / (rolls.size() - i));
            for (int n = 0; n < steps.size() && low <= high && !done() && !mine.over(); n++) {
                RollBudget here = mine.share(n < steps.size() - 1 ? 0.5 : 1);
                Layout.Banded found = Lengthwise.within(job, roll, job.unitsIn(roll, steps.get(n)), 1 + i, pace, here);
                if (found == null) continue;
                take(found);
                break;
            }
        }
    }

    private Start start(RollJob.Roll roll, RollBudget part) {
        if (RollBound.alone(job, roll) == Long.MAX_VALUE) return null;
        List<Layout.Banded> starts = new ArrayList<>();
        for (Shelves.Lie lie : Shelves.Lie.values()) starts.add(shelves(roll, lie));
        for (int seed = 0; seed < FEW_STARTS && !many && !part.over(); seed++) {
            Layout.Banded dense = CutSearch.dense(job, roll, List.of(), CutSearch.pieces(job), seed, pace, part);
            if (dense != null) starts.add(dense);
        }
        List<SlicedStart> sliced = many ? slicedStarts(roll, part) : List.of();
        for (SlicedStart one : sliced) if (one.banded != null && one.run(roll) != null) starts.add(one.run(roll));
        Start best = null;
        for (Layout.Banded banded : starts) {
            Layout layout = banded.layout(job);
            if (banded.runs().size() != 1 || layout.area != job.area()) continue;
            take(banded);
            if (best == null || layout.betterThan(best.layout())) best = new Start(roll, banded, layout, sliced);
        }
        return best;
    }

    /** Bands on a slice of a roll, the shortest so far. */
    private static final class SlicedStart {
        final RollJob slice;
        final int slices;
        Layout.Banded banded;

        SlicedStart(RollJob slice, int slices) {
            this.slice = slice;
            this.slices = slices;
        }

        double length() {
            long sum = 0;
            for (Block band : bands()) sum += band.height;
            return (double) sum / slices;
        }

        List<Block> bands() {
            return banded.runs().get(0).bands();
        }

        /** On the whole roll; null where the run would be longer than is sold. */
        Layout.Banded run(RollJob.Roll roll) {
            Layout.Banded run = new Layout.Banded(List.of(new Layout.BandedRun(
                    roll, slices == 1 ? bands() : List.of(Slices.beside(bands(), slices)))));
            long length = 0;
            for (Block band : run.runs().get(0).bands()) length += band.height;
            return length <= roll.longest() ? run : null;
        }
    }

    /** Starts from matched bands on the roll and on slices of it, shortest first. */
    private List<SlicedStart> slicedStarts(RollJob.Roll roll, RollBudget part) {
        List<SlicedStart> starts = new ArrayList<>();
        for (int slices : slices(roll)) {
            RollJob slice = job.onSlice(roll.width() / slices);
            if (slice != null) starts.add(new SlicedStart(slice, slices));
        }
        int kept = starts.size();
        for (int seed = 0; seed < pace.starts(); seed++) {
            double scale = LOOSEST + (DENSEST - LOOSEST) * ((seed * 5 + 2) % 8 + 0.5) / 8;
            for (SlicedStart start : starts.subList(0, kept)) {
                if (part.over()) break;
                SlicedStart other = new SlicedStart(start.slice, start.slices);
                other.banded = CutSearch.matched(start.slice, start.slice.rolls.get(0), scale, seed, pace, part);
                if (other.banded != null && (start.banded == null || other.length() < start.length())) start.banded = other.banded;
            }
            starts.removeIf(start -> start.banded == null);
            starts.sort(Comparator.comparingDouble(SlicedStart::length));
            kept = Math.min(starts.size(), Math.max(BEST_SLICED, (kept + 1) / 2));
        }
        return starts;
    }

    /** How many slices are tried: those that lose next to nothing of the width, for a quick search the one that is likeliest best. */
    private List<Integer> slices(RollJob.Roll roll) {
        double side = Math.sqrt((double) job.area() / job.pieces());
        int likely = (int) Math.max(1, Math.min(MOST_SLICES, Math.round(roll.width() / (SIDES_A_SLICE * side))));
        List<Integer> slices = new ArrayList<>(List.of(1));
        for (int n = 2; n <= Math.min(MOST_SLICES, 2 * likely); n++) if (roll.width() % n <= MOST_LOST * roll.width()) slices.add(n);
        if (!quick() || slices.size() == 1) return slices;
        int nearest = slices.stream().min(Comparator.comparingInt(n -> Math.abs(n - likely))).get();
        return nearest == 1 ? List.of(1) : List.of(1, nearest);
    }

    /** Shortens the runs of the best layout, and lays whole rolls alone, with ever more effort at a time. */
    private void skylines(RollBudget part) {
        if (best == null || best.area != job.area()) return;
        int[] all = new int[job.types.length];
        for (int t = 0; t < all.length; t++) all[t] = job.types[t].count();
        Map<RollJob.Roll, SkylineSearch> alone = new LinkedHashMap<>();
        long whole = part.left();
        boolean some = true;
        for (int round = 0; some && !done() && !part.over(); round++) {
            some = false;
            long before = part.left();
            long operations = Math.max(whole / FIRST_TRIES, (whole - before) / LATER_TRIES);
            for (RollJob.Roll roll : job.rolls) {
                if (roll.runs() == 0 || RollBound.alone(job, roll) >= best.coins) continue;
                long below = roll.stepCoins() == 0 ? 0 : job.unitsIn(roll, (best.coins - 1) / roll.stepCoins()) + 1;
                long least = job.unitsIn(roll, RollBound.alone(job, roll) / Math.max(1, roll.stepCoins()));
                SkylineSearch search = alone.computeIfAbsent(roll, one -> new SkylineSearch(job, all, one, 1));
                Layout.Run run = search.shorter(least, below, operations, part);
                if (run != null) take(new Layout(job, List.of(run)));
            }
            if (best.runs.size() > 1) shortenRuns(round, operations, part);
            some = part.left() < before;
        }
    }

    private void shortenRuns(long seed, long operations, RollBudget part) {
        List<Layout.Run> runs = new ArrayList<>(best.runs);
        for (int i = 0; i < runs.size() && !part.over(); i++) {
            Layout.Run run = runs.get(i);
            int[] counts = new int[job.types.length];
            long area = 0;
            for (Block.Laid laid : run.laid()) {
                counts[laid.type()]++;
                area += laid.width() * laid.height();
            }
            long least = (area + run.roll().width() - 1) / run.roll().width();
            long below = job.unitsIn(run.roll(), job.steps(run.roll(), run.used()) - 1) + 1;
            Layout.Run found = new SkylineSearch(job, counts, run.roll(), seed).shorter(least, below, operations, part);
            if (found != null) runs.set(i, found);
        }
        take(new Layout(job, runs));
    }

    private Layout.Banded shelves(RollJob.Roll first, Shelves.Lie lie) {
        int[] counts = new int[job.types.length];
        for (int t = 0; t < counts.length; t++) counts[t] = job.types[t].count();
        List<Layout.BandedRun> runs = new ArrayList<>();
        List<RollJob.Roll> order = new ArrayList<>(job.rolls);
        order.remove(first);
        order.add(0, first);
        for (RollJob.Roll roll : order) {
            int[] here = new int[counts.length];
            for (int t = 0; t < counts.length; t++)
                if (Shelves.lie(job, t, roll.width(), roll.longest(), lie) != null) here[t] = counts[t];
            for (List<Block> bands : runs(roll, Shelves.bands(job, here, roll.width(), roll.longest(), lie))) {
                runs.add(new Layout.BandedRun(roll, bands));
                for (Block.Laid laid : Layout.Run.of(roll, bands).laid()) counts[laid.type()]--;
            }
        }
        return new Layout.Banded(runs);
    }

    /** First fit of bands into as many runs as there are. */
    private static List<List<Block>> runs(RollJob.Roll roll, List<Block> bands) {
        List<List<Block>> runs = new ArrayList<>();
        List<Long> used = new ArrayList<>();
        for (Block band : bands) {
            int at = 0;
            while (at < runs.size() && used.get(at) + band.height > roll.longest()) at++;
            if (at == runs.size()) {
                if (at == roll.runs()) continue;
                runs.add(new ArrayList<>());
                used.add(0L);
            }
            runs.get(at).add(band);
            used.set(at, used.get(at) + band.height);
        }
        return runs;
    }
}
