package lapyard.sheets;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;

/** Rectangles cut up at random, so that the least length of roll is known: the rectangle's own height. */
public final class CutUp {
    private CutUp() {}

    /** How the rectangle is cut: by cuts that run edge to edge, or also by four cuts round a piece in the middle. */
    public enum Manner {
        STRAIGHT,
        PINWHEEL
    }

    /**
     * @param grid  sides are whole multiples of it, mm
     * @param ratio no part is cut nearer to its end than this share of its side
     */
    public static RollProblem strip(
            int pieces, long width, long height, long grid, double ratio, Manner manner, boolean straightCuts, long seed) {
        Random random = new Random(seed);
        List<long[]> parts = new ArrayList<>();
        parts.add(new long[] {width, height});
        while (parts.size() < pieces) {
            int at = largest(parts, random);
            long[] part = parts.remove(at);
            if (manner == Manner.PINWHEEL && parts.size() + 5 <= pieces && random.nextInt(3) == 0
                    && Math.min(part[0], part[1]) >= 5 * grid) {
                pinwheel(part, grid, random, parts);
            } else if (!halve(part, grid, ratio, random, parts)) {
                parts.add(part);
                break;
            }
        }
        List<RollProblem.Piece> wanted = new ArrayList<>();
        for (long[] part : parts) {
            boolean turned = random.nextBoolean() && part[1] <= width;
            wanted.add(new RollProblem.Piece(
                    "p" + wanted.size(), turned ? part[1] : part[0], turned ? part[0] : part[1], 1));
        }
        RollProblem.Stock roll =
                new RollProblem.Stock("r", width, new BigDecimal(1000), 1, OptionalDouble.empty());
        String name = manner + " " + pieces + " of " + width + " x " + height + ", seed " + seed;
        return new RollProblem(name, List.of(roll), wanted, true, straightCuts);
    }

    /** One of the three largest of some, so that parts differ and none is left huge. */
    private static int largest(List<long[]> parts, Random random) {
        int best = random.nextInt(parts.size());
        for (int i = 0; i < 6; i++) {
            int other = random.nextInt(parts.size());
            if (parts.get(other)[0] * parts.get(other)[1] > parts.get(best)[0] * parts.get(best)[1]) best = other;
        }
        return best;
    }

    private static boolean halve(long[] part, long grid, double ratio, Random random, List<long[]> into) {
        int axis = random.nextInt(4) == 0 ? random.nextInt(2) : part[0] >= part[1] ? 0 : 1;
        if (part[axis] < 2 * grid) axis = 1 - axis;
        if (part[axis] < 2 * grid) return false;
        long at = grid * Math.round((ratio + (1 - 2 * ratio) * random.nextDouble()) * part[axis] / grid);
        at = Math.max(grid, Math.min(part[axis] - grid, at));
        if (at <= 0 || at >= part[axis]) return false;
        into.add(axis == 0 ? new long[] {at, part[1]} : new long[] {part[0], at});
        into.add(axis == 0 ? new long[] {part[0] - at, part[1]} : new long[] {part[0], part[1] - at});
        return true;
    }

    private static void pinwheel(long[] part, long grid, Random random, List<long[]> into) {
        long x1 = between(part[0], grid, 0.2, 0.45, random);
        long x2 = Math.max(x1 + grid, between(part[0], grid, 0.55, 0.8, random));
        long y1 = between(part[1], grid, 0.2, 0.45, random);
        long y2 = Math.max(y1 + grid, between(part[1], grid, 0.55, 0.8, random));
        into.add(new long[] {x2, y1});
        into.add(new long[] {part[0] - x2, y2});
        into.add(new long[] {part[0] - x1, part[1] - y2});
        into.add(new long[] {x1, part[1] - y1});
        into.add(new long[] {x2 - x1, y2 - y1});
    }

    private static long between(long side, long grid, double from, double to, Random random) {
        return grid * Math.max(1, Math.round((from + (to - from) * random.nextDouble()) * side / grid));
    }
}
