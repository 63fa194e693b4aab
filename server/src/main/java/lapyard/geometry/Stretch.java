package lapyard.geometry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * A way in which an outline changes its size, closes and keeps all its angles. Corners on one side of a cut move along the
 * sides that the cut crosses, which must all run that way; where no cut does, a side moves along its two neighbours.
 *
 * @param acrossX whether the outline changes rather along its own x than along y
 * @param growing whether every side becomes longer or stays as it is
 * @param moves   of each corner, mm for each mm of change
 */
public record Stretch(boolean acrossX, boolean growing, List<Point> moves) {
    /** Sine of the least angle at which a side that moves may meet its neighbours, 15 degrees. */
    private static final double LEAST_SINE = 0.259;

    public Stretch {
        moves = List.copyOf(moves);
    }

    /** Along x before along y; of an outline whose sides run along the axes one for each pair of neighbouring coordinates of its corners. */
    public static List<Stretch> of(Outline outline) {
        List<Stretch> all = new ArrayList<>();
        for (boolean acrossX : new boolean[] {true, false}) {
            List<Stretch> own = cuts(outline, acrossX);
            if (own.isEmpty()) own = shift(outline, acrossX);
            all.addAll(own);
        }
        return all;
    }

    /** Between two neighbouring corners, along each direction of a side, where only sides of that direction are cut. */
    private static List<Stretch> cuts(Outline outline, boolean acrossX) {
        List<Stretch> all = new ArrayList<>();
        for (int side = 0; side < outline.sides(); side++) {
            Point direction = outline.direction(side);
            boolean turned = Math.abs(direction.x()) >= Math.abs(direction.y()) ? direction.x() < 0 : direction.y() < 0;
            Point along = turned ? new Point(-direction.x(), -direction.y()) : direction;
            if (Math.abs(along.x()) >= Math.abs(along.y()) != acrossX) continue;
            TreeSet<Double> levels = new TreeSet<>();
            outline.corners().forEach(corner -> levels.add(Math.rint(corner.dot(along) * 10) / 10));
            List<Double> at = new ArrayList<>(levels);
            for (int i = 0; i + 1 < at.size(); i++) {
                double middle = (at.get(i) + at.get(i + 1)) / 2;
                if (at.get(i + 1) - at.get(i) < 1 || !onlyAlong(outline, along, middle)) continue;
                Stretch one = new Stretch(acrossX, true, outline.corners().stream()
                        .map(corner -> corner.dot(along) > middle ? along : new Point(0, 0)).toList());
                // opposite sides name the same direction
                if (all.stream().noneMatch(other -> other.near(one))) all.add(one);
            }
        }
        return all;
    }

    private static boolean onlyAlong(Outline outline, Point along, double middle) {
        return IntStream.range(0, outline.sides()).allMatch(i -> {
            Point from = outline.corner(i);
            Point to = outline.corner(i + 1);
            boolean cut = from.dot(along) > middle != to.dot(along) > middle;
            double off = to.minus(from).cross(along);
            return !cut || Math.abs(off) <= 2 * Outline.STRAY_MM;
        });
    }

    private boolean near(Stretch other) {
        return IntStream.range(0, moves.size()).allMatch(i -> moves.get(i).distanceMm(other.moves.get(i)) < 1e-3);
    }

    /** The side that faces most along the axis moves outwards, and its neighbours follow. */
    private static List<Stretch> shift(Outline outline, boolean acrossX) {
        int facing = -1;
        double most = 0.5;
        double turn = Math.signum(outline.signedAreaMm2());
        for (int i = 0; i < outline.sides(); i++) {
            Point along = outline.direction(i);
            double faces = turn * (acrossX ? along.y() : -along.x());
            if (faces > most + 1e-9) {
                most = faces;
                facing = i;
            }
        }
        if (facing < 0) return List.of();
        int n = outline.sides();
        Point along = outline.direction(facing);
        Point out = new Point(turn * along.y(), -turn * along.x());
        Point before = outline.direction((facing + n - 1) % n);
        Point after = outline.direction((facing + 1) % n);
        if (Math.abs(before.dot(out)) < LEAST_SINE || Math.abs(after.dot(out)) < LEAST_SINE) return List.of();
        List<Point> moves = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Point way = i == facing ? before : i == (facing + 1) % n ? after : null;
            moves.add(way == null ? new Point(0, 0) : new Point(way.x() / way.dot(out), way.y() / way.dot(out)));
        }
        return List.of(new Stretch(acrossX, false, moves));
    }

    /** Larger by so many mm, smaller where below 0; corners that lie askew on tenths of a mm, as documents have them. */
    public Outline applied(Outline outline, double byMm) {
        boolean upright = moves.stream().allMatch(move -> move.x() == 0 || move.y() == 0);
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < moves.size(); i++) {
            Point corner = outline.corner(i);
            Point move = moves.get(i);
            double x = corner.x() + byMm * move.x();
            double y = corner.y() + byMm * move.y();
            corners.add(upright ? new Point(x, y) : new Point(Lengths.toTenth(x), Lengths.toTenth(y)));
        }
        return new Outline(corners);
    }

    /** Numbers of the sides that change their length. */
    public List<Integer> sides() {
        return IntStream.range(0, moves.size()).filter(i -> moves.get(i).distanceMm(moves.get((i + 1) % moves.size())) > 1e-6).boxed().toList();
    }

    /** Of outlines with more sides only pairs of parallel sides are looked for. */
    private static final int MOST_SIDES = 12;

    /** How far unit vectors may miss: corners are given in whole mm. Over 25 mm it makes 0.05. */
    private static final double NEAR = 0.002;

    /**
     * The sets of sides that may all become shorter by one length while every angle stays: those whose directions add up to
     * nothing, as the sides of a closed outline do. Sets that hold no other such set, then all sides where they close too.
     *
     * @return numbers of sides, ascending; of an outline of more than 12 sides only the pairs
     */
    public static List<List<Integer>> closing(Outline outline) {
        List<List<Integer>> sets = new ArrayList<>();
        int sides = outline.sides();
        for (int size = 2; size <= (sides > MOST_SIDES ? 2 : sides); size++) subsets(outline, size, 0, List.of(), new Point(0, 0), sets);
        return sets;
    }

    private static void subsets(Outline outline, int size, int from, List<Integer> taken, Point sum, List<List<Integer>> sets) {
        if (taken.size() == size) {
            boolean least = size == outline.sides() || sets.stream().noneMatch(taken::containsAll);
            if (least && Math.hypot(sum.x(), sum.y()) < NEAR) sets.add(taken);
            return;
        }
        for (int side = from; side <= outline.sides() - (size - taken.size()); side++) {
            List<Integer> more = new ArrayList<>(taken);
            more.add(side);
            subsets(outline, size, side + 1, List.copyOf(more), sum.moved(outline.direction(side), 1, 0), sets);
        }
    }

    /** The outline with these sides shorter, which close together; its first corner stays in its place. */
    public static Outline shorter(Outline outline, Collection<Integer> sides, double byMm) {
        List<Point> corners = new ArrayList<>(List.of(outline.corner(0)));
        for (int side = 0; side < outline.sides() - 1; side++) {
            double length = outline.sideMm(side) - (sides.contains(side) ? byMm : 0);
            corners.add(corners.get(side).moved(outline.direction(side), length, 0));
        }
        return new Outline(corners);
    }
}
