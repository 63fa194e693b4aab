package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Ties;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

/** Ties and fixings of a bed, as a document gives them. */
class FixingReaderTest {
    private static final String THIN = "{\"catalogue\":{\"sections\":[{\"id\":\"38x200\",\"thickness\":38,\"height\":200}]},"
            + "\"beds\":[{\"id\":\"K\",\"width\":2000,\"depth\":1200,\"section\":\"38x200\",MORE}]}";

    private static Reading read(String more) {
        return GardenReader.read(THIN.replace("MORE", more));
    }

    private static Finding stop(String more) {
        return assertInstanceOf(Reading.Refused.class, read(more)).findings().get(0);
    }

    private static Bed bed(String more) {
        return assertInstanceOf(Reading.Read.class, read(more)).garden().beds().get(0);
    }

    /** 38 less 10 leaves 28: a fixing of 50 is 22 too long. Who names none gets 25, and 50 from 60 on. */
    @Test
    void aBracketFixingThatComesOutIsRefused() {
        Finding stop = stop("\"ties\":{\"brackets\":true,\"fixingLength\":50}");
        assertEquals("bed K, ties/fixingLength", stop.where());
        assertEquals(new Amount(22, "mm"), stop.amount().orElseThrow());
        assertTrue(Told.ways(stop).contains("Use fixings up to 28 mm"), stop.ways().toString());
        assertEquals(28, bed("\"ties\":{\"courseTies\":true,\"fixingLength\":28}").making().ties().fixingLengthMm());
        assertEquals(25, bed("\"ties\":{\"brackets\":true}").making().ties().fixingLengthMm());
        assertEquals(Ties.USUAL.withFixings(25), bed("\"food\":false").making().ties());
        assertEquals(List.of(45.0, 50.0, 50.0), Stream.of(59.0, 60.0, 100.0).map(Ties::usualFixingMm).toList());
    }

    /** Timber of 12 holds no screw of 15 with 10 behind it, 13 too long: nobody buys one of 0, and what is usual is what a document may say. */
    @Test
    void timberTooThinForAnyFixingIsRefused() throws Exception {
        Finding stop = assertInstanceOf(Reading.Refused.class, GardenReader.read(THIN.replace("38", "12").replace("MORE", "\"ties\":{\"brackets\":true}"))).findings().get(0);
        assertEquals("bed K, ties/fixingLength", stop.where());
        assertEquals(new Amount(13, "mm"), stop.amount().orElseThrow());
        assertEquals(List.of("Use timber 25 mm thick"), Told.ways(stop));
        JsonNode schema = DocumentText.MAPPER.readTree(GardenReader.class.getResource("garden.schema.json"));
        assertEquals(schema.findValue("fixingLength").path("minimum").asDouble(), Ties.usualFixingMm(12));
        assertEquals(List.of(15.0, 15.0, 20.0), Stream.of(25.0, 29.0, 30.0).map(Ties::usualFixingMm).toList());
    }

    /** 38 less 5 leaves 33. */
    @Test
    void aStapleThatComesOutIsRefused() {
        Finding stop = stop("\"liner\":{\"stapleLength\":34}");
        assertEquals("bed K, liner/stapleLength", stop.where());
        assertEquals(new Amount(1, "mm"), stop.amount().orElseThrow());
        assertEquals(33, bed("\"liner\":{\"stapleLength\":33}").inside().liner().staples().stapleLengthMm());
    }

    @Test
    void whatStandsNearIsOneOfTheWords() {
        assertEquals(Set.of("slope", "seat"), bed("\"near\":[\"slope\",\"seat\"]").siting().near());
        assertTrue(Told.text(stop("\"near\":[\"volcano\"]")).contains("volcano"));
    }
}
