package lapyard.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Elementary geometry, common practice, no source. */
class SpansTest {
    private static final Outline L = new Outline(List.of(new Point(0, 0), new Point(2700, 0), new Point(2700, 1200),
            new Point(1200, 1200), new Point(1200, 2400), new Point(0, 2400)));

    @Test
    void anLHasTwoSpansEachWay() {
        assertEquals(List.of(1200.0, 1500.0), Spans.of(L, true));
        assertEquals(List.of(1200.0, 1200.0), Spans.of(L, false));
    }

    @Test
    void allCornersBeyondASpanMoveTogetherSoThatTheOutlineStaysSquare() {
        Outline longer = Spans.stretched(L, true, 0, 100);
        assertEquals(List.of(1300.0, 1500.0), Spans.of(longer, true));
        assertEquals(2800, longer.sideMm(0));
        assertEquals(1500, longer.sideMm(2));
        assertEquals(1300, longer.sideMm(4));
        assertEquals(L.areaMm2() + 100 * 2400, longer.areaMm2());
        assertEquals(L.areaMm2() - 25 * 1200, Spans.stretched(L, false, 1, -25).areaMm2());
    }

    @Test
    void theSidesThatChangeAreThoseThatLieAcrossTheSpan() {
        assertEquals(List.of(0, 4), Spans.sides(L, true, 0));
        assertEquals(List.of(0, 2), Spans.sides(L, true, 1));
    }

    @Test
    void slantedOutlinesHaveNoSpans() {
        Outline kite = new Outline(List.of(new Point(0, 0), new Point(2000, 1000), new Point(0, 2000)));
        assertThrows(IllegalArgumentException.class, () -> Spans.of(kite, true));
    }
}
