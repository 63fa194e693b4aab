package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class SearchMemoryTest {
    private final SearchMemory memory = new SearchMemory(3_600);
    private final AtomicInteger searches = new AtomicInteger();

    private int ask(String asked, int pieces) {
        return memory.of(asked, pieces, text -> {
            searches.incrementAndGet();
            return text.length();
        }, length -> length < 10);
    }

    @Test
    void isSearchedForOnce() {
        assertEquals(3, ask("abc", 1));
        assertEquals(3, ask("abc", 1));
        assertEquals(1, searches.get());
    }

    @Test
    void whatWasCutShortIsSearchedForAgain() {
        ask("longer than ten", 1);
        ask("longer than ten", 1);
        assertEquals(2, searches.get());
        Thread.currentThread().interrupt();
        ask("stopped", 1);
        assertEquals(true, Thread.interrupted());
        ask("stopped", 1);
        assertEquals(4, searches.get());
    }

    /** A result of one piece counts 600 bytes, so six fit; one of 3 pieces is more than a quarter. */
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
}
