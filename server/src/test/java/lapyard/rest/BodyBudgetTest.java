package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** Four megabytes, of which one is for short bodies alone. */
class BodyBudgetTest {
    private final AtomicLong nanos = new AtomicLong();
    private final BodyBudget budget = new BodyBudget(4 << 20, nanos::get);

    @Test
    void longBodiesTakeNothingFromShortOnes() {
        BodyBudget.Body one = budget.begin(() -> {});
        assertTrue(one.holds(3 << 20));
        BodyBudget.Body other = budget.begin(() -> {});
        assertFalse(other.holds(2 << 20));
        assertTrue(budget.begin(() -> {}).holds(100_000));
        one.free();
        assertTrue(other.holds(2 << 20));
    }

    @Test
    void allThatIsTakenComesBackOnce() {
        List<BodyBudget.Body> all = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            BodyBudget.Body body = budget.begin(() -> {});
            for (long bytes = 1000; bytes < 300_000; bytes += 50_000) body.holds(bytes);
            all.add(body);
        }
        assertFalse(holdsOneAsLongAsAll());
        all.forEach(BodyBudget.Body::free);
        all.forEach(BodyBudget.Body::free);
        assertTrue(holdsOneAsLongAsAll());
    }

    @Test
    void whatArrivesTooSlowlyIsCutOffAndWhatIsWholeIsNot() {
        AtomicInteger cut = new AtomicInteger();
        BodyBudget.Body slow = budget.begin(cut::incrementAndGet);
        slow.holds(1000);
        BodyBudget.Body steady = budget.begin(() -> cut.addAndGet(10));
        steady.holds(1_000_000);
        BodyBudget.Body whole = budget.begin(() -> cut.addAndGet(100));
        whole.isWhole();
        nanos.set(20_000_000_000L);
        budget.cutOffLate();
        assertEquals(0, cut.get());
        nanos.set(31_000_000_000L);
        budget.cutOffLate();
        assertEquals(1, cut.get());
        nanos.set(51_000_000_000L);
        budget.cutOffLate();
        budget.cutOffLate();
        assertEquals(11, cut.get());
        assertTrue(holdsOneAsLongAsAll());
    }

    /** Whether nothing is taken: one body may have the three megabytes of long ones and what counts of it as short. */
    private boolean holdsOneAsLongAsAll() {
        BodyBudget.Body all = budget.begin(() -> {});
        boolean holds = all.holds((3 << 20) + BodyBudget.SHORT_BYTES - 1);
        all.free();
        return holds;
    }
}
