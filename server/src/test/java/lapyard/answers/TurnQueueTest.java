package lapyard.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

/** Two cores. What runs is held by a latch, so that the order is the queue's own. */
class TurnQueueTest {
    private final List<String> began = Collections.synchronizedList(new ArrayList<>());
    private final TurnQueue queue = new TurnQueue(2, 20);

    /** Work that says when it begins and lasts until it is let go, or is told to stop. */
    private final class Held {
        final CountDownLatch begun = new CountDownLatch(1);
        final CountDownLatch goOn = new CountDownLatch(1);
        final CountDownLatch ended = new CountDownLatch(1);
        final TurnQueue.Turn turn;

        Held(WorkKind kind, String caller, String garden, Optional<String> document) {
            String name = kind + " " + caller + " " + garden;
            turn = queue.ask(kind, caller, garden, document, () -> {
                began.add(name);
                begun.countDown();
                try {
                    goOn.await();
                } catch (InterruptedException told) {
                    began.add("stopped " + name);
                }
                ended.countDown();
            });
        }

        Held(WorkKind kind, String caller, String garden) {
            this(kind, caller, garden, Optional.empty());
        }

        void end() throws InterruptedException {
            goOn.countDown();
            ended.await();
        }

        boolean isRunning() {
            return turn.startedNanos() != 0;
        }
    }

    @Test
    void oneTurnIsLeftToJobSheetsHoweverManyPrintsAndSearchesWait() throws Exception {
        Held print = new Held(WorkKind.PRINT, "a", "g1");
        Held search = new Held(WorkKind.SEARCH, "a", "g2");
        print.begun.await();
        assertFalse(search.isRunning());
        Held sheet = new Held(WorkKind.SHEET, "b", "g3");
        sheet.begun.await();
        Held second = new Held(WorkKind.SHEET, "b", "g4");
        print.goOn.countDown();
        search.begun.await(); // its turn comes before the second sheet's: one turn is left to what is long
        assertFalse(second.isRunning());
        for (Held each : List.of(sheet, second, search)) each.end();
    }

    @Test
    void checksWaitForNothingElse() throws Exception {
        List<Held> busy = List.of(new Held(WorkKind.SHEET, "a", "g1"), new Held(WorkKind.PRINT, "a", "g2"), new Held(WorkKind.SHEET, "a", "g3"));
        Held check = new Held(WorkKind.CHECK, "a", "g4");
        check.begun.await();
        check.end();
        for (Held each : busy) each.end();
    }

    @Test
    void aSearchThatNobodyWaitsForBeginsOnlyWhileNothingWaitsAndTakesNobodysTurn() throws Exception {
        Held one = new Held(WorkKind.SHEET, "a", "g1");
        Held two = new Held(WorkKind.SHEET, "a", "g2");
        Held waits = new Held(WorkKind.SHEET, "a", "g3");
        Held unwatched = new Held(WorkKind.UNWATCHED, "a", "");
        assertFalse(unwatched.isRunning());
        one.end();
        waits.begun.await();
        unwatched.begun.await();
        Held other = new Held(WorkKind.UNWATCHED, "a", "");
        assertFalse(other.isRunning(), "one at a time");
        two.end();
        Held sheet = new Held(WorkKind.SHEET, "a", "g4");
        sheet.begun.await();
        for (Held each : List.of(waits, unwatched, sheet)) each.end();
        other.end();
    }

    @Test
    void whoWasServedLongestAgoIsNextHoweverMuchOthersAskFor() throws Exception {
        Held first = new Held(WorkKind.SHEET, "greedy", "g1");
        Held second = new Held(WorkKind.SHEET, "greedy", "g2");
        List<Held> greedy = new ArrayList<>();
        for (int i = 3; i < 8; i++) greedy.add(new Held(WorkKind.SHEET, "greedy", "g" + i));
        Held modest = new Held(WorkKind.SHEET, "modest", "m");
        first.end();
        modest.begun.await();
        assertTrue(greedy.stream().noneMatch(Held::isRunning));
        second.end();
        modest.end();
        for (Held each : greedy) each.end();
    }

    @Test
    void amongAlikeTheyComeInTheOrderOfAsking() throws Exception {
        Held first = new Held(WorkKind.SHEET, "a", "g");
        Held second = new Held(WorkKind.SHEET, "a", "g");
        List<Held> others = new ArrayList<>();
        for (int i = 0; i < 6; i++) others.add(new Held(WorkKind.SHEET, "a", "g"));
        first.end();
        for (int i = 0; i < 6; i++) {
            others.get(i).begun.await();
            int next = i + 1;
            assertTrue(others.subList(next, 6).stream().noneMatch(Held::isRunning), "after " + i);
            others.get(i).end();
        }
        second.end();
    }

    @Test
    void aDocumentIsPreparedByOneTurnAtATimeAndOthersOfItFollowOnceItIsPrepared() throws Exception {
        Held first = new Held(WorkKind.SHEET, "a", "g", Optional.of("document"));
        Held same = new Held(WorkKind.SHEET, "b", "g", Optional.of("document"));
        Held other = new Held(WorkKind.SHEET, "c", "h", Optional.of("another"));
        other.begun.await();
        other.end();
        assertFalse(same.isRunning());
        first.turn.prepared();
        same.begun.await();
        first.end();
        same.end();
    }

    @Test
    void whatIsAbandonedIsToldToStopOrNeverBegins() throws Exception {
        Held one = new Held(WorkKind.SHEET, "a", "g1");
        Held two = new Held(WorkKind.SHEET, "a", "g2");
        Held never = new Held(WorkKind.SHEET, "a", "g3");
        never.turn.abandon();
        one.turn.abandon();
        one.ended.await();
        two.end();
        assertFalse(never.isRunning());
        assertTrue(began.contains("stopped SHEET a g1"));
        while (queue.running() > 0) Thread.onSpinWait();
        assertEquals(0, queue.waiting());
    }

    @Test
    void whoFindsTheQueueFullIsToldWhatIsWaitedForAndWhenToAskAgain() throws Exception {
        TurnQueue small = new TurnQueue(2, 1);
        CountDownLatch goOn = new CountDownLatch(1);
        for (int i = 0; i < 3; i++) small.ask(WorkKind.SHEET, "a", "g" + i, Optional.empty(), () -> await(goOn));
        Busy full = assertThrows(Busy.class, () -> small.ask(WorkKind.SHEET, "a", "g", Optional.empty(), () -> {}));
        assertTrue(full.getMessage().contains("2 job sheets are being worked out and 1 waits."), full.getMessage());
        TurnQueue lone = new TurnQueue(2, 1);
        lone.ask(WorkKind.SHEET, "a", "g", Optional.empty(), () -> await(goOn));
        assertTrue(lone.busy("").getMessage().startsWith("1 job sheet is being worked out and 0 wait."), lone.busy("").getMessage());
        assertEquals(5, full.retrySeconds());
        small.ask(WorkKind.UNWATCHED, "a", "", Optional.empty(), () -> {}); // accepted: it is never refused later
        goOn.countDown();
    }

    @Test
    void theMoreWaitTheLaterOneIsToldToComeAgainUpToAMinute() {
        CountDownLatch goOn = new CountDownLatch(1);
        for (int[] each : new int[][] {{20, 15}, {300, 60}}) {
            TurnQueue queue = new TurnQueue(2, each[0]);
            for (int i = 0; i < each[0] + 2; i++) queue.ask(WorkKind.SHEET, "a", "g" + i, Optional.empty(), () -> await(goOn));
            assertEquals(each[1], queue.busy("").retrySeconds(), "two at a time, " + each[0] + " wait");
        }
        goOn.countDown();
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
        }
    }
}
