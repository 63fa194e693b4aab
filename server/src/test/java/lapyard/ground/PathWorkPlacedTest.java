package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.GardenPath;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What paths take does not depend on where in the yard they lie or how they are turned; worked figures are by hand. */
class PathWorkPlacedTest {
    static LongStream seeds() {
        return LongStream.range(0, 120);
    }

    /** Turned about (0, 0), then moved; with {@code flip} of -1 mirrored first. */
    private record Turned(double cos, double sin, double flip, double dx, double dy) {
        static Turned random(Random random) {
            double angle = Math.toRadians(random.nextInt(360) + 0.5);
            return new Turned(Math.cos(angle), Math.sin(angle), random.nextBoolean() ? 1 : -1, random.nextInt(20_000) - 10_000, random.nextInt(20_000) - 10_000);
        }

        Point of(Point p) {
            return new Point(p.x() * cos - flip * p.y() * sin + dx, p.x() * sin + flip * p.y() * cos + dy);
        }

        GardenPath of(GardenPath path) {
            return new GardenPath(path.id(), path.name(), path.line().stream().map(this::of).toList(), path.widthMm(), path.layers(), path.edging(), path.membrane(), path.lapMm());
        }

        Bed of(String id, double fromX, double toX, double fromY, double toY) {
            List<Point> corners = new ArrayList<>(Beds.points(fromX, fromY, toX, fromY, toX, toY, fromX, toY));
            return Beds.bed(id, new Outline(corners.stream().map(this::of).toList()).counterClockwise(), 0, 0);
        }
    }

    private static List<String> strips(List<PathWork> work) {
        return work.stream().map(one -> String.join("; ", one.strips().stream()
                .map(s -> Math.round(s.widthMm()) + " x " + Math.round(s.lengthMm()) + " " + s.ends() + "/" + s.sides()).toList())).toList();
    }

    private static double sum(List<PathWork> work, String key) {
        return work.stream().flatMap(one -> one.quantities().stream()).filter(q -> q.key().toString().equals(key)).mapToDouble(q -> q.value()).sum();
    }

    /**
     * By hand, laps of 200: a path that ends at a later one; a cross. Edging is both sides less where they meet.
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void stripsAreTheSameHoweverThePathsLie(long seed) {
        Turned turned = Turned.random(new Random(seed));
        List<List<GardenPath>> cases = List.of(
                List.of(Beds.path("P", 1000, 0, 0, 0, 3500), Beds.path("Q", 1000, -4000, 4000, 4000, 4000)),
                List.of(Beds.path("P", 900, 0, 0, 0, 8000), Beds.path("Q", 900, -2500, 4000, 2500, 4000)));
        List<List<String>> byHand = List.of(
                List.of("1000 x 3700 1/0", "1000 x 8000 0/0"),
                List.of("900 x 8000 0/0", "900 x 2250 1/0; 900 x 2250 1/0"));
        double[] edgingM = {2 * 3.5 + 8 + 7, 22.4};
        for (int i = 0; i < cases.size(); i++) {
            List<PathWork> work = PathWork.of(cases.get(i).stream().map(turned::of).toList(), List.of(), List.of());
            assertEquals(byHand.get(i), strips(work), "case " + i);
            assertEquals(edgingM[i], sum(work, "edging.length"), 1e-6, "case " + i);
        }
    }

    /** By hand, 1000 wide, laps of 200: a path with one on either hand; five legs that wind round each other, each begins beside the one before. */
    @ParameterizedTest
    @MethodSource("seeds")
    void pathsSideBySideAndAPathThatWindsAreCoveredLegByLeg(long seed) {
        Turned turned = Turned.random(new Random(seed));
        List<PathWork> three = PathWork.of(Stream.of(Beds.path("P", 1000, 0, 0, 5000, 0), Beds.path("Q", 1000, 0, 1000, 5000, 1000),
                Beds.path("R", 1000, 5000, -1000, 0, -1000)).map(turned::of).toList(), List.of(), List.of());
        assertEquals(List.of("1000 x 5000 0/0", "1200 x 5000 0/1", "1200 x 5000 0/1"), strips(three));
        assertEquals(5 + 5, sum(three, "edging.length"), 1e-6);
        GardenPath winding = Beds.path("P", 1000, 0, 0, 4000, 0, 4000, 4000, 8000, 4000, 8000, -3000, 0, -3000);
        assertEquals(List.of("1000 x 4500 0/0; 1000 x 4200 1/0; 1000 x 4200 1/0; 1000 x 7200 1/0; 1000 x 7700 1/0"),
                strips(PathWork.of(List.of(turned.of(winding)), List.of(), List.of())));
    }

    /**
     * The outer side of a bend runs past the middle of the line by half the width times tan(turn / 2) (arithmetic, two
     * right-angled triangles at the mitre): the first leg has it at its end, the second at its start, and there laps.
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void bentPathsAreCoveredToTheirMitres(long seed) {
        Random random = new Random(seed);
        Turned turned = Turned.random(random);
        double width = 600 + random.nextInt(600);
        double first = 2000 + random.nextInt(4000);
        double second = 4000 + random.nextInt(4000);
        double turn = Math.toRadians(15 + random.nextInt(75));
        double mitre = width / 2 * Math.tan(turn / 2);
        GardenPath path = turned.of(Beds.path("P", width, 0, 0, first, 0, first + second * Math.cos(turn), second * Math.sin(turn)));
        List<PathWork.Strip> strips = PathWork.of(List.of(path), List.of(), List.of()).get(0).strips();
        assertEquals(2, strips.size());
        assertEquals(first + mitre, strips.get(0).lengthMm(), 0.11);
        assertEquals(second + mitre + 200, strips.get(1).lengthMm(), 0.11);
        for (PathWork.Strip strip : strips) assertEquals(width, strip.widthMm(), 0.11);
        assertEquals(List.of(0, 1), strips.stream().map(PathWork.Strip::ends).toList());
        assertEquals(List.of(0, 0), strips.stream().map(PathWork.Strip::sides).toList());
    }

    /** Beds along both sides of a straight path, against it or 8 and more away: the free runs counted millimetre by millimetre. */
    @ParameterizedTest
    @MethodSource("seeds")
    void edgingIsWhatNoBedStandsAgainst(long seed) {
        Random random = new Random(seed);
        Turned turned = Turned.random(random);
        int length = 6000 + random.nextInt(4000);
        boolean[][] taken = new boolean[2][length];
        List<Bed> beds = new ArrayList<>();
        for (int i = 0, n = 1 + random.nextInt(7); i < n; i++) {
            int side = random.nextInt(2);
            int from = random.nextInt(length - 1500);
            int to = from + 500 + random.nextInt(1000);
            boolean against = random.nextInt(4) > 0;
            double off = 500 + (against ? random.nextInt(5) : 8 + random.nextInt(100));
            beds.add(side == 0 ? turned.of("B" + i, from, to, off, off + 900) : turned.of("B" + i, from, to, -off - 900, -off));
            for (int mm = from; mm < to && against; mm++) taken[side][mm] = true;
        }
        int free = 0;
        int pegs = 0;
        for (boolean[] side : taken) {
            for (int mm = 0, run = 0; mm <= length; mm++) {
                boolean open = mm < length && !side[mm];
                run += open ? 1 : 0;
                if (!open && run > 0) {
                    free += run;
                    pegs += (run + 999) / 1000 + 1;
                    run = 0;
                }
            }
        }
        List<PathWork> work = PathWork.of(List.of(turned.of(Beds.path("P", 1000, 0, 0, length, 0))), beds, List.of());
        assertEquals(free / 1000.0, sum(work, "edging.length"), 1e-6, "seed " + seed);
        assertEquals(pegs, sum(work, "edging.pegs"), "seed " + seed);
    }

    /** A bed 2000 long, a tenth of a degree askew, is 3.5 off at its far end and leaves no room; one degree is 35 off and does. */
    @Test
    void aBedAsGoodAsStraightAlongAPathTakesItsSide() {
        for (double[] skew : new double[][] {{0.1, 4}, {1, 6}}) {
            double rise = 2000 * Math.tan(Math.toRadians(skew[0]));
            Bed bed = Beds.bed("A", Beds.outline(1000, 500, 3000, 500 + rise, 3000, 1500 + rise, 1000, 1500), 0, 0);
            assertEquals(skew[1] + 6, sum(PathWork.of(List.of(Beds.path("P", 1000, 0, 0, 6000, 0)), List.of(bed), List.of()), "edging.length"), 1e-6);
        }
    }
}
