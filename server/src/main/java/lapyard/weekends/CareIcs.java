package lapyard.weekends;

import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.property.Transparency;
import biweekly.util.Frequency;
import biweekly.util.Recurrence;
import java.time.LocalDate;
import java.util.List;

/** What the beds ask for once they stand, as RFC 5545 text: a whole day each, again after so many months. */
public final class CareIcs {
    /** @param months from one time to the next; 0 for once */
    public record Care(String id, String summary, String description, LocalDate first, int months) {}

    private CareIcs() {}

    public static String write(List<Care> tasks, WeekendsIcs.Stamp stamp) {
        ICalendar calendar = WeekendsIcs.calendar("Care", stamp);
        calendar.getTimezoneInfo().setGlobalFloatingTime(true);
        for (Care task : tasks) {
            VEvent event = WeekendsIcs.stamped("care-" + task.id(), stamp);
            event.setDateStart(WeekendsIcs.wholeDay(task.first()));
            event.setSummary(stamp.gardenName() + ": " + task.summary());
            event.setDescription(task.description());
            event.setTransparency(Transparency.transparent());
            if (task.months() % 12 == 0 && task.months() > 0) event.setRecurrenceRule(new Recurrence.Builder(Frequency.YEARLY).interval(task.months() / 12).build());
            else if (task.months() > 0) event.setRecurrenceRule(new Recurrence.Builder(Frequency.MONTHLY).interval(task.months()).build());
            calendar.addEvent(event);
        }
        return WeekendsIcs.text(calendar);
    }
}
