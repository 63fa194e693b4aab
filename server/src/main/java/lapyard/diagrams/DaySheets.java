package lapyard.diagrams;

import java.time.format.TextStyle;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.plan.Crew;
import lapyard.weekends.GardenTask;
import lapyard.weekends.Weekends;

/** The days of work, a weekend to a sheet where it fills one: who comes, what is done when, which timbers, what is carried, what to mind. */
public final class DaySheets {
    private static final int MOST_MARKS = 24;

    /** A weekend begins on a fresh sheet where more than this part of one is used, so that each can be taken out by itself. */
    private static final double WEEKEND = 0.45;

    private static final String CAUTION = "Lift with the legs, two people or more, or wheels, for anything over the limit. Saw and drill by their own instructions."
            + " Retaining walls, decks and services: ask whoever is licensed for them.";

    private DaySheets() {}

    /**
     * Days on which something is done; one sheet that says so where there is nothing to do.
     *
     * @param warned what may hurt somebody, by bed; it stands on the day of its first course
     */
    public static List<Page> pages(String garden, boolean imperial, Weekends weekends, Crew crew, Map<String, List<String>> warned, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        Map<String, Weekends.Task> tasks = weekends.byId();
        Flow flow = new Flow(sheet, "Weekends", "");
        int weekend = 0;
        for (Weekends.Day day : weekends.days()) {
            if (day.parts().isEmpty()) continue;
            day(day, tasks, weekends, crew, warned, sheet, flow, day.weekend() == weekend ? 1 : WEEKEND);
            weekend = day.weekend();
        }
        if (weekend == 0) return sheet.pages(List.of(sheet.nothing("Weekends", "nothing is left to do")));
        return sheet.pages(flow.drafts());
    }

    private static void day(
            Weekends.Day day, Map<String, Weekends.Task> tasks, Weekends weekends, Crew crew, Map<String, List<String>> warned, BenchSheet sheet, Flow flow, double mostUsed) {
        String who = String.join(", ", day.people());
        flow.section(name(day),
                who + ": " + hours(day.hoursThere()) + " person-hours there, " + hours(day.hoursUsed()) + " planned, "
                        + hours(day.hoursLeft()) + " left" + (day.wet() ? "; down as wet: no finish" : ""), mostUsed);
        BenchTable table = new BenchTable(sheet, "Tasks",
                new Column("", 0.03, false), new Column("from - to", 0.13, true), new Column("where", 0.1, true),
                new Column("what", 0.19, false), new Column("who", 0.14, true), new Column("carried", 0.17, false),
                new Column("timbers and sheets", 0.24, false));
        Set<String> cautions = new LinkedHashSet<>();
        Set<String> warnings = new LinkedHashSet<>();
        List<String> hands = Hands.of(day, tasks, crew);
        for (int i = 0; i < day.parts().size(); i++) {
            Weekends.Part part = day.parts().get(i);
            GardenTask work = tasks.get(part.task()).work();
            cautions.addAll(work.cautions());
            if (work.step().lays()) warnings.addAll(warned.getOrDefault(work.bed(), List.of()));
            table.row("\u25a1", crew.dates().from().plusMinutes(part.fromMinute()) + " - " + crew.dates().from().plusMinutes(part.toMinute()), work.place(),
                    work.label() + (part.of() > 1 ? " (part " + part.number() + " of " + part.of() + ")" : ""),
                    hands.get(i), String.join("; ", work.loads()), (marks(work.marks()) + " " + card(work)).strip());
        }
        new WarningFrame(sheet, List.copyOf(warnings)).on(flow);
        table.on(flow);
        List<String> waits = weekends.waits().stream()
                .filter(wait -> wait.fromDay() <= day.number() && day.number() < wait.toDay())
                .map(wait -> sentence(tasks.get(wait.task()).work().place()) + ", " + tasks.get(wait.task()).work().label() + ": " + wait.why() + ", "
                        + (wait.toDay() - day.number()) + (wait.toDay() - day.number() == 1 ? " day to go" : " days to go"))
                .toList();
        if (!waits.isEmpty()) flow.words(List.of("Waiting: " + String.join(". ", waits) + "."), 3.4, false);
        if (!cautions.isEmpty()) flow.words(List.of("Mind: " + cautions.stream().map(DaySheets::sentence).collect(Collectors.joining(". ")) + "."), 3.4, true);
    }

    private static String name(Weekends.Day day) {
        String name = day.dayOfWeek().getDisplayName(TextStyle.FULL, Locale.UK);
        return day.date().map(date -> name + " " + date.getDayOfMonth() + " " + date.getMonth().getDisplayName(TextStyle.FULL, Locale.UK) + " "
                + date.getYear()).orElse(name) + ", weekend " + day.weekend();
    }

    /** The sheet that tells how it is done. */
    private static String card(GardenTask work) {
        if (work.place().equals("saw")) return "(Saw Day)";
        return switch (work.step()) {
            case SET_OUT -> "(Setting-out, bed " + work.bed() + ")";
            case MARK, NOTCHES, COURSE_1, COURSES -> "(Course card, bed " + work.bed() + ")";
            case BASE, LINER -> "(Base and liner, bed " + work.bed() + ")";
            default -> "";
        };
    }

    private static String sentence(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static String marks(List<String> marks) {
        return marks.size() <= MOST_MARKS
                ? String.join(" ", marks)
                : String.join(" ", marks.subList(0, MOST_MARKS)) + " and " + (marks.size() - MOST_MARKS) + " more";
    }

    private static String hours(double hours) {
        return lapyard.geometry.Lengths.text(Math.round(hours * 10) / 10.0);
    }
}
