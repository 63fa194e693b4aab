package lapyard.sheets;

import java.util.ArrayList;
import java.util.List;

/** Finds a cheap layout and proves what every layout costs. */
final class RollSearch {
    /** @param boundCoins proved: no layout of all pieces costs less */
    record Answer(Layout layout, long boundCoins) {}

    private RollSearch() {}

    static Answer answer(RollJob job, Work work) {
        long bound = RollBound.coins(job);
        Layout exact = SmallRolls.cheapest(job, work);
        if (exact != null) return new Answer(exact, job.problem.straightCuts() ? exact.coins : bound);
        Layout best = null;
        for (RollJob.Roll roll : job.rolls) {
            for (Shelves.Lie lie : Shelves.Lie.values()) {
                Layout shelves = shelves(job, roll, lie);
                if (shelves.betterThan(best)) best = shelves;
            }
        }
        if (best == null) best = new Layout(job, List.of());
        return new Answer(best, best.area == job.area() ? bound : 0);
    }

    private static Layout shelves(RollJob job, RollJob.Roll first, Shelves.Lie lie) {
        int[] counts = new int[job.types.length];
        for (int t = 0; t < counts.length; t++) counts[t] = job.types[t].count();
        List<Layout.Run> runs = new ArrayList<>();
        List<RollJob.Roll> order = new ArrayList<>(job.rolls);
        order.remove(first);
        order.add(0, first);
        for (RollJob.Roll roll : order) {
            int[] here = new int[counts.length];
            for (int t = 0; t < counts.length; t++)
                if (Shelves.bands(job, one(counts, t), roll.width(), roll.longest(), lie) != null) here[t] = counts[t];
            List<Block> bands = Shelves.bands(job, here, roll.width(), roll.longest(), lie);
            for (List<Block> run : runs(roll, bands)) {
                Layout.Run cut = Layout.Run.of(roll, run);
                runs.add(cut);
                for (Block.Laid laid : cut.laid()) counts[laid.type()]--;
            }
        }
        return new Layout(job, runs);
    }

    private static int[] one(int[] counts, int t) {
        int[] one = new int[counts.length];
        one[t] = Math.min(1, counts[t]);
        return one;
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
