package lapyard.sheets;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The cheapest layout of a small set of pieces when cuts need not run edge to edge. Every selection starts with a
 * proved least length on every roll; the cheapest sharing by those lengths is looked at run by run: a run that holds
 * its pieces stands, the length of one that does not is raised, and the sharing is done again. The cost of each
 * sharing is a bound on every layout; when all runs of one stand, it is the cheapest layout.
 */
final class SmallFree {
    /** @param boundCoins proved: no layout costs less */
    record Answer(Layout layout, long boundCoins) {}

    private static final int LONGEST_SUM = 1_000_000;

    private final RollJob job;
    private final SmallRolls small;
    private final CutTable table;
    private final Layout straight;
    private final long bound;
    private final RollBudget work;
    private final BitSet sums;
    /** By roll and selection: proved least length, in units. */
    private final Map<Long, Long> least = new HashMap<>();

    private final Map<Long, List<Block.Laid>> standing = new HashMap<>();

    SmallFree(RollJob job, SmallRolls small, Layout straight, long bound, RollBudget work) {
        this.job = job;
        this.small = small;
        this.table = small.table();
        this.straight = straight;
        this.bound = bound;
        this.work = work;
        this.sums = sums(job);
    }

    Answer answer() {
        long proved = bound;
        while (!work.over()) {
            List<SmallRolls.Part> parts = small.share(this::length, work);
            if (parts == null) return new Answer(straight, proved);
            long coins = 0;
            for (SmallRolls.Part part : parts) coins += job.coins(part.roll(), length(part.roll(), part.selection()));
            proved = Math.max(proved, coins);
            if (proved >= straight.coins) return new Answer(straight, straight.coins);
            boolean all = true;
            for (SmallRolls.Part part : parts) {
                Boolean stands = stands(part);
                if (stands == null) return new Answer(straight, proved);
                all &= stands;
            }
            if (all) {
                Layout layout = layout(parts);
                return layout == null ? new Answer(straight, proved) : new Answer(layout, layout.coins);
            }
        }
        return new Answer(straight, proved);
    }

    private long key(RollJob.Roll roll, int selection) {
        return (long) selection * job.rolls.size() + roll.index();
    }

    private long length(RollJob.Roll roll, int selection) {
        Long known = least.get(key(roll, selection));
        if (known != null) return known;
        if (table.height(selection, roll.width()) == RollJob.NO_LIMIT) return RollJob.NO_LIMIT;
        return (table.area(selection) + roll.width() - 1) / roll.width();
    }

    /** @return whether a run holds its pieces within the steps of its least length; null when the work ran out */
    private Boolean stands(SmallRolls.Part part) {
        RollJob.Roll roll = part.roll();
        long key = key(roll, part.selection());
        if (standing.containsKey(key)) return true;
        int[] counts = new int[job.types.length];
        for (int t = 0; t < counts.length; t++) counts[t] = table.count(part.selection(), t);
        if (!least.containsKey(key)) {
            least.put(key, nextSum(RollBound.length(job, counts, roll)));
            work.spend(counts.length * 100L);
            return false;
        }
        long asked = Math.min(roll.longest(), job.unitsIn(roll, job.steps(roll, least.get(key))));
        asked = Math.max(asked, least.get(key));
        if (table.height(part.selection(), roll.width()) <= asked) {
            List<Block.Laid> laid = new ArrayList<>();
            table.block(part.selection(), roll.width()).lay(0, 0, laid);
            standing.put(key, laid);
            return true;
        }
        CornerSearch search = new CornerSearch(job, counts, roll.width(), asked, work);
        if (search.fits()) {
            standing.put(key, search.laid());
            return true;
        }
        if (!search.finished()) return null;
        least.put(key, nextSum(asked + 1));
        return false;
    }

    private Layout layout(List<SmallRolls.Part> parts) {
        List<Layout.Run> runs = new ArrayList<>();
        int[] runsOf = new int[job.rolls.size()];
        for (SmallRolls.Part part : parts) {
            if (++runsOf[part.roll().index()] > part.roll().runs()) return null;
            List<Block.Laid> laid = standing.get(key(part.roll(), part.selection()));
            long used = 0;
            for (Block.Laid one : laid) used = Math.max(used, one.y() + one.height());
            runs.add(new Layout.Run(part.roll(), used, laid));
        }
        return new Layout(job, runs);
    }

    /** A layout pushed together is as long as a chain of pieces, so only sums of heights can be its length. */
    private long nextSum(long length) {
        if (sums == null || length > LONGEST_SUM) return length;
        int next = sums.nextSetBit((int) length);
        return next < 0 ? length : next;
    }

    private static BitSet sums(RollJob job) {
        long longest = 0;
        for (RollJob.Type type : job.types) longest += Math.max(type.width(), type.height()) * type.count();
        if (longest > LONGEST_SUM) return null;
        BitSet sums = new BitSet();
        sums.set(0);
        for (RollJob.Type type : job.types) {
            for (int i = 0; i < type.count(); i++) {
                BitSet before = (BitSet) sums.clone();
                for (int at = before.nextSetBit(0); at >= 0; at = before.nextSetBit(at + 1)) {
                    sums.set(at + (int) type.height());
                    if (job.turn) sums.set(at + (int) type.width());
                }
            }
        }
        return sums;
    }
}
