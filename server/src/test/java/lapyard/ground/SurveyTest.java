package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SurveyTest {
    @Test
    void sevenAndFiveFromSixMeetAtFive() {
        var met = assertInstanceOf(Survey.Fix.Met.class, Survey.byTwoTapes("corner 3", 6000, 7000, 5000, true));
        assertEquals(5000, met.at().x(), 1e-9);
        assertEquals(4899, met.at().y(), 0.5);
        assertEquals(List.of(), met.findings());
        assertEquals(met.at().y(), met.quantities().get(1).value());
        var right = assertInstanceOf(Survey.Fix.Met.class, Survey.byTwoTapes("corner 3", 6000, 7000, 5000, false));
        assertEquals(-4899, right.at().y(), 0.5);
    }

    @Test
    void tapesThatCannotMeetSayHowMuchIsMissing() {
        var none = assertInstanceOf(Survey.Fix.CannotMeet.class, Survey.byTwoTapes("corner 3", 6000, 3100, 2400, true));
        assertEquals(Optional.of(Fact.mm(500)), none.stop().by());
        assertEquals(
                "The tapes cannot meet: 3100 mm and 2400 mm from marks 6000 mm apart are 500 mm short. "
                        + "Tape it again, or check the distance between the marks.",
                Spoken.of(none.stop()));
        assertEquals(Finding.Weight.STOP, none.stop().weight());
        var tooLong =
                assertInstanceOf(Survey.Fix.CannotMeet.class, Survey.byTwoTapes("corner 3", 6000, 9000, 2000, true));
        assertEquals(Optional.of(Fact.mm(1000)), tooLong.stop().by());
        assertThrows(IllegalArgumentException.class, () -> Survey.byTwoTapes("corner 3", 0, 9000, 2000, true));
        assertThrows(IllegalArgumentException.class, () -> Survey.byTwoTapes("corner 3", 6000, -1, Double.NaN, true));
    }

    @Test
    void tapesThatCrossFlatAreNoted() {
        var met = assertInstanceOf(Survey.Fix.Met.class, Survey.byTwoTapes("corner 3", 6000, 3010, 3010, true));
        assertEquals(Finding.Weight.NOTE, met.findings().get(0).weight());
    }

    /** Property: taping a known corner finds it again. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void aTapedCornerIsFoundAgain(long seed) {
        Random random = new Random(seed);
        double base = 3000 + random.nextInt(9000);
        Point corner = new Point(random.nextInt(15000) - 3000, random.nextInt(20000) - 10000);
        var met = assertInstanceOf(
                Survey.Fix.Met.class,
                Survey.byTwoTapes(
                        "corner",
                        base,
                        corner.distanceMm(new Point(0, 0)),
                        corner.distanceMm(new Point(base, 0)),
                        corner.y() >= 0));
        assertTrue(met.at().distanceMm(corner) < 0.01, () -> "seed " + seed + ": " + met.at());
    }

    @Test
    void sidesWalkedRoundGiveCornersAndTheClosingError() {
        Survey.Walk square = Survey.walked(List.of(
                side(3000, 90), side(1500, 90), side(1200, -90), side(900, 90), side(1800, 90), side(2400, 90)));
        assertEquals(Beds.L.corners(), square.corners());
        assertEquals(0, square.closingErrorMm());
        assertEquals(List.of(), square.findings());
        Survey.Walk open = Survey.walked(List.of(side(3000, 90), side(2000, 90), side(3084, 90), side(2000, 90)));
        assertEquals(84, open.closingErrorMm(), 1e-9);
        assertTrue(Spoken.of(open.findings().get(0))
                .startsWith("The outline of the yard does not close by 84 mm; 20 mm is allowed. Tape again the sides"));
        assertEquals(
                List.of(),
                Survey.walked(List.of(side(3000, 90), side(2000, 90), side(3020, 90), side(2000, 90)))
                        .findings());
    }

    private static Survey.Side side(double length, double turn) {
        return new Survey.Side(length, turn);
    }

    /** Worked by hand: area and one side of an irregular yard. */
    @Test
    void theYardOfFiveCornersMeasuresAsByHand() {
        Outline yard = Beds.outline(0, 0, 12000, 0, 12000, 7000, 7000, 9500, 0, 9000);
        assertEquals(106.0, yard.areaMm2() / 1e6, 1e-9);
        assertEquals(5590, yard.sideMm(2), 0.5);
        assertEquals(Optional.empty(), Survey.check("side 3", yard.corner(2), yard.corner(3), 5610));
        Finding off =
                Survey.check("side 3", yard.corner(2), yard.corner(3), 5560).orElseThrow();
        assertEquals(
                "Side 3 is 30.2 mm shorter than drawn (5590.2 mm); 20 mm is allowed. Tape it again.",
                Spoken.of(off));
        assertEquals(30.2, off.amount().orElseThrow().value());
    }

    @Test
    void aTapeTooShortForItsLevelsIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Survey.levelMm(1000, 1001));
    }

    /** 3-4-5 to the right of the baseline; tapes that end between the marks are too short, one that ends beyond is too long. */
    @Test
    void tapesSayOnWhichSideTheyMeetAndHowTheyMiss() {
        Survey.Fix.Met right = (Survey.Fix.Met) Survey.byTwoTapes("corner", 3000, 5000, 4000, false);
        assertEquals(0, right.at().distanceMm(new Point(3000, -4000)), 1e-9);
        assertEquals(List.of(3000.0, -4000.0), right.quantities().stream().map(one -> (double) Math.round(one.value())).toList());
        Survey.Fix.Met mark = (Survey.Fix.Met) Survey.byTwoTapes("corner", 3000, 0, 3000, true);
        assertEquals(0, mark.at().distanceMm(new Point(0, 0)), 1e-9);
        for (double[] miss : new double[][] {{300, 400, 300, 0}, {2500, 400, 1100, 1}, {400, 2500, 1100, 1}}) {
            Survey.Fix.CannotMeet none = (Survey.Fix.CannotMeet) Survey.byTwoTapes("corner", 1000, miss[0], miss[1], true);
            assertEquals(Optional.of(Fact.mm(miss[2])), none.stop().by());
            assertTrue(none.stop().facts().containsKey(miss[3] > 0 ? "long" : "short"), none.stop().toString());
        }
        for (double[] bad : new double[][] {{0, 100, 100}, {1000, -1, 1000}, {1000, 1000, -1}}) {
            assertThrows(IllegalArgumentException.class, () -> Survey.byTwoTapes("corner", bad[0], bad[1], bad[2], true));
        }
    }

    /** Compass rule by its definition: half way round is moved by half of an error that lies aslant. */
    @Test
    void anErrorAslantIsSpreadBothWays() {
        Survey.Walk walk = Survey.walked(List.of(
                new Survey.Side(3000, 90), new Survey.Side(2000, 90), new Survey.Side(3060, 90), new Survey.Side(1940, 90)));
        assertEquals(Math.hypot(60, 60), walk.closingErrorMm(), 1e-9);
        assertEquals(0, walk.corners().get(2).distanceMm(new Point(3000, 2000)), 1e-9);
        assertEquals(0, walk.adjusted().get(2).distanceMm(new Point(3000 + 30, 2000 - 30)), 1e-9);
    }
}
