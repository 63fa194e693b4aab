package lapyard.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import lapyard.plan.Bed;
import lapyard.plan.BedNames;
import lapyard.plan.Garden;
import lapyard.weekends.Step;
import lapyard.working.Working;

/**
 * What the beds ask for once they stand: what, how often and when first. How often is common practice, no source, except for
 * the finish, whose years the tin says.
 *
 * @param tasks   by the day on which they are first due
 * @param unknown what has to be said before a date can be given
 */
public record CarePlan(List<Task> tasks, List<String> unknown) {
    private static final int YEAR = 12;
    /** The first months in which soil that was filled in summer has settled through a winter. */
    private static final int SPRING = 3;

    public CarePlan {
        tasks = List.copyOf(tasks);
        unknown = List.copyOf(unknown);
    }

    /**
     * @param id     the same in every plan of this garden
     * @param where  {@code beds A, B}
     * @param first  day of the plan; the first of its month in spring where {@code spring}
     * @param months from one time to the next; 0 for once
     * @param why    what it prevents
     * @param source whose figure it is
     */
    public record Task(String id, String what, String where, int first, boolean spring, int months, String why, String source) {
        /** @param start the first day of work */
        public LocalDate date(LocalDate start) {
            LocalDate date = start.plusDays(first);
            if (!spring) return date;
            LocalDate march = LocalDate.of(date.getYear(), SPRING, 1);
            return march.isAfter(date) ? march : march.plusYears(1);
        }

        /** {@code every 2 years}. */
        public String often() {
            if (months == 0) return "once";
            return months == YEAR ? "every year" : months % YEAR == 0 ? "every " + months / YEAR + " years" : "every " + months + " months";
        }
    }

    public static CarePlan of(JobSheet sheet) {
        Garden garden = sheet.garden();
        List<String> all = garden.beds().stream().map(Bed::id).toList();
        List<Task> tasks = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        if (all.isEmpty()) return new CarePlan(tasks, unknown);
        int end = garden.beds().stream().mapToInt(bed -> lastOf(sheet, bed, Step.PLANT).orElse(lastOf(sheet, bed, Step.FILL).orElse(sheet.weekends().lastDay()))).max().orElse(0);
        byDay(garden.beds(), bed -> lastOf(sheet, bed, Step.TOP_UP)).forEach((day, beds) -> tasks.add(new Task("top-up-first-" + beds.get(0), "Top up the soil, then the mulch", BedNames.where(beds), day,
                false, 0, "fresh soil sinks in its first weeks", Working.COMMON_PRACTICE)));
        tasks.add(new Task("top-up", "Top up the soil and renew the mulch", BedNames.where(all), end, true, YEAR, "soil sinks and mulch rots", Working.COMMON_PRACTICE));
        List<Bed> finished = garden.beds().stream().filter(bed -> bed.making().finish().wanted()).toList();
        OptionalInt years = garden.people().handOver().finishYears();
        if (!finished.isEmpty() && years.isEmpty()) {
            unknown.add("Nobody has said how many years the finish lasts: look on the tin, and enter it under Hand-over. No date for the next coat stands here until then.");
        } else if (!finished.isEmpty()) {
            byDay(finished, bed -> lastOf(sheet, bed, Step.COAT)).forEach((day, beds) -> tasks.add(new Task("coat-" + beds.get(0), "Clean the walls and give them a coat of the same finish", BedNames.where(beds),
                    day, false, years.getAsInt() * YEAR, "a worn finish lets water in", "the tin, as entered")));
        }
        tasks.add(new Task("fixings", "Tighten screws, brackets and ties; look for walls that lean or bow", BedNames.where(all), end, true, YEAR, "timber shrinks and moves round its fixings", Working.COMMON_PRACTICE));
        List<String> sealed = garden.beds().stream().filter(bed -> bed.making().seal().wanted()).map(Bed::id).toList();
        if (!sealed.isEmpty()) tasks.add(new Task("seal", "Look at cut ends and notches; seal what has opened", BedNames.where(sealed), end, true, YEAR, "rot starts at cut ends", Working.COMMON_PRACTICE));
        List<String> lined = garden.beds().stream().filter(bed -> !bed.inside().liner().material().isEmpty()).map(Bed::id).toList();
        if (!lined.isEmpty())
            tasks.add(new Task("liner", "Look at the liner's edge below the rim, and clear the drain notches", BedNames.where(lined), end, true, YEAR, "water that stands in a bed rots it", Working.COMMON_PRACTICE));
        LocalDate any = garden.people().crew().dates().start().orElse(LocalDate.of(2001, 1, 1));
        tasks.sort(java.util.Comparator.comparing((Task task) -> due(task, any)));
        return new CarePlan(tasks, unknown);
    }

    /** When it is due for the first time: a coat only after its years. */
    public static LocalDate due(Task task, LocalDate start) {
        LocalDate date = task.date(start);
        return task.id().startsWith("coat-") ? date.plusMonths(task.months()) : date;
    }

    private static Map<Integer, List<String>> byDay(List<Bed> beds, Function<Bed, OptionalInt> day) {
        Map<Integer, List<String>> days = new LinkedHashMap<>();
        beds.forEach(bed -> day.apply(bed).ifPresent(at -> days.computeIfAbsent(at, key -> new ArrayList<>()).add(bed.id())));
        return days;
    }

    /** The day on which the last task of a step was done, as tallied, else as planned. */
    private static OptionalInt lastOf(JobSheet sheet, Bed bed, Step step) {
        Map<String, Integer> done = sheet.garden().people().tally().doneOn();
        return sheet.weekends().tasks().stream()
                .filter(task -> task.work().step() == step && task.work().bed().equals(bed.id()))
                .mapToInt(task -> Optional.ofNullable(done.get(task.work().id())).orElse(task.lastDay()))
                .max();
    }
}
