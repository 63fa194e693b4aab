package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Point;
import lapyard.plan.Finding;
import lapyard.plan.Told;
import lapyard.plan.YardSurvey;
import org.junit.jupiter.api.Test;

class SurveyedYardTest {
    private static final Point FROM = new Point(0, 0);
    private static final Point TO = new Point(6000, 0);
    private static final List<Point> YARD = Beds.points(0, 0, 12000, 0, 12000, 7000, 7000, 9500, 0, 9000);

    private static double value(SurveyedYard yard, String key) {
        return yard.quantities().stream().filter(q -> q.key().toString().equals(key)).findFirst().orElseThrow().value();
    }

    private static YardSurvey.Corner taped(Point corner) {
        return new YardSurvey.Corner.Tapes(corner.distanceMm(FROM), corner.distanceMm(TO), true);
    }

    /** Worked by hand: 106.0 m2, side 3 measures 5590. */
    @Test
    void tapesAndOffsetsGiveTheYardWorkedByHand() {
        List<YardSurvey.Corner> corners = new ArrayList<>();
        corners.add(new YardSurvey.Corner.Offset(0, 0));
        corners.add(new YardSurvey.Corner.Offset(12000, 0));
        YARD.subList(2, 5).forEach(corner -> corners.add(taped(corner)));
        SurveyedYard yard = SurveyedYard.of(
                new YardSurvey(FROM, TO, corners, List.of(), List.of(new YardSurvey.Check(3, 4, 5560))));
        for (int i = 0; i < 5; i++) {
            assertTrue(yard.corners().get(i).distanceMm(YARD.get(i)) < 0.01, "corner " + (i + 1));
        }
        assertEquals(106.0, value(yard, "survey.area"), 1e-6);
        assertEquals(5590, value(yard, "survey.side.3"), 0.5);
        assertEquals(7000, value(yard, "survey.3.y"), 0.01);
        Finding off = yard.findings().get(yard.findings().size() - 1);
        assertEquals("survey, tape from corner 3 to 4", off.where());
        assertTrue(Told.text(off).contains("is 30.2 mm shorter than drawn"), Told.text(off));
    }

    @Test
    void aBaselineAnywhereTurnsTheYardWithIt() {
        YardSurvey survey = new YardSurvey(
                new Point(1000, 500),
                new Point(1000, 3500),
                List.of(
                        new YardSurvey.Corner.Offset(0, 0), new YardSurvey.Corner.Offset(3000, 0),
                        new YardSurvey.Corner.Tapes(5000, 4000, false)),
                List.of(),
                List.of());
        Point third = SurveyedYard.of(survey).corners().get(2);
        assertEquals(5000, third.x(), 1e-6, "3-4-5: 4000 to the right of the second mark");
        assertEquals(3500, third.y(), 1e-6);
    }

    /** The compass rule by its definition: each side takes the share of the error that its length is of the whole. */
    @Test
    void theClosingErrorIsSpreadByTheCompassRule() {
        SurveyedYard yard = SurveyedYard.of(new YardSurvey(
                FROM, TO, List.of(), List.of(leg(3000), leg(2000), leg(3084), leg(2000)), List.of()));
        assertEquals(84, yard.closingErrorMm(), 1e-9);
        double whole = 3000 + 2000 + 3084 + 2000;
        assertEquals(84 * 3000 / whole, value(yard, "survey.shift.2"), 1e-9);
        assertEquals(84 * 5000 / whole, value(yard, "survey.shift.3"), 1e-9);
        assertEquals(3000 + 84 * 3000 / whole, yard.corners().get(1).x(), 1e-9, "the walk fell short to the left");
        assertTrue(Told.text(yard.findings().get(0)).startsWith("The outline of the yard does not close by 84 mm"));
        double last = yard.corners().get(3).distanceMm(yard.corners().get(0));
        assertEquals(2000, last, 84 * 2000 / whole + 1, "the last side closes within its own share");
    }

    /** 10 m along a slope with 1.0 m between its ends is 9949.9 on plan (arithmetic). */
    @Test
    void aTapeAlongASlopeIsBroughtLevel() {
        YardSurvey.Leg slope = new YardSurvey.Leg(10000, 90, 1000);
        SurveyedYard yard = SurveyedYard.of(new YardSurvey(
                FROM, TO, List.of(), List.of(slope, leg(5000), slope, leg(5000)), List.of()));
        assertEquals(9949.9, yard.corners().get(1).x(), 0.1);
    }

    /**
     * The compass rule shares the error out by horizontal lengths (Ghilani and Wolf, Elementary Surveying, ch. 10, from memory);
     * whoever follows the working of a shift comes to it also where sides were taped along a slope: 10 m over 6 m of fall is 8 m.
     */
    @Test
    void theWorkingOfAShiftReckonsWithLevelLengths() {
        YardSurvey.Leg steep = new YardSurvey.Leg(10000, 90, 6000);
        SurveyedYard yard = SurveyedYard.of(new YardSurvey(FROM, TO, List.of(), List.of(steep, leg(5000), leg(8060), leg(5000)), List.of()));
        for (int corner = 2; corner <= 4; corner++) {
            String key = "survey.shift." + corner;
            var shift = yard.quantities().stream().filter(one -> one.key().toString().equals(key)).findFirst().orElseThrow();
            List<Double> inputs = shift.working().inputs().stream().map(input -> input.value()).toList();
            assertEquals(60, inputs.get(0), 1e-9, "closing error");
            assertEquals(26060, inputs.get(2), 1e-9, "8000 + 5000 + 8060 + 5000");
            assertEquals(shift.value(), inputs.get(0) * inputs.get(1) / inputs.get(2), 1e-9, key);
        }
        assertEquals(60 * 8000 / 26060.0, value(yard, "survey.shift.2"), 1e-9);
    }

    private static YardSurvey.Leg leg(double length) {
        return new YardSurvey.Leg(length, 90, 0);
    }

    /** Whoever follows the working of a side comes to its length; the way round is the sum of the sides, 12.0 + 7.0 + 5.59 + 7.018 + 9.0 here. */
    @Test
    void theSidesFollowFromTheirWorkingAndAddUp() {
        List<YardSurvey.Corner> corners = new ArrayList<>();
        YARD.forEach(corner -> corners.add(new YardSurvey.Corner.Offset(corner.x(), corner.y())));
        SurveyedYard yard = SurveyedYard.of(new YardSurvey(FROM, TO, corners, List.of(), List.of()));
        double sum = 0;
        for (int i = 1; i <= YARD.size(); i++) {
            String key = "survey.side." + i;
            var side = yard.quantities().stream().filter(one -> one.key().toString().equals(key)).findFirst().orElseThrow();
            assertEquals(side.value(), Math.hypot(side.working().inputs().get(0).value(), side.working().inputs().get(1).value()), 1e-9);
            sum += side.value();
        }
        assertEquals(sum / 1000, value(yard, "survey.perimeter"), 1e-9);
    }
}
