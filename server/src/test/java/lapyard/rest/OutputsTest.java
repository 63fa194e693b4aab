package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import lapyard.prints.PrintAsk;
import org.junit.jupiter.api.Test;

class OutputsTest {
    private static String garden(int number) {
        return "{\"name\":\"garden " + number + " " + "x".repeat(1000) + "\",\"beds\":[]}";
    }

    @Test
    void theLeastLatelyUsedGoFirstAndTheBytesStayUnderTheLimit() {
        SizesDesk desk = new SizesDesk();
        Outputs outputs = new Outputs(desk, 5 * 1100, new Turns(2, 50, 60_000)); // each job sheet repeats the name: a little over 1000 bytes
        for (int i = 0; i < 5; i++) outputs.jobSheet(garden(i));
        outputs.jobSheet(garden(0));
        assertEquals(5, desk.made.get());
        outputs.jobSheet(garden(5)); // drops 1, as 0 was used since
        outputs.jobSheet(garden(0));
        assertEquals(6, desk.made.get());
        outputs.jobSheet(garden(1));
        assertEquals(7, desk.made.get());
        for (int i = 0; i < 50; i++) outputs.jobSheet(garden(i));
        assertTrue(outputs.bytes() <= 5 * 1100, () -> outputs.bytes() + " bytes");
    }

    @Test
    void whatManyAskForAtOnceIsMadeOnce() throws Exception {
        SizesDesk desk = new SizesDesk();
        Outputs outputs = new Outputs(desk, 1 << 20, new Turns(2, 50, 60_000));
        ExecutorService threads = Executors.newFixedThreadPool(16);
        try {
            CountDownLatch together = new CountDownLatch(16);
            List<Future<Output>> all = new ArrayList<>();
            for (int i = 0; i < 16; i++)
                all.add(threads.submit(() -> {
                    together.countDown();
                    together.await();
                    return outputs.jobSheet(garden(1));
                }));
            String tag = all.get(0).get().tag();
            for (Future<Output> each : all) assertEquals(tag, each.get().tag());
            assertEquals(1, desk.made.get());
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void aRefusalIsNotKept() {
        Outputs outputs = new Outputs(new SizesDesk(), 1 << 20, new Turns(2, 50, 60_000));
        String bad = "{\"beds\":[{\"width\":0,\"depth\":1}]}";
        for (int i = 0; i < 2; i++)
            assertEquals(
                    1,
                    assertThrows(Desk.Refused.class, () -> outputs.jobSheet(bad))
                            .findings()
                            .size());
        assertEquals(0, outputs.bytes());
    }

    @Test
    void eachKindScaleAndPaperIsAnOutputOfItsOwn() {
        Outputs outputs = new Outputs(new SizesDesk(), 1 << 20, new Turns(2, 50, 60_000));
        String tag = outputs.print(garden(1), "plan", "svg", 1, PrintAsk.usual("1", "").onPaper(Optional.of("A3")))
                .tag();
        assertTrue(List.of(
                        outputs.print(garden(1), "plan", "pdf", 1, PrintAsk.usual("1", "").onPaper(Optional.of("A3")))
                                .tag(),
                        outputs.print(garden(1), "plan", "svg", 1, PrintAsk.usual("1", "").onPaper(Optional.of("A4")))
                                .tag(),
                        outputs.print(garden(1), "plan", "svg", 1, PrintAsk.usual("2", "").onPaper(Optional.of("A3")))
                                .tag())
                .stream()
                .noneMatch(tag::equals));
        assertEquals(4, outputs.misses.sum());
        assertEquals(
                tag,
                outputs.print(garden(1), "plan", "svg", 1, PrintAsk.usual("1", "").onPaper(Optional.of("A3")))
                        .tag());
        assertEquals(1, outputs.hits.sum());
    }
}
