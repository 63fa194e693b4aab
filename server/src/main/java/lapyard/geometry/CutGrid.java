package lapyard.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/** A right-angled outline on the grid of its own corner coordinates, so that cuts are compared in whole numbers. */
record CutGrid(double[] xs, double[] ys, int[] cornerX, int[] cornerY, List<Integer> inside) {
    /** Level or upright, in grid numbers, from its lower or left end. */
    record Segment(boolean level, int line, int from, int to) implements Comparable<Segment> {
        private static final Comparator<Segment> ORDER = Comparator.comparing((Segment s) -> !s.level())
                .thenComparingInt(Segment::line)
                .thenComparingInt(Segment::from)
                .thenComparingInt(Segment::to);

        /** Whether a level and an upright segment share a point, ends included. */
        boolean meets(Segment other) {
            return from <= other.line && other.line <= to && other.from <= line && line <= other.to;
        }

        @Override
        public int compareTo(Segment other) {
            return ORDER.compare(this, other);
        }
    }

    /** @param outline counter-clockwise, sides along the axes */
    static CutGrid of(Outline outline) {
        int n = outline.sides();
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            // A corner stands where its upright side and its level side cross, whatever hair the sides stray.
            boolean levelAfter = outline.uprightDirection(i).y() == 0;
            x[i] = Lengths.steady(outline.corner(levelAfter ? i - 1 : i).x());
            y[i] = Lengths.steady(outline.corner(levelAfter ? i : i - 1).y());
        }
        double[] xs = lines(x);
        double[] ys = lines(y);
        int[] cornerX = new int[n];
        int[] cornerY = new int[n];
        List<Integer> inside = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            cornerX[i] = Arrays.binarySearch(xs, x[i]);
            cornerY[i] = Arrays.binarySearch(ys, y[i]);
            if (outline.insideCorner(i)) inside.add(i);
        }
        inside.sort(Comparator.comparingInt((Integer i) -> cornerY[i]).thenComparingInt(i -> cornerX[i]));
        return new CutGrid(xs, ys, cornerX, cornerY, List.copyOf(inside));
    }

    private static double[] lines(double[] values) {
        TreeSet<Double> sorted = new TreeSet<>();
        for (double value : values) sorted.add(value);
        return sorted.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Corner numbers, lowest first, then from the left. */
    List<Integer> insideCorners() {
        return inside;
    }

    boolean endsAt(Segment cut, int corner) {
        int line = cut.level() ? cornerY[corner] : cornerX[corner];
        int along = cut.level() ? cornerX[corner] : cornerY[corner];
        return line == cut.line() && (along == cut.from() || along == cut.to());
    }

    /** The cut from an inside corner, level or upright, into the outline as far as its boundary or an earlier cut. */
    Segment ray(int corner, boolean level, List<Segment> cuts) {
        int n = cornerX.length;
        int before = Math.floorMod(corner - 1, n);
        int after = (corner + 1) % n;
        int line = level ? cornerY[corner] : cornerX[corner];
        int start = level ? cornerX[corner] : cornerY[corner];
        int[] along = level ? cornerX : cornerY;
        int[] across = level ? cornerY : cornerX;
        // The side on this line leads to the corner or from it; the cut goes on beyond it.
        int sideEnd = across[before] == line ? before : after;
        int step = Integer.signum(start - along[sideEnd]);
        int end = step > 0 ? Integer.MAX_VALUE : Integer.MIN_VALUE;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            if (along[i] == along[j] && spans(across[i], across[j], line)) end = nearer(end, along[i], start, step);
        }
        for (Segment cut : cuts) if (cut.level() != level && spans(cut.from(), cut.to(), line)) end = nearer(end, cut.line(), start, step);
        return new Segment(level, line, Math.min(start, end), Math.max(start, end));
    }

    private static boolean spans(int one, int other, int line) {
        return Math.min(one, other) <= line && line <= Math.max(one, other);
    }

    private static int nearer(int end, int found, int start, int step) {
        if (step > 0) return found > start ? Math.min(end, found) : end;
        return found < start ? Math.max(end, found) : end;
    }

    /** Cuts that join two inside corners, each once. */
    List<Segment> chords() {
        TreeSet<Segment> chords = new TreeSet<>();
        for (int corner : inside) {
            for (boolean level : new boolean[] {true, false}) {
                Segment ray = ray(corner, level, List.of());
                if (inside.stream().filter(other -> endsAt(ray, other)).count() == 2) chords.add(ray);
            }
        }
        return List.copyOf(chords);
    }

    /** What stands left of and below each cell of the grid: sides of the outline, {@code outer} where they are upright, and cuts. */
    private record Walls(boolean[][] left, boolean[][] below, boolean[][] outer) {}

    /** The rectangles that these cuts make. */
    FewestRectangles.Split split(List<Segment> cuts) {
        int columns = xs.length - 1;
        int rows = ys.length - 1;
        Walls walls = walls(columns, rows, cuts);
        List<Rectangle> rectangles = new ArrayList<>();
        boolean[][] taken = new boolean[columns][rows];
        for (int row = 0; row < rows; row++) {
            boolean within = false;
            for (int column = 0; column < columns; column++) {
                within ^= walls.outer()[column][row];
                if (within && !taken[column][row]) rectangles.add(grow(column, row, walls, taken));
            }
        }
        return new FewestRectangles.Split(rectangles, cuts.stream().map(this::drawn).toList());
    }

    private FewestRectangles.Cut drawn(Segment cut) {
        return cut.level()
                ? new FewestRectangles.Cut(new Point(xs[cut.from()], ys[cut.line()]), new Point(xs[cut.to()], ys[cut.line()]))
                : new FewestRectangles.Cut(new Point(xs[cut.line()], ys[cut.from()]), new Point(xs[cut.line()], ys[cut.to()]));
    }

    private Walls walls(int columns, int rows, List<Segment> cuts) {
        Walls walls = new Walls(new boolean[columns + 1][rows], new boolean[columns][rows + 1], new boolean[columns + 1][rows]);
        for (int i = 0; i < cornerX.length; i++) {
            int j = (i + 1) % cornerX.length;
            if (cornerX[i] == cornerX[j]) {
                for (int row = Math.min(cornerY[i], cornerY[j]); row < Math.max(cornerY[i], cornerY[j]); row++) {
                    walls.left()[cornerX[i]][row] = true;
                    walls.outer()[cornerX[i]][row] = true;
                }
            } else {
                for (int column = Math.min(cornerX[i], cornerX[j]); column < Math.max(cornerX[i], cornerX[j]); column++) {
                    walls.below()[column][cornerY[i]] = true;
                }
            }
        }
        for (Segment cut : cuts) {
            for (int k = cut.from(); k < cut.to(); k++) {
                if (cut.level()) {
                    walls.below()[k][cut.line()] = true;
                } else {
                    walls.left()[cut.line()][k] = true;
                }
            }
        }
        return walls;
    }

    private Rectangle grow(int column, int row, Walls walls, boolean[][] taken) {
        int right = column + 1;
        while (!walls.left()[right][row]) right++;
        int top = row + 1;
        while (!walls.below()[column][top]) top++;
        for (int c = column; c < right; c++) {
            for (int r = row; r < top; r++) taken[c][r] = true;
        }
        return new Rectangle(xs[column], ys[row], Lengths.steady(xs[right] - xs[column]), Lengths.steady(ys[top] - ys[row]));
    }
}
