package lapyard.job;

import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.property.Transparency;
import biweekly.util.Frequency;
import biweekly.util.Recurrence;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import lapyard.plan.Crew;
import lapyard.weekends.WeekendsIcs;

/** A job sheet's weekends and order days as a calendar file. */
public final class BuildingCalendar {
    private BuildingCalendar() {}

    /**
     * @param id       what the events are known by when a later file replaces this one
     * @param made     where the garden names no first day of work, work begins on the next working day after this
     * @param revision grows from file to file
     */
    public static String ics(JobSheet sheet, String id, Instant made, int revision) {
        Crew crew = sheet.garden().people().crew();
        LocalDate assumed = assumed(sheet, made);
        List<WeekendsIcs.BuyBy> orders = Buying.first(Buying.of(sheet).rows(), Buying.Row::orderDay).values().stream()
                .map(row -> new WeekendsIcs.BuyBy(row.item().replaceAll("[^\\p{L}\\p{N}]+", "-"), row.label(), row.orderDay())).toList();
        return WeekendsIcs.write(sheet.weekends(), crew, orders, new WeekendsIcs.Stamp(id, sheet.garden().name(), made, revision, assumed));
    }

    /** What the beds ask for once they stand; parameters as above. */
    public static String care(JobSheet sheet, String id, Instant made, int revision) {
        LocalDate start = sheet.garden().people().crew().dates().start().orElse(assumed(sheet, made));
        return care(CarePlan.of(sheet).tasks(), new WeekendsIcs.Stamp(id, sheet.garden().name(), made, revision, start));
    }

    /** As RFC 5545 text: a whole day each, again after so many months. @param stamp its assumed start is the first day of work */
    static String care(List<CarePlan.Task> tasks, WeekendsIcs.Stamp stamp) {
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

    private static LocalDate assumed(JobSheet sheet, Instant made) {
        Crew crew = sheet.garden().people().crew();
        ZoneId zone = crew.dates().zone().isEmpty() ? ZoneOffset.UTC : ZoneId.of(crew.dates().zone());
        LocalDate assumed = LocalDate.ofInstant(made, zone).plusDays(1);
        // without dates the plan counts from a Saturday where that is a working day
        while (!assumed.getDayOfWeek().equals(sheet.weekends().days().isEmpty() ? assumed.getDayOfWeek()
                : sheet.weekends().days().get(0).dayOfWeek().minus(sheet.weekends().days().get(0).number()))) {
            assumed = assumed.plusDays(1);
        }
        return assumed;
    }
}
