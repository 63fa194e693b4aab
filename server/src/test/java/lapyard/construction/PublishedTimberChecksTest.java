package lapyard.construction;

import static lapyard.construction.Beds.input;
import static lapyard.construction.Beds.lengths;
import static lapyard.construction.Beds.quantity;
import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fill;
import lapyard.plan.Finish;
import lapyard.plan.Joint;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.Saw;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

/**
 * Figures from outside this project, each with its source and how sure it is: published (printed there), derived
 * (arithmetic from a stated rule), from memory.
 */
class PublishedTimberChecksTest {
    private static final Outline BOX = Outline.rectangle(2400, 1200);

    /** Derived: n pieces need n c + (n - 1) k of the board; kerf 3 mm is common practice for a circular saw. */
    @Test
    void threeOf600ButFourOf595ComeFromABoardOf2400() {
        assertEquals(1, boards(3, 600));
        assertEquals(2, boards(4, 600));
        assertEquals(1, boards(4, 595));
        assertEquals(2, boards(5, 595));
    }

    private static int boards(int pieces, double lengthMm) {
        FirstFit fit = new FirstFit();
        fit.add(lengthMm, pieces);
        return fit.boards(2400, 3);
    }

    /** Derived: geometry of a four-sided box with alternating butted corners, 2400 x 1200, t 100, three courses. */
    @Test
    void pairedCoursesRunSidesThroughThenEndsThrough() {
        BedWork work = Beds.built(Beds.bed("B", BOX, 3, Lap.LONG_WALL));
        assertEquals(List.of(2400.0, 1000.0, 2400.0, 1000.0), lengths(work, 1));
        assertEquals(List.of(2200.0, 1200.0, 2200.0, 1200.0), lengths(work, 2));
        assertEquals(
                6800, lengths(work, 2).stream().mapToDouble(Double::doubleValue).sum());
        assertEquals(20.4, value(work.quantities(), "timber.length"), 1e-9);
    }

    /** Derived: geometry; every piece laps one corner, the same run from two lengths only. */
    @Test
    void theTurningLapTakesTheSameRunFromTwoLengths() {
        BedWork work = Beds.built(Beds.bed("B", BOX, 3, Lap.TURNING));
        assertEquals(List.of(2300.0, 1100.0, 2300.0, 1100.0), lengths(work, 1));
        assertEquals(
                6800, lengths(work, 2).stream().mapToDouble(Double::doubleValue).sum());
    }

    /**
     * Published: a UK timber merchant's stock list gives 48 kg for a green oak sleeper 2400 x 200 x 100 (common
     * practice).
     */
    @Test
    void aGreenOakSleeperWeighs48Kilograms() {
        Bed oak = Beds.section(Beds.bed("B", BOX, 1, Lap.TURNING), new Section("oak", 100, 200, 1000, List.of(), Optional.empty(), false, 1, false));
        assertEquals(48.0, oak.section().massKg(2400), 0.01);
    }

    /** Derived from the same list: an oak sleeper 2600 x 220 x 130 at 72 kg has 968 kg/m3. */
    @Test
    void thatListsLargerSleeperWeighs72Kilograms() {
        Bed oak = Beds.section(Beds.bed("B", BOX, 1, Lap.TURNING), new Section("oak", 130, 220, 968.263, List.of(), Optional.empty(), false, 1, false));
        assertEquals(72.0, oak.section().massKg(2600), 0.1);
    }

    /**
     * Derived: weight of the walls of a 2400 x 1200 x 600 bed, 100 mm walls, wet softwood 600 kg/m3 (common
     * practice).
     */
    @Test
    void theWallsOfABedOf2400By1200By600Weigh245Kilograms() {
        assertEquals(244.8, value(Beds.built(Beds.bed("B", BOX, 3, Lap.TURNING)).quantities(), "timber.mass"), 0.5);
    }

    /** Derived, plane trigonometry: half of a 100 mm screw at 45 degrees is 35.3553 from the joint on both sides. */
    @Test
    void aScrewGoesInHalfItsReachFromTheJoint() {
        assertEquals(35.3553, square(100, 100).entryMm(), 2.5);
        // Ours is set to whole 5 mm; what is on the far side then is 70.7107 - 35.
        assertEquals(100 - (70.7107 - 35), square(100, 100).coverMm(), 0.02);
    }

    /**
     * Derived, plane trigonometry: 10 mm past the tip takes 80.7107 mm timber; 75 mm timber takes 91.9239 mm screws.
     */
    @Test
    void theTipKeeps10FromTheEndInTimberOf81() {
        assertEquals(10, square(100, 80.7107).endCoverMm(), 0.02);
        assertEquals(10, square(91.9239, 75).endCoverMm(), 0.02);
        BedWork work = Beds.built(
                Beds.section(Beds.bed("B", BOX, 1, Lap.TURNING), new Section("75x200", 75, 200, 600, List.of(), Optional.empty(), false, 1, false)));
        assertTrue(work.findings().stream().anyMatch(one -> Told.ways(one).contains("Use screws up to 90 mm")));
    }

    /**
     * Derived, plane trigonometry: entering 30 from the joint the tip of a 100 mm screw lies 40.7107 past it, 70.7107
     * from the face.
     */
    @Test
    void theTipOfAScrewLies70Point7FromTheFace() {
        assertEquals(100 - 70.7107, square(100, 100).endCoverMm(), 0.02);
    }

    /** Derived, plane trigonometry: entering 30 from the joint at 45 degrees 42.4264 lie before it, whatever the length. */
    @Test
    void whatLiesBeforeTheJointIsNotCounted() {
        assertEquals(30, square(85, 100).entryMm());
        assertEquals(85 - 42.4264, square(85, 100).threadMm(), 0.02);
    }

    private static ScrewWay square(double length, double thickness) {
        return ScrewWay.of(Joint.LAP, 90, length, thickness);
    }

    private static Bed lined(double length, double width, double depth, double overlap) {
        // No wall thickness to speak of, so that the inside is the size that the source gives.
        double t = 1e-3;
        Bed bed = Beds.section(
                Beds.bed("P", Outline.rectangle(length + 2 * t, width + 2 * t), 1, Lap.TURNING),
                new Section("thin", t, depth, 600, List.of(), Optional.empty(), false, 1, false));
        Liner liner = new Liner(true, "liner", new Liner.Edges(300, overlap, 0), 4, new Liner.Staples(100, 6, 8, 10), Liner.Over.FLOOR, 0);
        return Beds.filled(bed, Base.USUAL.slatted(false), liner, Fill.USUAL, Finish.NONE);
    }

    private static void assertLiner(Bed bed, double widthMm, double heightMm) {
        LinerPiece piece =
                Beds.work(bed, Saw.USUAL, 1e6, Map.of(), Optional.empty(), 2400, 25).liner().get(0);
        assertEquals(widthMm, piece.widthMm(), 0.11);
        assertEquals(heightMm, piece.heightMm(), 0.11);
    }

    /** Published: a pond keepers' liner advice page, 10 x 8 x 6 ft with 6 in each side takes 23 x 21 ft. */
    @Test
    void aBoxOf10By8By6FeetTakes23By21Feet() {
        double ft = 304.8;
        assertLiner(lined(10 * ft, 8 * ft, 6 * ft, 0.5 * ft), 23 * ft, 21 * ft);
    }

    /** Published: a retailer's liner page, 3.5 x 2.0 x 1.1 m with 300 mm each side takes 6.3 x 4.8 m. */
    @Test
    void aBoxOf3500By2000By1100Takes6300By4800() {
        assertLiner(lined(3500, 2000, 1100, 300), 6300, 4800);
    }

    /** Published: a retailer's answer, 2.75 x 1.5 x 0.5 m without overlap takes 3.75 x 2.5 m. */
    @Test
    void aBoxOf2750By1500By500Takes3750By2500() {
        assertLiner(lined(2750, 1500, 500, 0), 3750, 2500);
    }

    /** Published: a retailer's liner page, 15 x 12 x 3 ft with 1.5 ft each side takes 24 x 21 ft. */
    @Test
    void aBoxOf15By12By3FeetTakes24By21Feet() {
        double ft = 304.8;
        assertLiner(lined(15 * ft, 12 * ft, 3 * ft, 1.5 * ft), 24 * ft, 21 * ft);
    }

    /**
     * Derived from the cover of the USDA FPL Wood Handbook ch. 16 (2.4 to 4.9 m2/l on saw-textured wood): the outside
     * of a 2.4 x 1.2 x 0.4 m bed is 2.88 m2 and takes 2.4 to 1.1755 l in two coats.
     */
    @Test
    void theOutsideOfABedTakesBetween1And2AndAHalfLitres() {
        Bed bed = Beds.bed("B", BOX, 2, Lap.TURNING);
        double outside =
                input(quantity(Beds.built(bed).quantities(), "finish.area").working(), "outside");
        assertEquals(2.88, outside, 1e-9);
        assertEquals(2.4, Coating.litres(outside, new Finish(true, 2, 2.4, 1)), 1e-9);
        assertEquals(1.1755, Coating.litres(outside, new Finish(true, 2, 4.9, 1)), 1e-4);
    }

    /** Derived: 24 cut ends of 44 x 195 mm are 0.2059 m2; to be brushed twice after NHBC Standards 3.3.5 (2025). */
    @Test
    void twentyFourEndsOf44By195AreAFifthOfASquareMetre() {
        BedWork work = Beds.built(
                Beds.section(Beds.bed("B", BOX, 3, Lap.TURNING), new Section("44x195", 44, 195, 500, List.of(), Optional.empty(), false, 1, false)));
        assertEquals(0.2059, value(work.quantities(), "ends.area"), 1e-4);
    }
}
