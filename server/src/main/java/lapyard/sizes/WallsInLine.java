package lapyard.sizes;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiPredicate;
import java.util.function.Function;
import java.util.stream.IntStream;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.sizes.Side.Part;

/** Outer walls of beds in the yard, which of them lie in one line, and which gaps between neighbours of a row are equal. */
final class WallsInLine {
    /** What is measured as one line, or as equal. */
    private static final double EQUAL_MM = 1;

    /** Beds further apart are no neighbours. */
    private static final double NEIGHBOURS_MM = 3_000;

    private static final double STRAIGHT = 1e-6;

    /** @param rates by how much each part moves it outwards, mm for each mm of change */
    private record Wall(int bed, Point from, Point to, Point out, Map<Part, Double> rates) {}

    private record Gap(Wall one, Wall other, double mm) {
        Map<Part, Double> rates() {
            Map<Part, Double> both = new HashMap<>(one.rates());
            other.rates().forEach((part, rate) -> both.merge(part, rate, Double::sum));
            return both;
        }

        boolean shares(Gap with) {
            return one.bed() == with.one.bed() || one.bed() == with.other.bed() || other.bed() == with.one.bed() || other.bed() == with.other.bed();
        }
    }

    private final List<Wall> walls = new ArrayList<>();

    WallsInLine(Garden garden, List<Part> parts) {
        for (int i = 0; i < garden.beds().size(); i++) {
            int index = i;
            walls(i, garden.beds().get(i), parts.stream().filter(part -> part.bed() == index).toList());
        }
    }

    /** Walls that no corner of their bed lies beyond. */
    private void walls(int index, Bed bed, List<Part> own) {
        Outline yard = bed.inYard();
        double turn = Math.signum(yard.signedAreaMm2());
        for (int side = 0; side < yard.sides(); side++) {
            Point from = yard.corner(side);
            Point along = yard.direction(side);
            Point out = new Point(turn * along.y(), -turn * along.x());
            if (yard.corners().stream().anyMatch(corner -> beyond(from, corner, out) > EQUAL_MM)) continue;
            Map<Part, Double> rates = new HashMap<>();
            for (Part part : own) {
                double rate = Math.rint(1e6 * bed.placement().toYard(part.stretch().moves().get(side)).minus(bed.placement().toYard(new Point(0, 0))).dot(out)) / 1e6;
                if (rate != 0) rates.put(part, rate);
            }
            walls.add(new Wall(index, from, yard.corner(side + 1), out, rates));
        }
    }

    /** What moves each of two walls of different beds that lie in one line and face the same way. */
    List<List<Map<Part, Double>>> inLine() {
        return pairs(walls, Wall::rates, (one, other) -> one.bed() != other.bed() && one.out().dot(other.out()) > 1 - STRAIGHT
                && Math.abs(beyond(one.from(), other.from(), one.out())) <= EQUAL_MM);
    }

    /** What moves each of two equal gaps that follow each other in a row. */
    List<List<Map<Part, Double>>> equalGaps() {
        return pairs(gaps(), Gap::rates, (one, other) -> Math.abs(one.one().out().dot(other.one().out())) > 1 - STRAIGHT
                && one.shares(other) && Math.abs(one.mm() - other.mm()) <= EQUAL_MM);
    }

    private static <T> List<List<Map<Part, Double>>> pairs(List<T> all, Function<T, Map<Part, Double>> rates, BiPredicate<T, T> belong) {
        return IntStream.range(0, all.size()).boxed().flatMap(i -> all.subList(i + 1, all.size()).stream()
                .filter(other -> belong.test(all.get(i), other)).map(other -> List.of(rates.apply(all.get(i)), rates.apply(other)))).toList();
    }

    private List<Gap> gaps() {
        List<Gap> gaps = new ArrayList<>();
        for (Wall one : walls) {
            Gap nearest = null;
            for (Wall other : walls) {
                double mm = beyond(one.from(), other.from(), one.out());
                boolean faces = one.bed() != other.bed() && one.out().dot(other.out()) < STRAIGHT - 1 && mm > 0 && mm <= NEIGHBOURS_MM && beside(one, other);
                if (faces && (nearest == null || mm < nearest.mm())) nearest = new Gap(one, other, mm);
            }
            Gap found = nearest;
            if (found != null && gaps.stream().noneMatch(gap -> gap.one() == found.other() && gap.other() == found.one())) gaps.add(found);
        }
        return gaps;
    }

    /** Whether some of one wall lies straight across some of the other. */
    private static boolean beside(Wall one, Wall other) {
        Point along = new Point(-one.out().y(), one.out().x());
        double a = one.from().dot(along);
        double b = one.to().dot(along);
        double c = other.from().dot(along);
        double d = other.to().dot(along);
        return Math.min(Math.max(a, b), Math.max(c, d)) - Math.max(Math.min(a, b), Math.min(c, d)) > EQUAL_MM;
    }

    private static double beyond(Point from, Point at, Point out) {
        return at.minus(from).dot(out);
    }
}
