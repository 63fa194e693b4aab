package lapyard.geometry;

/** Tries every tiling of an outline's corner grid, as a judge of splits. */
final class ExhaustiveTiling {
    private ExhaustiveTiling() {}

    static boolean exists(Outline outline, int rectangles) {
        double[] xs = outline.corners().stream()
                .mapToDouble(Point::x)
                .distinct()
                .sorted()
                .toArray();
        double[] ys = outline.corners().stream()
                .mapToDouble(Point::y)
                .distinct()
                .sorted()
                .toArray();
        boolean[][] open = new boolean[xs.length - 1][ys.length - 1];
        for (int i = 0; i + 1 < xs.length; i++) {
            for (int j = 0; j + 1 < ys.length; j++) {
                open[i][j] = contains(outline, (xs[i] + xs[i + 1]) / 2, (ys[j] + ys[j + 1]) / 2);
            }
        }
        return fill(open, rectangles);
    }

    /** Ray to the right, counting upright sides; the place must not lie on a side. */
    static boolean contains(Outline outline, double x, double y) {
        boolean within = false;
        for (int i = 0; i < outline.sides(); i++) {
            Point a = outline.corner(i);
            Point b = outline.corner(i + 1);
            if (a.y() > y != b.y() > y && a.x() > x) {
                within = !within;
            }
        }
        return within;
    }

    private static boolean fill(boolean[][] open, int left) {
        for (int j = 0; j < open[0].length; j++) {
            for (int i = 0; i < open.length; i++) {
                if (open[i][j]) {
                    return left > 0 && place(open, i, j, left);
                }
            }
        }
        return true;
    }

    private static boolean place(boolean[][] open, int i, int j, int left) {
        int most = open.length;
        for (int top = j; top < open[0].length; top++) {
            int right = i;
            while (right < most && open[right][top]) {
                right++;
            }
            most = right;
            for (int end = i + 1; end <= most; end++) {
                set(open, i, end, j, top + 1, false);
                boolean found = fill(open, left - 1);
                set(open, i, end, j, top + 1, true);
                if (found) {
                    return true;
                }
            }
        }
        return false;
    }

    private static void set(boolean[][] open, int i, int end, int j, int top, boolean value) {
        for (int c = i; c < end; c++) {
            for (int r = j; r < top; r++) {
                open[c][r] = value;
            }
        }
    }
}
