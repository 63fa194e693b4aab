package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.geometry.Lengths;
import lapyard.plan.Crew;
import lapyard.weekends.GardenTask;
import lapyard.weekends.Step;
import lapyard.weekends.Weekends;
import lapyard.words.Wording;
import lapyard.working.DayNames;
import lapyard.working.SecondThread;

/** A sheet a weekend, its days side by side: who comes, what must be there, what is done when and by whom, what to mind; top-ups in one list. */
public record DaySheets(BenchSheet sheet, Weekends weekends, Crew crew, Map<String, Weekends.Task> tasks) {
    /** A weekend begins on a fresh sheet where more than this part of one is used or the rest does not hold it, so that each can be taken out by itself. */
    private static final double WEEKEND = 0.45;

    /** The words above a weekend that begins in the middle of a sheet. */
    private static final double HEADED = 13;

    private static final double TEXT = 3.6;
    private static final double SMALL = 3.1;

    private static final String CAUTION = "Lift with the legs, two people or more, or wheels, for anything over the limit. Saw and drill by their own instructions."
            + " Retaining walls, decks and services: ask whoever is licensed for them.";

    /**
     * Weekends on which something is done; one sheet that says so where there is nothing to do.
     *
     * @param warned what may hurt somebody, by bed; it stands on the weekend of its first course
     * @param goods  what must be there, by weekend, as it shall be read
     */
    public static List<Page> pages(
            Weekends weekends, Crew crew, Map<String, List<String>> warned, Map<Integer, List<String>> goods, BenchOptions options) {
        return BenchSheet.pages(CAUTION, options, "Weekends", "", "nothing is left to do", flow -> new DaySheets(flow.sheet, weekends, crew, weekends.byId()).on(flow, warned, goods));
    }

    private void on(Flow flow, Map<String, List<String>> warned, Map<Integer, List<String>> goods) {
        Map<Integer, List<Weekends.Day>> byWeekend = new LinkedHashMap<>();
        List<Weekends.Day> topUps = new ArrayList<>();
        for (Weekends.Day day : weekends.days()) {
            if (day.parts().isEmpty()) continue;
            boolean topUp = day.parts().stream().allMatch(part -> work(part).step() == Step.TOP_UP);
            if (topUp) topUps.add(day);
            else byWeekend.computeIfAbsent(day.weekend(), weekend -> new ArrayList<>()).add(day);
        }
        List<Measured> measured = SecondThread.each(List.copyOf(byWeekend.entrySet()), weekend -> {
            Flow alone = new Flow(sheet, "Weekends", "");
            Consumer<Flow> whole = weekend(flow, weekend.getKey(), weekend.getValue(), warned, goods.getOrDefault(weekend.getKey(), List.of()));
            alone.shared(false, () -> whole.accept(alone));
            double last = alone.y() - sheet.space().low();
            return new Measured(whole, alone.drafts().size(), last);
        });
        for (int i = 0; i < measured.size(); i++) {
            Measured weekend = measured.get(i);
            if (weekend.sheets() > 1 || !flow.holds(HEADED + weekend.lastMm())) flow.next();
            boolean shared = sheet.shares && i + 1 < measured.size() && restAlone(weekend, measured.get(i + 1));
            flow.shared(shared, () -> weekend.whole().accept(flow));
        }
        topUps(flow, topUps);
    }

    /**
     * A weekend as laid out from the top of a sheet.
     *
     * @param lastMm used of its last sheet
     */
    private record Measured(Consumer<Flow> whole, int sheets, double lastMm) {}

    /** Whether so little of a weekend goes on to its last sheet that this would stay nearly empty, as the next one finds no room there. */
    private boolean restAlone(Measured weekend, Measured next) {
        double high = sheet.space().height();
        return weekend.sheets() > 1 && weekend.lastMm() < Flow.LITTLE * high
                && (next.sheets() > 1 || weekend.lastMm() + HEADED + next.lastMm() > high);
    }

    private GardenTask work(Weekends.Part part) {
        return tasks.get(part.task()).work();
    }

    /** Puts a weekend on a flow; its text is measured once. */
    private Consumer<Flow> weekend(Flow flow, int weekend, List<Weekends.Day> days, Map<String, List<String>> warned, List<String> goods) {
        Set<String> warnings = new LinkedHashSet<>();
        Set<String> cautions = new LinkedHashSet<>();
        for (Weekends.Day day : days) {
            for (Weekends.Part part : day.parts()) {
                cautions.addAll(work(part).cautions());
                if (work(part).step().lays()) warnings.addAll(warned.getOrDefault(work(part).bed(), List.of()));
            }
        }
        WarningFrame frame = WarningFrame.of(sheet, List.copyOf(warnings));
        double wide = flow.columnWidth(2, Flow.APART);
        List<Flow.Block> blocks = days.stream().flatMap(day -> day(flow, day, wide).stream()).collect(Collectors.toCollection(ArrayList::new));
        List<String> waits = waits(days);
        if (!waits.isEmpty()) blocks.addAll(flow.lines(List.of("Waiting: " + String.join(". ", waits) + "."), SMALL, false, wide));
        if (!cautions.isEmpty()) {
            blocks.addAll(flow.lines(List.of("Mind: " + cautions.stream().map(Wording::capital).collect(Collectors.joining(". ")) + "."), SMALL, true, wide));
        }
        String dates = date(days.get(0)) + (days.size() == 1 ? "" : (days.size() == 2 ? " and " : " to ") + date(days.get(days.size() - 1)));
        return on -> {
            on.section("Weekend " + weekend, dates, WEEKEND);
            frame.on(on);
            if (!goods.isEmpty()) on.words(List.of("Must be there: " + String.join("; ", goods) + "."), SMALL, false);
            on.columns(2, Flow.APART, blocks);
            on.gap(2);
        };
    }

    private static String hours(Weekends.Day day) {
        // of what is written, so that the three add up on paper
        double over = Lengths.toTenth(day.hoursThere()) - Lengths.toTenth(day.hoursUsed());
        return Lengths.text(day.hoursThere()) + " person-hours there, " + Lengths.text(day.hoursUsed()) + " planned, " + Lengths.text(over) + " left"
                + (day.wet() ? "; down as wet: no finish" : "");
    }

    private List<Flow.Block> day(Flow flow, Weekends.Day day, double wide) {
        List<Flow.Block> blocks = new ArrayList<>();
        String there = String.join(", ", day.people()) + ": " + (day.isOver() ? "over" : hours(day));
        List<Flow.Block> head = new ArrayList<>();
        head.add(new Flow.Block(6.5, false, (left, top) -> List.of(
                sheet.text(left, top + 4.6, DayNames.full(day.dayOfWeek()), 5, true).as(Tag.subheading()))));
        head.addAll(flow.lines(List.of(there), 3.2, false, wide));
        head.add(new Flow.Block(2, false, (left, top) -> List.of(sheet.line(left, top + 1, left + wide, top + 1, Inks.THIN))));
        List<String> hands = Hands.of(day, tasks, crew);
        for (int i = 0; i < day.parts().size(); i++) {
            Flow.Block task = task(flow, day.parts().get(i), hands.get(i), wide);
            if (i > 0) blocks.add(task);
            else blocks.add(Flow.Block.of(List.of(Flow.Block.of(head), task)));
        }
        return blocks;
    }

    /** A box to tick, when and what, and below it who does it, what is carried and which sheet tells how. */
    private Flow.Block task(Flow flow, Weekends.Part part, String hands, double wide) {
        GardenTask work = work(part);
        double text = TypeSize.TICK + 2;
        List<Flow.Block> lines = new ArrayList<>(flow.lines(List.of(clock(part.fromMinute()) + " - " + clock(part.toMinute()) + " " + work.place() + ": " + work.label()
                + (part.of() > 1 ? " (part " + part.number() + " of " + part.of() + ")" : "")), TEXT, true, wide - text));
        String how = (String.join("; ", work.loads()) + " " + card(work)).strip();
        lines.addAll(flow.lines(List.of(hands + (how.isEmpty() ? "" : ". " + Wording.capital(how))), SMALL, false, wide - text));
        Flow.Block words = Flow.Block.of(lines);
        double height = Math.max(TypeSize.TICK + 1, words.heightMm() + 1.4);
        return new Flow.Block(height, false, (left, top) -> {
            List<Shape> shapes = new ArrayList<>(words.drawer().at(left + text, top));
            shapes.add(sheet.tick(left, top + TypeSize.TICK + 0.4, TypeSize.TICK));
            shapes.add(sheet.line(left, top + height - 0.2, left + wide, top + height - 0.2, Inks.HAIR));
            return shapes;
        });
    }

    private String clock(int minute) {
        return crew.dates().from().plusMinutes(minute).toString();
    }

    /** What drying and settling still take after the last of these days. */
    private List<String> waits(List<Weekends.Day> days) {
        Weekends.Day last = days.get(days.size() - 1);
        Map<String, List<String>> places = new LinkedHashMap<>();
        for (Weekends.Wait wait : weekends.waits(last)) {
            GardenTask work = tasks.get(wait.task()).work();
            int left = wait.toDay() - last.number();
            places.computeIfAbsent(work.label() + ": " + wait.why() + ", " + left + (left == 1 ? " day to go" : " days to go"), why -> new ArrayList<>())
                    .add(work.place());
        }
        return places.entrySet().stream().map(one -> Wording.capital(String.join(", ", one.getValue())) + ", " + one.getKey()).toList();
    }

    private void topUps(Flow flow, List<Weekends.Day> days) {
        if (days.isEmpty()) return;
        flow.section("Top-ups", "when the soil has settled");
        BenchTable table = new BenchTable(sheet, "Top up", new Column("", 0.08, false), new Column("day", 0.3, true), new Column("where", 0.2, true),
                new Column("who", 0.16, true), new Column("carried", 0.26, false));
        for (Weekends.Day day : days) {
            List<String> hands = Hands.of(day, tasks, crew);
            for (int i = 0; i < day.parts().size(); i++) {
                GardenTask work = work(day.parts().get(i));
                table.row(BenchTable.TICK, date(day), work.place(), hands.get(i), String.join("; ", work.loads()));
            }
        }
        table.on(flow, 2);
    }

    private static String date(Weekends.Day day) {
        return day.date().map(DayNames::full).orElseGet(() -> DayNames.full(day.dayOfWeek()) + ", weekend " + day.weekend());
    }

    /** The sheet that tells how it is done. */
    private static String card(GardenTask work) {
        return switch (work.step()) {
            case SAW, STRIPS -> "(Saw Day)";
            case SET_OUT -> "(Setting-out, bed " + work.bed() + ")";
            case MARK, NOTCHES, COURSE_1, COURSES -> "(Course card, bed " + work.bed() + ")";
            case BASE, LINER -> "(Base and liner, bed " + work.bed() + ")";
            default -> "";
        };
    }
}
