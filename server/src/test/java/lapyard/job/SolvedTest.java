package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class SolvedTest {
    private final Solved<String, Integer> solved = new Solved<>();
    private final AtomicInteger searches = new AtomicInteger();

    private int ask(String asked, int pieces) {
        return solved.of(asked, pieces, text -> {
            searches.incrementAndGet();
            return text.length();
        }, length -> length < 10);
    }

    @Test
    void isSearchedForOnce() {
        assertEquals(3, ask("abc", 5));
        assertEquals(3, ask("abc", 5));
        assertEquals(1, searches.get());
    }

    @Test
    void whatWasCutShortIsSearchedForAgain() {
        ask("longer than ten", 5);
        ask("longer than ten", 5);
        assertEquals(2, searches.get());
        Thread.currentThread().interrupt();
        ask("stopped", 5);
        assertEquals(true, Thread.interrupted());
        ask("stopped", 5);
        assertEquals(4, searches.get());
    }

    @Test
    void theLeastLatelyUsedAreForgottenAndTheLargestNeverKept() {
        for (int i = 0; i < 20; i++) {
            ask("p" + i, 4_000);
            ask("p0", 4_000);
        }
        assertEquals(20, searches.get());
        ask("p19", 4_000);
        assertEquals(20, searches.get());
        ask("p1", 4_000);
        assertEquals(21, searches.get());
        ask("large", 6_000);
        ask("large", 6_000);
        assertEquals(23, searches.get());
    }
}
