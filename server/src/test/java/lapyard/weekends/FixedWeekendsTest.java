package lapyard.weekends;

import static lapyard.weekends.WorkedWeekendsTest.M;
import static lapyard.weekends.WorkedWeekendsTest.N;
import static lapyard.weekends.WorkedWeekendsTest.onStrip;
import static lapyard.weekends.WorkedWeekendsTest.sheet;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import lapyard.job.JobSheet;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Told;
import lapyard.stages.StagingProblem;
import lapyard.stages.StagingResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Beds fixed for a weekend, and what the staging is asked: bed M of {@link WorkedWeekendsTest} on a strip that cures for 7 days. Figures worked by hand. */
class FixedWeekendsTest {
    private static final String TWO = "\"people\":[{\"name\":\"Ana\"},{\"name\":\"Bo\"}]";

    private final List<StagingProblem> asked = new ArrayList<>();

    private Weekends plan(String crew, Map<String, Integer> fixed, Map<String, Integer> done, int today) {
        return onStrip(sheet(M, crew), fixed, done, today, staging -> {
            asked.add(staging.problem());
            assertEquals(staging.problem().tasks().size(), staging.tasks());
            return staging.solved();
        });
    }

    private static List<Finding> of(Weekends weekends, FindingKind kind) {
        return weekends.findings().stream().filter(one -> one.kind() == kind).toList();
    }

    /**
     * Two people of 2 hours on two days are 8 person-hours. What must be done by then is the sawing of stage 1 and all that comes
     * before the walls of M stand; N has a weekend of its own, and its boards are sawn in stage 2.
     */
    @Test
    void anOverbookedWeekendIsToldByItsPersonHours() {
        JobSheet garden = sheet(M.replace("\"courses\"", "\"weekend\":1,\"courses\"") + "," + N.replace("\"courses\"", "\"weekend\":2,\"courses\""), "\"hours\":2," + TWO);
        Weekends weekends = garden.weekends();
        double wanted = Set.of("saw.1", "M.set-out", "M.ground", "M.mark", "M.notches", "M.course-1", "M.courses").stream()
                .filter(weekends.byId()::containsKey).mapToDouble(id -> weekends.byId().get(id).work().personHours()).sum();
        Finding over = of(weekends, FindingKind.OVERBOOKED).get(0);
        assertEquals("weekend 1", over.where());
        assertEquals(Finding.Weight.SNAG, over.weight());
        assertEquals(wanted - 8, over.amount().orElseThrow().value(), 0.05);
        assertEquals("person-hours", over.amount().orElseThrow().unit());
        assertTrue(Told.text(over).contains(" is overbooked: ") && Told.text(over).endsWith(" 8 there."), Told.text(over));
    }

    /** Poured on Saturday, day 0: the walls stand on day 7, 6 days behind the Sunday of weekend 1; who comes on Saturdays alone is 7 late, and in time for weekend 2. */
    @ParameterizedTest(name = "{0} for weekend {1}: {2} days late")
    @CsvSource({"sun, 1, 6", "sat, 1, 7", "sat, 2, 0", "sun, 2, 0"})
    void aBedThatStandsLateIsToldByItsDays(String last, int weekend, int late) {
        String crew = last.equals("sat") ? "\"hours\":12,\"people\":[{\"name\":\"Ana\",\"days\":[\"sat\"]},{\"name\":\"Bo\",\"days\":[\"sat\"]}]" : "";
        Weekends weekends = plan(crew, Map.of("M", weekend), Map.of(), 0);
        assertEquals(7, weekends.byId().get("M.courses").lastDay());
        List<Finding> told = of(weekends, FindingKind.STANDS_LATE);
        assertEquals(late == 0 ? List.of() : List.of((double) late), told.stream().map(one -> one.amount().orElseThrow().value()).toList());
        // a crew that nobody described is a guess
        told.forEach(one -> assertEquals(crew.isEmpty() ? Finding.Weight.NOTE : Finding.Weight.SNAG, one.weight()));
    }

    /** More weekends on than the little work asks for: days 7 x 39 and the next. */
    @Test
    void aBedFixedForAFarWeekendStandsInThatWeekend() {
        Weekends weekends = plan("", Map.of("M", 40), Map.of(), 0);
        assertEquals(7 * 39, weekends.byId().get("M.course-1").firstDay());
        assertEquals(List.of(), of(weekends, FindingKind.STANDS_LATE));
    }

    private static String comes(String... days) {
        return "\"start\":\"2027-03-06\",\"people\":[{\"name\":\"Ana\",\"comes\":[\"2027-03-06\",\"" + String.join("\",\"", days) + "\"]}]";
    }

    /** Two days of 6 hours are fewer than the work of M: what no day is left for is told, and is at most all but what those two days hold. */
    @Test
    void workForWhichNobodyComesIsTold() {
        Weekends weekends = plan(comes("2027-03-07"), Map.of(), Map.of(), 0);
        Finding left = of(weekends, FindingKind.WORK_LEFT).get(0);
        double used = weekends.days().stream().mapToDouble(Weekends.Day::hoursUsed).sum();
        double hours = left.amount().orElseThrow().value();
        assertEquals("person-hours", left.amount().orElseThrow().unit());
        assertTrue(hours >= weekends.loadHours() - used - 0.05 && hours <= weekends.loadHours(), hours + " of " + weekends.loadHours() + ", used " + used);
        assertEquals(List.of(), of(plan("", Map.of(), Map.of(), 0), FindingKind.WORK_LEFT));
        assertEquals(List.of(), of(plan(comes("2027-03-07"), Map.of("M", 9), Map.of(), 0), FindingKind.STANDS_LATE), "weekend 9 never comes");
    }

    /** 2028-03-04 is 364 days after 2027-03-06: nothing is planned on a day on which Ana does not come, however far off the next one is. */
    @Test
    void aDaySomebodyNamedFarOffIsWorked() {
        Weekends weekends = plan(comes("2028-03-04", "2028-03-05", "2028-03-11", "2028-03-12", "2028-03-18", "2028-03-19", "2028-05-13"), Map.of(), Map.of(), 0);
        assertEquals(List.of(), of(weekends, FindingKind.WORK_LEFT));
        List<Integer> named = List.of(0, 364, 365, 371, 372, 378, 379, 434);
        weekends.tasks().forEach(task -> assertTrue(named.contains(task.firstDay()) && named.contains(task.lastDay()), task.toString()));
    }

    @Test
    void aCrewThatNeverComesIsTold() {
        Weekends weekends = plan("\"start\":\"2027-03-06\",\"people\":[{\"name\":\"Ana\",\"comes\":[\"2040-01-07\"]}]", Map.of(), Map.of(), 0);
        assertEquals(1, of(weekends, FindingKind.NOBODY_COMES).size());
        assertEquals(List.of(), weekends.days());
        assertTrue(weekends.loadHours() > 10, "hours " + weekends.loadHours());
        assertEquals(List.of(), asked);
    }

    /**
     * A day of 6 hours is 24 quarters and a night. Walls are due at the end of Sunday of weekend 1, 2 x 25 units on, each at its last
     * share; topping up belongs to no bed's group. The calendar has room for three times the work, all waits, what is past and ten weeks.
     */
    @Test
    void theStagingIsAskedForWallsInTimeAndBedsTogether() {
        Weekends weekends = plan(TWO, Map.of("M", 1), Map.of(), 70);
        StagingProblem problem = asked.get(0);
        Map<String, StagingProblem.Task> tasks = new HashMap<>();
        problem.tasks().forEach(task -> tasks.put(task.id(), task));
        List<String> due = problem.tasks().stream().filter(task -> task.due().isPresent()).map(StagingProblem.Task::id).toList();
        assertEquals(List.of("M.course-1", "M.courses"), due);
        assertEquals(OptionalInt.of(50), tasks.get("M.courses").due());
        assertTrue(tasks.containsKey("M.courses share 0"), "by two, then by one");
        assertEquals("", tasks.get("M.top-up").group());
        assertEquals("M", tasks.get("M.fill").group());
        assertEquals(weekends.waits().size(), problem.tasks().stream().filter(task -> task.id().contains(" waits for ")).count());
        double days = problem.calendar().orElseThrow().there().get(0).size() / 25.0;
        double least = 7 * 3 * weekends.loadHours() / 24 + 7 + 28 + 70 + 70;
        assertTrue(days >= least && days < least + 14, days + " days, at least " + least);
    }

    /** Poured on day 0, cured on day 7: what is planned from day 7 on waits for it no more. */
    @ParameterizedTest(name = "from day {0}: {1} waits")
    @CsvSource({"6, 1", "7, 0", "35, 0"})
    void aWaitThatIsOverIsNotTold(int today, int waits) {
        Weekends weekends = plan("", Map.of(), Map.of("M.set-out", 0, "M.dig", 0, "M.pour", 0), today);
        assertEquals(waits, of(weekends, FindingKind.CONCRETE_CURES).size());
        assertEquals(waits, weekends.waits().stream().filter(wait -> wait.after().equals("M.pour")).count());
        assertEquals(Math.max(7, today), weekends.byId().get("M.course-1").firstDay());
    }

    /** Planted on day 21, topped up on day 49: a garden of which all is done ended on those days. */
    @Test
    void whatIsDoneEndedOnItsDay() {
        Map<String, Integer> done = new HashMap<>(allBut(plan("", Map.of(), Map.of(), 0)));
        done.put("M.plant", 21);
        done.put("M.top-up", 49);
        Weekends weekends = plan("", Map.of(), done, 50);
        assertEquals(List.of(21, 49), List.of(weekends.lastDay(), weekends.endDay()));
    }

    private static Map<String, Integer> allBut(Weekends weekends, String... open) {
        Map<String, Integer> done = new HashMap<>();
        weekends.tasks().forEach(task -> done.put(task.work().id(), 0));
        List.of(open).forEach(done::remove);
        return done;
    }

    /** Setting out for as long as a day is one unbroken task, and ends that day; a quarter more is broken off for the night. No time at all is a task of the day on which it can be ticked. */
    @ParameterizedTest(name = "{0} minutes of 6 hours: unbroken {1}, ends on day {2}")
    @CsvSource({"360, true, 7", "361, false, 8", "0, true, 7"})
    void whatFitsADayIsNotBrokenOff(int minutes, boolean unbroken, int lastDay) {
        String crew = "\"rates\":{\"setOut\":" + minutes + "}";
        Map<String, Integer> done = allBut(plan(crew, Map.of(), Map.of(), 0), "M.set-out");
        Weekends weekends = plan(crew, Map.of(), done, 7);
        assertEquals(1, asked.get(1).tasks().size());
        assertEquals(unbroken, asked.get(1).tasks().get(0).unbroken());
        assertEquals(List.of(7, lastDay), List.of(weekends.byId().get("M.set-out").firstDay(), weekends.byId().get("M.set-out").lastDay()));
        assertEquals(minutes == 0 ? 6 : lastDay, weekends.leastDay());
    }

    /** A coat of more than a day is broken off over a wet Sunday. */
    @Test
    void nothingIsToldOfADayOnWhichWorkWaits() {
        String crew = "\"start\":\"2027-03-06\",\"wet\":[\"2027-03-07\"],\"rates\":{\"coat\":60}";
        Weekends weekends = plan(crew, Map.of(), allBut(plan(crew, Map.of(), Map.of(), 0), "M.coat-1"), 0);
        Map<Integer, Integer> told = new HashMap<>();
        weekends.days().forEach(day -> day.parts().forEach(part -> told.merge(day.number(), part.toMinute() - part.fromMinute(), Integer::sum)));
        assertEquals(360, told.get(0));
        assertEquals(null, told.get(1), () -> "nothing on Sunday: " + told);
        double all = weekends.byId().get("M.coat-1").work().minutes();
        assertEquals(15 * Math.ceil(all / 15), told.values().stream().mapToInt(each -> each).sum());
    }

    /** The upper courses but their last share on Saturday up to 5 hours, the last on Sunday from 5 hours on: two parts, not one over the night. */
    @Test
    void aTaskThatGoesOnAtTheSameHourOfTheNextDayHasTwoParts() {
        Map<String, Integer> done = allBut(plan("", Map.of(), Map.of(), 0), "M.courses");
        Weekends weekends = onStrip(sheet(M, ""), Map.of(), done, 0, staging -> {
            Map<String, Integer> starts = new HashMap<>();
            Map<String, Integer> ends = new HashMap<>();
            List<StagingProblem.Task> shares = staging.problem().tasks();
            int at = 20 - shares.stream().limit(shares.size() - 1).mapToInt(StagingProblem.Task::duration).sum();
            for (StagingProblem.Task share : shares) {
                at += share.id().equals("M.courses") ? 25 : 0;
                starts.put(share.id(), at);
                at += share.duration();
                ends.put(share.id(), at);
            }
            return new StagingResult("", starts, ends, 50, 0, 0, 0);
        });
        assertEquals(List.of(2, 2), weekends.days().stream().flatMap(day -> day.parts().stream()).map(Weekends.Part::of).toList());
        assertEquals(List.of(300, 300), List.of(weekends.days().get(0).parts().get(0).toMinute(), weekends.days().get(1).parts().get(0).fromMinute()));
        assertEquals(0, weekends.leastDay());
    }
}
