package lapyard.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import lapyard.json.JobSheetPart;
import lapyard.json.SheetAsk;
import lapyard.prints.PrintAsk;
import lapyard.rest.HeldDesk;
import lapyard.rest.SizesDesk;
import lapyard.working.Look;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;

class AnswerServiceTest {
    private static GivenDocument garden(int number) {
        return GivenDocument.of("{\"name\":\"garden " + number + " " + "x".repeat(1000) + "\",\"beds\":[]}");
    }

    @Test
    void theLeastLatelyUsedGoFirstAndTheBytesStayUnderTheLimit() {
        SizesDesk desk = new SizesDesk();
        AnswerService answers = new AnswerService(desk, 2, 50, 6500); // each job sheet repeats the name: some 1270 bytes with what goes with it
        for (int i = 0; i < 5; i++) answers.jobSheet(garden(i), SheetAsk.WHOLE);
        answers.jobSheet(garden(0), SheetAsk.WHOLE);
        assertEquals(5, desk.made.get());
        answers.jobSheet(garden(5), SheetAsk.WHOLE); // drops 1, as 0 was used since
        answers.jobSheet(garden(0), SheetAsk.WHOLE);
        assertEquals(6, desk.made.get());
        answers.jobSheet(garden(1), SheetAsk.WHOLE);
        assertEquals(7, desk.made.get());
        for (int i = 0; i < 50; i++) answers.jobSheet(garden(i), SheetAsk.WHOLE);
        assertTrue(answers.figures().keptBytes() <= 6500, () -> answers.figures().keptBytes() + " bytes");
    }

    @Test
    void whatManyAskForAtOnceIsMadeOnce() throws Exception {
        SizesDesk desk = new SizesDesk();
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        ExecutorService threads = Executors.newFixedThreadPool(16);
        try {
            CountDownLatch together = new CountDownLatch(16);
            List<Future<Answer>> all = new ArrayList<>();
            for (int i = 0; i < 16; i++)
                all.add(threads.submit(() -> {
                    together.countDown();
                    together.await();
                    return answers.jobSheet(garden(1), SheetAsk.WHOLE);
                }));
            String tag = all.get(0).get().tag();
            for (Future<Answer> each : all) assertEquals(tag, each.get().tag());
            assertEquals(1, desk.made.get());
        } finally {
            threads.shutdownNow();
        }
    }

    private static Future<Answer> asked(ExecutorService threads, AnswerService answers, Caller caller, String form) {
        return threads.submit(() -> {
            caller.begin();
            return form.equals("slip") ? answers.file(garden(1), FileAsk.of("slip.csv", Optional.empty())) : answers.jobSheet(garden(1), SheetAsk.WHOLE);
        });
    }

    @Test
    void workIsStoppedOnceItsLastWaiterLeavesAndNotBefore() throws Exception {
        HeldDesk desk = new HeldDesk();
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        ExecutorService threads = Executors.newCachedThreadPool();
        try {
            Caller first = new Caller("a");
            Caller second = new Caller("b");
            Future<Answer> one = asked(threads, answers, first, "sheet");
            desk.begun.await();
            Future<Answer> two = asked(threads, answers, second, "sheet");
            while (answers.waitersOf(answers.jobSheetKey(garden(1), SheetAsk.WHOLE)) < 2) Thread.onSpinWait();
            first.leave();
            assertInstanceOf(CallerLeft.class, assertThrows(ExecutionException.class, one::get).getCause());
            assertEquals(1, desk.stopped.getCount(), "the other still waits");
            second.leave();
            assertInstanceOf(CallerLeft.class, assertThrows(ExecutionException.class, two::get).getCause());
            desk.stopped.await();
            while (answers.figures().running() > 0) Thread.onSpinWait();
            desk.goOn.countDown();
            assertTrue(answers.jobSheet(garden(1), SheetAsk.WHOLE).length() > 0, "asked again it is worked out anew");
        } finally {
            threads.shutdownNow();
        }
    }

    private static GivenDocument kept(int number) {
        return GivenDocument.of(garden(number).text(), "kept");
    }

    private static boolean isFirst(Answer answer) {
        return new String(answer.bytes(), StandardCharsets.UTF_8).contains("\"look\":\"first\"");
    }

    @Test
    void behindAFirstLookTheWholeIsWorkedOutOnceAndThenHandedOut() throws Exception {
        SizesDesk desk = new SizesDesk();
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        assertTrue(isFirst(answers.jobSheet(kept(1), SheetAsk.WHOLE.at(Look.FIRST))));
        while (answers.waitersOf(answers.jobSheetKey(kept(1), SheetAsk.WHOLE)) > 0 || desk.made.get() < 2) Thread.onSpinWait();
        Answer whole = answers.jobSheet(kept(1), SheetAsk.WHOLE);
        assertFalse(isFirst(whole));
        assertEquals(whole.tag(), answers.jobSheet(kept(1), SheetAsk.WHOLE.at(Look.FIRST)).tag());
        assertEquals(2, desk.made.get());
    }

    @Test
    void theNextLookAtAGardenDropsWhatWasBegunBehindTheLastOne() throws Exception {
        HeldDesk desk = new HeldDesk();
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        answers.jobSheet(kept(1), SheetAsk.WHOLE.at(Look.FIRST));
        desk.begun.await();
        assertTrue(isFirst(answers.jobSheet(kept(1), SheetAsk.WHOLE.at(Look.FIRST))), "the same again");
        assertEquals(1, answers.waitersOf(answers.jobSheetKey(kept(1), SheetAsk.WHOLE)));
        assertTrue(isFirst(answers.jobSheet(GivenDocument.of(garden(3).text(), "another"), SheetAsk.WHOLE.at(Look.FIRST))));
        assertEquals(1, desk.stopped.getCount(), "another garden has its own");
        assertTrue(isFirst(answers.jobSheet(kept(2), SheetAsk.WHOLE.at(Look.FIRST))));
        desk.stopped.await();
        assertEquals(0, answers.waitersOf(answers.jobSheetKey(kept(1), SheetAsk.WHOLE)));
        desk.goOn.countDown();
        assertFalse(isFirst(answers.jobSheet(kept(2), SheetAsk.WHOLE)));
    }

    @Test
    void whatIsMadeAheadGivesWayToAnotherGardenUnlessSomebodyAskedForIt() throws Exception {
        for (boolean asked : new boolean[] {false, true}) {
            HeldDesk desk = new HeldDesk();
            AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
            answers.makeAhead(kept(1));
            desk.begun.await();
            if (asked) answers.jobSheet(kept(1), SheetAsk.WHOLE.at(Look.FIRST));
            answers.jobSheet(GivenDocument.of(garden(2).text(), "another"), SheetAsk.WHOLE.at(Look.FIRST));
            assertEquals(asked ? 1 : 0, answers.waitersOf(answers.jobSheetKey(kept(1), SheetAsk.WHOLE)));
            if (!asked) desk.stopped.await();
            desk.goOn.countDown();
        }
    }

    @Test
    void nothingIsMadeAheadOnceSomebodyAsked() {
        HeldDesk desk = new HeldDesk();
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        answers.jobSheet(kept(1), SheetAsk.WHOLE.at(Look.FIRST));
        assertFalse(answers.makeAhead(kept(1)), "whoever asked has the processor");
        assertFalse(answers.makeAhead(GivenDocument.of(garden(3).text(), "another")));
        assertEquals(1, desk.firstLooks.get());
        desk.goOn.countDown();
    }

    /** A place that is opened asks for one part more: what was begun for the same document goes on. */
    @Test
    void otherPartsOfTheSameGardenDropNothing() throws Exception {
        HeldDesk desk = new HeldDesk();
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        SheetAsk slip = SheetAsk.of(List.of("slip"), Optional.empty());
        answers.jobSheet(kept(1), slip.at(Look.FIRST));
        desk.begun.await();
        answers.jobSheet(kept(1), SheetAsk.of(List.of("slip", "weekends"), Optional.empty()).at(Look.FIRST));
        assertEquals(1, answers.waitersOf(answers.jobSheetKey(kept(1), slip)));
        assertEquals(1, desk.stopped.getCount());
        desk.goOn.countDown();
        assertFalse(isFirst(answers.jobSheet(kept(1), slip)));
    }

    /** The page asks for what it shows, and a place that is opened for more: all of it is of the look that was made ahead. */
    @Test
    void aGardenIsLookedAtOnceForAllPartsOfItsFirstLook() {
        HeldDesk desk = new HeldDesk();
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        answers.makeAhead(kept(1));
        for (String part : List.of("slip", "yard", "snags"))
            assertTrue(isFirst(answers.jobSheet(kept(1), SheetAsk.of(List.of(part), Optional.empty()).at(Look.FIRST))), part);
        assertEquals(1, desk.firstLooks.get());
        desk.goOn.countDown();
        assertFalse(isFirst(answers.jobSheet(kept(1), SheetAsk.WHOLE)));
        assertFalse(isFirst(answers.jobSheet(kept(1), SheetAsk.of(List.of("yard"), Optional.empty()).at(Look.FIRST))), "the whole where it is known");
    }

    @Test
    void whatIsWaitedForIsNotDroppedByTheNextLook() throws Exception {
        HeldDesk desk = new HeldDesk();
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        ExecutorService threads = Executors.newCachedThreadPool();
        try {
            answers.jobSheet(kept(1), SheetAsk.WHOLE.at(Look.FIRST));
            Future<Answer> waiting = threads.submit(() -> answers.jobSheet(kept(1), SheetAsk.WHOLE));
            while (answers.waitersOf(answers.jobSheetKey(kept(1), SheetAsk.WHOLE)) < 2) Thread.onSpinWait();
            answers.jobSheet(kept(2), SheetAsk.WHOLE.at(Look.FIRST));
            assertEquals(1, answers.waitersOf(answers.jobSheetKey(kept(1), SheetAsk.WHOLE)));
            desk.goOn.countDown();
            assertFalse(isFirst(waiting.get()));
            assertEquals(1, desk.stopped.getCount());
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void theJobSheetIsPreparedOnceForAllItsForms() throws Exception {
        AtomicInteger prepared = new AtomicInteger();
        SizesDesk desk = new SizesDesk() {
            @Override
            public PreparedGarden prepare(GivenDocument document, Function<String, Progress> progress, Look look) {
                prepared.incrementAndGet();
                return super.prepare(document, progress, look);
            }

            @Override
            public Checked check(GivenDocument document) {
                return new Checked(super.check(document).findings(), true); // as of a garden with a tally
            }
        };
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            List<Future<Answer>> all = new ArrayList<>();
            for (int i = 0; i < 8; i++) all.add(asked(threads, answers, new Caller("c" + i), i % 2 == 0 ? "slip" : "sheet"));
            for (Future<Answer> each : all) each.get();
            assertEquals(List.of(), answers.check(garden(1)));
            answers.part(garden(1), JobSheetPart.TAKE_OFF);
            assertEquals(1, prepared.get());
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void theLastJobSheetTooLargeToKeepIsThereForItsPrint() {
        AtomicInteger prepared = new AtomicInteger();
        AnswerService answers = new AnswerService(new SizesDesk() {
            @Override
            public PreparedGarden prepare(GivenDocument document, Function<String, Progress> progress, Look look) {
                prepared.incrementAndGet();
                return super.prepare(document, progress, look);
            }
        }, 2, 50, 0);
        answers.jobSheet(garden(1), SheetAsk.WHOLE);
        answers.part(garden(1), JobSheetPart.TAKE_OFF);
        assertEquals(1, prepared.get());
        answers.jobSheet(garden(2), SheetAsk.WHOLE);
        answers.jobSheet(garden(1), SheetAsk.WHOLE);
        assertEquals(3, prepared.get());
    }

    @Test
    void whatASolveThatWasStoppedHadByThenIsNotKept() throws Exception {
        AtomicInteger prepared = new AtomicInteger();
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch ended = new CountDownLatch(1);
        SizesDesk desk = new SizesDesk() {
            @Override
            public PreparedGarden prepare(GivenDocument document, Function<String, Progress> progress, Look look) {
                if (prepared.incrementAndGet() == 1) {
                    begun.countDown();
                    while (!Thread.currentThread().isInterrupted()) Thread.onSpinWait(); // as a search that ends with the best it has
                }
                return super.prepare(document, progress, look);
            }
        };
        AnswerService answers = new AnswerService(desk, 2, 50, 1 << 20);
        BooleanSupplier solve = answers.solveUnwatched("garden", garden(1).text(), 1, new AnswerService.Unwatched() {
            @Override
            public void began() {}

            @Override
            public Progress progress(String what) {
                return Progress.UNHEARD;
            }

            @Override
            public void ended(String result) {
                ended.countDown();
            }

            @Override
            public void failed(Throwable why) {
                throw new AssertionError(why);
            }
        });
        begun.await();
        assertTrue(solve.getAsBoolean());
        ended.await();
        answers.jobSheet(garden(1), SheetAsk.WHOLE);
        assertEquals(2, prepared.get(), "the whole search is made for whoever asks for it");
    }

    @Test
    void aRefusalIsNotKept() {
        AnswerService answers = new AnswerService(new SizesDesk(), 2, 50, 1 << 20);
        String bad = "{\"beds\":[{\"width\":0,\"depth\":1}]}";
        for (int i = 0; i < 2; i++)
            assertEquals(
                    1,
                    assertThrows(Refused.class, () -> answers.jobSheet(GivenDocument.of(bad), SheetAsk.WHOLE))
                            .findings()
                            .size());
        assertEquals(0, answers.figures().keptBytes());
    }

    @Test
    void eachKindScaleAndPaperIsAnOutputOfItsOwn() {
        AnswerService answers = new AnswerService(new SizesDesk(), 2, 50, 1 << 20);
        String tag = answers.print(garden(1), "plan", "svg", 1, PrintAsk.usual("1", "").onPaper(Optional.of("A3")))
                .tag();
        assertTrue(List.of(
                        answers.print(garden(1), "plan", "pdf", 1, PrintAsk.usual("1", "").onPaper(Optional.of("A3")))
                                .tag(),
                        answers.print(garden(1), "plan", "svg", 1, PrintAsk.usual("1", "").onPaper(Optional.of("A4")))
                                .tag(),
                        answers.print(garden(1), "plan", "svg", 1, PrintAsk.usual("2", "").onPaper(Optional.of("A3")))
                                .tag())
                .stream()
                .noneMatch(tag::equals));
        assertEquals(4, answers.figures().misses());
        assertEquals(
                tag,
                answers.print(garden(1), "plan", "svg", 1, PrintAsk.usual("1", "").onPaper(Optional.of("A3")))
                        .tag());
        assertEquals(1, answers.figures().hits());
    }
}
