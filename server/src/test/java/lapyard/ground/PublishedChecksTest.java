package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Figures from outside the project. Each says its source and its status: "seen" where the figure was matched in a copy
 * of the source, "from memory" where it was not, "arithmetic" where it follows from the stated inputs alone.
 */
class PublishedChecksTest {
    private static final double FOOT_MM = 304.8;
    private static final double CUBIC_YARD_M3 = 0.764554857984;

    /** Drop over a run on ground that falls evenly along x, read at three corners. */
    private static double dropMm(double runMm, double oneIn) {
        return new Fall(1 / oneIn, 0, 0, List.of()).dropMm(new Point(runMm, 0));
    }

    private static Fall read(double runMm, double dropMm) {
        return Fall.of(List.of(
                        new Level(new Point(0, 0), 100),
                        new Level(new Point(runMm, 0), 100 + dropMm),
                        new Level(new Point(0, 1000), 100)))
                .orElseThrow();
    }

    /** Volume of a straight path, m3. */
    private static double volumeM3(double areaMm2, double depthMm) {
        double side = Math.sqrt(areaMm2);
        GardenPath path = new GardenPath("P", "P", Beds.points(0, 0, side, 0), side, List.of(new GardenPath.Layer("chips", depthMm)), "", "", GardenPath.USUAL_LAP_MM);
        return PathWork.of(List.of(path), List.of(), List.of()).get(0).quantities().stream()
                .filter(q -> q.key().toString().equals("path.volume"))
                .findFirst()
                .orElseThrow()
                .value();
    }

    private static double diagonalMm(double widthMm, double depthMm) {
        Bed bed = Beds.bed("N", Outline.rectangle(widthMm, depthMm), new Placement(new Point(700, 900), 20, false));
        Pegs pegs = Pegs.of(bed, new Point(0, 0), new Point(1, 0), 0, Optional.empty());
        assertEquals(2, pegs.diagonals().size());
        assertEquals(pegs.diagonals().get(0).lengthMm(), pegs.diagonals().get(1).lengthMm(), 1e-9);
        return pegs.diagonals().get(0).lengthMm();
    }

    /** Patio fall 1:60 over 4.2 m (trade pages, seen) and 1:80 (trade norm, seen). */
    @ParameterizedTest(name = "{0} at 1:{1} drops {2}")
    @CsvSource({"4200,60,70", "4200,80,52.5"})
    void patioFallsDropAsPublished(double run, double oneIn, double drop) {
        assertEquals(drop, dropMm(run, oneIn), 1e-9);
        assertEquals(oneIn, read(run, drop).oneIn(), 1e-9);
    }

    /** A quarter inch a foot is 1:48 and 2.083 % (US norm, trade pages, seen). */
    @Test
    void aQuarterInchAFootIsOneInFortyEight() {
        Fall fall = read(FOOT_MM, 25.4 / 4);
        assertEquals(48, fall.oneIn(), 1e-9);
        assertEquals(2.083, 100 / fall.oneIn(), 0.001);
    }

    /**
     * Cross slope 1:48 (ICC A117.1-2017 s.403.3, seen) and 1:40 (Approved Document M vol.1 para 1.6c, seen) over 1200.
     */
    @ParameterizedTest(name = "1200 at 1:{0} is {1}")
    @CsvSource({"48,25", "40,30"})
    void crossSlopesOfAPathAreAsPublished(double oneIn, double difference) {
        assertEquals(difference, dropMm(1200, oneIn), 0.01);
        assertEquals(oneIn, read(1200, difference).oneIn(), 1e-9);
    }

    /** 450 at 1:12 (2010 ADA Standards s.405.2, from memory) and at 1:20 (s.403.3, seen). */
    @ParameterizedTest(name = "450 at 1:{0} runs {1}")
    @CsvSource({"12,5400", "20,9000"})
    void rampsRunAsPublished(double oneIn, double run) {
        assertEquals(450, dropMm(run, oneIn), 1e-9);
    }

    /**
     * 3-4-5 and its multiples: FAO R7021E ch.4 (3-4-5, 6-8-10, 9-12-15, seen); raised-bed layout note (24-32-40 ft,
     * seen).
     */
    @ParameterizedTest(name = "{0} and {1} are square at {2}")
    @CsvSource({"3,4,5", "6,8,10", "9,12,15", "24,32,40"})
    void threeFourFiveIsSquare(double a, double b, double c) {
        var met = assertInstanceOf(Survey.Fix.Met.class, Survey.byTwoTapes("corner", a, b, c, true));
        assertEquals(0, met.at().x(), 1e-9);
        assertEquals(b, met.at().y(), 1e-9);
        assertEquals(c, diagonalMm(a, b), 1e-9);
    }

    /**
     * A 12 m loop with 0 and 12 held at the corner and marks at 3 and 8 has sides 3, 5 and 4 (FAO R7021E ch.4, seen).
     */
    @Test
    void aTwelveMetreLoopIsSquareAtItsJoin() {
        var met = assertInstanceOf(
                Survey.Fix.Met.class, Survey.byTwoTapes("corner", 3000, 12000 - 8000, 8000 - 3000, true));
        assertEquals(0, met.at().x(), 1e-9);
        assertEquals(4000, met.at().y(), 1e-9);
    }

    /** 2.4 x 1.2 m and 4 x 8 ft (arithmetic). */
    @Test
    void diagonalsOfTheUsualBedsAreAsWorked() {
        assertEquals(2683.3, diagonalMm(2400, 1200), 0.1);
        assertEquals(8.9443, diagonalMm(4 * FOOT_MM, 8 * FOOT_MM) / FOOT_MM, 0.0001);
    }

    /**
     * Pegs 10 m apart, tapes 6.5 and 8.2 m: (3.7505, 5.3088) and 84.89 degrees (arithmetic; good angles common
     * practice, no source).
     */
    @Test
    void twoTapesMeetWhereTwoCirclesDo() {
        var met = assertInstanceOf(Survey.Fix.Met.class, Survey.byTwoTapes("corner", 10000, 6500, 8200, true));
        assertEquals(3750.5, met.at().x(), 0.1);
        assertEquals(5308.8, met.at().y(), 0.1);
        assertEquals(84.89, met.angleDeg(), 0.01);
    }

    /** 4 and 5 m from pegs 10 m apart never meet (triangle inequality, arithmetic). */
    @Test
    void shortTapesNeverMeet() {
        var none = assertInstanceOf(Survey.Fix.CannotMeet.class, Survey.byTwoTapes("corner", 10000, 4000, 5000, true));
        assertEquals(Optional.of(Fact.mm(1000)), none.stop().by());
    }

    /** Diagonals 2690 and 2676 on 2400 x 1200: push 7.83, off square by 0.374 degrees (arithmetic). */
    @Test
    void unequalDiagonalsSayHowFarToPush() {
        double push = Survey.pushToSquareMm(2400, 2690, 2676);
        assertEquals(7.83, push, 0.01);
        assertEquals(0.374, Math.toDegrees(Math.atan2(push, 1200)), 0.001);
        assertEquals(0, Survey.pushToSquareMm(2400, 2683.3, 2683.3));
    }

    /** 10 m along a slope with 1.0 m between its ends, and 10 m of a 1:20 path (arithmetic). */
    @Test
    void aTapeAlongASlopeIsShorterOnPlan() {
        assertEquals(9949.9, Survey.levelMm(10000, 1000), 0.1);
        assertEquals(9987.5, Survey.levelMm(10000, 10000 * Math.sin(Math.atan(1 / 20.0))), 0.1);
    }

    /** 1 m3 covers 10, 25 and 50 m2 at 100, 40 and 20 mm (soil-yard page, seen). */
    @ParameterizedTest(name = "{0} m2 at {1} mm takes 1 m3")
    @CsvSource({"10,100", "25,40", "50,20"})
    void oneCubicMetreCoversAsPublished(double areaM2, double depthMm) {
        assertEquals(1, volumeM3(areaM2 * 1e6, depthMm), 1e-9);
    }

    /**
     * 1 cubic yard covers 324 sq ft at 1 in and so on (garden pages, seen; a page that prints 135 at 2 in is wrong).
     */
    @ParameterizedTest(name = "{1} sq ft at {0} in takes 1 cu yd")
    @CsvSource({"1,324", "2,162", "3,108", "4,81", "5,64.8"})
    void oneCubicYardCoversAsPublished(double inches, double squareFeet) {
        assertEquals(1, volumeM3(squareFeet * FOOT_MM * FOOT_MM, inches * 25.4) / CUBIC_YARD_M3, 1e-9);
    }

    /**
     * 400 sq ft at 3 in: 3.704 cu yd (seen as 100 cu ft); 1000 sq ft at 2, 3, 4 in: 6.17, 9.26, 12.35 (supplier table,
     * seen).
     */
    @ParameterizedTest(name = "{0} sq ft at {1} in takes {2} cu yd")
    @CsvSource({"400,3,3.704,0.001", "1000,2,6.17,0.005", "1000,3,9.26,0.005", "1000,4,12.35,0.05"})
    void mulchTablesAgree(double squareFeet, double inches, double cubicYards, double tolerance) {
        assertEquals(cubicYards, volumeM3(squareFeet * FOOT_MM * FOOT_MM, inches * 25.4) / CUBIC_YARD_M3, tolerance);
    }

    /** A cubic foot is 28.316846592 l and a cubic yard 0.764554857984 m3 (international foot, exact). */
    @Test
    void feetAndYardsAreTheInternationalOnes() {
        assertEquals(28.316846592, volumeM3(FOOT_MM * FOOT_MM, FOOT_MM) * 1000, 1e-9);
        assertEquals(CUBIC_YARD_M3, volumeM3(9 * FOOT_MM * FOOT_MM, 3 * FOOT_MM), 1e-12);
    }

    /**
     * 1400 inside, 44 walls, 610 of reach from both long sides leave 268 that nobody reaches: reach depth 24 in
     * (2010 ADA Standards s.308.3.2, seen), measured from the outer face.
     */
    @Test
    void theStripNobodyReachesIsMeasuredFromTheOuterFaces() {
        Section thin = new Section("44x200", 44, 200, 600, List.of(), Optional.empty(), false, 1, false);
        Bed wide = Beds.bed("M", Outline.rectangle(4000, 1400 + 2 * 44), 0, 0);
        Bed bed = wide.withWalls(new Bed.Walls(wide.courses(), thin, wide.walls().lap(), Map.of(), Set.of(), Set.of(), true));
        Finding note = Beds.about(Clashes.of(Beds.garden(Beds.yard(null), bed)), "bed M", FindingKind.REACH_FAR)
                .orElseThrow();
        double reach = note.amount().orElseThrow().value() + 600;
        assertEquals(268, 2 * (reach - 610), 1e-9);
    }
}
