package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Baseline;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.Preparation;
import org.junit.jupiter.api.Test;

class SettingOutTest {
    private static Garden garden(Optional<Baseline> baseline, Bed... beds) {
        return Beds.garden(
                new Ground(
                        List.of(Outline.rectangle(12000, 9000)), List.of(), List.of(), List.of(), 0, Optional.empty(),
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
}
