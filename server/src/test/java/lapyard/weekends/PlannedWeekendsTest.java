package lapyard.weekends;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Crew.Person;
import lapyard.plan.FindingKind;
import lapyard.weekends.WorkList.BedLoad;
import lapyard.weekends.WorkList.SawLoad;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plans of generated crews, walked through quarter by quarter: nobody is at two places, no wait is cut short, nothing is forgotten. */
class PlannedWeekendsTest {
    private static final String BEDS = "\"beds\":[{\"id\":\"M\",\"width\":3000,\"depth\":1500,\"courses\":3},{\"id\":\"N\",\"width\":1800,\"depth\":900,\"courses\":2,\"at\":[4200,0]}]";
    private static final Set<String> TICKED = Set.of("saw.1", "M.set-out", "M.mark", "M.ground");

    private int broken;
    private int waited;

    @Test
    void aPlanKeepsWhatItTells() {
        Random random = new Random(57);
        for (int i = 0; i < 16; i++) {
            List<String> people = new ArrayList<>();
            for (int k = 0; k < 2 + i % 2; k++) {
                people.add("{\"name\":\"P%d\",\"hours\":%d,\"lifts\":%s%s}".formatted(k, 2 + random.nextInt(5), k < 2,
                        k > 0 && random.nextInt(3) == 0 ? ",\"days\":[\"sat\"]" : ""));
            }
            boolean dated = i % 4 != 0;
            String crew = "\"crew\":{\"hours\":6,\"people\":[" + String.join(",", people) + "]"
                    + (dated ? ",\"start\":\"2027-03-06\",\"wet\":[\"2027-03-21\",\"2027-03-14\"],\"holidays\":[\"2027-03-13\"]" : "") + "}";
            JobSheet sheet = Gardens.sheet("{" + Gardens.WORKED + "," + BEDS + "," + crew + "}");
            Map<String, Integer> done = new HashMap<>();
            int today = i % 3 == 0 ? 0 : 7;
            if (today > 0) TICKED.forEach(id -> done.put(id, random.nextInt(2)));
            List<BedLoad> beds = sheet.beds().stream().map(bed -> new BedLoad(bed.work(), bed.quantities(), 20)).toList();
            Weekends weekends = WeekendPlanner.of(sheet.garden().people().crew(), sheet.lifting(), 60, false, beds, List.of(),
                    List.of(new SawLoad(1, 30, 0, 8, 9, List.of(57.6, 40.0, 30.0))), Map.of(), done, today, WeekendPlanner.Staging::solved);
            check("crew " + crew + ", today " + today, weekends, new CrewCalendar(sheet.garden().people().crew(), 7 * 60), done, today, dated);
        }
        assertTrue(broken > 5 && waited > 50, "tasks in parts " + broken + ", waits " + waited);
    }

    /** Whom nobody can help has wheels; who is helped on one day of the year lifts on that day. Either way the garden has a plan. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {"name":"Ana","lifts":false}                                                    | 1
            {"name":"Ana","lifts":false,"days":["sat"]},{"name":"Bo","days":["mon"]}         | 1
            {"name":"Ana"},{"name":"Bo","comes":["2028-02-05"]}                              | 2
            {"name":"Ana","lifts":false},{"name":"Bo","comes":["2028-02-05"]}                | 1
            """)
    void aCrewThatSeldomOrNeverLiftsHasAPlan(String people, int together) {
        JobSheet sheet = Gardens.sheet("{" + BEDS + ",\"crew\":{\"start\":\"2027-03-06\",\"people\":[" + people + "]}}");
        assertEquals(together, sheet.lifting().crew());
        assertTrue(sheet.snags().stream().anyMatch(finding -> finding.kind() == FindingKind.LIFTS || finding.kind() == FindingKind.LIFTS_BEYOND), "lifts are not told");
        Weekends weekends = sheet.weekends();
        assertTrue(weekends.tasks().stream().filter(task -> task.work().lifts()).count() > 1, "nothing is lifted");
        for (Weekends.Day day : weekends.days()) {
            for (Weekends.Part part : day.parts()) assertTrue(part.people() <= day.people().size(), day.date() + ": " + part);
            // the heavy timbers of a task come first
            boolean waits = people.startsWith("{\"name\":\"Ana\",\"lifts\":false},") && !day.people().contains("Bo");
            assertTrue(!waits || day.parts().stream().noneMatch(part -> part.number() == 1 && weekends.byId().get(part.task()).work().lifts()), () -> day.date() + ": " + day.parts());
        }
    }

    private void check(String name, Weekends weekends, CrewCalendar calendar, Map<String, Integer> done, int today, boolean dated) {
        Map<String, Weekends.Task> tasks = weekends.byId();
        Map<String, List<int[]>> parts = new HashMap<>();
        List<Integer> days = new ArrayList<>();
        for (Weekends.Day day : weekends.days()) {
            days.add(day.number());
            int[] hands = new int[24 * 60];
            int[] saws = new int[24 * 60];
            int before = 0;
            for (Weekends.Part part : day.parts()) {
                GardenTask work = tasks.get(part.task()).work();
                List<int[]> own = parts.computeIfAbsent(part.task(), id -> new ArrayList<>());
                own.add(new int[] {day.number(), part.fromMinute(), part.toMinute(), part.togetherMinutes(), part.of()});
                assertEquals(own.size(), part.number(), name + ": " + part);
                assertTrue(part.fromMinute() >= before, name + ": parts out of order");
                before = part.fromMinute();
                assertFalse(work.dry() && day.wet(), name + ": " + part + " on a wet day");
                for (int minute = part.fromMinute(); minute < part.toMinute(); minute++) {
                    hands[minute]++;
                    saws[minute] += work.place().equals("saw") ? 1 : 0;
                }
            }
            assertEquals(calendar.there(day.number()).stream().map(Person::name).toList(), day.people(), name);
            assertEquals(Math.max(0, day.hoursThere() - day.hoursUsed()), day.hoursLeft(), 1e-9, name);
            for (int minute = 0; minute < hands.length; minute++) {
                int now = minute;
                assertTrue(hands[minute] <= calendar.there(day.number()).stream().filter(person -> now < person.hours() * 60).count(), name + ": day " + day.number());
                assertTrue(saws[minute] <= 1, name + ": two at one saw");
            }
        }
        assertEquals(IntStream.rangeClosed(0, weekends.endDay()).filter(day -> calendar.hands(day) > 0).boxed().toList(), days, name);
        double load = 0;
        int last = 0;
        int end = 0;
        List<String> waits = new ArrayList<>();
        for (Weekends.Task task : weekends.tasks()) {
            GardenTask work = task.work();
            List<int[]> own = parts.getOrDefault(work.id(), List.of());
            assertEquals(done.containsKey(work.id()), task.done(), name + ": " + work.id());
            if (task.done()) {
                assertEquals(List.of(done.get(work.id()), done.get(work.id()), 0), List.of(task.firstDay(), task.lastDay(), own.size()), name + ": " + work.id());
                continue;
            }
            load += work.personHours();
            end = Math.max(end, task.lastDay());
            if (!work.id().endsWith(".top-up")) last = Math.max(last, task.lastDay());
            assertTrue(task.firstDay() >= today, name + ": " + work.id() + " before today");
            assertEquals(List.of(own.get(0)[0], own.get(own.size() - 1)[0]), List.of(task.firstDay(), task.lastDay()), name + ": " + work.id());
            assertEquals(15 * Math.ceil(work.minutes() / 15 - 1e-9), own.stream().mapToInt(part -> part[2] - part[1]).sum(), name + ": " + work.id());
            double together = work.shares().stream().filter(share -> share.people() > 1).mapToDouble(GardenTask.Share::minutes).sum();
            assertEquals(together, own.stream().mapToInt(part -> part[3]).sum(), 15 * work.shares().size(), name + ": " + work.id());
            own.forEach(part -> assertEquals(own.size(), part[4], name + ": " + work.id()));
            broken += own.size() > 1 ? 1 : 0;
            for (GardenTask.After after : work.after()) {
                Weekends.Task earlier = tasks.get(after.task());
                if (earlier == null) continue;
                assertTrue(task.firstDay() >= earlier.lastDay() + after.days(), name + ": " + work.id() + " after " + after.task());
                if (after.days() > 0) {
                    waited++;
                    waits.add(new Weekends.Wait(work.id(), after.task(), after.why(), earlier.lastDay(), earlier.lastDay() + after.days()).toString());
                } else if (!earlier.done() && earlier.lastDay() == task.firstDay()) {
                    List<int[]> theirs = parts.get(after.task());
                    assertTrue(own.get(0)[1] >= theirs.get(theirs.size() - 1)[2], name + ": " + work.id() + " before the end of " + after.task());
                }
            }
        }
        assertEquals(new TreeSet<>(waits), new TreeSet<>(weekends.waits().stream().map(Weekends.Wait::toString).toList()), name);
        assertEquals(List.of(last, end), List.of(weekends.lastDay(), weekends.endDay()), name);
        assertEquals(load, weekends.loadHours(), 1e-9, name);
        // soil settles for 28 days behind the last day on which a bed is filled
        assertTrue(weekends.leastDay() <= end && weekends.leastDay() >= 28 + today, name + ": proved " + weekends.leastDay() + " of " + end);
        List<String> wet = weekends.findings().stream().filter(one -> one.kind() == FindingKind.DAY_WET).map(one -> one.place().toString()).toList();
        assertEquals(dated ? 2 : 0, wet.size(), name);
        if (dated) assertTrue(wet.get(0).contains("2027-03-14"), name + ": " + wet);
    }
}
