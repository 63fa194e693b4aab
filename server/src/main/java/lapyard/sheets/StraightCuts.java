package lapyard.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Whether a layout can be taken apart by cuts that run edge to edge. */
final class StraightCuts {
    private StraightCuts() {}

    static boolean part(List<Block.Laid> pieces) {
        if (pieces.size() <= 3) return true; // the smallest that straight cuts cannot part is four pieces round a hole
        List<List<Block.Laid>> parts = parted(pieces, true);
        if (parts.size() == 1) parts = parted(pieces, false);
        if (parts.size() == 1) return false;
        for (List<Block.Laid> part : parts) if (!part(part)) return false;
        return true;
    }

    /** Parts pieces along every line in one direction that crosses none of them. */
    private static List<List<Block.Laid>> parted(List<Block.Laid> pieces, boolean along) {
        List<Block.Laid> sorted = new ArrayList<>(pieces);
        sorted.sort(Comparator.comparingLong(along ? Block.Laid::y : Block.Laid::x));
        List<List<Block.Laid>> parts = new ArrayList<>();
        List<Block.Laid> part = new ArrayList<>();
        long reach = Long.MAX_VALUE;
        for (Block.Laid piece : sorted) {
            if ((along ? piece.y() : piece.x()) >= reach) {
                parts.add(part);
                part = new ArrayList<>();
                reach = Long.MIN_VALUE;
            }
            part.add(piece);
            long end = along ? piece.y() + piece.height() : piece.x() + piece.width();
            reach = reach == Long.MAX_VALUE ? end : Math.max(reach, end);
        }
        parts.add(part);
        return parts;
    }
}
