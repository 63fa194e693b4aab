package lapyard.weekends;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.Temporal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.Uid;
import org.junit.jupiter.api.Test;

/** The calendar file read back by ical4j 4.4, a reader that is not the writer's. */
class WeekendsIcsTest {
    private static final String BEDS = "\"beds\":[{\"id\":\"M\",\"width\":3000,\"depth\":2400},{\"id\":\"N\",\"width\":1800,\"depth\":900,\"at\":[4000,0]}]";

    private static String text(String crew, int revision) {
        JobSheet sheet = Gardens.sheet("{" + BEDS + ",\"crew\":{" + crew + "}}");
        return WeekendsIcs.write(sheet.weekends(), sheet.garden().people().crew(), List.of(new WeekendsIcs.BuyBy("timber-100x200", "timber, 7 boards", 0)),
                new WeekendsIcs.Stamp("hall", "Hall; north, back", Instant.parse("2027-01-02T03:04:05Z"), revision, LocalDate.of(2027, 5, 1)));
    }

    private static Map<String, VEvent> events(String text) throws Exception {
        Calendar calendar = new CalendarBuilder().build(new StringReader(text));
        calendar.validate();
        Map<String, VEvent> events = new TreeMap<>();
        for (Object component : calendar.getComponents(Component.VEVENT)) {
            VEvent event = (VEvent) component;
            assertTrue(events.put(event.getUid().map(Uid::getValue).orElseThrow(), event) == null, "a UID stands twice");
        }
        return events;
    }

    /** In 2027 clocks in London go forward on 28 March: 9 o'clock is 9:00 UTC on the 27th and 8:00 UTC on the 28th. */
    @Test
    void nineOClockStaysNineOClockAcrossTheClockChange() throws Exception {
        Map<String, VEvent> events = events(text("\"start\":\"2027-03-27\",\"zone\":\"Europe/London\"", 1));
        assertEquals(Instant.parse("2027-03-27T09:00:00Z"), start(events.get("work-day-1.hall@lapyard")));
        assertEquals(Instant.parse("2027-03-28T08:00:00Z"), start(events.get("work-day-2.hall@lapyard")));
    }

    private static Instant start(VEvent event) {
        Temporal at = event.<DtStart<Temporal>>getProperty("DTSTART").orElseThrow().getDate();
        return ZonedDateTime.from(at).toInstant();
    }

    @Test
    void theZoneIsWrittenIntoTheFile() throws Exception {
        String text = text("\"start\":\"2027-03-27\",\"zone\":\"Europe/London\"", 1);
        assertTrue(text.contains("BEGIN:VTIMEZONE") && text.contains("TZID:Europe/London"), text);
        assertTrue(text.contains("DTSTART;TZID=Europe/London:20270328T090000"), text);
        assertEquals(ZoneId.of("Europe/London").getRules().getOffset(Instant.parse("2027-04-01T00:00:00Z")).getTotalSeconds(), 3600);
    }

    @Test
    void aSecondFileReplacesTheEventsOfTheFirst() throws Exception {
        Map<String, VEvent> first = events(text("\"start\":\"2027-03-06\"", 1));
        Map<String, VEvent> moved = events(text("\"start\":\"2027-03-13\"", 2));
        assertEquals(first.keySet(), moved.keySet());
        assertTrue(moved.values().stream().allMatch(event -> event.getSequence().getSequenceNo() == 2));
    }

    @Test
    void withoutAZoneTimesAreThoseOfWhereverOneIs() {
        String text = text("\"start\":\"2027-03-06\"", 1);
        assertTrue(text.contains("DTSTART:20270306T090000\r\n"), text);
        assertFalse(text.contains("VTIMEZONE"), text);
    }

    @Test
    void withoutAFirstDayTheAssumedOneIsTaken() {
        assertTrue(text("", 1).contains("DTSTART:20270501T090000"));
    }

    @Test
    void whatIsToBeOrderedStandsAsAWholeDay() {
        String text = text("\"start\":\"2027-03-06\"", 1);
        assertTrue(text.contains("DTSTART;VALUE=DATE:20270306"), text);
        assertTrue(text.contains("Hall\\; north\\, back"), text);
    }

    @Test
    void noLineIsLongerThan75Octets() {
        text("\"start\":\"2027-03-27\",\"zone\":\"Europe/London\"", 1).lines()
                .forEach(line -> assertTrue(line.getBytes(java.nio.charset.StandardCharsets.UTF_8).length <= 75, line));
    }
}
