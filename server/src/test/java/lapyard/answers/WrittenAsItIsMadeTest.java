package lapyard.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.job.Gardens;
import lapyard.json.JobSheetJson;
import lapyard.json.JobSheetPart;
import lapyard.json.SheetAsk;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;
import lapyard.working.Abandonable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A job sheet goes out bed by bed, and whoever makes it asks whether it is still wanted. */
class WrittenAsItIsMadeTest {
    private static final GardenDesk DESK = new GardenDesk();
    private static final JsonMapper EXACT = JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .nodeFactory(JsonNodeFactory.withExactBigDecimals(true)).configure(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES, false).build();

    @ParameterizedTest
    @ValueSource(strings = {"village-hall", "lock-keepers-yard", "chapel-corner"})
    void aPartIsAsItStandsInTheWhole(String sample) throws IOException {
        PreparedGarden sheet = DESK.prepare(GivenDocument.of(Gardens.text(sample)));
        String text = Forms.jobSheet(sheet);
        JsonNode whole = new JsonMapper().readTree(text);
        for (String part : List.of("take-off", "cutting", "rolls", "slip", "snags", "order", "tally", "ground")) {
            JsonNode written = new JsonMapper().readTree(Forms.part(sheet, part));
            if (part.equals("take-off")) assertEquals(whole.get("beds"), written.get("beds"));
            else if (part.equals("order")) written.properties().forEach(one -> assertEquals(whole.get(one.getKey()), one.getValue(), one.getKey()));
            else assertEquals(whole.get(part), written, part);
        }
    }

    /** A field to a line, and an end of the last; weekends with what staging costs, as they are by themselves. */
    @ParameterizedTest
    @ValueSource(strings = {"village-hall", "terrace-feet"})
    void aFileHoldsTheWholeAndWhatIsWorkedOutForItAlone(String sample) throws IOException {
        PreparedGarden sheet = DESK.prepare(GivenDocument.of(Gardens.text(sample)));
        ObjectNode wanted = (ObjectNode) EXACT.readTree(Forms.jobSheet(sheet));
        for (String part : List.of("weekends", "advice", "loads")) wanted.set(part, EXACT.readTree(Forms.part(sheet, part)));
        if (sheet.sheet().garden().terms().quote().given()) wanted.set("quote", EXACT.readTree(Forms.part(sheet, "quote")));
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        JobSheetJson.file(sheet.sheet(), true, file);
        assertEquals(wanted.toPrettyString() + "\n", file.toString(StandardCharsets.UTF_8));
        file.reset();
        JobSheetJson.file(sheet.sheet(), false, file);
        wanted.remove("advice");
        assertEquals(wanted.toPrettyString() + "\n", file.toString(StandardCharsets.UTF_8));
        file.reset();
        JobSheetJson.file(JobSheetPart.SLIP, sheet.sheet(), file);
        assertEquals(wanted.get("slip").toPrettyString() + "\n", file.toString(StandardCharsets.UTF_8));
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
