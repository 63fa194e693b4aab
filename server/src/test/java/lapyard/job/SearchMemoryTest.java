package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.concurrent.atomic.AtomicInteger;
import lapyard.plan.Garden;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;

class SearchMemoryTest {
    private final SearchMemory memory = new SearchMemory(4_800);
    private final AtomicInteger searches = new AtomicInteger();

    private int ask(String asked, int pieces) {
        return memory.of(asked, pieces, text -> {
            searches.incrementAndGet();
            return text.length();
        });
    }

    @Test
    void isSearchedForOnce() {
        assertEquals(3, ask("abc", 1));
        assertEquals(3, ask("abc", 1));
        assertEquals(1, searches.get());
    }

    @Test
    void whatWasCutShortIsSearchedForAgain() {
        Thread.currentThread().interrupt();
        ask("stopped", 1);
        assertEquals(true, Thread.interrupted());
        ask("stopped", 1);
        assertEquals(2, searches.get());
    }

    /** A result of one piece counts 600 bytes, so six fit beside the parts; one of 3 pieces is more than a quarter. */
    @Test
    void theLeastLatelyUsedAreForgottenAndTheLargestNeverKept() {
        for (int i = 0; i < 20; i++) {
            ask("p" + i, 1);
            ask("p0", 1);
        }
        assertEquals(20, searches.get());
        ask("p19", 1);
        assertEquals(20, searches.get());
        ask("p1", 1);
        assertEquals(21, searches.get());
        ask("large", 3);
        ask("large", 3);
        assertEquals(23, searches.get());
    }

    /** A bed elsewhere changes no task, another course does: remembered or not, the days are those of the garden as it is. */
    @Test
    void aScheduleIsThatOfTheGardenAsItIsWhateverWasSearchedForBefore() {
        SearchMemory kept = new SearchMemory(32L << 20);
        for (String bed : new String[] {"\"at\":[4000,2000]",  "\"at\":[4100,2000]", "\"at\":[4100,2000],\"stage\":2", "\"at\":[4100,2000],\"courses\":4", "\"at\":[4000,2000]"}) {
            Garden garden = Gardens.garden("{\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[500,2000]},"
                    + "{\"id\":\"B\",\"width\":1800,\"depth\":900," + bed + "}]}");
            assertEquals(Job.prepare(garden, what -> Progress.UNHEARD, new SearchMemory(32L << 20)).weekends(),
                    Job.prepare(garden, what -> Progress.UNHEARD, kept).weekends(), bed);
        }
    }
}
