package lapyard.weekends;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.plan.Rate;
import lapyard.weekends.WorkList.BedLoad;
import lapyard.weekends.WorkList.PathLoad;
import lapyard.weekends.WorkList.SawLoad;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import org.junit.jupiter.api.Test;

/**
 * Each task of three beds with its person-minutes, what it waits for and what it handles. All rates are common practice, no source;
 * the amounts are worked by hand:
 *
 * <p>Saw: 24 cuts of 4 minutes and 8 settings of 3 are 120; 11 cuts of boards over 25 kg take a second person, 44 more. 60 kg are three
 * people's lift at 25 kg each, and two come.
 *
 * <p>M, on a strip of concrete: 0.416 m3 dug at 180 a m3 and 0.52 m3 wheeled off in 9 barrows of 60 l at 8 are 146.88; 0.208 m3 of stone
 * at 120 and of concrete at 1140 are 262.08. 18 pieces of 5 minutes; 5 notches of 10 under the low walls C and E. Walls A and F, 2900 and
 * 2300 long, weigh 34.8 and 27.6 kg. 13.52 m2 at 8 minutes a coat. 68 strips and slats of 3. 46 barrows less 3 kept for topping up: 43 of 72 kg
 * are 3.1 t; 5.08 m2 planted at 15.
 *
 * <p>N, neither finished nor low: brackets at 4 corners and a plate behind the joints of A and C in each of 2 courses, 8 minutes each; parts
 * of 2084 and more weigh over 25 kg, and of equally cheap ways 2320 and 1780 are the lighter parts of 4100. 9.8 m of wall levelled at 6 minutes a metre.
 *
 * <p>O, one course, open below and not lined, its ends sealed, cut on no day at the saw: B is 600 deep, 400 clear, so that 200 from
 * both corners there is one place for a notch; 4.4 m of wall.
 */
class TaskWordsTest {
    private static List<GardenTask> works() {
        JobSheet sheet = Gardens.sheet("{" + Gardens.WORKED + """
                ,"beds":[
                 {"id":"M","outline":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]],"courses":3,"low":["C","E"]},
                 {"id":"N","width":4200,"depth":900,"courses":2,"at":[4200,0],"ties":{"brackets":true},"finish":false},
                 {"id":"O","width":1800,"depth":600,"courses":1,"at":[9000,0],"base":"open","liner":false,"finish":false,"seal":true,"low":["B"],"weekend":2}]}""");
        List<BedLoad> beds = new ArrayList<>();
        for (JobSheet.BedSheet bed : sheet.beds()) {
            List<Quantity> all = new ArrayList<>(bed.quantities());
            boolean strip = beds.isEmpty();
            if (strip) {
                all.add(m3(QuantityKind.DIG, 0.416));
                all.add(m3(QuantityKind.SPOIL_LOOSE, 0.52));
                all.add(m3(QuantityKind.SUB_BASE, 0.208));
                all.add(m3(QuantityKind.CONCRETE, 0.208));
            }
            beds.add(new BedLoad(bed.work(), all, strip ? 30 : 0));
        }
        SawLoad day = new SawLoad(1, 18, 2, 6, 7, Collections.nCopies(10, 57.6)).with(new SawLoad(1, 3, 1, 2, 1, List.of(60.0)));
        return WorkList.of(sheet.garden().people().crew(), sheet.lifting(), 60, 2, false, beds, List.of(), List.of(day));
    }

    /** Barrows run on a path up to 1500 from its edge to the bed: 1900 off its middle for one of 1000, and not 2100. 5 m2 of it, on stone or without. */
    @Test
    void fillingWaitsForThePathsThatBarrowsRunOn() {
        JobSheet sheet = Gardens.sheet("""
                {"beds":[{"id":"A","width":2400,"depth":1200}],"paths":[{"id":"P","line":[[0,-1900],[5000,-1900]],"width":1000},
                  {"id":"Q","line":[[0,3300],[5000,3300]],"width":1000}]}""");
        List<PathLoad> paths = sheet.paths().stream().map(path -> new PathLoad(path.path(), path.quantities(), path.path().id().equals("Q"))).toList();
        JobSheet.BedSheet bed = sheet.beds().get(0);
        List<GardenTask> works = WorkList.of(sheet.garden().people().crew(), sheet.lifting(), 60, 1, false,
                List.of(new BedLoad(bed.work(), bed.quantities(), 0)), paths, List.of());
        assertEquals(List.of("path.P"), works.stream().filter(work -> work.step() == Step.FILL).flatMap(work -> work.after().stream())
                .map(GardenTask.After::task).filter(task -> task.startsWith("path")).toList());
        assertEquals(List.of(5 * Rate.PATH.usualMinutes, 5 * Rate.STONE_PATH.usualMinutes),
                works.stream().filter(work -> work.step() == Step.PATH).map(GardenTask::minutes).toList());
    }

    private static Quantity m3(QuantityKind kind, double m3) {
        return new Quantity(kind, m3, "m3", Working.of("", ""));
    }

    private static String told(GardenTask work) {
        return work.id() + ": " + work.label() + ", " + Math.round(work.personHours() * 6000) / 100.0 + " min"
                + work.after().stream().map(after -> "; " + after.task() + (after.days() > 0 ? " + " + after.days() : "") + ", " + after.why()).collect(Collectors.joining())
                + (work.loads().isEmpty() ? "" : " | " + String.join("; ", work.loads()));
    }

    @Test
    void eachTaskTellsItsWorkItsWaitsAndItsAmounts() {
        assertEquals("""
                saw.1: cut for stage 1, 164.0 min | 8 boards, 21 square and 3 slanted cuts at 8 settings
                M.set-out: set out, 45.0 min
                M.dig: dig, 146.88 min; M.set-out, set out | 0.42 m³ out, 9 barrows
                M.pour: lay the sub-base, pour, 262.08 min; M.dig, dig | 0.21 m³ of concrete, 0.21 m³ of sub-base
                M.mark: mark pieces, 90.0 min; saw.1, pieces are cut | 18 pieces
                M.notches: cut drain notches, 50.0 min; M.mark, pieces are marked | 5 notches
                M.course-1: course 1, level and square, 120.0 min; M.pour + 7, concrete cures; M.mark, pieces are marked; M.notches, notches are hidden by course 1 | 6 timbers, the heaviest 34.8 kg; 2 lifts over 25 kg: M-1A, M-1F
                M.courses: courses 2 to 3, 128.0 min; M.course-1, course 1, level and square | 12 timbers, the heaviest 34.8 kg; 4 lifts over 25 kg: M-2A, M-2F, M-3A, M-3F
                M.coat-1: coat 1, 108.16 min; M.courses, walls stand | 13.5 m²
                M.coat-2: coat 2, 108.16 min; M.coat-1 + 1, coat 1 dries | 13.5 m²
                M.strips: rip and cut bearer strips, 30.0 min; M.courses, walls stand | 14 bearers and beams
                M.base: lay the base, 204.0 min; M.coat-2 + 1, finish dries, and is hidden by the base; M.strips, strips are cut | 14 bearers and beams, 54 slats
                M.liner: line, 73.27 min; M.coat-2 + 2, finish dries, and is hidden by the liner; M.base, base and drain gaps are hidden by the liner | 14.7 m²
                M.fill: fill by barrow, tread lightly, water, 344.0 min; M.liner, it is ready for soil | 43 barrows, 3.1 t
                M.plant: plant and mulch, 76.2 min; M.fill, fill by barrow, tread lightly, water
                M.top-up: top up, 54.0 min; M.fill + 28, soil settles
                N.set-out: set out, 45.0 min
                N.ground: make the ground ready, 58.8 min; N.set-out, set out
                N.mark: mark pieces, 60.0 min; saw.1, pieces are cut | 12 pieces
                N.course-1: course 1, level and square, 168.0 min; N.ground, ground is ready; N.mark, pieces are marked | 6 timbers, the heaviest 27.8 kg; 2 lifts over 25 kg: N-1Ab, N-1Cb; 4 brackets, 2 joint plates
                N.courses: course 2, 112.0 min; N.course-1, course 1, level and square | 6 timbers, the heaviest 27.8 kg; 2 lifts over 25 kg: N-2Aa, N-2Ca; 4 brackets, 2 joint plates
                N.base: lay the base, 117.0 min; N.courses, walls stand | 11 bearers and beams, 28 slats
                N.liner: line, 34.75 min; N.courses, walls stand; N.base, base and drain gaps are hidden by the liner | 6.9 m²
                N.fill: fill by barrow, tread lightly, water, 112.0 min; N.liner, it is ready for soil | 14 barrows, 1.0 t
                N.plant: plant and mulch, 42.0 min; N.fill, fill by barrow, tread lightly, water
                N.top-up: top up, 30.0 min; N.fill + 28, soil settles
                O.set-out: set out, 45.0 min
                O.ground: make the ground ready, 26.4 min; O.set-out, set out
                O.mark: mark pieces, seal ends, 20.0 min | 4 pieces
                O.notches: cut drain notches, 10.0 min; O.mark, pieces are marked | 1 notch
                O.course-1: course 1, level and square, 60.0 min; O.ground, ground is ready; O.mark, pieces are marked; O.notches, notches are hidden by course 1 | 4 timbers, the heaviest 20.4 kg
                O.fill: fill by barrow, tread lightly, water, 16.0 min; O.course-1, it is ready for soil | 2 barrows, 0.1 t
                O.plant: plant and mulch, 9.6 min; O.fill, fill by barrow, tread lightly, water
                O.top-up: top up, 30.0 min; O.fill + 28, soil settles
                """, works().stream().map(work -> told(work) + "\n").collect(Collectors.joining()));
    }

    private static GardenTask work(String id) {
        return works().stream().filter(work -> work.id().equals(id)).findFirst().orElseThrow();
    }

    /** Timbers by their marks where they are handled: all of a bed, those of a course, those of the low walls. */
    @Test
    void theTimbersOfATaskAreNamed() {
        assertEquals(18, work("M.mark").marks().size());
        assertEquals(List.of("M-1C", "M-1E"), work("M.notches").marks());
        assertEquals(List.of("M-1A", "M-1B", "M-1C", "M-1D", "M-1E", "M-1F"), work("M.course-1").marks());
        assertEquals(12, work("M.courses").marks().size());
        assertEquals(List.of("O-1B"), work("O.notches").marks());
    }

    /** How many lift what is heavy, and that two are not enough for 60 kg. */
    @Test
    void heavyTimbersAreCautionedAbout() {
        assertEquals("boards up to 60 kg: 3 people, or wheels", work("saw.1").cautions().get(2));
        assertEquals("2 people to each lift over 25 kg: bend the knees, agree the word first", work("M.course-1").cautions().get(0));
        assertEquals(1, work("O.course-1").cautions().size(), "1700 x 100 x 200 at 600 kg/m3 are 20.4 kg");
        assertEquals("a barrow of soil is about 72 kg: plank over edges, no hurry", work("M.fill").cautions().get(0), "60 l at 1200 kg/m3");
    }
}
