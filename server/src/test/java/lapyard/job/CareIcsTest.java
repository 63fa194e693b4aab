package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;
import lapyard.weekends.WeekendsIcs;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.RRule;
import net.fortuna.ical4j.model.property.Summary;
import org.junit.jupiter.api.Test;

/** The calendar of care read back by ical4j 4.4, which also counts its days out (RFC 5545, 3.3.10). */
class CareIcsTest {
    private static final LocalDate FIRST = LocalDate.of(2027, 4, 15);

    private static String text() {
        return BuildingCalendar.care(
                List.of(task("once", "top up", "soil settles", 0),
                        task("monthly", "water", "in dry weeks", 1),
                        task("half", "look at the corners", "each screw", 6),
                        task("yearly", "mulch", "50 mm", 12),
                        task("eighteen", "oil the rim", "one coat", 18),
                        task("coat", "coat", "both faces", 24)),
                new WeekendsIcs.Stamp("hall", "Hall", Instant.parse("2027-01-02T03:04:05Z"), 3, FIRST));
    }

    private static CarePlan.Task task(String id, String what, String why, int months) {
        return new CarePlan.Task(id, what, "bed A", 0, false, months, why, "none");
    }

    private static TreeMap<String, VEvent> events(String text) throws Exception {
        Calendar calendar = new CalendarBuilder().build(new StringReader(text));
        calendar.validate();
        TreeMap<String, VEvent> events = new TreeMap<>();
        for (Object component : calendar.getComponents(Component.VEVENT)) {
            VEvent event = (VEvent) component;
            assertEquals(null, events.put(event.getUid().orElseThrow().getValue(), event), "a UID stands twice");
        }
        return events;
    }

    /** To the end of 2030: each task on the days that its months say, counted one by one. */
    @Test
    void eachTaskComesBackAfterItsMonths() throws Exception {
        TreeMap<String, VEvent> events = events(text());
        assertEquals(List.of("care-coat.hall@lapyard", "care-eighteen.hall@lapyard", "care-half.hall@lapyard", "care-monthly.hall@lapyard",
                "care-once.hall@lapyard", "care-yearly.hall@lapyard"), List.copyOf(events.keySet()));
        LocalDate end = LocalDate.of(2030, 12, 31);
        for (List<Object> one : List.<List<Object>>of(List.of("monthly", 1), List.of("half", 6), List.of("yearly", 12), List.of("eighteen", 18), List.of("coat", 24))) {
            VEvent event = events.get("care-" + one.get(0) + ".hall@lapyard");
            assertEquals(FIRST, event.<DtStart<LocalDate>>getProperty("DTSTART").orElseThrow().getDate());
            List<LocalDate> told = event.<RRule<LocalDate>>getProperty("RRULE").orElseThrow().getRecur().getDates(FIRST, FIRST, end);
            List<LocalDate> counted = FIRST.datesUntil(end).filter(day -> day.getDayOfMonth() == 15
                    && ((day.getYear() - 2027) * 12 + day.getMonthValue() - 4) % (int) one.get(1) == 0).toList();
            assertEquals(counted, told, one.toString());
        }
        assertFalse(events.get("care-once.hall@lapyard").getProperty("RRULE").isPresent(), "once is once");
    }

    /** RFC 5545: version 2.0 (3.7.4), published (RFC 5546, 1.4), whole days that leave one free (3.8.2.7), without a time zone. */
    @Test
    void careIsPublishedAsWholeDaysThatLeaveOneFree() throws Exception {
        String text = text();
        assertEquals(1, text.lines().filter("VERSION:2.0"::equals).count(), text);
        assertEquals(1, text.lines().filter("METHOD:PUBLISH"::equals).count(), text);
        assertEquals(6, text.lines().filter("DTSTART;VALUE=DATE:20270415"::equals).count(), text);
        assertFalse(text.contains("VTIMEZONE"), text);
        for (VEvent event : events(text).values()) {
            assertEquals("TRANSPARENT", event.getTransparency().orElseThrow().getValue());
            assertTrue(event.<Summary>getProperty("SUMMARY").orElseThrow().getValue().startsWith("Hall: "));
            assertEquals(3, event.getSequence().getSequenceNo());
        }
    }
}
