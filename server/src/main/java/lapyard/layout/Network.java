package lapyard.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;

/**
 * Paths along x and y that a square of the path's width can be pushed along, from the entrance to every bed: from what is
 * laid already, always to the bed that is nearest. Every bend costs a little, so that paths run straight.
 *
 * @see "Takahashi and Matsuyama, An approximate solution for the Steiner problem in graphs, Mathematica Japonica 24 (1980)
 *     573-577, from memory: the rule of the nearest"
 */
final class Network {
    private static final double BEND_MM = 400;
    private static final int MOST_LINES = 260;

    /** A straight path, {@code across} where it lies along x; {@code at} is its other coordinate. */
    record Leg(boolean across, double at, double from, double to) {}

    /** Those across first, line by line. */
    private static final Comparator<Leg> IN_LINE =
            Comparator.comparing(Leg::across).reversed().thenComparingDouble(Leg::at).thenComparingDouble(Leg::from);

    /**
     * @param legs     middle lines
     * @param reached  for each bed, whether a path lies along one of its sides
     * @param walkMm   for each bed, along the paths from the entrance to the nearest place beside it
     */
    record Laid(List<Leg> legs, boolean[] reached, double[] walkMm, double[] hoseMm) {}

    private final double half;
    private final double[] xs;
    private final double[] ys;
    private final boolean[] node;
    private final boolean[] right;
    private final boolean[] up;
    private final List<List<double[]>> beds;

    /**
     * @param walk  ground to walk on, beds taken off
     * @param swap  the same with x and y changed
     * @param beds  rectangles that each is made of: left, front, right, back
     */
    Network(Room walk, Room swap, List<List<double[]>> beds, double widthMm, List<Double> moreXs, List<Double> moreYs) {
        half = widthMm / 2;
        this.beds = beds;
        TreeSet<Double> x = new TreeSet<>();
        TreeSet<Double> y = new TreeSet<>();
        for (double[] box : beds.stream().flatMap(List::stream).toList()) {
            x.addAll(List.of(Lengths.toTenth(box[0] - half), Lengths.toTenth(box[2] + half), Lengths.toTenth((box[0] + box[2]) / 2)));
            y.addAll(List.of(Lengths.toTenth(box[1] - half), Lengths.toTenth(box[3] + half), Lengths.toTenth((box[1] + box[3]) / 2)));
        }
        moreXs.forEach(one -> x.add(Lengths.toTenth(one)));
        moreYs.forEach(one -> y.add(Lengths.toTenth(one)));
        xs = thinned(x);
        ys = thinned(y);
        node = new boolean[xs.length * ys.length];
        right = new boolean[node.length];
        up = new boolean[node.length];
        for (int j = 0; j < ys.length; j++) {
            for (double[] span : walk.stretches(ys[j] - half, ys[j] + half)) {
                for (int i = 0; i < xs.length; i++) {
                    boolean on = in(span, xs[i]);
                    node[i * ys.length + j] |= on;
                    if (on && i + 1 < xs.length && in(span, xs[i + 1])) right[i * ys.length + j] = true;
                }
            }
        }
        for (int i = 0; i < xs.length; i++) {
            for (double[] span : swap.stretches(xs[i] - half, xs[i] + half)) {
                for (int j = 0; j + 1 < ys.length; j++) {
                    if (in(span, ys[j]) && in(span, ys[j + 1])) up[i * ys.length + j] = true;
                }
            }
        }
    }

    private boolean in(double[] span, double at) {
        return span[0] <= at - half + 0.06 && span[1] >= at + half - 0.06;
    }

    private static double[] thinned(TreeSet<Double> all) {
        double[] sorted = all.stream().mapToDouble(Double::doubleValue).toArray();
        if (sorted.length <= MOST_LINES) return sorted;
        double[] some = new double[MOST_LINES];
        for (int i = 0; i < MOST_LINES; i++) some[i] = sorted[(int) ((long) i * (sorted.length - 1) / (MOST_LINES - 1))];
        return Arrays.stream(some).distinct().toArray();
    }

    /** The node nearest to a place, -1 where there is none. */
    int nearest(Point place) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int n = 0; n < node.length; n++) {
            if (!node[n]) continue;
            double mm = Math.hypot(xs[n / ys.length] - place.x(), ys[n % ys.length] - place.y());
            if (mm < least - 1e-9) {
                least = mm;
                best = n;
            }
        }
        return best;
    }

    Point at(int n) {
        return new Point(xs[n / ys.length], ys[n % ys.length]);
    }

    Laid laid(int root, int tap, double beforeTapMm) {
        Set<Integer> tree = new HashSet<>(List.of(root));
        Set<Long> edges = new HashSet<>();
        boolean[] reached = new boolean[beds.size()];
        mark(tree, reached);
        for (boolean[] done = new boolean[beds.size()]; ; ) {
            int[] came = new int[node.length * 2];
            int end = search(tree, 0, BEND_MM, Optional.empty(), came, (n, mm) ->
                    IntStream.range(0, beds.size()).anyMatch(bed -> !reached[bed] && beside(n, beds.get(bed))));
            if (end < 0) break;
            for (int state = end; state >= 0 && came[state] != -2; state = came[state]) {
                tree.add(state / 2);
                int from = came[state];
                if (from >= 0) edges.add(edge(from / 2, state / 2));
            }
            mark(tree, reached);
            if (Arrays.equals(done, reached)) break;
            done = reached.clone();
        }
        double[] hose = tap < 0 ? new double[beds.size()] : along(tap, beforeTapMm, Optional.empty());
        return new Laid(legs(root, edges), reached, along(root, 0, Optional.of(edges)), hose);
    }

    private long edge(int a, int b) {
        return (long) Math.min(a, b) * node.length + Math.max(a, b);
    }

    private void mark(Set<Integer> tree, boolean[] reached) {
        for (int n : tree) {
            for (int bed = 0; bed < reached.length; bed++) reached[bed] |= beside(n, beds.get(bed));
        }
    }

    private boolean beside(int n, List<double[]> bed) {
        return bed.stream().anyMatch(box -> beside(n, box));
    }

    private boolean beside(int n, double[] box) {
        double x = xs[n / ys.length];
        double y = ys[n % ys.length];
        boolean along = x >= box[0] && x <= box[2] && (Math.abs(y - box[1] + half) < 1 || Math.abs(y - box[3] - half) < 1);
        boolean up = y >= box[1] && y <= box[3] && (Math.abs(x - box[0] + half) < 1 || Math.abs(x - box[2] - half) < 1);
        return along || up;
    }

    /** Hears of nodes, the nearest first; true ends the search there. */
    private interface Found {
        boolean enough(int n, double mm);
    }

    /**
     * Goes out from some nodes to all that can be reached. A state is twice a node, and one more where it was come to along y.
     *
     * @param beforeMm gone at the beginning already
     * @param bendMm   what a bend costs; none is at the beginning
     * @param edges    that alone may be gone along; empty for all
     * @param came     gains the state before each, -1 where it was not come to, -2 at the beginning
     * @return the state at which the search was ended, -1 where it was not
     */
    private int search(Set<Integer> from, double beforeMm, double bendMm, Optional<Set<Long>> edges, int[] came, Found found) {
        double[] cost = new double[came.length];
        Arrays.fill(cost, Double.POSITIVE_INFINITY);
        Arrays.fill(came, -1);
        PriorityQueue<double[]> queue = new PriorityQueue<>(
                Comparator.comparingDouble((double[] one) -> one[0]).thenComparingDouble(one -> one[1]));
        for (int n : new TreeSet<>(from)) {
            for (int state = n * 2; state < n * 2 + 2; state++) {
                cost[state] = beforeMm;
                came[state] = -2;
                queue.add(new double[] {beforeMm, state});
            }
        }
        while (!queue.isEmpty()) {
            double[] top = queue.poll();
            int state = (int) top[1];
            if (top[0] > cost[state]) continue;
            int n = state / 2;
            if (found.enough(n, top[0])) return state;
            for (int dir = 0; dir < 2; dir++) {
                for (int other : next(n, dir)) {
                    if (edges.isPresent() && !edges.get().contains(edge(n, other))) continue;
                    double bend = came[state] != -2 && dir != state % 2 ? bendMm : 0;
                    double then = top[0] + Math.abs(xs[n / ys.length] - xs[other / ys.length]) + Math.abs(ys[n % ys.length] - ys[other % ys.length]) + bend;
                    if (then < cost[other * 2 + dir] - 1e-9) {
                        cost[other * 2 + dir] = then;
                        came[other * 2 + dir] = state;
                        queue.add(new double[] {then, other * 2 + dir});
                    }
                }
            }
        }
        return -1;
    }

    private List<Integer> next(int n, int dir) {
        List<Integer> next = new ArrayList<>(2);
        int step = dir == 0 ? ys.length : 1;
        boolean[] open = dir == 0 ? right : up;
        if (open[n]) next.add(n + step);
        if (n - step >= 0 && open[n - step] && (dir == 0 || n % ys.length > 0)) next.add(n - step);
        return next;
    }

    /** For each bed the way to the nearest node beside it, over the edges only where they are given. */
    private double[] along(int from, double beforeMm, Optional<Set<Long>> edges) {
        double[] least = new double[beds.size()];
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        search(Set.of(from), beforeMm, 0, edges, new int[node.length * 2], (n, mm) -> {
            for (int bed = 0; bed < least.length; bed++) {
                if (beside(n, beds.get(bed))) least[bed] = Math.min(least[bed], mm);
            }
            return false;
        });
        return least;
    }

    /** Edges in one line and without a gap are one leg. */
    private List<Leg> legs(int root, Set<Long> edges) {
        List<Leg> legs = new ArrayList<>();
        edges.stream().map(this::leg).sorted(IN_LINE).forEach(leg -> {
            Leg last = legs.isEmpty() ? leg : legs.get(legs.size() - 1);
            boolean goesOn = last.across() == leg.across() && last.at() == leg.at() && last.to() == leg.from();
            if (goesOn) legs.set(legs.size() - 1, new Leg(leg.across(), leg.at(), last.from(), leg.to()));
            else legs.add(leg);
        });
        if (legs.isEmpty()) {
            Point at = at(root);
            return List.of(new Leg(true, at.y(), at.x() - half, at.x() + half));
        }
        return legs.stream()
                .map(leg -> new Leg(leg.across(), leg.at(), leg.from() - past(leg, leg.from(), legs), leg.to() + past(leg, leg.to(), legs)))
                .toList();
    }

    /**
     * A leg runs on by half its width at an end that no other crosses, so that it lies before what it leads to; where two
     * bend into each other the one along x does.
     */
    private double past(Leg leg, double end, List<Leg> legs) {
        for (Leg other : legs) {
            if (other.across() == leg.across() || other.at() != end || other.from() > leg.at() || other.to() < leg.at()) continue;
            boolean bend = other.from() == leg.at() || other.to() == leg.at();
            return bend && leg.across() ? half : 0;
        }
        return half;
    }

    private Leg leg(long edge) {
        Point a = at((int) (edge / node.length));
        Point b = at((int) (edge % node.length));
        boolean across = a.y() == b.y();
        return across ? new Leg(true, a.y(), Math.min(a.x(), b.x()), Math.max(a.x(), b.x())) : new Leg(false, a.x(), Math.min(a.y(), b.y()), Math.max(a.y(), b.y()));
    }
}
