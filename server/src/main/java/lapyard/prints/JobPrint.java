package lapyard.prints;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lapyard.catalogue.PackCode;
import lapyard.diagrams.DaySheets;
import lapyard.diagrams.JobPage;
import lapyard.drawing.Page;
import lapyard.job.Buying;
import lapyard.job.JobSheet;
import lapyard.plan.BedNames;
import lapyard.weekends.GardenTask;
import lapyard.weekends.Weekends;
import lapyard.working.DayNames;

/** The job on one page and weekend by weekend, made of a job sheet. */
final class JobPrint {
    private static final String MARK = "mark";
    private static final String COURSE_1 = "course 1";

    private JobPrint() {}

    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        return JobPage.pages(job(sheet), ask.bench(sheet));
    }

    static List<Page> weekends(JobSheet sheet, PrintAsk ask) {
        return DaySheets.pages(sheet.weekends(), sheet.garden().people().crew(), Warned.beds(sheet), goodsByWeekend(sheet), ask.bench(sheet));
    }

    static JobPage.Job job(JobSheet sheet) {
        Weekends weekends = sheet.weekends();
        Map<String, Weekends.Task> tasks = weekends.byId();
        Map<Integer, List<Weekends.Day>> days = new TreeMap<>();
        for (Weekends.Day day : weekends.days()) {
            if (!day.parts().isEmpty()) days.computeIfAbsent(day.weekend(), weekend -> new ArrayList<>()).add(day);
        }
        List<Integer> numbers = List.copyOf(days.keySet());
        Map<Integer, List<Buying.Row>> goods = Buying.of(sheet).rows().stream()
                .filter(row -> !row.packs().isEmpty())
                .collect(Collectors.groupingBy(Buying.Row::weekend, TreeMap::new, Collectors.toList()));
        List<JobPage.Weekend> across = new ArrayList<>();
        days.forEach((number, some) -> {
            List<Buying.Row> come = goods.getOrDefault(number, List.of());
            across.add(new JobPage.Weekend(
                    String.valueOf(number), dates(some), there(some),
                    waits(weekends, tasks, some.get(some.size() - 1)), orderBy(sheet, come),
                    come.stream().map(Buying.Row::label).distinct().collect(Collectors.joining(", "))));
        });
        return new JobPage.Job(across, rows(sheet, tasks, days, numbers));
    }

    /** Places at which the same is done in the same weekends share a row. */
    private static List<JobPage.Row> rows(JobSheet sheet, Map<String, Weekends.Task> tasks, Map<Integer, List<Weekends.Day>> days, List<Integer> numbers) {
        Map<String, SortedMap<Integer, Map<Integer, String>>> places = new LinkedHashMap<>();
        places.put("saw", new TreeMap<>());
        sheet.beds().forEach(bed -> places.put("bed " + bed.work().bed().id(), new TreeMap<>()));
        for (int i = 0; i < numbers.size(); i++) {
            for (Weekends.Day day : days.get(numbers.get(i))) {
                for (Weekends.Part part : day.parts()) {
                    GardenTask task = tasks.get(part.task()).work();
                    // of one weekend in the order of the steps
                    places.computeIfAbsent(task.place(), place -> new TreeMap<>()).computeIfAbsent(i, weekend -> new TreeMap<>())
                            .put(task.step().ordinal() * 100 + task.number(), words(task));
                }
            }
        }
        Map<SortedMap<Integer, String>, List<String>> alike = new LinkedHashMap<>();
        places.forEach((place, weekends) -> {
            SortedMap<Integer, String> cells = new TreeMap<>();
            weekends.forEach((weekend, steps) -> cells.put(weekend, told(steps.values())));
            alike.computeIfAbsent(cells, key -> new ArrayList<>()).add(place);
        });
        return alike.entrySet().stream().map(one -> new JobPage.Row(one.getValue(), one.getKey())).toList();
    }

    /** Marking goes without saying where course 1 follows in the same weekend. */
    private static String told(Collection<String> steps) {
        return steps.stream().distinct().filter(step -> !step.equals(MARK) || !steps.contains(COURSE_1)).collect(Collectors.joining(", "));
    }

    /** As short as a cell of the page is. */
    private static String words(GardenTask task) {
        return switch (task.step()) {
            case SAW -> "stage " + task.number();
            case PATH -> "lay";
            case SET_OUT -> "set out";
            case DIG, POUR, GROUND -> "ground";
            case MARK, NOTCHES -> MARK;
            case COURSE_1 -> COURSE_1;
            case COURSES -> "courses";
            case COAT -> "coat " + task.number();
            case STRIPS, BASE -> "base";
            case LINER -> "line";
            case FILL -> "fill";
            case PLANT -> "plant";
            case TOP_UP -> "top up";
        };
    }

    private static String there(List<Weekends.Day> days) {
        Map<List<String>, List<String>> people = new LinkedHashMap<>();
        days.forEach(day -> people.computeIfAbsent(day.people(), key -> new ArrayList<>()).add(DayNames.brief(day.dayOfWeek())));
        return people.entrySet().stream()
                .map(entry -> String.join(", ", entry.getValue()) + ": " + String.join(", ", entry.getKey()))
                .collect(Collectors.joining("; "));
    }

    /** {@code 2, 3 May} or {@code 30 May, 1 Jun}; days of the week where the first day of work has no date. */
    private static String dates(List<Weekends.Day> days) {
        Map<String, List<String>> byMonth = new LinkedHashMap<>();
        for (Weekends.Day day : days) {
            String month = day.date().map(date -> " " + DayNames.brief(date.getMonth())).orElse("");
            String own = day.date().map(date -> "" + date.getDayOfMonth()).orElse(DayNames.brief(day.dayOfWeek()));
            byMonth.computeIfAbsent(month, key -> new ArrayList<>()).add(own);
        }
        return byMonth.entrySet().stream().map(one -> String.join(", ", one.getValue().stream().distinct().toList()) + one.getKey()).collect(Collectors.joining(", "));
    }

    private static String waits(Weekends weekends, Map<String, Weekends.Task> tasks, Weekends.Day last) {
        Map<String, Set<String>> why = new LinkedHashMap<>();
        for (Weekends.Wait wait : weekends.waits(last)) {
            GardenTask task = tasks.get(wait.task()).work();
            why.computeIfAbsent(wait.why().split(",")[0], key -> new TreeSet<>()).add(task.bed().isEmpty() ? task.place() : task.bed());
        }
        return why.entrySet().stream().map(entry -> entry.getKey() + ": " + BedNames.compact(List.copyOf(entry.getValue()))).collect(Collectors.joining("; "));
    }

    /** By a date where the first day of work has one; else so many days before or after work begins. */
    private static String orderBy(JobSheet sheet, List<Buying.Row> rows) {
        if (rows.isEmpty()) return "";
        int day = rows.stream().mapToInt(Buying.Row::orderDay).min().orElseThrow();
        Optional<LocalDate> start = sheet.garden().people().crew().dates().start();
        if (start.isPresent()) {
            LocalDate date = start.get().plusDays(day);
            return "by " + DayNames.brief(date) + " " + date.getYear();
        }
        if (day == 0) return "by the first day of work";
        return (day < 0 ? "at least " + -day : "at most " + day) + (Math.abs(day) == 1 ? " day " : " days ") + (day < 0 ? "before" : "after") + " work begins";
    }

    /** What must be there, as a person reads it: packs of the order by the weekend that first uses them. */
    private static Map<Integer, List<String>> goodsByWeekend(JobSheet sheet) {
        Map<Integer, Map<String, Map<String, Integer>>> needed = new TreeMap<>();
        for (Buying.Row row : Buying.of(sheet).rows()) {
            if (row.packs().isEmpty()) continue;
            Map<String, Integer> packs = needed.computeIfAbsent(row.weekend(), weekend -> new LinkedHashMap<>()).computeIfAbsent(row.label(), label -> new LinkedHashMap<>());
            row.packs().forEach((pack, count) -> packs.merge(pack, count, Integer::sum));
        }
        boolean imperial = sheet.garden().imperial();
        Map<Integer, List<String>> goods = new TreeMap<>();
        needed.forEach((weekend, lines) -> goods.put(weekend, lines.entrySet().stream().map(line -> line.getKey() + ": " + line.getValue().entrySet().stream()
                .map(one -> one.getValue() + " × " + PackCode.words(one.getKey(), imperial)).collect(Collectors.joining(", "))).toList()));
        return goods;
    }
}
