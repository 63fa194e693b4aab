package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import lapyard.drawing.Page;
import lapyard.drawing.PdfWriter;
import org.junit.jupiter.api.Test;

/** Pages are painted beside whoever lays them out, who hears of what goes wrong. */
class PainterTest {
    private static Page page(int width) {
        return new Page("page", width, 100, List.of(), List.of());
    }

    /** So many bytes, then no more. */
    private static OutputStream full(int most) {
        return new OutputStream() {
            private int left = most;

            @Override
            public void write(int one) throws IOException {
                if (left-- <= 0) throw new IOException("the disk is full");
            }
        };
    }

    /** It has nothing left to do, so it needs a moment at most. */
    private static void assertThreadEnds() throws InterruptedException {
        for (Thread thread : Thread.getAllStackTraces().keySet()) {
            if (!thread.getName().equals("lapyard-paint")) continue;
            thread.join(60_000);
            assertFalse(thread.isAlive());
        }
    }

    @Test
    void pagesArePaintedInTheOrderInWhichTheyCome() throws IOException, InterruptedException {
        int count = 60;
        List<CompletableFuture<PdfWriter.Painted>> painted = new ArrayList<>();
        try (Painter painter = new Painter(new PdfWriter(new ByteArrayOutputStream(), "set"))) {
            for (int i = 1; i <= count; i++) painted.add(painter.paint(page(i)));
            painter.awaitAll();
            assertEquals(IntStream.rangeClosed(1, count).mapToObj(i -> (double) i).toList(), painted.stream().map(one -> one.join().widthMm()).toList());
        }
        assertThreadEnds();
    }

    @Test
    void whatCannotBeWrittenIsToldToWhoeverLaysOut() throws InterruptedException {
        IOException told = assertThrows(IOException.class, () -> {
            try (Painter painter = new Painter(new PdfWriter(full(1500), "set"))) {
                for (int i = 1; i <= 60; i++) painter.paint(page(i));
                painter.awaitAll();
            }
        });
        assertEquals("the disk is full", told.getMessage());
        assertThreadEnds();
    }

    @Test
    void anInterruptLosesNoPageAndIsStillThereAfterwards() throws IOException {
        try (Painter painter = new Painter(new PdfWriter(new ByteArrayOutputStream(), "set"))) {
            Thread.currentThread().interrupt();
            List<CompletableFuture<PdfWriter.Painted>> painted = new ArrayList<>();
            for (int i = 1; i <= 30; i++) painted.add(painter.paint(page(i)));
            painter.awaitAll();
            assertTrue(Thread.interrupted());
            assertEquals(30.0, painted.get(29).join().widthMm());
        }
    }

    @Test
    void whatIsDroppedEndsItsThread() throws IOException, InterruptedException {
        try (Painter painter = new Painter(new PdfWriter(new ByteArrayOutputStream(), "set"))) {
            painter.paint(page(100));
        }
        assertThreadEnds();
    }
}
