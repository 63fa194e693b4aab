package lapyard.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds a cheap layout and proves what every layout costs. */
final class RollSearch {
    /** @param boundCoins proved: no layout of all pieces costs less */
    record Answer(Layout layout, long boundCoins) {}

    /** Starts with few pieces on a roll, and the share of the work left that they may take. */
    private static final int FEW_STARTS = 3;
    private static final double FEW_SHARE = 0.08;
    /** How dense bands are asked to be, from the first start to the last. */
    private static final double LOOSEST = 0.955;
    private static final double DENSEST = 0.985;

    private final RollJob job;
    private final RollBudget work;
    private final CutSearch.Pace pace;
    private final boolean many;
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
        this.bound = RollBound.coins(job);
    }

    static Answer answer(RollJob job, RollBudget work) {
        if (job.types.length == 0) return new Answer(new Layout(job, List.of()), 0);
        return new RollSearch(job, work).answer();
    }

    private Answer answer() {
        boolean free = !job.problem.straightCuts();
        // should the table turn out larger than foreseen, enough must be left for a search
        SmallRolls small = SmallRolls.of(job, work.share(pace == CutSearch.Pace.QUICK ? 0.9 : 0.6));
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
            if (!free && pace == CutSearch.Pace.THOROUGH) skylines(work.share(0.06));
            straightCuts(free ? work.share(pace == CutSearch.Pace.QUICK ? 0.7 : 0.2) : work);
        }
        if (best == null) best = new Layout(job, List.of());
        if (free && best.area == job.area()) {
            bottomLeft();
            skylines(work);
        }
        return new Answer(best, best.area == job.area() ? bound : 0);
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

    /** A start on one roll that holds everything. */
    private record Start(RollJob.Roll roll, Layout.Banded banded, Layout layout) {}

    /** Starts on each roll, then roll by roll, the cheapest start first; then with pieces moving between rolls. */
    private void straightCuts(RollBudget part) {
        List<Start> alone = new ArrayList<>();
        List<RollJob.Roll> order = new ArrayList<>(job.rolls);
        // a start with many pieces takes more of a quick search, so the rolls that can be cheapest come first
        if (many) order.sort(Comparator.comparingLong(roll -> RollBound.alone(job, roll)));
        double share = many ? pace.startShare() : FEW_SHARE;
        for (RollJob.Roll roll : order) {
            if (roll.runs() == 0 || RollBound.alone(job, roll) >= best.coins && best.area == job.area()) continue;
            Start start = start(roll, part.share(share));
            if (start != null) alone.add(start);
        }
        alone.sort(Comparator.comparing(Start::layout));
        boolean mixing = job.rolls.size() > 1 || job.rolls.get(0).longest() != RollJob.NO_LIMIT;
        for (int i = 0; i < alone.size() && !done() && !part.over(); i++) {
            Start start = alone.get(i);
            long least = RollBound.alone(job, start.roll());
            if (least >= best.coins) continue;
            RollBudget mine = part.share(mixing ? 0.4 : 1);
            take(new CutSearch(job, start.banded(), least, false, 1 + i, pace, mine).search());
        }
        if (mixing && !done() && banded != null) take(new CutSearch(job, banded, bound, true, 99, pace, part).search());
    }

    private Start start(RollJob.Roll roll, RollBudget part) {
        if (RollBound.alone(job, roll) == Long.MAX_VALUE) return null;
        List<Layout.Banded> starts = new ArrayList<>();
        for (Shelves.Lie lie : Shelves.Lie.values()) starts.add(shelves(roll, lie));
        int most = many ? pace.starts() : FEW_STARTS;
        for (int seed = 0; seed < most && !part.over(); seed++) {
            Layout.Banded dense = many
                    ? CutSearch.matched(job, roll, LOOSEST + (DENSEST - LOOSEST) * seed / most, seed, pace, part)
                    : CutSearch.dense(job, roll, seed, pace, part);
            if (dense != null) starts.add(dense);
        }
        Start best = null;
        for (Layout.Banded banded : starts) {
            Layout layout = banded.layout(job);
            if (banded.runs().size() != 1 || layout.area != job.area()) continue;
            take(banded);
            if (best == null || layout.betterThan(best.layout())) best = new Start(roll, banded, layout);
        }
        return best;
    }

    private void bottomLeft() {
        for (RollJob.Roll roll : job.rolls) {
            for (BottomLeft.Order order : BottomLeft.Order.values()) {
                for (Shelves.Lie lie : List.of(Shelves.Lie.LOW, Shelves.Lie.HIGH)) {
                    if (done() || roll.runs() == 0 || RollBound.alone(job, roll) >= best.coins) continue;
                    Layout.Run run = BottomLeft.run(job, roll, order, lie, work);
                    if (run != null) take(new Layout(job, List.of(run)));
                }
            }
        }
    }

    /** Shortens the runs of the best layout, and lays whole rolls alone, by ever wider beams over skylines. */
    private void skylines(RollBudget part) {
        if (best == null || best.area != job.area()) return;
        for (int beam = 1; !done() && !part.over() && beam < 1 << 20; beam *= 2) {
            for (RollJob.Roll roll : job.rolls) {
                if (roll.runs() == 0 || RollBound.alone(job, roll) >= best.coins) continue;
                int[] all = new int[job.types.length];
                for (int t = 0; t < all.length; t++) all[t] = job.types[t].count();
                long below = roll.stepCoins() == 0 ? 0 : job.unitsIn(roll, (best.coins - 1) / roll.stepCoins()) + 1;
                long least = job.unitsIn(roll, RollBound.alone(job, roll) / Math.max(1, roll.stepCoins()));
                Layout.Run run = shorter(roll, all, least, below, beam, part);
                if (run != null) take(new Layout(job, List.of(run)));
            }
            if (best.runs.size() > 1) shortenRuns(beam, part);
        }
    }

    private void shortenRuns(int beam, RollBudget part) {
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
            Layout.Run found = shorter(run.roll(), counts, least, below, beam, part);
            if (found != null) runs.set(i, found);
        }
        take(new Layout(job, runs));
    }

    /**
     * @param least no run is shorter, in units
     * @param below the run must be shorter
     * @return the shortest run that was found, or null
     */
    private Layout.Run shorter(RollJob.Roll roll, int[] counts, long least, long below, int beam, RollBudget part) {
        SkylineSearch search = new SkylineSearch(job, counts, roll.width(), job.problem.straightCuts(), part);
        Layout.Run found = null;
        long low = least;
        long high = Math.min(below - 1, roll.longest());
        boolean lowest = true;
        while (low <= high && !part.over()) {
            // a run fills its last step, where steps are longer than units
            long asked = Math.min(high, job.unitsIn(roll, job.steps(roll, lowest ? low : (low + high) / 2)));
            lowest = false;
            List<Block.Laid> laid = null;
            for (int taste = 0; taste < SkylineSearch.TASTES && laid == null; taste++)
                laid = search.fit(asked, beam, taste);
            if (laid == null) {
                low = asked + 1;
                continue;
            }
            long used = 0;
            for (Block.Laid one : laid) used = Math.max(used, one.y() + one.height());
            found = new Layout.Run(roll, used, laid);
            // one step less must be saved
            high = job.unitsIn(roll, job.steps(roll, used) - 1);
            if (high >= used) high = used - 1;
        }
        return found;
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
