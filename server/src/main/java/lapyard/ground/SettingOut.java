package lapyard.ground;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Baseline;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.Whole;

/**
 * All beds pegged out from one baseline.
 *
 * @param baseline the one chosen, else the house wall or the longest side; empty where no yard is drawn either, and then there are no beds and one STOP for this sheet alone
 * @param square   the largest triangle of 3, 4 and 5 parts at the start of the baseline, to set a line square to it
 * @param beds     in the order of the document
 */
public record SettingOut(Optional<Baseline> baseline, Optional<Triangle> square, List<BedPegs> beds, List<Finding> findings) {
    /** The longest tape in common use; common practice, no source. */
    private static final double TAPE_MM = 30_000;

    /** Parts of a triangle are whole hundredths of a metre, so that all its sides are round numbers. */
    private static final double PART_TO_MM = 10;

    /** Sine up to which a corner counts as square: 1 in 1000. */
    private static final double SQUARE = 0.001;

    public SettingOut {
        beds = List.copyOf(beds);
        findings = List.copyOf(findings);
    }

    /**
     * One bed from the baseline.
     *
     * @param tapes  from both ends of the baseline, one a peg
     * @param square the largest triangle at one of its square corners; empty where it has none
     */
    public record BedPegs(Bed bed, Pegs pegs, List<Tapes> tapes, Optional<Triangle> square) {
        public BedPegs {
            tapes = List.copyOf(tapes);
        }

        /** The lowest peg, as the bed stands on it: drop below the string; empty without levels. */
        public Optional<Double> lowestDropMm() {
            return pegs.pegs().stream()
                    .filter(peg -> peg.dropMm().isPresent())
                    .map(peg -> peg.dropMm().getAsDouble())
                    .max(Double::compare);
        }

        /**
         * What to push along wall A for each 10 mm between two equal diagonals; empty where the bed is no rectangle.
         *
         * @return mm
         */
        public Optional<Double> pushForTenMm() {
            Outline outline = bed.inYard();
            if (outline.sides() != 4 || !Cut.square(outline)) return Optional.empty();
            double diagonal = outline.corner(0).distanceMm(outline.corner(2));
            return Optional.of(Survey.pushToSquareMm(outline.sideMm(0), diagonal + 5, diagonal - 5));
        }
    }

    /** @param flat whether the two tapes cross too flat to fix the peg well */
    public record Tapes(int peg, double firstMm, double secondMm, boolean flat) {}

    /**
     * 3, 4 and 5 equal parts.
     *
     * @param peg      at whose corner it is square; 0 for the start of the baseline
     * @param alongMm  on the wall that begins at the peg, or on the baseline
     * @param otherMm  on the wall that ends there, or off the baseline
     * @param acrossMm from the end of one to the end of the other
     */
    public record Triangle(int peg, double alongMm, double otherMm, double acrossMm) {}

    public static SettingOut of(Garden garden, Optional<Fall> fall) {
        Optional<Baseline> chosen = baseline(garden);
        if (chosen.isEmpty()) {
            Finding none = Finding.of(FindingKind.NO_BASELINE, Place.field("setting-out")).by(Fact.count(1, "baselines")).way(WayKind.TWO_MARKS);
            return new SettingOut(Optional.empty(), Optional.empty(), List.of(), List.of(none));
        }
        Baseline line = chosen.get();
        List<BedPegs> beds = new ArrayList<>();
        double deepest = 0;
        for (Bed bed : garden.beds()) {
            Pegs pegs = Pegs.of(bed, line.from(), line.to(), line.standOffMm(), fall);
            List<Tapes> tapes = new ArrayList<>();
            for (int i = 0; i < bed.outline().sides(); i++) tapes.add(tapes(i + 1, line, bed.inYard().corner(i)));
            beds.add(new BedPegs(bed, pegs, tapes, triangle(bed.inYard())));
            deepest = Math.max(deepest, pegs.offsetsMm().get(pegs.offsetsMm().size() - 1));
        }
        Optional<Triangle> square = triangle(0, line.from().distanceMm(line.to()), deepest);
        return new SettingOut(Optional.of(line), square, beds, List.of());
    }

    /** The one chosen; else the house wall, which is the front of the yard; else the yard's longest side. Beds lie left of it. */
    private static Optional<Baseline> baseline(Garden garden) {
        if (garden.ground().baseline().isPresent() || garden.ground().outline().isEmpty()) return garden.ground().baseline();
        Outline yard = garden.ground().outline().get(0);
        double front = yard.corners().stream().mapToDouble(Point::y).min().orElseThrow();
        List<Point> wall = yard.corners().stream()
                .filter(corner -> corner.y() - front < 1)
                .sorted(Comparator.comparingDouble(Point::x))
                .toList();
        if (wall.size() > 1) return Optional.of(new Baseline(wall.get(0), wall.get(wall.size() - 1), 0));
        int longest = 0;
        for (int i = 1; i < yard.sides(); i++) if (yard.sideMm(i) > yard.sideMm(longest)) longest = i;
        Point from = yard.corner(longest);
        Point to = yard.corner(longest + 1);
        return Optional.of(yard.signedAreaMm2() > 0 ? new Baseline(from, to, 0) : new Baseline(to, from, 0));
    }

    private static Tapes tapes(int peg, Baseline line, Point corner) {
        double first = line.from().distanceMm(corner);
        double second = line.to().distanceMm(corner);
        double angle = Survey.angleDeg(line.from().distanceMm(line.to()), first, second);
        return new Tapes(peg, first, second, Survey.flat(angle));
    }

    /** The largest at any square corner that points outwards. */
    private static Optional<Triangle> triangle(Outline outline) {
        Optional<Triangle> largest = Optional.empty();
        double turn = Math.signum(outline.signedAreaMm2());
        for (int i = 0; i < outline.sides(); i++) {
            Point before = outline.leg(i - 1);
            Point after = outline.leg(i);
            if (Math.abs(before.dot(after)) <= SQUARE * (outline.sideMm(i - 1) * outline.sideMm(i)) && before.cross(after) * turn > 0) {
                Optional<Triangle> own = triangle(i + 1, outline.sideMm(i), outline.sideMm(i - 1));
                if (own.isPresent() && (largest.isEmpty() || own.get().acrossMm() > largest.get().acrossMm())) largest = own;
            }
        }
        return largest;
    }

    private static Optional<Triangle> triangle(int peg, double along, double other) {
        double four = part(along / 4, other / 3);
        double three = part(along / 3, other / 4);
        double part = Math.max(four, three);
        if (part <= 0) return Optional.empty();
        return Optional.of(
                four >= three
                        ? new Triangle(peg, 4 * part, 3 * part, 5 * part)
                        : new Triangle(peg, 3 * part, 4 * part, 5 * part));
    }

    private static double part(double one, double other) {
        double most = Math.min(TAPE_MM / 5, Math.min(one, other));
        return Whole.down(most / PART_TO_MM) * PART_TO_MM;
    }
}
