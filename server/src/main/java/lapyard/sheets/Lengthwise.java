package lapyard.sheets;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Looks for a layout that lies within a given length of a roll in lanes along it: bands of a roll as wide as the length, of
 * which the roll's width can hold only so much. Strips of one width and many lengths, as walls give them, lie best so.
 */
final class Lengthwise {
    /** A search finds the lanes soon or hardly ever, so a second from other lanes is worth more than one twice as long. */
    private static final int STARTS = 2;

    /** Lanes pay where pieces share few widths: so many pieces for each of them. */
    private static final int PIECES_A_WIDTH = 4;
    private static final int MOST_WIDTHS = 6;

    private Lengthwise() {}

    /** Whether a few widths are sides of all pieces. */
    static boolean pays(RollJob job) {
        List<RollJob.Type> left = new ArrayList<>(List.of(job.types));
        int widths = 0;
        while (!left.isEmpty()) {
            Map<Long, Integer> pieces = new TreeMap<>();
            for (RollJob.Type type : left) {
                pieces.merge(type.width(), type.count(), Integer::sum);
                if (type.width() != type.height()) pieces.merge(type.height(), type.count(), Integer::sum);
            }
            long commonest = Collections.max(pieces.entrySet(), Map.Entry.comparingByValue()).getKey();
            left.removeIf(type -> type.width() == commonest || type.height() == commonest);
            if (++widths > Math.min(MOST_WIDTHS, job.pieces() / PIECES_A_WIDTH)) return false;
        }
        return true;
    }

    /** @return a run no longer than {@code length}, in units; null where none was found, which proves nothing */
    static Layout.Banded within(RollJob job, RollJob.Roll roll, long length, long seed, CutSearch.Pace pace, RollBudget work) {
        RollJob lanes = job.turned(length);
        if (lanes == null) return null;
        RollJob.Roll across = lanes.rolls.get(0);
        Layout.Banded found = null;
        for (int i = 0; i < STARTS && !work.over() && (found == null || sum(found) > roll.width()); i++) {
            RollBudget mine = work.share(1.0 / (STARTS - i));
            Layout.Banded start = i == 0
                    ? full(lanes, across, seed, pace, mine)
                    : CutSearch.matched(lanes, across, 1, seed + i, pace, mine);
            if (start != null) found = new CutSearch(lanes, start, roll.width(), false, seed + i, pace, mine).search();
        }
        if (found == null || sum(found) > roll.width()) return null;
        Block all = null;
        for (Block lane : found.runs().get(0).bands()) all = all == null ? lane : Block.after(all, lane);
        return new Layout.Banded(List.of(new Layout.BandedRun(roll, List.of(all.turn()))));
    }

    private static Layout.Banded full(RollJob lanes, RollJob.Roll across, long seed, CutSearch.Pace pace, RollBudget work) {
        List<Block> left = new ArrayList<>();
        List<Block> bands = new FullLanes(lanes, across.width(), work).bands(left);
        return CutSearch.dense(lanes, across, bands, left, seed, pace, work);
    }

    private static long sum(Layout.Banded banded) {
        long sum = 0;
        for (Block band : banded.runs().get(0).bands()) sum += band.height;
        return sum;
    }
}
