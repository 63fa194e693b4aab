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
import java.util.function.Function;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Crew;
import lapyard.plan.Finding;
import lapyard.plan.Told;
import lapyard.stages.StagingResult;
import lapyard.weekends.WorkList.BedLoad;
import lapyard.weekends.WorkList.SawLoad;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A garden worked by hand: bed M, 3000 x 2400 with 1200 x 900 missing at the rear right, timber 100 x 200 at 600 kg/m3, 3
 * courses, on a strip of concrete; two people, Saturdays and Sundays, 6 hours a day. Waits: cure 7 days, 24 hours between
 * coats, 48 before the liner, 28 days to settle: common practice, no source.
 */
class WorkedWeekendsTest {
    static final String M = "{\"id\":\"M\",\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]],"
            + "\"courses\":3,\"low\":[\"C\",\"E\"]}";
    static final String N = "{\"id\":\"N\",\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[4200,0]}";

    static JobSheet sheet(String beds, String crew) {
        return Gardens.sheet("{" + Gardens.WORKED + ",\"beds\":[" + beds + "],\"crew\":{" + crew + "}}");
    }

    /** Strip of 10.4 m x 200 x 100: 0.208 m3, 5 % more is 0.218; dug with a sub-base of 100: 0.416 m3. */
    private static Weekends onStrip(JobSheet sheet) {
        return onStrip(sheet, Map.of(), 0);
    }

    private static Weekends onStrip(JobSheet sheet, Map<String, Integer> done, int today) {
        return onStrip(sheet, Map.of(), done, today, WeekendPlanner.Staging::solved);
    }

    static Weekends onStrip(
            JobSheet sheet, Map<String, Integer> fixed, Map<String, Integer> done, int today, Function<WeekendPlanner.Staging, StagingResult> schedule) {
        List<BedLoad> beds = new ArrayList<>();
        for (JobSheet.BedSheet bed : sheet.beds()) {
            List<Quantity> quantities = new ArrayList<>(bed.quantities());
            quantities.add(new Quantity(QuantityKind.DIG, 0.416, "m3", Working.of("", "")));
            quantities.add(new Quantity(QuantityKind.CONCRETE, 0.208, "m3", Working.of("", "")));
            beds.add(new BedLoad(bed.work(), quantities, 0));
        }
        return WeekendPlanner.of(sheet.garden().people().crew(), sheet.lifting(), 60, false, beds, List.of(), List.of(new SawLoad(1, 18, 0, 6, 7, Collections.nCopies(10, 57.6))), fixed, done, today,
                schedule);
    }

    private static Map<String, List<Integer>> days(Weekends weekends) {
        Map<String, List<Integer>> days = new HashMap<>();
        weekends.tasks().forEach(task -> days.put(task.work().step().code(task.work().number()), List.of(task.firstDay(), task.lastDay())));
        return days;
    }

    @Test
    void aWeekendOfTwoPeopleHas24PersonHours() {
        Weekends weekends = sheet(M, "").weekends();
        double hours = weekends.days().stream().filter(day -> day.weekend() == 1).mapToDouble(Weekends.Day::hoursThere).sum();
        assertEquals(24, hours);
    }

    /** Pour on Saturday, day 0: walls and coat 1 on day 7, coat 2 on 8, liner from 10 so Saturday 14, fill Sunday 15 at 6 minutes a
     * barrow, top-up 43. */
    @Test
    void dryingAndCuringRunThroughTheWeek() {
        Map<String, List<Integer>> days = days(onStrip(sheet(M, "\"rates\":{\"barrow\":6}")));
        assertEquals(List.of(0, 0), days.get("pour"));
        assertEquals(List.of(7, 7), days.get("course-1"));
        assertEquals(List.of(7, 7), days.get("courses"));
        assertEquals(List.of(7, 7), days.get("coat-1"));
        assertEquals(List.of(8, 8), days.get("coat-2"));
        assertEquals(14, days.get("liner").get(0));
        assertEquals(List.of(15, 15), days.get("fill"));
        assertEquals(List.of(43, 43), days.get("top-up"));
    }

    /** Poured on Sunday, day 1, and ticked off: 7 days later is Sunday 8, though people are there on Saturday 7. */
    @Test
    void aFoundationThatIsTickedOffGoesOnCuring() {
        Map<String, Integer> done = Map.of("M.set-out", 0, "M.dig", 0, "M.pour", 1, "saw.1", 0, "M.mark", 0);
        Map<String, List<Integer>> days = days(onStrip(sheet(M, ""), done, 2));
        assertEquals(8, days.get("course-1").get(0));
        List<Finding> told = onStrip(sheet(M, ""), done, 2).findings().stream().filter(finding -> finding.where().equals("bed M, walls")).toList();
        assertEquals(List.of(7.0), told.stream().map(finding -> finding.amount().orElseThrow().value()).toList(), "of all waits only the cure is told");
    }

    @Test
    void theCureIsToldWithItsDates() {
        Weekends weekends = onStrip(sheet(M, "\"start\":\"2027-03-06\""));
        Finding told = weekends.findings().stream().filter(finding -> finding.where().equals("bed M, walls")).findFirst().orElseThrow();
        assertEquals("The walls of bed M wait until Sat 13 Mar: concrete poured on Sat 6 Mar cures for 7 days.", Told.text(told));
        assertFalse(Told.ways(told).isEmpty());
    }

    /** 2900s of 34.8 kg and 2300s of 27.6 kg, one a course each: 2 of 6 timbers of course 1 are lifted by two, 4 of 12 above. */
    @Test
    void aHelperIsNeededForTheHeavyTimbersOnly() {
        Map<String, Weekends.Task> tasks = sheet(M, "").weekends().byId();
        assertEquals(List.of(new GardenTask.Share(2, true, 30), GardenTask.Share.alone(60)), tasks.get("M.course-1").work().shares());
        assertEquals(List.of(new GardenTask.Share(2, true, 16), GardenTask.Share.alone(32), new GardenTask.Share(2, true, 16), GardenTask.Share.alone(32)),
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
                GardenTask work = sheet.weekends().byId().get(part.task()).work();
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
    void aFixedWeekendIsObeyed() {
        JobSheet sheet = sheet(M + "," + N.replace("\"courses\"", "\"weekend\":4,\"courses\""), "");
        Weekends.Task course = sheet.weekends().byId().get("N.course-1");
        assertEquals(Optional.of(4), sheet.weekends().days().stream().filter(day -> day.number() == course.firstDay())
                .map(Weekends.Day::weekend).findFirst());
    }

    /**
     * Four minutes a cut and three a setting; a second person only while the board at the saw is over 25 kg, which timber of
     * 100 x 200 and 600 kg/m3 is from 2084 mm on. Common practice, no source.
     */
    @Test
    void settingsTakeTimeAndAHelperOnlyHoldsHeavyBoards() {
        JobSheet sheet = sheet(M, "");
        JobSheet.SectionCutting cutting = sheet.cutting().get(0);
        var stage = cutting.saw().batches().stages().get(0);
        int heavy = 0;
        for (lapyard.cutting.SawBoard board : cutting.saw().boards()) {
            double fromMm = 0;
            for (lapyard.cutting.SawBoard.Cut cut : board.cuts()) {
                heavy += (board.lengthMm() - fromMm) * 0.1 * 0.2 * 0.6 > 25 ? 1 : 0;
                fromMm = cut.toMm();
            }
        }
        assertTrue(heavy > 0 && heavy < stage.cuts(), "some boards are heavy: " + heavy);
        double minutes = 4 * stage.cuts() + 3 * stage.settings().size();
        assertEquals(minutes, minutes(sheet.weekends(), "saw.1"), 1e-6);
        assertEquals(minutes + 4 * heavy, sheet.weekends().byId().get("saw.1").work().personHours() * 60, 1e-6);
    }

    private static double minutes(Weekends weekends, String task) {
        return weekends.byId().get(task).work().minutes();
    }

    /**
     * Bed M by hand, common practice, no source, but for concrete: 0.208 m3 by hand at 0.08 to 0.15 m3 an hour for two people,
     * 2.8 to 5.2 person-hours; 0.416 m3 dug are 9 barrows of loose spoil of 60 l.
     */
    @Test
    void groundIsDugWheeledOffFilledWithStoneAndPoured() {
        JobSheet sheet = Gardens.sheet("{\"ground\":{\"outline\":[[0,0],[9000,0],[9000,9000],[0,9000]],\"surfaces\":[{\"kind\":\"grass\","
                + "\"outline\":[[0,0],[9000,0],[9000,9000],[0,9000]]}],\"preparation\":{\"soft\":\"strip\"}},\"beds\":[" + M + "]}");
        assertEquals(0.416 * 180 + 9 * 8, minutes(sheet.weekends(), "M.dig"), 1e-6);
        assertEquals(0.208 * 120 + 0.208 * 1140, minutes(sheet.weekends(), "M.pour"), 1e-6);
        double concrete = (minutes(sheet.weekends(), "M.pour") - 0.208 * 120) / 60;
        assertTrue(concrete > 0.208 * 2 / 0.15 && concrete < 0.208 * 2 / 0.08, "person-hours " + concrete);
    }

    /** A bed on slabs that fall is scribed, two to three hours; where no level was taken the ground is scraped, 10.4 m of wall. */
    @Test
    void scribingTakesTwoToThreeHoursABed() {
        String slabs = "\"ground\":{\"outline\":[[0,0],[9000,0],[9000,9000],[0,9000]],\"surfaces\":[{\"kind\":\"slab\","
                + "\"outline\":[[0,0],[9000,0],[9000,9000],[0,9000]]}]%s},\"beds\":[" + M + "]";
        String falls = ",\"levels\":[{\"at\":[0,0],\"drop\":412},{\"at\":[3000,0],\"drop\":412},{\"at\":[0,2400],\"drop\":442}]";
        double scribed = minutes(Gardens.sheet("{" + slabs.formatted(falls) + "}").weekends(), "M.ground");
        assertTrue(scribed >= 120 && scribed <= 180, scribed + " min");
        assertEquals(10.4 * 6, minutes(Gardens.sheet("{" + slabs.formatted("") + "}").weekends(), "M.ground"), 1e-6);
    }

    /** Marking and sealing 5 minutes a piece: 18 pieces. Two painters halve a coat; one who comes alone does not. */
    @Test
    void marksAndCoatsTakeTheirTime() {
        Weekends two = sheet(M, "").weekends();
        assertEquals(18 * 5, minutes(two, "M.mark"));
        Weekends one = sheet(M, "\"people\":[{\"name\":\"Ana\"}]").weekends();
        assertEquals(minutes(one, "M.coat-1") / 2, minutes(two, "M.coat-1"), 1e-9);
        assertEquals(13.52 * 8, minutes(one, "M.coat-1"), 0.01);
        assertEquals(one.byId().get("M.coat-1").work().personHours(), two.byId().get("M.coat-1").work().personHours(), 1e-9);
        Weekends saturdays = sheet(M, "\"people\":[{\"name\":\"Ana\"},{\"name\":\"Bo\",\"days\":[\"sat\"]}]").weekends();
        assertEquals(1, saturdays.byId().get("M.coat-1").work().people());
    }

    /**
     * Strips of M by hand: 14 cuts of 9 strips ripped from 5 boards, as many ends to trim as strips, a setting a length; one
     * person, and not before its walls stand.
     */
    @Test
    void stripsAreOnePersonsWorkInTheWeekendThatLaysThem() {
        JobSheet sheet = sheet(M + "," + N.replace("\"courses\"", "\"weekend\":4,\"courses\""), "");
        int strips = sheet.beds().stream().mapToInt(bed -> bed.work().bottom().strips().size()).sum();
        JobSheet.SawWork saw = sheet.strips().get(0).saw();
        double all = strips + saw.boards().size() + saw.ripping().orElseThrow().rips() + 3 * saw.batches().stages().stream().mapToInt(stage -> stage.settings().size()).sum();
        assertEquals(all, minutes(sheet.weekends(), "M.strips") + minutes(sheet.weekends(), "N.strips"), 1e-9);
        assertEquals((saw.boards().size() + 1) / 2, saw.ripping().orElseThrow().boards());
        for (String bed : List.of("M", "N")) {
            assertEquals(List.of(1, false), List.of(sheet.weekends().byId().get(bed + ".strips").work().people(),
                    sheet.weekends().byId().get(bed + ".strips").work().lifts()));
            assertTrue(begins(sheet.weekends(), bed + ".strips") >= ends(sheet.weekends(), bed + ".courses"), bed);
            assertTrue(begins(sheet.weekends(), bed + ".base") >= ends(sheet.weekends(), bed + ".strips"), bed);
        }
        assertTrue(sheet.weekends().byId().get("N.strips").firstDay() >= 21, "weekend 4");
    }

    /** Brackets, course ties and cross ties take time: 12 brackets on a bed of 4 corners and 3 courses, 8 minutes each. */
    @Test
    void bracketsAndTiesTakeTime() {
        String bed = N.replace("\"courses\":3", "\"courses\":3,\"ties\":{\"brackets\":true}");
        JobSheet with = sheet(bed, "");
        JobSheet without = sheet(bed.replace("true", "false"), "");
        double more = minutes(with.weekends(), "N.course-1") + minutes(with.weekends(), "N.courses")
                - minutes(without.weekends(), "N.course-1") - minutes(without.weekends(), "N.courses");
        assertEquals(12 * 8, more, 1e-6);
    }

    /** A wall of 6000 is joined once a course and side: each plate behind a joint is screwed on like a bracket. */
    @Test
    void platesBehindJointsTakeTime() {
        String bed = "{\"id\":\"N\",\"width\":6000,\"depth\":1200,\"courses\":2,\"ties\":{\"brackets\":false,\"courseTies\":false,\"crossTies\":false}}";
        JobSheet usual = sheet(bed, "");
        JobSheet slower = sheet(bed, "\"rates\":{\"bracket\":18}");
        double plates = usual.beds().get(0).quantities().stream().filter(quantity -> quantity.is(QuantityKind.JOINT_PLATES)).findFirst().orElseThrow().value();
        assertTrue(plates >= 4, plates + " plates");
        assertEquals(10 * plates, minutes(slower.weekends(), "N.course-1") + minutes(slower.weekends(), "N.courses")
                - minutes(usual.weekends(), "N.course-1") - minutes(usual.weekends(), "N.courses"), 1e-6);
    }

    /** 4 m of path 900 wide: bark 15 minutes a square metre; with sub-base dug and compacted 35 to 45. */
    @Test
    void aPathWithStoneIsDugAndCompacted() {
        String path = "{\"beds\":[],\"paths\":[{\"id\":\"P\",\"line\":[[0,0],[4000,0]],\"width\":900,\"layers\":[%s{\"material\":\"bark\",\"depth\":50}]}]}";
        double bark = minutes(Gardens.sheet(path.formatted("")).weekends(), "path.P") / 3.6;
        double stone = minutes(Gardens.sheet(path.formatted("{\"material\":\"sub-base\",\"depth\":100},")).weekends(), "path.P") / 3.6;
        assertEquals(15, bark, 1e-6);
        assertTrue(stone >= 35 && stone <= 45, stone + " min a m2");
    }

    /** Barrows run on a path whose edge is 1500 from the bed at most: its middle, with 600 of width, at most 1800. */
    @ParameterizedTest(name = "a path along {0}")
    @CsvSource(delimiter = '|', textBlock = """
            [0,2700],[1800,2700] | true
            [0,2701],[1800,2701] | false
            [900,5000],[900,2700] | true
            [900,5000],[900,2702] | false
            [3600,-5000],[3600,5000] | true
            [3602,-5000],[3602,5000] | false
            [-1200,-1300],[-1900,-1900] | true
            [-1300,-1300],[-1900,-1900] | false
            [6000,6000],[-1700,2000],[-1700,6000] | true
            [6000,6100],[-1700,2100],[-1700,6000] | false
            """)
    void barrowsRunOnThePathsThatAreNear(String line, boolean near) {
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"id\":\"A\",\"width\":1800,\"depth\":900}],\"paths\":[{\"id\":\"P\",\"line\":[" + line + "],\"width\":600}]}");
        GardenTask fill = sheet.weekends().byId().get("A.fill").work();
        assertEquals(near, fill.after().stream().anyMatch(after -> after.task().equals("path.P")), line);
    }

    /** One rate for one barrow: of a bed that is filled and of a load that is wheeled in. */
    @Test
    void oneBarrowHasOneRate() {
        JobSheet sheet = sheet(N, "\"rates\":{\"barrow\":7}");
        double barrows = sheet.beds().get(0).quantities().stream().filter(quantity -> quantity.is(QuantityKind.BARROWS)).findFirst().orElseThrow().value();
        assertEquals(barrows * 7 + 30, minutes(sheet.weekends(), "N.fill") + minutes(sheet.weekends(), "N.top-up"), 1e-9);
        lapyard.job.Loads.of(sheet).barrows().forEach(one -> assertEquals(one.runs() * 7 / 60.0, one.hours(), 1e-9));
        assertEquals(8, Crew.USUAL.minutes(lapyard.plan.Rate.BARROW));
        assertEquals(9, Gardens.garden("{\"beds\":[],\"loadIn\":{\"barrowMinutes\":9}}").people().crew().minutes(lapyard.plan.Rate.BARROW));
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
