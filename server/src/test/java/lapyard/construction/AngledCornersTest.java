package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.catalogue.Section;
import lapyard.construction.PieceEnd.Kind;
import lapyard.geometry.Inset;
import lapyard.geometry.Outline;
import lapyard.geometry.OutlineCheck;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Joint;
import lapyard.plan.Lap;
import lapyard.plan.Saw;
import lapyard.plan.Told;
import lapyard.plan.WayKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Timber 100 thick throughout. Worked by hand with plane trigonometry. */
class AngledCornersTest {
    /** Six sides of 1000: half height 500 x 1.7320508. */
    static final Outline SIX = Beds.outline(
            0, 0, 1000, 0, 1500, 866.025404, 1000, 1732.050808, 0, 1732.050808, -500, 866.025404);

    /** 2400 x 1200, the rear right corner cut off by 300 both ways. */
    static final Outline CUT = Beds.outline(0, 0, 2400, 0, 2400, 900, 2100, 1200, 0, 1200);

    private static BedWork work(Bed bed) {
        return Beds.work(bed, Saw.USUAL, Beds.LONGEST, Map.of(), Optional.empty(), 2400, 25);
    }

    /**
     * Turn 60, saw set 30, short point 1000 - 2 x 100 x tan 30 = 884.5; mean 942.265, six of them 5653.6 =
     * 6000 - 100 x 6 x tan 30.
     */
    @Test
    void sixSidesOf1000AreMitredAt30() {
        BedWork six = work(Beds.bed("X", SIX, 2, Lap.TURNING));
        assertEquals(12, six.pieces().size());
        for (Piece piece : six.pieces()) {
            assertEquals(30, piece.start().setDeg());
            assertEquals(30, piece.end().setDeg());
            assertEquals(Kind.MITRE, piece.start().kind());
            assertEquals(1000, piece.lengthMm());
            assertEquals(884.5, piece.shortMm());
            assertEquals(Piece.RunsPast.NONE, piece.runsPast());
        }
        assertEquals(5653.6, six.frame().courses().get(0).pieces().stream().mapToDouble(Piece::meanMm).sum(), 0.05);
        // 12 long points are cut; the volume goes by the means: 12 x 0.942265 x 0.1 x 0.2
        assertEquals(12, Beds.value(six.quantities(), "timber.length"), 1e-6);
        assertEquals(0.226144, Beds.value(six.quantities(), "timber.volume"), 1e-6);
        // inner side 1000 - 115.470 = 884.530; area 3 x sqrt(3) / 2 x side^2 = 2.03271 m2
        assertEquals(2.03271, Beds.value(six.quantities(), "inner.area"), 1e-5);
        assertEquals("outer area - t (P + P') / 2", Beds.quantity(six.quantities(), "inner.area").working().formula());
    }

    /** P = 2400 + 900 + 424.264 + 2100 + 1200 = 7024.3; less 100 x (3 + 2 tan 22.5 = 3.82843) = 6641.4. */
    @Test
    void aCornerCutOffBy300LapsWhereItIsSquareAndMitresWhereItIsNot() {
        Bed bed = Beds.bed("K", CUT, 3, Lap.TURNING);
        assertEquals(7024.3, bed.outline().perimeterMm(), 0.05);
        BedWork work = work(bed);
        for (Course course : work.frame().courses()) {
            assertEquals(6641.4, course.pieces().stream().mapToDouble(Piece::meanMm).sum(), 0.05);
        }
        List<Piece> first = work.frame().courses().get(0).pieces();
        // A 2400 - 100. B runs past at its start, mitred 22.5 at its end: outer 900, inner 900 - 41.4.
        assertEquals(2300, first.get(0).lengthMm());
        Piece b = first.get(1);
        assertEquals(900, b.lengthMm());
        assertEquals(858.6, b.shortMm());
        assertEquals(Piece.RunsPast.START, b.runsPast());
        assertEquals(0, b.start().setDeg());
        assertEquals(22.5, b.end().setDeg());
        // C, the short slant: 424.3 outside, 424.264 - 2 x 41.421 = 341.4 inside.
        assertEquals(424.3, first.get(2).lengthMm());
        assertEquals(341.4, first.get(2).innerFaceMm());
        // D stops short of E at its end: 2100 - 100; E runs past at its start and stops short at its end: 1200 - 100.
        assertEquals(2000, first.get(3).lengthMm());
        assertEquals(1100, first.get(4).lengthMm());
        // the slant stays in every course, its neighbours swap their other end
        assertEquals(Piece.RunsPast.END, work.frame().courses().get(1).pieces().get(3).runsPast());
        assertEquals(2100, work.frame().courses().get(1).pieces().get(3).lengthMm());
    }

    @Test
    void theLongWallLapGoesRoundACutCornerToo() {
        BedWork work = work(Beds.bed("K", CUT, 2, Lap.LONG_WALL));
        // odd: A runs past both ends, D (along A) its square end; even: B and E do.
        assertEquals(List.of(2400.0, 800.0, 424.3, 2100.0, 1000.0), Beds.lengths(work, 1));
        assertEquals(List.of(2200.0, 900.0, 424.3, 2000.0, 1200.0), Beds.lengths(work, 2));
    }

    /**
     * An even-sided triangle of 3000: turn 120, so a lap. One timber stops 100 / sin 60 = 115.47 short on its outer face
     * and 100 x (1 + cos 60) / sin 60 = 173.2 on its inner face; the other runs to the point, its inner face 57.7 back.
     * Both are cut 30 off square.
     */
    @Test
    void aSharpCornerIsButtedAndLosesTOverSineOnItsOuterFace() {
        Bed bed = Beds.bed("T", Beds.outline(0, 0, 3000, 0, 1500, 2598.076211), 2, Lap.TURNING);
        BedWork work = work(bed);
        Piece a = work.frame().courses().get(0).pieces().get(0);
        assertEquals(Kind.RUNS_PAST, a.start().kind());
        assertEquals(Kind.STOPS_SHORT, a.end().kind());
        assertEquals(3000 - 115.5, a.outerFaceMm());
        assertEquals(3000 - 115.47, a.lengthMm(), 0.05);
        assertEquals(3000 - 57.735 - 173.205, a.innerFaceMm(), 0.05);
        assertEquals(30, a.start().setDeg());
        assertEquals(30, a.end().setDeg());
        // 9000 - 100 x 3 x tan 60
        assertEquals(9000 - 519.615, work.frame().courses().get(0).pieces().stream().mapToDouble(Piece::meanMm).sum(), 1e-2);
        assertTrue(Beds.of(Finding.Weight.SNAG, work.findings()).isEmpty(), work.findings().toString());
    }

    /** Interior angle 60 mitred is a set of 60: 15 over 45. Interior 50 is 10 under what is butted. */
    @Test
    void whatNoSawCanBeSetToIsASnag() {
        Outline triangle = Beds.outline(0, 0, 3000, 0, 1500, 2598.076211);
        BedWork mitred = work(Beds.joined(Beds.bed("T", triangle, 1, Lap.TURNING), Map.of(1, Joint.MITRE)));
        Finding set = Beds.of(Finding.Weight.SNAG, mitred.findings()).get(0);
        assertEquals("bed T, wall B", set.where());
        assertTrue(Told.text(set).contains("needs a saw angle of 60 degrees; a saw is set to 45 degrees"), Told.text(set));
        assertEquals(new Finding.Amount(15, "degrees"), set.amount().orElseThrow());
        assertEquals("Lap that corner", Told.ways(set).get(0));

        double height = 1500 * Math.tan(Math.toRadians(50));
        Bed sharp = Beds.bed("V", Beds.outline(0, 0, 3000, 0, 1500, height), 1, Lap.TURNING);
        List<Finding> snags = Beds.of(Finding.Weight.SNAG, work(sharp).findings());
        assertEquals(List.of("bed V, wall A", "bed V, wall B"), snags.stream().map(Finding::where).toList());
        assertEquals(10, snags.get(0).amount().orElseThrow().value(), 0.05);
    }

    /** The points of six pieces mitred at 30: 6 x 57.735 = 346.4 more than their means. */
    @Test
    void mitredPiecesAreNotNestedAndTheNoteTellsWhatThatCosts() {
        BedWork six = work(Beds.bed("X", SIX, 1, Lap.TURNING));
        Finding note = six.findings().stream()
                .filter(finding -> finding.kind() == FindingKind.ANGLE_POINTS)
                .findFirst()
                .orElseThrow();
        assertEquals(Finding.Weight.NOTE, note.weight());
        assertTrue(Told.text(note).equals("6 pieces with angled ends take the full length of the long point, which costs 346.4 mm of timber."), Told.text(note));
    }

    private static List<FindingKind> kinds(Bed bed) {
        return work(bed).findings().stream().map(Finding::kind).toList();
    }

    /** Timber with two good faces can be turned over, so points are nested and cost nothing; nor do square ends, whatever the faces. */
    @Test
    void pointsCostNothingWhereTheTimberCanBeTurnedOverOrIsHidden() {
        Bed six = Beds.bed("X", SIX, 1, Lap.TURNING);
        Section two = new Section("100x200", 100, 200, 600, List.of(), Optional.empty(), false, 2, false);
        assertTrue(kinds(six).contains(FindingKind.ANGLE_POINTS));
        assertFalse(kinds(Beds.section(six, two)).contains(FindingKind.ANGLE_POINTS));
        assertFalse(kinds(Beds.hidden(six, "A", "B", "C", "D", "E", "F")).contains(FindingKind.ANGLE_POINTS));
        assertFalse(kinds(Beds.bed("K", Outline.rectangle(2400, 1200), 2, Lap.TURNING)).contains(FindingKind.SAW_ANGLES));
    }

    /** The saw is set to 22.5 only: square ends are no setting, each is told once. Six sides: 30. */
    @Test
    void theSawAnglesAreToldOnce() {
        for (Bed bed : List.of(Beds.bed("K", CUT, 3, Lap.TURNING), Beds.bed("X", SIX, 2, Lap.TURNING))) {
            Finding told = work(bed).findings().stream().filter(one -> one.kind() == FindingKind.SAW_ANGLES).findFirst().orElseThrow();
            String angle = bed.id().equals("K") ? "22.5" : "30";
            assertTrue(Told.text(told).contains(angle) && !Told.text(told).replaceFirst(angle, "").contains(angle), Told.text(told));
            assertEquals(told.where(), "bed " + bed.id());
        }
    }

    /** A mitre of an interior 50 would want the saw at 65; a butt there would be 10 too sharp, so it is not offered. */
    @Test
    void aCornerTooSharpForAButtIsNotOfferedOne() {
        Outline sharp = Beds.outline(0, 0, 3000, 0, 1500, 1500 * Math.tan(Math.toRadians(50)));
        Finding mitred = work(Beds.joined(Beds.bed("V", sharp, 1, Lap.TURNING), Map.of(1, Joint.MITRE))).findings().stream()
                .filter(one -> one.kind() == FindingKind.MITRE_TOO_STEEP).findFirst().orElseThrow();
        assertEquals(20, mitred.amount().orElseThrow().value(), 0.05);
        assertEquals(WayKind.CUT_POINT_OFF, mitred.ways().get(0).kind());
    }

    /** A square mitre sets the saw to 45, all that it has. Likewise a corner opened by 1 degree, at 44.5. */
    @Test
    void aSquareMitreIsWithinTheSaw() {
        Outline opened = Beds.outline(0, 0, 3000, 0, 3000 + 1500 * Math.tan(Math.toRadians(1)), 1500, 0, 1500);
        for (Outline outline : List.of(Outline.rectangle(3000, 1500), opened)) {
            Bed bed = Beds.joined(Beds.bed("Q", outline, 1, Lap.TURNING), Map.of(1, Joint.MITRE));
            assertFalse(kinds(bed).contains(FindingKind.MITRE_TOO_STEEP));
        }
    }

    /** Mitre set for regular outlines: half the turn, 360 / n / 2. */
    @ParameterizedTest(name = "{0} sides")
    @CsvSource({"5, 36", "6, 30", "8, 22.5", "10, 18", "12, 15"})
    void regularOutlinesAreMitredByHalfTheirTurn(int sides, double set) {
        double radius = 2000;
        double[] xy = new double[2 * sides];
        for (int i = 0; i < sides; i++) {
            double angle = 2 * Math.PI * i / sides - Math.PI / 2;
            xy[2 * i] = radius * Math.cos(angle);
            xy[2 * i + 1] = radius * Math.sin(angle);
        }
        Bed bed = Beds.bed("R", Beds.outline(xy), 1, Lap.TURNING);
        assertEquals(List.of(), OutlineCheck.faults(bed.outline(), OutlineCheck.Rules.bed(100)));
        work(bed).pieces().forEach(piece -> {
            assertEquals(set, piece.start().setDeg());
            assertEquals(set, piece.end().setDeg());
        });
    }

    /** A slant at an inside corner, 135 both ways round: outer faces from the corner, inner faces 41.4 longer a corner. */
    @Test
    void anInsideSlantIsLongerOnItsInnerFace() {
        Outline outline = Beds.outline(0, 0, 3000, 0, 3000, 1200, 2000, 1200, 1500, 1700, 1500, 2600, 0, 2600);
        assertEquals(List.of(), OutlineCheck.faults(outline, OutlineCheck.Rules.bed(100)));
        Piece slant = work(Beds.bed("S", outline, 1, Lap.TURNING)).pieces().get(3);
        assertEquals(707.1, slant.outerFaceMm());
        assertEquals(789.9, slant.innerFaceMm());
        assertEquals(789.9, slant.lengthMm());
        assertEquals(22.5, slant.start().setDeg());
    }

    /**
     * The floor of the cut-corner bed: clear 2200 x 1000 with a point of 341.4 / sqrt 2 = 241.4 off. Liner one piece over
     * the whole box: rise 3 x 200 - 45 - 25 + 50 = 580, so 3360 x 2160. Bearers as for 2200, and one along the slant.
     */
    @Test
    void baseAndLinerGoIntoTheCutCorner() {
        BedWork work = work(Beds.bed("K", CUT, 3, Lap.TURNING));
        assertEquals(1, work.liner().size());
        assertEquals(3360, work.liner().get(0).widthMm());
        assertEquals(2160, work.liner().get(0).heightMm());
        List<Double> bearers = work.bottom().strips().stream().map(Strip::lengthMm).sorted().toList();
        // ceil(2200 / 400) + 1 = 7 up the bed, 970 long but the last; the slant's 341.4 - 30
        assertEquals(8, bearers.size(), bearers.toString());
        assertEquals(311.4, bearers.get(0), 0.05);
        assertEquals(6, bearers.stream().filter(mm -> mm == 970).count());
        assertTrue(work.bottom().slats().stream().allMatch(cut -> cut.lengthMm() <= 1200));
        assertEquals(Inset.of(CUT, 100).areaMm2() / 1e6, Beds.value(work.quantities(), "inner.area"), 1e-9);
    }

    @Test
    void outlinesThatNoSawMakesAreRefusedWithTheirAmount() {
        var flat = OutlineCheck.faults(Beds.outline(0, 0, 1000, 0, 2000, 10, 2000, 1000, 0, 1000), OutlineCheck.Rules.bed(100));
        assertEquals(0.57, flat.get(0).amount(), 0.01);
        assertEquals(List.of(2), flat.get(0).corners());
        var sharp = OutlineCheck.faults(Beds.outline(0, 0, 6000, 0, 0, 1000), OutlineCheck.Rules.bed(100));
        assertEquals(10.54, sharp.get(0).amount(), 0.01);
        assertEquals(List.of(2), sharp.get(0).corners());
        // 400 outside between two corners of 60: 400 - 2 x 173.2 leaves 53.6 inside, 46.4 under one thickness
        var small = OutlineCheck.faults(
                Beds.outline(0, 0, 400, 0, 200, 346.410162), OutlineCheck.Rules.bed(100));
        assertEquals(46.4, small.get(0).amount(), 0.05);
    }
}
