package lapyard.json;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lapyard.job.Buying;
import lapyard.job.JobSheet;
import lapyard.job.StagingCost;
import lapyard.json.Wire.IfGiven;
import lapyard.json.Wire.To;
import lapyard.plan.Crew;
import lapyard.plan.Rate;
import lapyard.weekends.GardenTask;
import lapyard.weekends.Weekends;

/** The wire form of the weekends: days count from 0, minutes from the beginning of a day. */
final class WeekendsJson {
    private WeekendsJson() {}

    private record Whole(boolean described, Optional<LocalDate> start, String zone, LocalTime from, @To(2) double hours,
            @To(2) double load, int lastDay, int endDay, int leastDay, List<Weekends.Day> days, List<Task> tasks,
            List<Weekends.Wait> waits, int drops, List<Row> buying, List<Minutes> rates,
            @IfGiven Optional<List<StagingCost.Way>> cost) {}

    private record Task(String id, String place, String bed, String step, String label, @To(1) double minutes, int people,
            boolean lifts, boolean dry, int firstDay, int lastDay, boolean done, List<GardenTask.After> after, List<String> marks,
            List<String> loads, List<String> cautions) {}

    private record Row(int weekend, int needDay, int orderDay, @IfGiven Optional<LocalDate> needBy,
            @IfGiven Optional<LocalDate> orderBy, String item, String label, @To(3) double amount,
            String unit, Map<String, Integer> boards, Map<String, Integer> packs) {}

    private record Minutes(String rate, @To(2) double minutes, String per) {}

    /** @param cost of staging, which takes longer to work out than all the rest */
    static Record shape(JobSheet sheet, Optional<List<StagingCost.Way>> cost) {
        Weekends weekends = sheet.weekends();
        Crew crew = sheet.garden().people().crew();
        Crew.Dates dates = crew.dates();
        Buying buying = Buying.of(sheet);
        return new Whole(
                crew.described(), dates.start(), dates.zone(), dates.from(), dates.hours(), weekends.loadHours(),
                weekends.lastDay(), weekends.endDay(), weekends.leastDay(),
                weekends.days(),
                weekends.tasks().stream().map(WeekendsJson::task).toList(),
                weekends.waits(),
                buying.drops(),
                buying.rows().stream().map(row -> row(row, dates.start())).toList(),
                Stream.of(Rate.values()).map(rate -> new Minutes(rate.field, crew.minutes(rate), rate.per)).toList(), cost);
    }

    private static Task task(Weekends.Task task) {
        GardenTask work = task.work();
        return new Task(
                work.id(), work.place(), work.bed(), work.step().code(work.number()), work.label(), work.minutes(), work.people(), work.lifts(),
                work.dry(), task.firstDay(), task.lastDay(), task.done(), work.after(), work.marks(), work.loads(), work.cautions());
    }

    private static Row row(Buying.Row row, Optional<LocalDate> start) {
        return new Row(
                row.weekend(), row.needDay(), row.orderDay(), start.map(day -> day.plusDays(row.needDay())),
                start.map(day -> day.plusDays(row.orderDay())), row.item(), row.label(), row.amount(), row.unit(), row.boards(),
                row.packs());
    }
}
