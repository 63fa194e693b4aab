package lapyard.sheets;

import java.util.ArrayList;
import java.util.List;

/** Least heights of tiny sets by trying everything, written without a thought to speed. */
final class BruteForce {
    private BruteForce() {}

    /** Every way of parting the set, every cut, every orientation. */
    static long straight(List<long[]> sizes, long width, boolean turn) {
        for (long height = 1; ; height++) if (fits((1 << sizes.size()) - 1, sizes, width, height, turn)) return height;
    }

    private static boolean fits(int set, List<long[]> sizes, long width, long height, boolean turn) {
        if (Integer.bitCount(set) == 1) {
            long[] size = sizes.get(Integer.numberOfTrailingZeros(set));
            return size[0] <= width && size[1] <= height || turn && size[1] <= width && size[0] <= height;
        }
        for (int part = (set - 1) & set; part > 0; part = (part - 1) & set) {
            for (long at = 1; at < width; at++)
                if (fits(part, sizes, at, height, turn) && fits(set ^ part, sizes, width - at, height, turn))
                    return true;
            for (long at = 1; at < height; at++)
                if (fits(part, sizes, width, at, turn) && fits(set ^ part, sizes, width, height - at, turn))
                    return true;
        }
        return false;
    }

    /** Every piece at every whole place. */
    static long free(List<long[]> sizes, long width, boolean turn) {
        for (long height = 1; ; height++) if (place(0, sizes, width, height, turn, new ArrayList<>())) return height;
    }

    private static boolean place(int i, List<long[]> sizes, long width, long height, boolean turn, List<long[]> laid) {
        if (i == sizes.size()) return true;
        long[] size = sizes.get(i);
        for (int way = 0; way < (turn && size[0] != size[1] ? 2 : 1); way++) {
            long w = size[way];
            long h = size[1 - way];
            for (long y = 0; y + h <= height; y++) {
                for (long x = 0; x + w <= width; x++) {
                    long[] box = {x, y, x + w, y + h};
                    if (laid.stream().anyMatch(o -> box[0] < o[2] && o[0] < box[2] && box[1] < o[3] && o[1] < box[3]))
                        continue;
                    laid.add(box);
                    if (place(i + 1, sizes, width, height, turn, laid)) return true;
                    laid.remove(laid.size() - 1);
                }
            }
        }
        return false;
    }
}
