package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import lapyard.geometry.Measure;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.working.Quantity;
import lapyard.working.QuantityKey;
import lapyard.working.QuantityKind;
import lapyard.working.Working;

/**
 * How one bed is pegged out from a baseline: how far along it, how far off it, and the diagonals that prove it square.
 *
 * @param pegs        the corners, P1 first
 * @param linePegs    pegs beyond the corners, two a wall, that hold its string while the corners are dug or built over;
 *                    none where no stand-off is asked for
 * @param runningMm   every distance along the baseline once, shortest first, so that one tape is laid out once
 * @param offsetsMm   every distance off the baseline once, shortest first
 * @param diagonals   longest first, as the longest shows an error best
 * @param quantities  {@code peg.1.along}, {@code peg.1.off} ... and {@code diagonal.1-3} ..., mm
 */
public record Pegs(
        String bed,
        List<Peg> pegs,
        List<LinePeg> linePegs,
        List<Double> runningMm,
        List<Double> offsetsMm,
        List<Diagonal> diagonals,
        List<Quantity> quantities) {
    /** A taped distance may differ from the drawn one by this; common practice, no source. */
    public static final double TOLERANCE_MM = 5;

    /** Outlines with more corners are proved from their first two only; all pairs would be a page of numbers. */
    private static final int ALL_PAIRS_UP_TO = 8;

    /** Positions nearer than this are one mark on the tape. */
    private static final double SAME_MARK_MM = 0.5;

    public Pegs {
        pegs = List.copyOf(pegs);
        linePegs = List.copyOf(linePegs);
        runningMm = List.copyOf(runningMm);
        offsetsMm = List.copyOf(offsetsMm);
        diagonals = List.copyOf(diagonals);
        quantities = List.copyOf(quantities);
    }

    /**
     * @param number  1 for the first corner, the start of wall A
     * @param alongMm from the start of the baseline, below 0 behind it
     * @param offMm   to the left of the baseline, away from the house where it is the house wall
     * @param dropMm  ground below the level string, where levels were read
     */
    public record Peg(int number, double alongMm, double offMm, OptionalDouble dropMm) {}

    /** A peg in line with a wall, {@code beyond} corner number so and so. */
    public record LinePeg(String wall, int beyond, double alongMm, double offMm) {}

    /** Between two pegs, by number. */
    public record Diagonal(int from, int to, double lengthMm) {}

    /**
     * @param start      of the baseline
     * @param towards    any further point on it
     * @param standOffMm how far beyond its corners the string of a wall is pegged, 0 for no such pegs
     * @throws IllegalArgumentException if the baseline has no direction
     */
    public static Pegs of(Bed bed, Point start, Point towards, double standOffMm, Optional<Fall> fall) {
        if (start.distanceMm(towards) == 0) {
            throw new IllegalArgumentException("a baseline needs two different points, both were (" + Measure.plain(start.x(), 1)
                    + ", " + Measure.plain(start.y(), 1) + ")");
        }
        Point way = start.way(towards);
        Outline outline = bed.inYard();
        List<Peg> pegs = new ArrayList<>();
        List<LinePeg> linePegs = new ArrayList<>();
        List<Quantity> quantities = new ArrayList<>();
        for (int i = 0; i < outline.sides(); i++) {
            Point corner = outline.corner(i);
            Point placed = onBaseline(corner, start, way);
            pegs.add(new Peg(
                    i + 1,
                    placed.x(),
                    placed.y(),
                    fall.map(plane -> OptionalDouble.of(plane.dropMm(corner))).orElse(OptionalDouble.empty())));
            quantities.add(position(QuantityKind.PEG_ALONG.of(i + 1), placed.x(), "dx x u + dy x v", corner, start, way));
            quantities.add(position(QuantityKind.PEG_OFF.of(i + 1), placed.y(), "dy x u - dx x v", corner, start, way));
            if (standOffMm > 0) {
                Point next = outline.corner(i + 1);
                String wall = Bed.wallLetter(i);
                linePegs.add(beyond(wall, i + 1, next, corner, standOffMm, start, way));
                linePegs.add(beyond(wall, (i + 1) % outline.sides() + 1, corner, next, standOffMm, start, way));
            }
        }
        List<Diagonal> diagonals = diagonals(outline);
        diagonals.forEach(diagonal -> quantities.add(quantity(diagonal, pegs)));
        return new Pegs(bed.id(), pegs, linePegs, marks(pegs, Peg::alongMm), marks(pegs, Peg::offMm), diagonals, quantities);
    }

    private static Point onBaseline(Point place, Point start, Point way) {
        Point off = place.minus(start);
        return new Point(off.dot(way), way.cross(off));
    }

    private static LinePeg beyond(String wall, int number, Point from, Point corner, double standOffMm, Point start, Point way) {
        Point placed = onBaseline(from.towards(corner, 1 + standOffMm / from.distanceMm(corner)), start, way);
        return new LinePeg(wall, number, placed.x(), placed.y());
    }

    /** Between corners that no wall joins: a tape across shows a skewed outline. */
    private static List<Diagonal> diagonals(Outline outline) {
        return outline.diagonals().stream().filter(pair -> outline.sides() <= ALL_PAIRS_UP_TO || pair[0] < 2)
                .map(pair -> new Diagonal(pair[0] + 1, pair[1] + 1, outline.corner(pair[0]).distanceMm(outline.corner(pair[1])))).toList();
    }

    private static List<Double> marks(List<Peg> pegs, ToDoubleFunction<Peg> place) {
        List<Double> marks = new ArrayList<>();
        pegs.stream().mapToDouble(place).sorted().forEach(mark -> {
            if (marks.isEmpty() || mark - marks.get(marks.size() - 1) > SAME_MARK_MM) marks.add(mark);
        });
        return marks;
    }

    private static Quantity position(QuantityKey key, double value, String formula, Point corner, Point start, Point way) {
        return Quantity.of(key, value, "mm",
                formula + ", with (u, v) the direction of the baseline", Working.GEOMETRY,
                Working.Input.of("dx", corner.x() - start.x(), "mm"), Working.Input.of("dy", corner.y() - start.y(), "mm"),
                Working.Input.of("u", way.x(), ""), Working.Input.of("v", way.y(), ""));
    }

    private static Quantity quantity(Diagonal diagonal, List<Peg> pegs) {
        Peg from = pegs.get(diagonal.from() - 1);
        Peg to = pegs.get(diagonal.to() - 1);
        return Quantity.of(QuantityKind.DIAGONAL.of(diagonal.from() + "-" + diagonal.to()), diagonal.lengthMm(), "mm",
                "sqrt(dx^2 + dy^2), within " + Measure.plain(TOLERANCE_MM, 1), Working.GEOMETRY,
                Working.Input.of("dx", to.alongMm() - from.alongMm(), "mm"), Working.Input.of("dy", to.offMm() - from.offMm(), "mm"));
    }
}
