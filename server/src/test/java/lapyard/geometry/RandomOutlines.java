package lapyard.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Right-angled outlines from a seed: grown cell by cell, traced round, drawn with uneven columns and rows. */
public final class RandomOutlines {
    private static final int SIZE = 6;

    private RandomOutlines() {}

    /**
     * @param leastMm narrowest column or row
     * @param mostMm  widest, both in whole millimetres
     * @return counter-clockwise from the front left corner, without holes and without corners that touch
     */
    public static Outline of(Random random, int leastMm, int mostMm) {
        while (true) {
            boolean[][] cells = grow(random, 1 + random.nextInt(14));
            if (simple(cells)) {
                int[] x = lines(random, leastMm, mostMm);
                int[] y = lines(random, leastMm, mostMm);
                return trace(cells, x, y).fromFrontLeft();
            }
        }
    }

    private static int[] lines(Random random, int leastMm, int mostMm) {
        int[] lines = new int[SIZE + 1];
        for (int i = 1; i <= SIZE; i++) {
            lines[i] = lines[i - 1] + leastMm + random.nextInt(mostMm - leastMm + 1);
        }
        return lines;
    }

    private static boolean[][] grow(Random random, int wanted) {
        boolean[][] cells = new boolean[SIZE][SIZE];
        cells[random.nextInt(SIZE)][random.nextInt(SIZE)] = true;
        for (int count = 1; count < wanted; ) {
            int x = random.nextInt(SIZE);
            int y = random.nextInt(SIZE);
            if (!cells[x][y]
                    && (at(cells, x - 1, y) || at(cells, x + 1, y) || at(cells, x, y - 1) || at(cells, x, y + 1))) {
                cells[x][y] = true;
                count++;
            }
        }
        return cells;
    }

    private static boolean at(boolean[][] cells, int x, int y) {
        return x >= 0 && y >= 0 && x < SIZE && y < SIZE && cells[x][y];
    }

    /** No two cells that only touch at a corner, and the outside in one piece, corners not counted. */
    private static boolean simple(boolean[][] cells) {
        for (int x = 0; x <= SIZE; x++) {
            for (int y = 0; y <= SIZE; y++) {
                boolean a = at(cells, x - 1, y - 1);
                boolean b = at(cells, x, y - 1);
                boolean c = at(cells, x - 1, y);
                boolean d = at(cells, x, y);
                if (a == d && b == c && a != b) {
                    return false;
                }
            }
        }
        boolean[][] outside = new boolean[SIZE + 2][SIZE + 2];
        flood(cells, outside, 0, 0);
        for (int x = 0; x < SIZE + 2; x++) {
            for (int y = 0; y < SIZE + 2; y++) {
                if (!outside[x][y] && !at(cells, x - 1, y - 1)) {
                    return false;
                }
            }
        }
        return true;
    }

    private static void flood(boolean[][] cells, boolean[][] outside, int x, int y) {
        if (x < 0 || y < 0 || x >= SIZE + 2 || y >= SIZE + 2 || outside[x][y] || at(cells, x - 1, y - 1)) {
            return;
        }
        outside[x][y] = true;
        flood(cells, outside, x + 1, y);
        flood(cells, outside, x - 1, y);
        flood(cells, outside, x, y + 1);
        flood(cells, outside, x, y - 1);
    }

    private static Outline trace(boolean[][] cells, int[] x, int[] y) {
        int startX = 0;
        int startY = 0;
        while (!at(cells, startX, startY)) {
            startX++;
            if (startX == SIZE) {
                startX = 0;
                startY++;
            }
        }
        List<Point> corners = new ArrayList<>();
        int px = startX;
        int py = startY;
        int dx = 1;
        int dy = 0;
        while (true) {
            // The cell to the left of the way is inside; turn right, go on, or turn left by the two cells ahead.
            boolean aheadLeft = at(cells, px + (dx - dy - 1) / 2, py + (dx + dy - 1) / 2);
            boolean aheadRight = at(cells, px + (dx + dy - 1) / 2, py + (dy - dx - 1) / 2);
            if (aheadRight) {
                corners.add(new Point(x[px], y[py]));
                int turned = dx;
                dx = dy;
                dy = -turned;
            } else if (!aheadLeft) {
                corners.add(new Point(x[px], y[py]));
                int turned = dx;
                dx = -dy;
                dy = turned;
            }
            px += dx;
            py += dy;
            if (px == startX && py == startY) {
                // Back at the lowest, then leftmost corner, where the way turns left.
                corners.add(new Point(x[px], y[py]));
                return new Outline(corners);
            }
        }
    }
}
