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
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import lapyard.job.BuildingCalendar;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.component.Observance;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.component.VTimeZone;
import net.fortuna.ical4j.model.property.DtEnd;
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

    /** Goods may be named in any letters: each has an event of its own. */
    @Test
    void whatIsToOrderInOtherLettersIsNotOneEvent() throws Exception {
        JobSheet sheet = Gardens.sheet("{" + BEDS + ",\"defaults\":{\"fill\":{\"layers\":[{\"material\":\"земля\",\"share\":60},{\"material\":\"торф\",\"share\":40}]}}}");
        Map<String, VEvent> events = events(BuildingCalendar.ics(sheet, "hall", Instant.parse("2027-01-02T03:04:05Z"), 1));
        assertTrue(events.keySet().containsAll(List.of("order-земля.hall@lapyard", "order-торф.hall@lapyard", "order-timber-100x200.hall@lapyard")), events.keySet().toString());
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

    /**
     * Against the plan that is written: each event begins with the first part of its day and ends with the last, names each place
     * once and four at most, and tells every part with its clock time.
     */
    @Test
    void eachEventTellsItsDayOfThePlan() throws Exception {
        String six = "{\"beds\":[" + java.util.stream.IntStream.range(0, 6).mapToObj(i -> "{\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[%d,0]}".formatted(3000 * i))
                .collect(java.util.stream.Collectors.joining(",")) + "],\"crew\":{\"start\":\"2027-03-06\",\"zone\":\"Asia/Kolkata\",\"hours\":%d}}";
        TreeSet<Integer> placesADay = new TreeSet<>();
        boolean broken = false;
        for (int hours : new int[] {2, 6, 10}) {
            JobSheet sheet = Gardens.sheet(six.formatted(hours));
            Map<String, VEvent> events = events(WeekendsIcs.write(sheet.weekends(), sheet.garden().people().crew(), List.of(),
                    new WeekendsIcs.Stamp("g", "G", Instant.parse("2027-01-02T03:04:05Z"), 1, LocalDate.of(2027, 5, 1))));
            for (Weekends.Day day : sheet.weekends().days()) {
                VEvent event = events.remove("work-day-" + (day.number() + 1) + ".g@lapyard");
                assertEquals(!day.parts().isEmpty(), event != null, "day " + day.number());
                if (event == null) continue;
                placesADay.add(tells(event, day, sheet.weekends().byId()));
                broken |= day.parts().stream().anyMatch(part -> part.of() > 1);
            }
            assertEquals(Map.of(), events);
        }
        assertTrue(placesADay.containsAll(List.of(1, 4, 5)) && broken, "places a day " + placesADay + ", broken tasks " + broken);
    }

    /** Returns the number of places of the day. */
    private static int tells(VEvent event, Weekends.Day day, Map<String, Weekends.Task> tasks) {
        int from = Integer.MAX_VALUE;
        int to = 0;
        List<String> places = new ArrayList<>();
        StringBuilder told = new StringBuilder();
        for (Weekends.Part part : day.parts()) {
            GardenTask work = tasks.get(part.task()).work();
            from = Math.min(from, part.fromMinute());
            to = Math.max(to, part.toMinute());
            if (!places.contains(work.place())) places.add(work.place());
            told.append("%02d:%02d %s: %s".formatted(9 + part.fromMinute() / 60, part.fromMinute() % 60, work.place(), work.label()));
            if (part.of() != 1) told.append(", part ").append(part.number()).append(" of ").append(part.of());
            told.append('\n');
        }
        // 9 o'clock in Kolkata is 3:30 UTC
        Instant nine = Instant.parse(day.date().orElseThrow() + "T03:30:00Z");
        assertEquals(nine.plusSeconds(60L * from), start(event));
        assertEquals(nine.plusSeconds(60L * to), ZonedDateTime.from(event.<DtEnd<Temporal>>getProperty("DTEND").orElseThrow().getDate()).toInstant());
        String named = places.size() <= 4 ? String.join(", ", places) : String.join(", ", places.subList(0, 4)) + " and " + (places.size() - 4) + " more";
        assertEquals("G, weekend " + day.weekend() + ": " + named, event.getProperty("SUMMARY").orElseThrow().getValue());
        assertEquals(told + "Who: " + String.join(", ", day.people()), event.getProperty("DESCRIPTION").orElseThrow().getValue());
        return places.size();
    }

    /**
     * A time zone has at least one observance (RFC 5545, 3.6.5), though India has not moved its clocks since 1945; London's summer is
     * daylight time, an hour ahead (IANA time zone database).
     */
    @Test
    void aZoneHasItsOffsetsUnderTheirNames() throws Exception {
        String india = text("\"start\":\"2027-03-27\",\"zone\":\"Asia/Kolkata\"", 1);
        assertTrue(india.contains("BEGIN:STANDARD") && india.contains("TZOFFSETTO:+0530") && !india.contains("BEGIN:DAYLIGHT"), india);
        Calendar london = new CalendarBuilder().build(new StringReader(text("\"start\":\"2027-03-27\",\"zone\":\"Europe/London\"", 1)));
        VTimeZone zone = london.<VTimeZone>getComponent(Component.VTIMEZONE).orElseThrow();
        for (Observance one : zone.getObservances()) {
            assertEquals(one.getName().equals("DAYLIGHT") ? 3600 : 0, one.getTimeZoneOffsetTo().getOffset().getTotalSeconds(), one.toString());
        }
        // from March 2026 to March 2028: winter as it begins, and at least two clock changes a year
        assertTrue(zone.getObservances().size() >= 4, zone.toString());
        String text = text("\"start\":\"2027-03-27\"", 1);
        assertTrue(text.contains("METHOD:PUBLISH") && text.contains("VERSION:2.0") && text.contains("TRANSP:TRANSPARENT"), text);
    }
}
