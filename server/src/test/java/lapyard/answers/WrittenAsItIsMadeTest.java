package lapyard.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.job.Gardens;
import lapyard.json.JobSheetJson;
import lapyard.json.SheetAsk;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;
import lapyard.working.Abandonable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A job sheet goes out bed by bed: the same text as its tree has, without the tree. */
class WrittenAsItIsMadeTest {
    private static final GardenDesk DESK = new GardenDesk();

    @ParameterizedTest
    @ValueSource(strings = {"village-hall", "lock-keepers-yard", "chapel-corner"})
    void theTextIsThatOfTheTree(String sample) throws IOException {
        PreparedGarden sheet = DESK.prepare(GivenDocument.of(Gardens.text(sample)));
        String text = Forms.jobSheet(sheet);
        assertEquals(JobSheetJson.of(sheet.sheet()).toString(), text);
        JsonNode whole = new JsonMapper().readTree(text);
        for (String part : List.of("take-off", "cutting", "rolls", "slip", "snags", "order", "tally", "ground")) {
            JsonNode written = new JsonMapper().readTree(Forms.part(sheet, part));
            if (part.equals("take-off")) assertEquals(whole.get("beds"), written.get("beds"));
            else if (part.equals("order")) written.properties().forEach(one -> assertEquals(whole.get(one.getKey()), one.getValue(), one.getKey()));
            else assertEquals(whole.get(part), written, part);
        }
    }

    /** Of 60 alike beds: once the first bytes are out nobody waits any more, and hardly more is written. */
    @Test
    void itStopsBetweenBeds() throws Exception {
        String beds = IntStream.range(0, 60).mapToObj(i -> "{\"width\":2400,\"depth\":1200,\"at\":[%d,%d]}".formatted(i % 10 * 4000, i / 10 * 3000))
                .collect(Collectors.joining(","));
        PreparedGarden sheet = DESK.prepare(GivenDocument.of("{\"beds\":[" + beds + "]}"));
        Leaving thread = new Leaving(sheet);
        thread.start();
        thread.join();
        assertTrue(thread.stopped);
        assertTrue(thread.written < 0.1 * Forms.jobSheet(sheet).length(), () -> thread.written + " bytes were written");
    }

    /** Twelve beds have twelve course cards and twelve blocks of a Saw Day at least: each asks whether anybody waits. */
    @ParameterizedTest
    @ValueSource(strings = {"course-cards", "saw-day"})
    void layingOutAsksWhetherAnybodyWaits(String sheets) throws Exception {
        String beds = IntStream.range(0, 12).mapToObj(i -> "{\"width\":%d,\"depth\":1200,\"at\":[%d,%d]}".formatted(1500 + 50 * i, i % 4 * 4000, i / 4 * 3000))
                .collect(Collectors.joining(","));
        PreparedGarden sheet = DESK.prepare(GivenDocument.of("{\"beds\":[" + beds + "]}"));
        Asked thread = new Asked(() -> Prints.pages(sheets, sheet.sheet(), PrintAsk.usual("", "")));
        thread.start();
        thread.join();
        assertTrue(thread.count >= 12, () -> "asked " + thread.count + " times");
    }

    /** Counts how often its work asks whether it is wanted. */
    private static final class Asked extends Thread implements Abandonable {
        private volatile int count;

        Asked(Runnable work) {
            super(work);
        }

        @Override
        public boolean isAbandoned() {
            count++;
            return false;
        }
    }

    /** Writes a job sheet that is wanted until its first bytes are there. */
    private static final class Leaving extends Thread implements Abandonable {
        private final PreparedGarden sheet;
        private volatile int written;
        private volatile boolean stopped;

        Leaving(PreparedGarden sheet) {
            this.sheet = sheet;
        }

        @Override
        public boolean isAbandoned() {
            return written > 0;
        }

        @Override
        public void run() {
            try {
                sheet.jobSheet(SheetAsk.WHOLE, new OutputStream() {
                    @Override
                    public void write(int one) {
                        written++;
                    }

                    @Override
                    public void write(byte[] bytes, int from, int count) {
                        written += count;
                    }
                });
            } catch (Abandonable.Abandoned left) {
                stopped = true;
            } catch (IOException never) {
                throw new AssertionError(never);
            }
        }
    }
}
