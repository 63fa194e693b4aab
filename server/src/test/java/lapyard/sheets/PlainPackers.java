package lapyard.sheets;

import java.util.ArrayList;
import java.util.List;

/** The two plain ways of filling a strip that the search is measured against, written apart from it. */
public final class PlainPackers {
    private PlainPackers() {}

    /**
     * @param high each piece that may be turned stands along the roll rather than across it
     * @return widths and heights as laid, highest first; null where one fits neither way
     */
    public static List<long[]> lying(RollProblem problem, RollProblem.Stock roll, boolean high) {
        List<long[]> sizes = new ArrayList<>();
        for (RollProblem.Piece piece : problem.pieces()) {
            for (int i = 0; i < piece.count(); i++) {
                long w = Math.round(piece.widthMm());
                long h = Math.round(piece.heightMm());
                boolean given = w <= roll.widthMm();
                boolean turned = problem.turn() && h <= roll.widthMm();
                if (!given && !turned) return null;
                boolean turn = turned && (!given || (high ? w > h : h > w));
                sizes.add(turn ? new long[] {h, w} : new long[] {w, h});
            }
        }
        sizes.sort((a, b) -> a[1] != b[1] ? Long.compare(b[1], a[1]) : Long.compare(b[0], a[0]));
        return sizes;
    }

    /** First-fit decreasing height. */
    public static long shelves(List<long[]> sizes, long width) {
        List<long[]> shelves = new ArrayList<>();
        for (long[] size : sizes) {
            long[] shelf = shelves.stream()
                    .filter(s -> s[0] + size[0] <= width)
                    .findFirst()
                    .orElse(null);
            if (shelf == null) shelves.add(shelf = new long[] {0, size[1]});
            shelf[0] += size[0];
        }
        return shelves.stream().mapToLong(s -> s[1]).sum();
    }

    /** Bottom-left fill in the order given: the lowest free spot, then the leftmost. */
    public static long bottomLeft(List<long[]> sizes, long width) {
        List<long[]> laid = new ArrayList<>();
        long height = 0;
        for (long[] size : sizes) {
            long[] best = null;
            for (int i = -1; i < laid.size(); i++) {
                long x = i < 0 ? 0 : laid.get(i)[2];
                if (x + size[0] > width) continue;
                long y = 0;
                boolean moved = true;
                while (moved) {
                    moved = false;
                    for (long[] o : laid) {
                        if (o[0] < x + size[0] && x < o[2] && o[1] < y + size[1] && y < o[3]) {
                            y = o[3];
                            moved = true;
                        }
                    }
                }
                if (best == null || y < best[1] || y == best[1] && x < best[0])
                    best = new long[] {x, y, x + size[0], y + size[1]};
            }
            laid.add(best);
            height = Math.max(height, best[3]);
        }
        return height;
    }
}
