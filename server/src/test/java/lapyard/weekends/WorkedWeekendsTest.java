package lapyard.weekends;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Crew;
import lapyard.plan.Finding;
import lapyard.plan.Told;
import lapyard.weekends.WorkList.BedLoad;
import lapyard.weekends.WorkList.SawLoad;
import lapyard.working.Quantity;
import lapyard.working.Working;
import org.junit.jupiter.api.Test;

/**
 * A garden worked by hand: bed M, 3000 x 2400 with 1200 x 900 missing at the rear right, timber 100 x 200 at 600 kg/m3, 3
 * courses, on a strip of concrete; two people, Saturdays and Sundays, 6 hours a day. Waits: cure 7 days, 24 hours between
 * coats, 48 before the liner, 28 days to settle: common practice, no source.
 */
class WorkedWeekendsTest {
    private static final String M = "{\"id\":\"M\",\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]],"
            + "\"courses\":3,\"low\":[\"C\",\"E\"]}";
    private static final String N = "{\"id\":\"N\",\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[4200,0]}";

    private static JobSheet sheet(String beds, String crew) {
        return Gardens.sheet("{\"beds\":[" + beds + "],\"crew\":{" + crew + "}}");
    }

    /** Strip of 10.4 m x 200 x 100: 0.208 m3, 5 % more is 0.218; dug with a sub-base of 100: 0.416 m3. */
    private static Weekends onStrip(JobSheet sheet) {
        List<BedLoad> beds = new ArrayList<>();
        for (JobSheet.BedSheet bed : sheet.beds()) {
            List<Quantity> quantities = new ArrayList<>(bed.quantities());
            quantities.add(new Quantity("dig", 0.416, "m3", Working.of("", "")));
            quantities.add(new Quantity("concrete", 0.208, "m3", Working.of("", "")));
            beds.add(new BedLoad(bed.work(), quantities));
        }
        return Staging.of(sheet.garden().people().crew(), sheet.lifting(), beds, List.of(), List.of(new SawLoad(1, 18, 0, 6, 7, Collections.nCopies(10, 57.6))), Map.of(), Map.of(), 0,
                Staging.FOLLOWING);
    }

    private static Map<String, List<Integer>> days(Weekends weekends) {
        Map<String, List<Integer>> days = new HashMap<>();
        weekends.tasks().forEach(task -> days.put(task.work().step(), List.of(task.firstDay(), task.lastDay())));
        return days;
    }

    @Test
    void aWeekendOfTwoPeopleHas24PersonHours() {
        Weekends weekends = sheet(M, "").weekends();
        double hours = weekends.days().stream().filter(day -> day.weekend() == 1).mapToDouble(Weekends.Day::hoursThere).sum();
        assertEquals(24, hours);
    }

    /** Pour on Saturday, day 0: walls and coat 1 on day 7, coat 2 on 8, liner from 10 so Saturday 14, fill Sunday 15, top-up 43. */
    @Test
    void dryingAndCuringRunThroughTheWeek() {
        Map<String, List<Integer>> days = days(onStrip(sheet(M, "")));
        assertEquals(List.of(0, 0), days.get("pour"));
        assertEquals(List.of(7, 7), days.get("course-1"));
        assertEquals(List.of(7, 7), days.get("courses"));
        assertEquals(List.of(7, 7), days.get("coat-1"));
        assertEquals(List.of(8, 8), days.get("coat-2"));
        assertEquals(14, days.get("liner").get(0));
        assertEquals(List.of(15, 15), days.get("fill"));
        assertEquals(List.of(43, 43), days.get("top-up"));
    }

    @Test
    void theCureIsToldWithItsDates() {
        Weekends weekends = onStrip(sheet(M, "\"start\":\"2027-03-06\""));
        Finding told = weekends.findings().stream().filter(finding -> finding.where().equals("bed M, walls")).findFirst().orElseThrow();
        assertEquals("cannot be built before Sat 13 Mar: strip poured on Sat 6 Mar needs 7 days", Told.text(told));
        assertFalse(Told.ways(told).isEmpty());
    }

    /** 2900s of 34.8 kg and 2300s of 27.6 kg, one a course each: 2 of 6 timbers of course 1 are lifted by two, 4 of 12 above. */
    @Test
    void aHelperIsNeededForTheHeavyTimbersOnly() {
        Map<String, Weekends.Task> tasks = sheet(M, "").weekends().byId();
        assertEquals(List.of(new Work.Share(2, true, 30), Work.Share.alone(60)), tasks.get("M.course-1").work().shares());
        assertEquals(List.of(new Work.Share(2, true, 16), Work.Share.alone(32), new Work.Share(2, true, 16), Work.Share.alone(32)),
                tasks.get("M.courses").work().shares());
        assertEquals((2 * 30 + 60 + 2 * 32 + 64) / 60.0,
                tasks.get("M.course-1").work().personHours() + tasks.get("M.courses").work().personHours(), 1e-9);
    }

    /** Of 90 minutes at course 1 30 are by two, wherever the day has them; its person-hours are those of its parts. */
    @Test
    void aDayTellsHowLongTheHelperIsNeeded() {
        Weekends weekends = sheet(M, "").weekends();
        List<Weekends.Part> parts = weekends.days().stream().flatMap(day -> day.parts().stream())
                .filter(one -> one.task().equals("M.course-1")).toList();
        assertEquals(30, parts.stream().mapToInt(Weekends.Part::togetherMinutes).sum());
        assertEquals(90, parts.stream().mapToInt(part -> part.toMinute() - part.fromMinute()).sum());
        assertEquals("2 for 30 min", new Weekends.Part("M.course-1", 0, 90, 2, 30, 1, 1).hands());
        assertEquals("2", new Weekends.Part("M.course-1", 0, 30, 2, 30, 1, 2).hands());
        assertEquals("1", new Weekends.Part("M.course-1", 30, 90, 1, 0, 2, 2).hands());
        weekends.days().forEach(day -> assertEquals(day.hoursUsed(), day.parts().stream()
                .mapToDouble(part -> part.toMinute() - part.fromMinute() + (part.people() - 1) * part.togetherMinutes()).sum() / 60, 1e-9));
    }

    /** The helper comes on Saturdays only: so do the walls, though Sunday is free. */
    @Test
    void heavyCoursesWaitForTheDayOnWhichTheHelperComes() {
        JobSheet sheet = sheet(M + "," + N, "\"people\":[{\"name\":\"Ana\"},{\"name\":\"Bo\",\"days\":[\"sat\"]}]");
        for (Weekends.Day day : sheet.weekends().days()) {
            for (Weekends.Part part : day.parts()) {
                Work work = sheet.weekends().byId().get(part.task()).work();
                assertTrue(part.togetherMinutes() == 0 || day.dayOfWeek() == java.time.DayOfWeek.SATURDAY, part + " on " + day.dayOfWeek());
                assertTrue(part.togetherMinutes() == 0 || work.lifts(), work.id());
            }
        }
    }

    @Test
    void nothingIsHiddenBeforeItIsDone() {
        Weekends weekends = sheet(M + "," + N, "").weekends();
        for (String bed : List.of("M", "N")) {
            assertTrue(begins(weekends, bed + ".course-1") >= ends(weekends, bed + ".mark"));
            assertTrue(begins(weekends, bed + ".base") >= ends(weekends, bed + ".coat-2"));
            assertTrue(begins(weekends, bed + ".liner") >= ends(weekends, bed + ".base"));
        }
        assertTrue(begins(weekends, "M.course-1") >= ends(weekends, "M.notches"));
    }

    private static int begins(Weekends weekends, String id) {
        return weekends.days().stream().flatMap(day -> day.parts().stream().filter(part -> part.task().equals(id))
                .map(part -> day.number() * 10_000 + part.fromMinute())).min(Integer::compare).orElseThrow();
    }

    private static int ends(Weekends weekends, String id) {
        return weekends.days().stream().flatMap(day -> day.parts().stream().filter(part -> part.task().equals(id))
                .map(part -> day.number() * 10_000 + part.toMinute())).max(Integer::compare).orElseThrow();
    }

    @Test
    void aWetDayTakesNoFinish() {
        JobSheet dry = sheet(M, "\"start\":\"2027-03-06\"");
        int day = dry.weekends().byId().get("M.coat-1").firstDay();
        String wet = java.time.LocalDate.of(2027, 3, 6).plusDays(day).toString();
        JobSheet rained = sheet(M, "\"start\":\"2027-03-06\",\"wet\":[\"" + wet + "\"]");
        assertTrue(rained.weekends().byId().get("M.coat-1").firstDay() > day);
        assertTrue(rained.weekends().days().stream().anyMatch(one -> one.wet() && one.number() == day));
    }

    @Test
    void nobodyWorksOnAHoliday() {
        JobSheet sheet = sheet(M, "\"start\":\"2027-03-06\",\"holidays\":[\"2027-03-06\",\"2027-03-07\"]");
        assertEquals(7, sheet.weekends().days().get(0).number());
        assertEquals(1, sheet.weekends().days().get(0).weekend());
    }

    @Test
    void aBedFixedForTooEarlyAWeekendIsToldByHowMuch() {
        JobSheet sheet = sheet(M.replace("\"courses\"", "\"weekend\":1,\"courses\"") + ","
                + N.replace("\"courses\"", "\"weekend\":1,\"courses\""), "\"hours\":2,\"people\":[{\"name\":\"Ana\"},{\"name\":\"Bo\"}]");
        Finding over = sheet.weekends().findings().stream().filter(finding -> finding.where().equals("weekend 1")).findFirst().orElseThrow();
        assertEquals(Finding.Weight.SNAG, over.weight());
        assertTrue(Told.text(over).contains("person-hours over"), Told.text(over));
        assertEquals("person-hours", over.amount().orElseThrow().unit());
        assertTrue(over.amount().orElseThrow().value() > 0);
    }

    @Test
    void aFixedWeekendIsObeyed() {
        JobSheet sheet = sheet(M + "," + N.replace("\"courses\"", "\"weekend\":4,\"courses\""), "");
        Weekends.Task course = sheet.weekends().byId().get("N.course-1");
        assertEquals(Optional.of(4), sheet.weekends().days().stream().filter(day -> day.number() == course.firstDay())
                .map(Weekends.Day::weekend).findFirst());
    }

    @Test
    void dayPartsAddUpToTheTasks() {
        JobSheet sheet = sheet(M + "," + N, "");
        Map<String, Integer> minutes = new HashMap<>();
        for (Weekends.Day day : sheet.weekends().days()) {
            assertTrue(day.hoursUsed() <= day.hoursThere() + 1e-9);
            day.parts().forEach(part -> minutes.merge(part.task(), part.toMinute() - part.fromMinute(), Integer::sum));
        }
        sheet.weekends().tasks().forEach(task -> assertEquals(15 * Math.ceil(task.work().minutes() / 15 - 1e-9),
                minutes.getOrDefault(task.work().id(), 0).doubleValue(), task.work().id()));
    }

    @Test
    void theUsualCrewIsShownAsADefault() {
        assertTrue(Gardens.garden("{\"beds\":[]}").defaulted().contains("/crew/people"));
        assertEquals(Crew.USUAL.people().size(), Gardens.garden("{\"beds\":[]}").people().crew().people().size());
    }
}
