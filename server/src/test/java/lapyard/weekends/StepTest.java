package lapyard.weekends;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import lapyard.construction.BedWork;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Crew;
import lapyard.plan.Rate;
import lapyard.weekends.WorkList.BedLoad;
import lapyard.weekends.WorkList.PathLoad;
import lapyard.weekends.WorkList.SawLoad;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import org.junit.jupiter.api.Test;

/** Every step has its place in the order of work and its rates, and no rate is without a step. */
class StepTest {
    /** Beds with everything that is worked: dug and poured, on fallen ground, notched, tied, coated, slatted, lined and filled. */
    private static final JobSheet SHEET = Gardens.sheet("""
            {"defaults":{"base":"slatted"},"beds":[
              {"id":"M","width":6000,"depth":1200,"courses":3,"low":["C"],"ties":{"brackets":true,"courseTies":true,"crossTies":true},
               "finish":true},
              {"id":"N","width":2400,"depth":900,"courses":2,"at":[0,4000]},
              {"id":"O","width":2400,"depth":900,"courses":1,"at":[0,6000]}],
             "paths":[{"id":"P","line":[[0,3000],[5000,3000]],"width":900,"edging":"edging"},
                      {"id":"Q","line":[[0,-3000],[5000,-3000]],"width":900,"layers":[{"material":"gravel","depth":50}]}]}""");

    /** What each bed takes besides: the first is dug and poured, the others stand on ground made level and on ground that falls. */
    private static final List<List<QuantityKind>> MORE = List.of(
            List.of(QuantityKind.DIG, QuantityKind.CONCRETE, QuantityKind.SUB_BASE, QuantityKind.SPOIL_LOOSE, QuantityKind.POSTS),
            List.of(QuantityKind.SUB_BASE),
            List.of(QuantityKind.SCRIBE_MOST, QuantityKind.CROSS_TIES, QuantityKind.POSTS));

    private static List<GardenTask> works(Map<Rate, Double> minutes) {
        Crew own = SHEET.garden().people().crew();
        Crew crew = new Crew(own.described(), own.dates(), own.people(), minutes, own.waits());
        List<BedLoad> beds = new ArrayList<>();
        for (JobSheet.BedSheet bed : SHEET.beds()) {
            List<Quantity> all = new ArrayList<>(bed.quantities());
            for (QuantityKind kind : MORE.get(beds.size())) all.add(new Quantity(kind, 1, "", Working.of("", "")));
            beds.add(load(bed.work(), all, minutes));
        }
        List<PathLoad> paths = new ArrayList<>();
        SHEET.paths().forEach(path -> paths.add(new PathLoad(path.path(), path.quantities(), path.path().id().equals("Q"))));
        return WorkList.of(crew, SHEET.lifting(), 60, 1, false, beds, paths, List.of(new SawLoad(1, 10, 2, 4, 6, List.of())));
    }

    /** The strips' minutes are worked out by whoever cuts them, here one cut. */
    private static BedLoad load(BedWork work, List<Quantity> quantities, Map<Rate, Double> minutes) {
        return new BedLoad(work, quantities, minutes.get(Rate.STRIP));
    }

    private static Map<Step, Double> minutes(List<GardenTask> works) {
        Map<Step, Double> minutes = new EnumMap<>(Step.class);
        works.forEach(work -> minutes.merge(work.step(), work.minutes(), Double::sum));
        return minutes;
    }

    @Test
    void everyStepIsPlacedAndTheRatesItNamesAreThoseThatTimeIt() {
        Map<Rate, Double> usual = SHEET.garden().people().crew().rates();
        Map<Step, Double> before = minutes(works(usual));
        assertEquals(EnumSet.allOf(Step.class), before.keySet());
        for (Rate rate : Rate.values()) {
            Map<Rate, Double> slower = new EnumMap<>(usual);
            slower.put(rate, usual.get(rate) + 100);
            Map<Step, Double> after = minutes(works(slower));
            Set<Step> timed = EnumSet.noneOf(Step.class);
            before.forEach((step, minutes) -> {
                if (after.get(step) > minutes + 1e-6) timed.add(step);
            });
            Set<Step> named = EnumSet.noneOf(Step.class);
            for (Step step : Step.values()) if (step.rates.contains(rate)) named.add(step);
            assertEquals(named, timed, rate.name());
            assertFalse(named.isEmpty(), rate + " times nothing");
        }
        for (Step step : Step.values()) assertFalse(step.rates.isEmpty(), step + " takes no time");
    }

    /** Whatever a course waits for, through all that this waits for, stacks; the saw and the paths are the garden's own. */
    @Test
    void whatTheLastCourseWaitsForIsWhatStacks() {
        List<GardenTask> works = works(SHEET.garden().people().crew().rates());
        Set<String> needed = new TreeSet<>();
        List<String> open = new ArrayList<>(works.stream().filter(work -> work.step().lays()).map(GardenTask::id).toList());
        while (!open.isEmpty()) {
            String id = open.remove(open.size() - 1);
            if (needed.add(id)) works.stream().filter(work -> work.id().equals(id)).forEach(work -> work.after().forEach(one -> open.add(one.task())));
        }
        for (GardenTask work : works) {
            if (!work.bed().isEmpty()) assertEquals(work.step().stacks, needed.contains(work.id()), work.id());
        }
    }

    /** {@code -Dlapyard.approve=true} writes the table anew. */
    @Test
    void theDocsListEveryStepWithItsRates() throws IOException {
        StringBuilder table = new StringBuilder("# Tasks\n\nEvery step of the work, in its order, with the rates that make up its time and their usual minutes. The code stands"
                + " in task ids such as\n`M.course-1`; the names of the rates stand under `crew`, `rates`. The minutes are common practice, no source: change them."
                + " Who works\nat a task and what it waits for stands in [weekends](method/weekends.md). Written by `StepTest`.\n\n"
                + "| code | task | rate | minutes | for |\n| --- | --- | --- | --- | --- |\n");
        for (Step step : Step.values()) {
            for (Rate rate : step.rates) {
                boolean first = rate == step.rates.get(0);
                table.append("| ").append(first ? "`" + step.code + "`" : "").append(" | ").append(first ? step.label : "").append(" | `")
                        .append(rate.field).append("` | ").append(Math.round(rate.usualMinutes)).append(" | ").append(rate.per).append(" |\n");
            }
        }
        Path file = Path.of("../docs/tasks.md");
        if (Boolean.getBoolean("lapyard.approve")) {
            Files.writeString(file, table);
        }
        assertEquals(table.toString(), Files.readString(file));
    }

    @Test
    void everyCodeStandsOnceAndTellsItsNumber() {
        Set<String> codes = new TreeSet<>();
        for (Step step : Step.values()) assertTrue(codes.add(step.code(1)), step.name());
        assertEquals("saw-12", Step.SAW.code(12));
        assertEquals("M.coat-2", Step.COAT.task("M", 2));
        assertEquals("M.course-1", Step.COURSE_1.task("M"));
    }
}
