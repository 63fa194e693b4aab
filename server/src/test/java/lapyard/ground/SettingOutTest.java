package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Baseline;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.Preparation;
import org.junit.jupiter.api.Test;

class SettingOutTest {
    private static Garden garden(Optional<Baseline> baseline, Bed... beds) {
        return garden(List.of(Outline.rectangle(12000, 9000)), baseline, beds);
    }

    private static Garden garden(List<Outline> yard, Optional<Baseline> baseline, Bed... beds) {
        return Beds.garden(
                new Ground(
                        yard, List.of(), List.of(), List.of(), 0, Optional.empty(),
                        baseline, Preparation.USUAL, List.of(), AccessStandard.USUAL, List.of(), Optional.empty()),
                beds);
    }

    private static final Baseline HOUSE = new Baseline(new Point(0, 0), new Point(12000, 0), 0);

    /** Worked by hand for the L bed at (800, 1500). */
    @Test
    void theLIsPeggedFromTheHouseWall() {
        SettingOut out = SettingOut.of(garden(Optional.of(HOUSE), Beds.bed("M", Beds.L, 800, 1500)), Optional.empty());
        SettingOut.BedPegs m = out.beds().get(0);
        assertEquals(List.of(800.0, 2600.0, 3800.0), m.pegs().runningMm());
        assertEquals(List.of(1500.0, 3000.0, 3900.0), m.pegs().offsetsMm());
        assertEquals(List.of(1, 2, 3, 4, 5, 6), m.tapes().stream().map(SettingOut.Tapes::peg).toList());
        assertEquals(Math.hypot(800, 1500), m.tapes().get(0).firstMm(), 1e-9);
        assertEquals(Math.hypot(12000 - 800, 1500), m.tapes().get(0).secondMm(), 1e-9);
        // 3 parts on F (2400), 4 on A (3000): 750 a part; the other way round only 600
        assertEquals(new SettingOut.Triangle(1, 3000, 2250, 3750), m.square().orElseThrow());
        assertEquals(new SettingOut.Triangle(0, 5200, 3900, 6500), out.square().orElseThrow());
        assertTrue(m.pushForTenMm().isEmpty(), "only a rectangle has two equal diagonals");
    }

    /** Two tapes find the peg again: the circles' meeting is checked by the survey's own rule. */
    @Test
    void theTapesMeetAtThePeg() {
        Bed turned = Beds.bed("T", Beds.L, new Placement(new Point(4000, 3000), 37, true));
        SettingOut.BedPegs bed = SettingOut.of(garden(Optional.of(HOUSE), turned), Optional.empty()).beds().get(0);
        for (int i = 0; i < 6; i++) {
            SettingOut.Tapes tapes = bed.tapes().get(i);
            Survey.Fix.Met met = (Survey.Fix.Met) Survey.byTwoTapes("P", 12000, tapes.firstMm(), tapes.secondMm(), true);
            assertTrue(met.at().distanceMm(turned.inYard().corner(i)) < 0.01);
        }
        assertEquals(5, bed.square().orElseThrow().acrossMm() / (bed.square().orElseThrow().alongMm() + bed.square().orElseThrow().otherMm()) * 7, 1e-9);
    }

    @Test
    void flatTapesAreMarked() {
        SettingOut.BedPegs low = SettingOut.of(garden(Optional.of(HOUSE), Beds.box("N", 5000, 500, 1800, 900)), Optional.empty()).beds().get(0);
        assertTrue(low.tapes().get(0).flat(), "500 off a baseline of 12000");
        SettingOut.BedPegs high = SettingOut.of(garden(Optional.of(HOUSE), Beds.box("N", 5000, 6000, 1800, 900)), Optional.empty()).beds().get(0);
        assertFalse(high.tapes().get(0).flat());
    }

    /** 1 in 1200 off square is square enough for a triangle of tapes, 2 in 1200 is not. */
    @Test
    void aCornerOneInAThousandOffIsSquare() {
        for (int off = 1; off <= 2; off++) {
            Bed skewed = Beds.bed("S", Beds.outline(0, 0, 2400, 0, 2400 + off, 1200, off, 1200), 1000, 1000);
            SettingOut.BedPegs pegs = SettingOut.of(garden(Optional.of(HOUSE), skewed), Optional.empty()).beds().get(0);
            assertEquals(off == 1, pegs.square().isPresent(), off + " in 1200");
        }
    }

    /** d1^2 - d2^2 = 4 L s (arithmetic): 10 between diagonals of 2683.3 on a side of 2400. */
    @Test
    void aRectangleSaysHowFarToPush() {
        SettingOut.BedPegs n = SettingOut.of(garden(Optional.of(HOUSE), Beds.box("N", 1000, 1000, 2400, 1200)), Optional.empty()).beds().get(0);
        assertEquals(20 * 2683.28 / (4 * 2400), n.pushForTenMm().orElseThrow(), 0.001);
    }

    /** The front of the yard is the house wall; where the front is one corner alone the longest side serves. */
    @Test
    void withoutABaselineTheHouseWallOrTheLongestSideIsIt() {
        Bed bed = Beds.box("N", 1000, 1000, 2400, 1200);
        SettingOut out = SettingOut.of(garden(Optional.empty(), bed), Optional.empty());
        assertEquals(Optional.of(new Baseline(new Point(0, 0), new Point(12000, 0), 0)), out.baseline());
        assertEquals(SettingOut.of(garden(out.baseline(), bed), Optional.empty()).beds(), out.beds());
        assertEquals(List.of(), out.findings());
    }

    /** Yards of three to six corners, either way round, with one corner in front: their longest side, with the yard to its left. */
    @Test
    void whereTheFrontIsOneCornerTheLongestSideIsTheBaseline() {
        Random random = new Random(2105);
        for (int i = 0; i < 200; i++) {
            List<Point> corners = new ArrayList<>();
            int sides = 3 + i % 4;
            for (int k = 0; k < sides; k++) {
                double angle = 2 * Math.PI * (k + random.nextDouble() / 2) / sides;
                corners.add(new Point(9000 * Math.cos(angle), 7000 * Math.sin(angle)));
            }
            if (i % 2 == 0) Collections.reverse(corners);
            Outline yard = new Outline(corners);
            Baseline line = SettingOut.of(garden(List.of(yard), Optional.empty()), Optional.empty()).baseline().orElseThrow();
            double longest = IntStream.range(0, sides).mapToDouble(yard::sideMm).max().orElseThrow();
            assertEquals(longest, line.from().distanceMm(line.to()), 1e-9, yard.toString());
            assertTrue(corners.containsAll(List.of(line.from(), line.to())));
            Point way = line.from().way(line.to());
            corners.forEach(corner -> assertTrue(way.cross(corner.minus(line.from())) > -1e-6, yard + ": " + line));
        }
        SettingOut none = SettingOut.of(garden(List.of(), Optional.empty(), Beds.box("N", 1000, 1000, 2400, 1200)), Optional.empty());
        assertEquals(List.of(), none.beds());
        assertEquals(List.of(FindingKind.NO_BASELINE), none.findings().stream().map(Finding::kind).toList());
    }

    /** Every part of whole 10 mm tried at every square corner that points outwards; no tape is longer than 30 m. */
    @Test
    void theTriangleIsTheLargestThatFits() {
        Random random = new Random(2106);
        for (int i = 0; i < 200; i++) {
            int w = 20 + random.nextInt(i % 3 == 0 ? 60_000 : 5000);
            int d = 20 + random.nextInt(i % 5 == 0 ? 60_000 : 5000);
            Outline outline = i % 2 == 0 ? Outline.rectangle(w, d) : Beds.outline(0, 0, 2 * w, 0, 2 * w, d, w, d, w, 3 * d, 0, 3 * d);
            double most = 0;
            for (int corner = 0; corner < outline.sides(); corner++) {
                if (outline.insideCorner(corner)) continue;
                double a = outline.sideMm(corner);
                double b = outline.sideMm(corner - 1);
                for (int part = 10; part <= 6000; part += 10) if (4 * part <= Math.max(a, b) && 3 * part <= Math.min(a, b)) most = Math.max(most, part);
            }
            Optional<SettingOut.Triangle> found = SettingOut.of(garden(Optional.of(HOUSE), Beds.bed("M", outline, 0, 0)), Optional.empty()).beds().get(0).square();
            assertEquals(most, found.map(SettingOut.Triangle::acrossMm).orElse(0.0) / 5, 1e-9, outline.toString());
            if (found.isEmpty()) continue;
            SettingOut.Triangle own = found.get();
            assertEquals(7 * most, own.alongMm() + own.otherMm(), 1e-9);
            assertTrue(own.alongMm() <= outline.sideMm(own.peg() - 1) && own.otherMm() <= outline.sideMm(own.peg() - 2), outline + ": " + own);
        }
    }

    /** A bed stands on its lowest corner: 1 in 100 to the right and 1 in 50 to the rear from 400 at the mark. */
    @Test
    void theLowestPegIsTheOneThatTheStringIsHighestOver() {
        Fall fall = Fall.of(List.of(new Ground.Level(new Point(0, 0), 400), new Ground.Level(new Point(1000, 0), 410), new Ground.Level(new Point(0, 1000), 420)))
                .orElseThrow();
        Bed bed = Beds.box("N", 1000, 2000, 2400, 1200);
        assertEquals(400 + 34 + 64, SettingOut.of(garden(Optional.of(HOUSE), bed), Optional.of(fall)).beds().get(0).lowestDropMm().orElseThrow(), 1e-9);
        assertEquals(Optional.empty(), SettingOut.of(garden(Optional.of(HOUSE), bed), Optional.empty()).beds().get(0).lowestDropMm());
    }
}
