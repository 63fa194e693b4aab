package lapyard.construction;

import static lapyard.construction.Beds.input;
import static lapyard.construction.Beds.quantity;
import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import lapyard.catalogue.Section;
import lapyard.catalogue.StrengthClass;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Lap;
import lapyard.plan.Notches;
import lapyard.plan.Saw;
import lapyard.plan.Screws;
import lapyard.plan.Ties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Brackets, straps, cross ties, places of screws, and bearers under the joints of slats. Counts worked by hand. */
class TiesTest {
    private static final Ties ALL = new Ties(new Ties.Corners(true, 6), new Ties.Courses(true, 600, Ties.CourseTie.STRAPS, 4), 50, new Ties.Across(true, 1800, 2400, 400), List.of());

    /** 6 corners x 3 courses, 6 fixings each. */
    @Test
    void bedMTakesEighteenBrackets() {
        BedWork work = Beds.built(Beds.tied(Beds.m(Lap.TURNING), ALL));
        assertEquals(18, value(work.quantities(), "brackets"));
        assertEquals(108, value(work.quantities(), "brackets.fixings"));
    }

    /** 2900: 6, 1400: 4, 1200: 3, 900: 3, 1700: 4, 2300: 5 make 25 a course; courses 2 and 3. */
    @Test
    void bedMTakesFiftyStraps() {
        BedWork work = Beds.built(Beds.tied(Beds.m(Lap.TURNING), ALL));
        assertEquals(50, value(work.quantities(), "ties.course"));
        assertEquals(200, value(work.quantities(), "ties.course.fixings"));
    }

    /** Wall A clear 2800, over 2400: ceil(2800 / 1800) - 1 = 1, in its middle, to wall E; wall F clear 2200: none. */
    @Test
    void bedMTakesOneCrossTieOffWallA() {
        List<CrossTie> ties = Beds.built(Beds.tied(Beds.m(Lap.TURNING), ALL)).frame().crossTies();
        assertEquals(List.of("A"), ties.stream().map(CrossTie::wall).toList());
        assertEquals(List.of("E"), ties.stream().map(CrossTie::toWall).toList());
        assertEquals(1500, ties.get(0).atMm());
        assertEquals(new Point(1500, 100), ties.get(0).from());
        assertEquals(2200, ties.get(0).lengthMm());
        assertEquals(300, ties.get(0).heightMm());
    }

    /**
     * Walls of 6000, boards of 4780: joints of A at 3500 in courses 1 and 3 and at 2500 in course 2, of C opposite to them. Two
     * ties serve all six. Clear runs 2400, 1000 and 2400 take no more.
     */
    @Test
    void tiesStandBehindTheJointsOfALongWall() {
        BedWork work = Beds.work(Beds.tied(Beds.bed("K", Outline.rectangle(6000, 1200), 3, Lap.TURNING), Ties.USUAL), Saw.USUAL, 4780, Map.of(), Optional.empty(), 2400, 25);
        CrossTies across = CrossTies.of(work.bed(), work.frame().inner(), work.frame().seams());
        assertEquals(6, work.frame().seams().size());
        assertEquals(List.of(2500.0, 3500.0), across.ties().stream().map(CrossTie::atMm).toList());
        assertEquals(List.of(), across.hinges());
        assertEquals(List.of(2400.0, 1000.0, 2400.0, 1000.0), across.clearMm());
        assertEquals(2, value(work.quantities(), "ties.cross"));
    }

    /** Without ties both joints of wall A and both of C are hinges; a post behind each joint of A holds those of A. */
    @Test
    void aPostBehindAJointIsSaidInOneLine() {
        Bed bed = Beds.bed("K", Outline.rectangle(6000, 1200), 3, Lap.TURNING);
        BedWork loose = Beds.work(bed, Saw.USUAL, 4780, Map.of(), Optional.empty(), 2400, 25);
        assertEquals(loose.frame().seams(), CrossTies.of(loose.bed(), loose.frame().inner(), loose.frame().seams()).hinges());
        Ties posts = with(Ties.NONE, new Ties.Support("A", OptionalDouble.empty(), true));
        BedWork held = Beds.work(Beds.tied(bed, posts), Saw.USUAL, 4780, Map.of(), Optional.empty(), 2400, 25);
        CrossTies across = CrossTies.of(held.bed(), held.frame().inner(), held.frame().seams());
        assertEquals(List.of(2500.0, 3500.0), across.posts().stream().map(CrossTies.Post::atMm).toList());
        assertEquals(List.of("C", "C", "C"), across.hinges().stream().map(Seam::wall).toList());
        assertEquals(2, value(held.quantities(), "posts"));
        assertFalse(Beds.has(held.quantities(), "ties.cross"));
    }

    /** A tie named at 1000 of wall A stands besides; 1900 further on the run of 4900 still wants one more. */
    @Test
    void aTieThatIsNamedStandsWhateverElseIsPutIn() {
        Ties named = with(Ties.USUAL, new Ties.Support("A", OptionalDouble.of(1000), false));
        BedWork work = Beds.work(Beds.tied(Beds.bed("K", Outline.rectangle(4700, 1200), 3, Lap.TURNING), named), Saw.USUAL, 4780, Map.of(), Optional.empty(), 2400, 25);
        // 900 clear to it, 3600 beyond it: ceil(3600 / 1800) - 1 = 1 in the middle
        assertEquals(List.of(1000.0, 2800.0), work.frame().crossTies().stream().map(CrossTie::atMm).toList());
        Ties only = with(Ties.NONE, new Ties.Support("A", OptionalDouble.of(1000), false));
        assertEquals(1, value(Beds.built(Beds.tied(Beds.m(Lap.TURNING), only)).quantities(), "ties.cross"));
    }

    /** From wall A the inner corner of M stands at 1700: 50 beside it is no place for a tie, 60 is; nor is 50 beside wall F, nor the corner's own timber. */
    @ParameterizedTest(name = "at {0}: {1}")
    @CsvSource({"1750, 0", "1670, 0", "1760, 1", "50, 0", "150, 0", "160, 1"})
    void aTieThatWouldLandAtACornerIsNotPutIn(double atMm, int ties) {
        Ties named = with(Ties.NONE, new Ties.Support("A", OptionalDouble.of(atMm), false));
        BedWork work = Beds.built(Beds.tied(Beds.m(Lap.TURNING), named));
        assertEquals(ties, work.frame().crossTies().size());
        CrossTies across = CrossTies.of(work.bed(), work.frame().inner(), work.frame().seams());
        assertEquals(ties == 0, across.untied().contains("A"));
        assertEquals(ties == 0, work.findings().stream().anyMatch(one -> one.kind() == FindingKind.TIE_NO_WALL && one.where().equals("bed M, wall A")));
    }

    /**
     * Walls B and D of 4700 are 4500 clear: ceil(4500 / 1800) - 1 = 2, at 1500 and 3000 of it, so 1600 and 3100 of wall B. A course of
     * 200 is under the 400 from which ties are put in, two are not.
     */
    @Test
    void tiesStandAlongTheSideWallsFromTheSecondCourse() {
        for (int courses = 1; courses <= 2; courses++) {
            BedWork work = Beds.built(Beds.tied(Beds.bed("K", Outline.rectangle(1200, 4700), courses, Lap.TURNING), ALL));
            List<CrossTie> ties = work.frame().crossTies();
            assertEquals(courses == 1 ? List.of() : List.of("B 1600.0 D", "B 3100.0 D"), ties.stream().map(tie -> tie.wall() + " " + tie.atMm() + " " + tie.toWall()).toList());
            if (courses == 1) continue;
            assertEquals(new Point(1100, 1600), ties.get(0).from());
            assertEquals(1000, ties.get(0).lengthMm());
            assertEquals(1000, Beds.input(Beds.quantity(work.quantities(), "ties.cross").working(), "wall B at 1600 to wall D"), 1e-9);
        }
    }

    /** Long screws need no fixings and tell their length: a course of 200 and 60 into the one below are 260. */
    @Test
    void onlyLongScrewsTellTheirLength() {
        Ties screws = new Ties(new Ties.Corners(false, 6), new Ties.Courses(true, 600, Ties.CourseTie.SCREWS, 4), 50, new Ties.Across(false, 1800, 2400, 400), List.of());
        for (Ties ties : List.of(screws, ALL)) {
            var quantity = Beds.quantity(Beds.built(Beds.tied(Beds.m(Lap.TURNING), ties)).quantities(), "ties.course");
            assertEquals(ties == screws ? List.of("spacing", "courses", "length of a screw") : List.of("spacing", "courses"),
                    quantity.working().inputs().stream().map(input -> input.name()).toList());
            assertEquals(ties == screws, quantity.working().formula().contains("screw = course height + 60"));
            if (ties == screws) assertEquals(260, Beds.input(quantity.working(), "length of a screw"));
        }
    }

    /**
     * A mitre of timber 200 high: three screws at 33.3, 100 and 166.7. Wall A, which the corner begins, takes the first and the third
     * head, the wall before it the second; a single screw goes in from wall A alone.
     */
    @Test
    void theTwoTimbersOfAMitreTakeHeadsByTurns() {
        Bed six = Beds.bed("X", AngledCornersTest.SIX, 1, Lap.TURNING);
        List<CornerScrew> three = Beds.built(Beds.fixed(six, true, new Screws(100, 3, 6), Notches.USUAL)).frame().screws().stream().filter(one -> one.corner() == 1).toList();
        assertEquals(List.of("X-1A X-1F", "X-1F X-1A"), three.stream().map(one -> one.head() + " " + one.into()).toList());
        assertEquals(200 / 6.0, three.get(0).heightsMm().get(0), 1e-9);
        assertEquals(1000 / 6.0, three.get(0).heightsMm().get(1), 1e-9);
        assertEquals(2, three.get(0).heightsMm().size());
        assertEquals(List.of(100.0), three.get(1).heightsMm());
        List<CornerScrew> single = Beds.built(Beds.fixed(six, true, new Screws(100, 1, 6), Notches.USUAL)).frame().screws();
        assertEquals(6, single.size());
        single.forEach(one -> assertEquals(List.of(100.0), one.heightsMm()));
    }

    /**
     * A square of 3000 takes a tie each way through its middle, a hexagon of sides of 3000 three: rods cannot pass through each other, so
     * they lie 25 apart. Two ties side by side stay at one height.
     */
    @Test
    void tiesThatCrossPassAboveEachOther() {
        BedWork square = Beds.built(Beds.tied(Beds.bed("K", Outline.rectangle(3000, 3000), 3, Lap.TURNING), ALL));
        assertEquals(List.of(300.0, 325.0), square.frame().crossTies().stream().map(CrossTie::heightMm).toList());
        assertEquals(2800, Beds.input(Beds.quantity(square.quantities(), "ties.cross").working(), "wall B at 1500 to wall D, 325 high"), 1e-9);
        double high = 3000 * Math.sqrt(3);
        BedWork six = Beds.built(Beds.tied(Beds.bed("X", Beds.outline(0, 0, 3000, 0, 4500, high / 2, 3000, high, 0, high, -1500, high / 2), 3, Lap.TURNING), ALL));
        assertEquals(List.of(300.0, 325.0, 275.0), six.frame().crossTies().stream().map(CrossTie::heightMm).toList());
        BedWork beside = Beds.built(Beds.tied(Beds.bed("K", Outline.rectangle(1200, 4700), 3, Lap.TURNING), ALL));
        assertEquals(List.of(300.0, 300.0), beside.frame().crossTies().stream().map(CrossTie::heightMm).toList());
    }

    /** 22 sides of 3000: eleven ties through one middle. A course of 200 has room for seven, 25 apart and 25 off its joints. */
    @Test
    void tiesThatCrossKeepOffTheJointsOfCourses() {
        double[] corners = new double[44];
        double radius = 1500 / Math.sin(Math.PI / 22);
        for (int i = 0; i < 22; i++) {
            corners[2 * i] = radius * Math.cos((2 * i - 1) * Math.PI / 22 - Math.PI / 2);
            corners[2 * i + 1] = radius * Math.sin((2 * i - 1) * Math.PI / 22 - Math.PI / 2);
        }
        BedWork round = Beds.built(Beds.tied(Beds.bed("K", Beds.outline(corners), 3, Lap.TURNING), ALL));
        assertEquals(List.of(300.0, 325.0, 275.0, 350.0, 250.0, 375.0, 225.0, 425.0, 175.0, 450.0, 150.0),
                round.frame().crossTies().stream().map(CrossTie::heightMm).toList());
    }

    private static Ties with(Ties ties, Ties.Support... supports) {
        return ties.withSupports(List.of(supports));
    }

    /** Whatever the shape, a joint is held or told, and with ties no clear run that faces a wall is too long. */
    @Test
    void jointsAreHeldOrTold() {
        Random random = new Random(29);
        int held = 0;
        for (int i = 0; i < 300; i++) {
            double width = 1500 + random.nextInt(90) * 100;
            double depth = 800 + random.nextInt(25) * 100;
            double notch = 500 + random.nextInt(5) * 100;
            Outline outline = i % 2 == 0
                    ? Outline.rectangle(width, depth)
                    : Beds.outline(0, 0, width, 0, width, depth, width - notch, depth, width - notch, depth + notch, 0, depth + notch);
            double longest = 1780 + random.nextInt(3) * 600;
            BedWork work = Beds.work(Beds.tied(Beds.bed("K", outline, 2 + random.nextInt(3), i % 3 == 0 ? Lap.LONG_WALL : Lap.TURNING), Ties.USUAL), Saw.USUAL, longest, Map.of(), Optional.empty(), 2400, 25);
            CrossTies across = CrossTies.of(work.bed(), work.frame().inner(), work.frame().seams());
            String name = outline + ", boards " + longest;
            for (Seam seam : work.frame().seams()) {
                int side = work.bed().wallLetters().indexOf(seam.wall());
                Point way = outline.direction(side);
                double x = outline.corner(side).x() + way.x() * seam.atMm() - way.y() * 100;
                double y = outline.corner(side).y() + way.y() * seam.atMm() + way.x() * 100;
                boolean behind = work.frame().crossTies().stream().anyMatch(tie ->
                        Math.min(tie.from().distanceMm(new Point(x, y)), tie.to().distanceMm(new Point(x, y))) <= 25.1);
                assertEquals(!across.hinges().contains(seam), behind, name + ": " + seam);
                held += behind ? 1 : 0;
            }
            for (int side = 0; side < outline.sides(); side++) {
                if (!across.untied().contains(Bed.wallLetter(side))) {
                    assertTrue(across.clearMm().get(side) <= 2400 + 1e-6, name + ": wall " + Bed.wallLetter(side));
                }
            }
        }
        assertTrue(held > 300, "joints held: " + held);
    }

    /** Row 20 counts 25 a course; timber of 200 is screwed down by 260, 60 into the course below; timber of 225 is strapped. */
    @Test
    void lowCoursesAreScrewedAndHighOnesStrapped() {
        BedWork screwed = Beds.built(Beds.tied(Beds.m(Lap.TURNING), Ties.USUAL));
        assertEquals(50, value(screwed.quantities(), "ties.course"));
        assertEquals("long screws", quantity(screwed.quantities(), "ties.course").unit());
        assertEquals(260, input(quantity(screwed.quantities(), "ties.course").working(), "length of a screw"));
        assertFalse(Beds.has(screwed.quantities(), "ties.course.fixings"));
        BedWork strapped = Beds.built(Beds.section(Beds.tied(Beds.m(Lap.TURNING), Ties.USUAL), new Section("high", 100, 225, 600, List.of(), Optional.empty(), false, 1, false)));
        assertEquals("straps", quantity(strapped.quantities(), "ties.course").unit());
        assertEquals(200, value(strapped.quantities(), "ties.course.fixings"));
    }

    /** A piece of 500 still takes two. */
    @Test
    void everyPieceTakesTwoCourseTiesAtLeast() {
        assertEquals(2, CornerJoints.courseTies(500, 600));
        assertEquals(2, CornerJoints.courseTies(600, 600));
        assertEquals(3, CornerJoints.courseTies(600.1, 600));
    }

    /** Clear 4800: 2 ties at 1600 and 3200 serve both long walls; ends of 1000 need none. */
    @Test
    void aTieServesBothItsWalls() {
        CrossTies across = CrossTies.advised(
                Beds.bed("K", Outline.rectangle(5000, 1200), 3, Lap.TURNING),
                new Outline(List.of(new Point(100, 100), new Point(4900, 100), new Point(4900, 1100), new Point(100, 1100))),
                List.of(),
                1800);
        assertEquals(List.of(1700.0, 3300.0), across.ties().stream().map(CrossTie::atMm).toList());
        assertEquals(List.of(1600.0, 1000.0, 1600.0, 1000.0), across.clearMm());
        assertEquals(List.of(List.of(1600.0, 3200.0), List.of(), List.of(1600.0, 3200.0), List.of()), across.restsMm());
        assertEquals(List.of(), across.untied());
    }

    /** A wall that faces a slanting one gets no tie: it is named. */
    @Test
    void aWallWithNothingSquareOppositeIsNamed() {
        Outline wedge = Beds.outline(0, 0, 4000, 0, 0, 3000);
        CrossTies across = CrossTies.advised(Beds.bed("W", wedge, 3, Lap.TURNING), wedge, List.of(), 1800);
        assertEquals(List.of("A", "B", "C"), across.untied());
        assertEquals(List.of(), across.ties());
    }

    /** A course of 50 has one height, its middle; the first tie across a square bed takes it, and the wall across finds none. */
    @Test
    void aWallWhoseTiesWouldAllCrossOthersIsToldSo() {
        Ties low = new Ties(new Ties.Corners(false, 6), new Ties.Courses(false, 600, Ties.CourseTie.STRAPS, 4), 50, new Ties.Across(true, 1800, 2400, 50), List.of());
        Bed bed = Beds.section(Beds.tied(Beds.bed("Q", Outline.rectangle(3000, 3000), 1, Lap.TURNING), low), new Section("flat", 100, 50, 600, List.of(), Optional.empty(), false, 1, false));
        BedWork work = Beds.built(bed);
        CrossTies across = CrossTies.of(bed, work.frame().inner(), work.frame().seams());
        assertEquals(List.of("A"), across.ties().stream().map(CrossTie::wall).toList());
        assertEquals(List.of(), across.untied());
        assertEquals(List.of("B", "D"), across.crossed());
        assertEquals(List.of(FindingKind.TIE_CROSSED, FindingKind.TIE_CROSSED), work.findings().stream().map(Finding::kind).filter(kind -> kind == FindingKind.TIE_CROSSED || kind == FindingKind.TIE_NO_WALL).toList());
    }

    /**
     * From 1500 of a front of 6000 the first wall met is the rear at 1400; the slanting one beside it ends before. From 1667 of a front
     * of 5000 it is the rear of the front arm at 1200, not the slanting wall behind it.
     */
    @Test
    void aSlantingWallThatIsNotInTheWayStopsNoTie() {
        Outline step = Beds.outline(0, 0, 6000, 0, 6000, 2400, 3000, 2400, 2000, 1400, 0, 1400);
        assertEquals("A 1500.0 E", first(step));
        Outline arms = Beds.outline(0, 0, 5000, 0, 5000, 1200, 1200, 1200, 1200, 1600, 2400, 3700, 0, 3700);
        assertEquals("A 1666.7 C", first(arms));
    }

    private static String first(Outline inner) {
        CrossTie tie = CrossTies.advised(Beds.bed("W", inner, 3, Lap.TURNING), inner, List.of(), 1800).ties().get(0);
        return tie.wall() + " " + tie.atMm() + " " + tie.toWall();
    }

    /** Walls B and D of 4700 come before A and C of 2900, whose tie then crosses theirs; a wall without a joint gets no post behind the joint of another. */
    @Test
    void theLongestWallComesFirstAndJointsAreThoseOfTheirWall() {
        BedWork work = Beds.built(Beds.tied(Beds.bed("K", Outline.rectangle(2900, 4700), 3, Lap.TURNING), ALL));
        assertEquals(List.of("B 300.0", "B 300.0", "A 325.0"), work.frame().crossTies().stream().map(tie -> tie.wall() + " " + tie.heightMm()).toList());
        Outline outline = Beds.outline(0, 0, 6000, 0, 6000, 1500, 3600, 1500, 3600, 4400, 0, 4400);
        Ties posts = with(Ties.NONE, new Ties.Support("F", OptionalDouble.empty(), true));
        BedWork held = Beds.work(Beds.tied(Beds.bed("K", outline, 3, Lap.TURNING), posts), Saw.USUAL, 4780, Map.of(), Optional.empty(), 2400, 25);
        assertEquals(List.of("A"), held.frame().seams().stream().map(Seam::wall).distinct().toList());
        assertEquals(List.of(), CrossTies.of(held.bed(), held.frame().inner(), held.frame().seams()).posts());
    }

    @Test
    void lowWallsNeedNoCrossTies() {
        BedWork work = Beds.built(Beds.tied(Beds.bed("K", Beds.M, 1, Lap.TURNING), ALL));
        assertEquals(0, value(work.quantities(), "ties.cross"));
    }

    @Test
    void nothingIsBoughtOfWhatIsLeftOut() {
        BedWork work = Beds.built(Beds.m(Lap.TURNING));
        for (String key : List.of("brackets", "brackets.fixings", "ties.course", "ties.course.fixings", "ties.cross")) {
            assertFalse(Beds.has(work.quantities(), key), key);
        }
    }

    /** Course 1 runs past at its start, course 2 at its end: what takes the head turns with it. */
    @Test
    void theHeadGoesIntoTheTimberThatStopsShort() {
        List<CornerScrew> screws = Beds.built(Beds.m(Lap.TURNING)).frame().screws();
        assertEquals(18, screws.size());
        assertEquals(inner(1, "M-1F", "M-1A"), screws.get(0));
        assertEquals(inner(2, "M-2A", "M-2F"), screws.get(6));
        assertEquals(inner(1, "M-1F", "M-1A"), Beds.built(Beds.m(Lap.LONG_WALL)).frame().screws().get(0), "a long wall runs past at both ends");
    }

    /** Corner 1: 45 degrees, 35 from the joint, so 35 x 1.414 = 49.5 of 100 before it. */
    private static CornerScrew inner(int course, String head, String into) {
        return new CornerScrew(course, 1, head, CornerScrew.Face.INNER, into, 45, 35, 100 - 2 * 35 * Math.cos(Math.PI / 4), List.of(50.0, 150.0));
    }

    /** Verified, NDS commentary: pilot 70 % of the root in softwood, 90 % in hardwood; root 2/3 of a shank of 6. */
    @Test
    void pilotsFollowTheRootOfTheScrew() {
        Bed bed = Beds.m(Lap.TURNING);
        assertEquals(2.8, Fixings.pilotMm(bed), 0.01);
        Section oak = new Section("oak", 100, 200, 1000, List.of(), StrengthClass.named("D24"), false, 1, false);
        assertEquals(3.6, Fixings.pilotMm(Beds.section(bed, oak)), 0.01);
        assertEquals(4.0, input(quantity(Beds.built(bed).quantities(), "pilots").working(), "root"), 0.01);
    }

    /** 2200 in slats of 1000: 1000, 895 and 300, so bearers at thirds of 1000 and of 895, and one more. */
    @Test
    void aJointNeverHangsBetweenTwoBearers() {
        Base base = new Base(true, new Base.Bearers("50x75", 23, 400, 30), new Base.Slats(95, 22, 1000, 15, 5, 300), 0, false);
        FloorBay bay = FloorBay.laid(new Rectangle(0, 0, 2200, 900), Outline.rectangle(2200, 900), true, base);
        assertEquals(List.of(0.0, 333.3, 666.7, 1000.0, 1298.3, 1596.7, 1895.0, 2200.0), bay.bearersAtMm());
        Random random = new Random(13);
        for (int i = 0; i < 500; i++) {
            double slat = 400 + random.nextInt(2000);
            double run = 400 + random.nextInt(5000);
            Base other = new Base(true, new Base.Bearers("50x75", 23, 250 + random.nextInt(400), 30), new Base.Slats(95, 22, slat, 15, 5, 300), 0, false);
            FloorBay laid = FloorBay.laid(new Rectangle(0, 0, run, 900), Outline.rectangle(run, 900), true, other);
            double joint = 0;
            for (double piece : laid.slats().piecesMm().subList(0, laid.slats().piecesMm().size() - 1)) {
                joint += piece;
                double at = joint;
                assertTrue(laid.bearersAtMm().stream().anyMatch(bearer -> Math.abs(bearer - at) <= 0.06),
                        "joint at " + at + " of " + laid);
            }
            assertTrue(laid.spacingMm() <= other.bearers().bearerEveryMm() + 0.11, laid.toString());
        }
    }

    /** Split at y = 1400 takes 9 strips of 2400, the other split is told beside it. */
    @Test
    void bothSplitsOfBedMAreTold() {
        var working = quantity(Beds.built(Beds.m(Lap.TURNING)).quantities(), "base.bearers").working();
        assertEquals(9, input(working, "strips"));
        assertTrue(input(working, "strips with the other split") >= 9, working.toString());
    }
}
