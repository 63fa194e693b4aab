package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;

/**
 * Finds room for labels, one after the other: a label goes to the first of its places, best first, where it lies
 * within the field and on nothing that was placed before. What finds no room is left off and counted.
 */
final class Labels {
    /** Places tried across and up an area. */
    private static final int TRIES = 11;

    private static final double[] AWAY = {1.5, 2.5, 4, 6, 8.5, 12, 17, 24, 34};
    private static final int DIRECTIONS = 16;
    static final List<Double> LEVEL_OR_UPRIGHT = List.of(0.0, 90.0);

    /** From one circle of places to the next, mm on paper. */
    private static final double STEP = 1.2;

    /** How long a leader may be, mm on paper. */
    private static final double FARTHEST = 150;

    private final Box bounds;
    private final List<Point> field;
    private final RingIndex taken = new RingIndex();
    private final RingIndex leaders = new RingIndex();
    private final RingIndex solids = new RingIndex();

    Labels(Box field) {
        this.bounds = field;
        this.field = field.corners();
    }

    /** A label that stands beside what it names, with a line to it. */
    record Led(Plate plate, Point from, Point to) {}

    /** Nothing may be placed on this convex ring from now on. */
    void take(List<Point> convex) {
        taken.put(convex);
    }

    /** As {@link #take}, of a leader: where nothing else is left, another leader may cross it. */
    void lead(Led led) {
        take(led.plate().corners());
        leaders.put(line(led.from(), led.to()));
    }

    /** Labels that stand beside something may not lie on this ring; labels within may. */
    void solid(List<Point> ring) {
        solids.put(ring);
    }

    boolean free(Plate plate) {
        Box box = plate.box();
        if (plate.turnDeg() == 0 && (taken.fillsSome(box) || leaders.fillsSome(box))) return false;
        List<Point> corners = plate.corners();
        return (bounds.holds(box) || within(corners, field))
                && taken.none(corners, other -> Plate.overlap(corners, other))
                && leaders.none(corners, other -> Plate.overlap(corners, other));
    }

    /** Whether a plate lies on none of the rings that only their own labels may lie on. */
    boolean clearOfSolids(Plate plate) {
        if (plate.turnDeg() == 0 && solids.fillsSome(plate.box())) return false;
        List<Point> corners = plate.corners();
        return solids.none(corners, solid -> meet(corners, solid));
    }

    /** The middle-most free place for a plate wholly within a ring, at the first of the angles that has any. */
    Optional<Plate> within(List<Point> ring, double widthMm, double heightMm, List<Double> angles) {
        Box box = Box.round(ring);
        for (double angle : angles) {
            if (!readable(widthMm, heightMm, angle)) continue;
            Plate middle = new Plate(box.centre(), widthMm, heightMm, angle);
            if (ring.size() == 4 && within(middle.corners(), ring) && free(middle)) {
                return Optional.of(middle);
            }
            if (wider(middle, box)) continue;
            Optional<Plate> best = places(box).stream()
                    .map(centre -> new Plate(centre, widthMm, heightMm, angle))
                    .filter(plate -> within(plate.corners(), ring) && free(plate))
                    .min(Comparator.comparingDouble(plate -> -Math.round(10 * plate.centre().distanceMm(nearestOnEdge(ring, plate.centre())))));
            if (best.isPresent()) return best;
        }
        return Optional.empty();
    }

    /** What is no wider than high is written level only: a letter N that is turned is a Z. */
    private static boolean readable(double widthMm, double heightMm, double angle) {
        return angle == 0 || widthMm > heightMm;
    }

    private static boolean wider(Plate plate, Box box) {
        Box own = plate.box();
        return own.width() > box.width() || own.height() > box.height();
    }

    private static List<Point> places(Box box) {
        List<Point> places = new ArrayList<>();
        for (int i = 0; i < TRIES; i++) {
            for (int j = 0; j < TRIES; j++) {
                places.add(new Point(
                        box.left() + box.width() * (i + 0.5) / TRIES, box.low() + box.height() * (j + 0.5) / TRIES));
            }
        }
        return places;
    }

    /**
     * The nearest free place beside a ring whose line to the ring runs over nothing else.
     *
     * @param most how far from the ring
     */
    Optional<Led> beside(List<Point> ring, Words words, double most) {
        double widthMm = words.widthMm();
        double heightMm = words.heightMm();
        Box box = Box.round(ring);
        for (double away : AWAY) {
            if (away > most) break;
            for (int i = 0; i < DIRECTIONS; i++) {
                double angle = 2 * Math.PI * i / DIRECTIONS;
                Point centre = box.centre().plus(Math.cos(angle) * (box.width() / 2 + widthMm / 2 + away), -(Math.sin(angle) * (box.height() / 2 + heightMm / 2 + away)));
                Optional<Led> led = ledTo(ring, new Plate(centre, widthMm, heightMm, 0));
                if (led.isPresent()) return led;
            }
        }
        return Optional.empty();
    }

    private Optional<Led> ledTo(List<Point> ring, Plate plate) {
        if (!free(plate) || !clearOfSolids(plate)) return Optional.empty();
        List<Point> corners = plate.corners();
        Point to = nearestOnEdge(ring, plate.centre());
        Point from = nearestOnEdge(corners, to);
        Point just = to.towards(from, 1e-3);
        List<Point> line = line(from, to);
        boolean clear = taken.none(line, other -> Plate.overlap(line, other))
                && leaders.none(line, other -> Plate.overlap(line, other))
                && solids.none(line, solid -> from.within(solid) || just.within(solid) || cross(from, just, solid));
        return clear ? Optional.of(new Led(plate, from, to)) : Optional.empty();
    }

    /** A place in the middle of a ring where the label lies over its edge, but on no other ring; it is taken. */
    Optional<Plate> over(List<Point> ring, Words words) {
        List<Point> places = places(Box.round(ring));
        return taken(LEVEL_OR_UPRIGHT.stream().flatMap(turn -> places.stream().map(middle -> words.at(middle, turn))).filter(plate -> {
            List<Point> corners = plate.corners();
            return readable(plate.widthMm(), plate.heightMm(), plate.turnDeg()) && free(plate) && solids.none(corners, solid -> solid != ring && meet(corners, solid));
        }).findFirst());
    }

    /**
     * The nearest free place for a label, its line running over other rings but over no label, and over no other leader unless
     * there is no other way.
     *
     * @param ring what it names; the line ends in its middle
     */
    Optional<Led> anywhere(List<Point> ring, Words words) {
        Optional<Led> crossing = Optional.empty();
        Point to = Box.round(ring).centre();
        Plate usual = words.at(to, 0);
        for (double away = usual.heightMm(); away < FARTHEST; away += STEP) {
            int places = (int) Math.max(DIRECTIONS, Math.min(90, away * 2));
            for (int i = 0; i < places; i++) {
                double angle = 2 * Math.PI * i / places;
                Point centre = new Point(to.x() + Math.cos(angle) * (away + usual.widthMm() / 2), to.y() - Math.sin(angle) * away);
                Plate plate = new Plate(centre, usual.widthMm(), usual.heightMm(), 0);
                if (!clearOfSolids(plate) || !free(plate)) continue;
                Point from = nearestOnEdge(plate.corners(), to);
                if (taken.fillsSome(from, to)) continue;
                List<Point> line = line(from, to);
                if (!taken.none(line, other -> Plate.overlap(line, other))) continue;
                Optional<Led> led = Optional.of(new Led(plate, from, to));
                if (leaders.none(line, other -> Plate.overlap(line, other))) return led;
                if (crossing.isEmpty()) crossing = led;
            }
        }
        return crossing;
    }

    /** A line as a thin ring, to be kept clear of. */
    static List<Point> line(Point from, Point to) {
        return Dimensions.thin(from, to).corners();
    }

    /** The first of these plates that is free; it is taken. */
    Optional<Plate> first(List<Plate> plates) {
        return taken(plates.stream().filter(this::free).findFirst());
    }

    /** The first that is also clear of all that only its own labels may lie on; it is taken. */
    Optional<Plate> firstClear(List<Plate> plates) {
        return taken(plates.stream().filter(plate -> free(plate) && clearOfSolids(plate)).findFirst());
    }

    Optional<Plate> taken(Optional<Plate> found) {
        found.ifPresent(plate -> take(plate.corners()));
        return found;
    }

    /** The middle-most free place for words wholly within a ring, level or else upright; it is taken. */
    Optional<Plate> within(List<Point> ring, Words words) {
        return taken(within(ring, words.widthMm(), words.heightMm(), LEVEL_OR_UPRIGHT));
    }

    /** Whether a ring lies wholly in another. */
    private static boolean within(List<Point> inner, List<Point> ring) {
        return inner.stream().allMatch(p -> p.within(ring)) && !cross(inner, ring);
    }

    /** Whether two rings share ground. */
    static boolean meet(List<Point> one, List<Point> other) {
        return cross(one, other) || one.get(0).within(other) || other.get(0).within(one);
    }

    private static boolean cross(Point a, Point b, List<Point> ring) {
        for (int i = 0; i < ring.size(); i++) {
            if (Point.crossing(a, b, ring.get(i), ring.get((i + 1) % ring.size()))) return true;
        }
        return false;
    }

    private static boolean cross(List<Point> one, List<Point> other) {
        for (int i = 0; i < one.size(); i++) {
            if (cross(one.get(i), one.get((i + 1) % one.size()), other)) return true;
        }
        return false;
    }

    /** The place on the ring's edge nearest to p. */
    private static Point nearestOnEdge(List<Point> ring, Point p) {
        Point best = ring.get(0);
        double least = best.distanceMm(p);
        for (int i = 0; i < ring.size(); i++) {
            Point near = p.nearestOn(ring.get(i), ring.get((i + 1) % ring.size()));
            if (near.distanceMm(p) < least) {
                best = near;
                least = near.distanceMm(p);
            }
        }
        return best;
    }
}
