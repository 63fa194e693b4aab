package lapyard.job;

import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.property.Transparency;
import biweekly.util.Frequency;
import biweekly.util.Recurrence;
import java.util.List;
import lapyard.weekends.WeekendsIcs;

/** What the beds ask for once they stand, as RFC 5545 text: a whole day each, again after so many months. */
final class CareIcs {
    private CareIcs() {}

    /** @param stamp its assumed start is the first day of work */
    static String write(List<CarePlan.Task> tasks, WeekendsIcs.Stamp stamp) {
        ICalendar calendar = WeekendsIcs.calendar("Care", stamp);
        calendar.getTimezoneInfo().setGlobalFloatingTime(true);
        for (CarePlan.Task task : tasks) {
            VEvent event = WeekendsIcs.stamped("care-" + task.id(), stamp);
            event.setDateStart(WeekendsIcs.wholeDay(CarePlan.due(task, stamp.assumedStart())));
            event.setSummary(stamp.gardenName() + ": " + task.what() + ", " + task.where());
            event.setDescription("Why: " + task.why() + ". How often: " + task.often() + " (" + task.source() + ").");
            event.setTransparency(Transparency.transparent());
            if (task.months() % 12 == 0 && task.months() > 0) event.setRecurrenceRule(new Recurrence.Builder(Frequency.YEARLY).interval(task.months() / 12).build());
            else if (task.months() > 0) event.setRecurrenceRule(new Recurrence.Builder(Frequency.MONTHLY).interval(task.months()).build());
            calendar.addEvent(event);
        }
        return WeekendsIcs.text(calendar);
    }
}
