package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import lapyard.geometry.Point;

/**
 * Rings on the paper, found again by where they lie: each stands in the cells of a grid that it may touch, row by row between
 * its furthest points there, so that a slanted line stands in the cells along it alone. The cells at the rim reach on for ever.
 */
final class RingIndex {
    private static final double CELL_MM = 6;
    private static final int CELLS = 256;

    /** Squares that a ring fills are noted, so many in a row. */
    private static final double SQUARE_MM = 0.25;

    private static final int SQUARES = 6144;

    /** A line is looked at so far apart. */
    private static final double STEP_MM = 0.5;

    /** So much wider than it is an edge is taken to be. */
    private static final double TOUCH_MM = 0.01;

    private static final class Held {
        private final List<Point> ring;
        private final Box box;
        /** The question in which it was looked at last. */
        private int asked;

        private Held(List<Point> ring, Box box) {
            this.ring = ring;
            this.box = box;
        }
    }

    private final List<List<Held>> cells = new ArrayList<>();
    private final long[][] filled = new long[SQUARES][];
    private int questions;

    void put(List<Point> ring) {
        Box box = Box.round(ring);
        Held held = new Held(ring, box);
        Reach reach = new Reach(ring, box);
        for (int row = reach.first; row <= reach.last(); row++) {
            int end = row * CELLS + reach.to(row);
            for (int cell = row * CELLS + reach.from(row); cell <= end; cell++) {
                while (cells.size() <= cell) cells.add(List.of());
                if (cells.get(cell).isEmpty()) cells.set(cell, new ArrayList<>(4));
                cells.get(cell).add(held);
            }
        }
        if (Math.min(box.width(), box.height()) > SQUARE_MM) new Filling(ring).rows(box);
    }

    /** Whether the test holds for none of the rings that may touch {@code ring}. */
    boolean none(List<Point> ring, Predicate<List<Point>> test) {
        if (cells.isEmpty()) return true;
        int question = ++questions;
        Box box = Box.round(ring);
        Reach reach = new Reach(ring, box);
        for (int row = reach.first; row <= reach.last(); row++) {
            int end = Math.min(row * CELLS + reach.to(row), cells.size() - 1);
            for (int cell = row * CELLS + reach.from(row); cell <= end; cell++) {
                List<Held> there = cells.get(cell);
                for (int i = 0; i < there.size(); i++) {
                    Held held = there.get(i);
                    if (held.asked == question) continue;
                    held.asked = question;
                    if (held.box.touches(box) && test.test(held.ring)) return false;
                }
            }
        }
        return true;
    }

    /** Quickly told: true only where a ring meets the inside of a box, but not always then. */
    boolean fillsSome(Box box) {
        int from = (int) Math.max(0, Math.ceil(box.left() / SQUARE_MM));
        int to = (int) Math.min(SQUARES, Math.floor(box.right() / SQUARE_MM)) - 1;
        int highest = (int) Math.min(SQUARES, Math.floor(box.high() / SQUARE_MM)) - 1;
        if (from > to) return false;
        for (int row = (int) Math.max(0, Math.ceil(box.low() / SQUARE_MM)); row <= highest; row++) {
            long[] squares = filled[row];
            if (squares == null) continue;
            int last = Math.min(to >> 6, squares.length - 1);
            for (int word = from >> 6; word <= last; word++) if ((squares[word] & mask(word, from, to)) != 0) return true;
        }
        return false;
    }

    /** Quickly told: true only where a line runs through the inside of a ring, but not always then. */
    boolean fillsSome(Point from, Point to) {
        int steps = (int) Math.min(10_000, from.distanceMm(to) / STEP_MM);
        for (int i = 1; i < steps; i++) {
            int x = (int) Math.floor((from.x() + (to.x() - from.x()) * i / steps) / SQUARE_MM);
            int y = (int) Math.floor((from.y() + (to.y() - from.y()) * i / steps) / SQUARE_MM);
            if (x < 0 || y < 0 || y >= SQUARES || filled[y] == null || x >> 6 >= filled[y].length) continue;
            if ((filled[y][x >> 6] >> x & 1) != 0) return true;
        }
        return false;
    }

    /** Notes the squares whose middle is within a ring and that no edge touches, row by row. */
    private final class Filling {
        private final double[] x;
        private final double[] y;
        private final double[] crossed;
        /** First and last squares of the row that each edge touches there. */
        private final int[] touched;

        private int edges;

        private Filling(List<Point> ring) {
            int sides = ring.size();
            x = new double[sides + 1];
            y = new double[sides + 1];
            for (int i = 0; i <= sides; i++) {
                x[i] = ring.get(i % sides).x();
                y[i] = ring.get(i % sides).y();
            }
            crossed = new double[sides];
            touched = new int[2 * sides];
        }

        private void rows(Box box) {
            int highest = (int) Math.min(SQUARES - 1, Math.floor(box.high() / SQUARE_MM));
            for (int row = (int) Math.max(0, Math.floor(box.low() / SQUARE_MM)); row <= highest; row++) row(row);
        }

        private void row(int row) {
            int count = edges(row * SQUARE_MM);
            Arrays.sort(crossed, 0, count);
            for (int i = 0; i + 1 < count; i += 2) {
                int from = (int) Math.max(0, Math.ceil(crossed[i] / SQUARE_MM - 0.5));
                int to = (int) Math.min(SQUARES - 1, Math.floor(crossed[i + 1] / SQUARE_MM - 0.5));
                while (from <= to) {
                    int past = pastTouched(from);
                    if (past == from) {
                        int end = Math.min(to, untouchedTo(from));
                        note(row, from, end);
                        past = end + 1;
                    }
                    from = past;
                }
            }
        }

        /** Looks at the edges in a row. @return how many cross its middle */
        private int edges(double low) {
            double middle = low + SQUARE_MM / 2;
            int count = 0;
            edges = 0;
            for (int i = 0; i < crossed.length; i++) {
                if (Math.max(y[i], y[i + 1]) < low - TOUCH_MM || Math.min(y[i], y[i + 1]) > low + SQUARE_MM + TOUCH_MM) continue;
                if (y[i] > middle != y[i + 1] > middle) crossed[count++] = x[i] + (x[i + 1] - x[i]) * (middle - y[i]) / (y[i + 1] - y[i]);
                boolean level = Math.abs(y[i] - y[i + 1]) < TOUCH_MM;
                double one = level ? x[i] : at(x[i], y[i], x[i + 1], y[i + 1], low - TOUCH_MM);
                double other = level ? x[i + 1] : at(x[i], y[i], x[i + 1], y[i + 1], low + SQUARE_MM + TOUCH_MM);
                touched[edges++] = (int) Math.ceil((Math.min(one, other) - TOUCH_MM) / SQUARE_MM - 1);
                touched[edges++] = (int) Math.min(SQUARES, Math.floor((Math.max(one, other) + TOUCH_MM) / SQUARE_MM));
            }
            return count;
        }

        /** Behind the edges that touch this square. */
        private int pastTouched(int square) {
            int past = square;
            for (int i = 0; i < edges; i += 2) if (touched[i] <= square) past = Math.max(past, touched[i + 1] + 1);
            return past;
        }

        /** The last square before the next that an edge touches. */
        private int untouchedTo(int square) {
            int last = SQUARES - 1;
            for (int i = 0; i < edges; i += 2) if (touched[i] > square) last = Math.min(last, touched[i] - 1);
            return last;
        }
    }

    private void note(int row, int from, int to) {
        int words = (to >> 6) + 1;
        if (filled[row] == null) filled[row] = new long[words];
        else if (filled[row].length < words) filled[row] = Arrays.copyOf(filled[row], words);
        for (int word = from >> 6; word < words; word++) filled[row][word] |= mask(word, from, to);
    }

    /** The squares of a word that lie between these two. */
    private static long mask(int word, int from, int to) {
        return (word == from >> 6 ? -1L << from : -1L) & (word == to >> 6 ? -1L >>> ~to : -1L);
    }

    /** Where an edge is at a height; at its nearer end where it does not reach it. */
    private static double at(double ax, double ay, double bx, double by, double y) {
        if (ay == by) return ax;
        double along = (y - ay) / (by - ay);
        return ax + (bx - ax) * Math.max(0, Math.min(1, along));
    }

    private static int cell(double mm) {
        return (int) Math.max(0, Math.min(CELLS - 1, Math.floor(mm / CELL_MM)));
    }

    /** How far a ring reaches to both sides in each row of cells. */
    private static final class Reach {
        private final int first;
        private final double[] left;
        private final double[] right;

        private Reach(List<Point> ring, Box box) {
            first = cell(box.low() - TOUCH_MM);
            int count = cell(box.high() + TOUCH_MM) - first + 1;
            left = new double[count];
            right = new double[count];
            Arrays.fill(left, Double.POSITIVE_INFINITY);
            Arrays.fill(right, Double.NEGATIVE_INFINITY);
            for (int i = 0; i < ring.size(); i++) edge(ring.get(i), ring.get((i + 1) % ring.size()));
        }

        private void edge(Point a, Point b) {
            int from = cell(Math.min(a.y(), b.y()) - TOUCH_MM);
            int to = cell(Math.max(a.y(), b.y()) + TOUCH_MM);
            boolean level = Math.abs(a.y() - b.y()) < TOUCH_MM;
            for (int row = from; row <= to; row++) {
                reach(row, level || row == from ? a.y() <= b.y() ? a.x() : b.x() : at(a.x(), a.y(), b.x(), b.y(), row * CELL_MM));
                reach(row, level || row == to ? a.y() <= b.y() ? b.x() : a.x() : at(a.x(), a.y(), b.x(), b.y(), (row + 1) * CELL_MM));
            }
        }

        private void reach(int row, double x) {
            left[row - first] = Math.min(left[row - first], x - TOUCH_MM);
            right[row - first] = Math.max(right[row - first], x + TOUCH_MM);
        }

        private int last() {
            return first + left.length - 1;
        }

        private int from(int row) {
            return cell(left[row - first]);
        }

        private int to(int row) {
            return cell(right[row - first]);
        }
    }
}
