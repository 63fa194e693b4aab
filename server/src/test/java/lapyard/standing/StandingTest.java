package lapyard.standing;

import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import lapyard.plan.Fill;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Finish;
import lapyard.plan.Liner;
import lapyard.plan.SurfaceKind;
import lapyard.plan.Told;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.junit.jupiter.params.ParameterizedTest;
import lapyard.plan.Screws;
import lapyard.plan.Notches;
import lapyard.plan.Joint;
import lapyard.geometry.Point;
import java.util.Random;
import java.util.ArrayList;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lapyard.catalogue.Section;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.Beds;
import lapyard.geometry.Outline;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Lap;
import lapyard.plan.Place;
import lapyard.plan.StandingRules;
import lapyard.plan.Saw;
import lapyard.plan.Ties;
import lapyard.standing.Verdict.Outcome;
import org.junit.jupiter.api.Test;

/** Verdicts on whole beds, worked by hand. */
class StandingTest {
    private static final Ties CROSS = new Ties(new Ties.Corners(false, 6), new Ties.Courses(false, 600, Ties.CourseTie.STRAPS, 4), 50, new Ties.Across(true, 1800, 2400, 400), List.of());

    private static Bed bed(Bed bed, Ties ties, String... near) {
        return Beds.tied(bed, ties).withSiting(new Bed.Siting(bed.outline(), bed.placement(), Set.of(near)));
    }

    private static Standing standing(Bed bed, Footing footing) {
        return Standing.of(lapyard.construction.Beds.work(bed, Saw.USUAL, Beds.LONGEST, Map.of(), Optional.empty(), 2400, 25), StandingRules.USUAL, footing);
    }

    private static Verdict verdict(Standing standing, String about) {
        return standing.verdicts().stream().filter(one -> one.about().equals(about)).findFirst().orElseThrow();
    }

    private static Footing on(SurfaceKind... surfaces) {
        return new Footing(Set.of(surfaces), 75, StrengthClass.LOWEST, false, "");
    }

    /** Of bed M's soil: tan2(45 - 28.8 / 2) = 0.34975. */
    private static final double SHARE = 0.34975;

    /**
     * The floor lies 45 over the ground, so 600 - 45 - 50 = 505 of soil, and 155 of the lowest course bear it, 427.5 deep on
     * average: 0.34975 x 15.696 x 0.4275 = 2.347 kN/m2 and 0.34975 x 0.96 = 0.336 of someone's weight. Over the whole 200 of the
     * course that is 2.683 x 0.775 = 2.079, design (1.35 x 2.347 + 1.5 x 0.336) x 0.775 = 2.846. Ungraded, 14 x 0.5 / 1.3 = 5.385
     * N/mm2: 0.75 x 0.002846 x 28 x 28 / 5.385 = 31.1 %. Bow 0.46875 x 0.002079 x 2800^4 / (7000 x 100^3) = 8.56, under a 200th.
     */
    @Test
    void bedMHolds() {
        Standing m = standing(Beds.m(Lap.TURNING), on(SurfaceKind.SLAB));
        assertEquals(31.07, value(m.quantities(), "wall.use"), 0.02);
        assertEquals(8.56, value(m.quantities(), "wall.bow"), 0.01);
        assertEquals(Outcome.HOLDS, verdict(m, "walls").outcome());
        assertTrue(Told.text(verdict(m, "walls").finding()).startsWith("Wall A uses 31 % of its strength over a span of 2800 mm"));
    }

    /**
     * One course of 200, open, 100 free below its rim: 100 of soil and mulch lie against it, 50 deep on average: 0.34975 x 15.696 x 0.05 =
     * 0.2745 kN/m2 and 0.336 of someone's weight, over half of the course, design (1.35 x 0.2745 + 1.5 x 0.336) / 2 = 0.437. Over 2200:
     * 0.75 x 0.000437 x 22 x 22 / 5.385 = 2.95 %.
     */
    @Test
    void shallowSoilPushesOnlyWhereItLies() {
        Bed low = Beds.filled(Beds.bed("K", Outline.rectangle(2400, 1200), 1, Lap.TURNING), Base.USUAL.slatted(false), Liner.USUAL,
                new Fill(100, 50, 0.15, Fill.USUAL.layers()), Finish.USUAL);
        assertEquals(2.95, value(standing(low, on()).quantities(), "wall.use"), 0.01);
        Bed bare = Beds.filled(low, Base.USUAL.slatted(false), Liner.USUAL, new Fill(300, 0, 0.15, Fill.USUAL.layers()), Finish.USUAL);
        assertEquals(0, input(standing(bare, on()), "mass.wet", "soil and mulch"), "a gap deeper than the wall holds no soil, and none is taken off");
    }

    /** Soil that settles by 30 % from 1200 loose would be 1714 dry, over 1600 soaked: dry it weighs no more than that. */
    @Test
    void drySoilIsNoHeavierThanSoaked() {
        Bed settling = Beds.filled(Beds.m(Lap.TURNING), Base.USUAL, Liner.USUAL, new Fill(50, 50, 0.3, Fill.USUAL.layers()), Finish.USUAL);
        assertEquals(1600, input(standing(settling, on()), "mass.dry", "weight as settled"), 1);
    }

    /** Clear 3800 for 2800: 31.07 x (38 / 28)^2 = 57.2 %, bow 8.56 x (38 / 28)^4 = 29.0, over 3800 / 200 = 19. */
    @Test
    void aLongWallHoldsButBows() {
        Standing k = standing(Beds.bed("K", Outline.rectangle(4000, 1200), 3, Lap.TURNING), on(SurfaceKind.SLAB));
        Verdict walls = verdict(k, "walls");
        assertEquals(Outcome.BOWS, walls.outcome());
        assertTrue(Told.text(walls.finding()).contains("bows 29 mm; 19 mm is the most"), Told.text(walls.finding()));
        assertEquals(29.03, value(k.quantities(), "wall.bow"), 0.05);
        // 3800 / 1800: two ties, at thirds of the clear run, which begins 100 in
        assertEquals("Add cross ties in wall A at 1367 and 2633 mm", Told.ways(walls.finding()).get(0));
        assertEquals(2, value(k.quantities(), "ties.advised"));
        // cube root(7000 x t^3 / (0.46875 x 200 x 0.002079)): 3299 at 100, 4124 at 125; C16 with 8000 3449, C24 with 11000 3835
        String ways = String.join("; ", Told.ways(walls.finding()));
        assertTrue(ways.contains("125 mm") && ways.contains("C24"), ways);
    }

    /**
     * Drains blocked: 0.34975 x (15.696 - 9.81) + 9.81 = 11.869 kN/m2 a metre, at 0.4275 over 155 of 200: 3.932, design 5.309. Over
     * 3800 that takes 0.75 x 0.005309 x 38 x 38 / 5.385 = 107 % of the strength; cube root(7000 x 100^3 / (0.46875 x 200 x
     * 0.003932)) = 2668. On a tie of thirds push 11.869 x 0.505^2 / 2 = 1.513 kN/m.
     */
    @Test
    void aLongWallFailsWithItsDrainsBlocked() {
        Standing k = standing(Beds.bed("K", Outline.rectangle(4000, 1200), 3, Lap.TURNING), on(SurfaceKind.SLAB));
        assertEquals(2668, value(k.quantities(), "ties.spacing.blocked"), 1);
        String told = Told.text(verdict(k, "walls blocked").finding());
        assertTrue(told.contains("107 %"), told);
        Place place = verdict(k, "walls blocked").finding().place();
        assertEquals("walls without drainage of bed K", place.words());
        assertEquals("bed K, walls blocked", place.key(), "stored gardens accept it by this name");
        assertEquals(1.513 * input(k, "ties.force", "distance"), value(k.quantities(), "ties.force"), 0.005);
        assertEquals(3.8 / 3, input(k, "ties.force", "distance"), 1e-6);
        assertTrue(standing(Beds.m(Lap.TURNING), on(SurfaceKind.SLAB)).verdicts().stream().noneMatch(one -> one.about().equals("walls blocked")));
        Standing low = standing(Beds.bed("K", Outline.rectangle(4000, 1200), 1, Lap.TURNING), on(SurfaceKind.SLAB));
        assertEquals(0, value(low.quantities(), "ties.advised"), "under 400 high nobody advises ties");
        // 3 x 50.3 is 150.9, in binary a little less: where ties are put in they are advised too
        Ties from = new Ties(CROSS.corners(), CROSS.courses(), 50, new Ties.Across(true, 1800, 2400, 150.9), List.of());
        Bed just = Beds.section(bed(Beds.bed("T", Outline.rectangle(4800, 1200), 3, Lap.TURNING), from), new Section("s", 50, 50.3, 600, List.of(), Optional.empty(), false, 1, false));
        Standing same = Standing.of(Beds.built(just), StandingRules.USUAL, on());
        assertEquals(2, value(same.quantities(), "ties.advised"));
    }

    /** A tie at 600 leaves 600 to 4300 of wall A clear, over 3299: more ties at thirds of those 3700, and not where one stands. */
    @Test
    void tiesAreOfferedWhereNoneStands() {
        Ties first = Ties.NONE.withSupports(List.of(new Ties.Support("A", OptionalDouble.of(600), false)));
        Verdict walls = verdict(standing(bed(Beds.bed("K", Outline.rectangle(4400, 1200), 3, Lap.TURNING), first), on(SurfaceKind.SLAB)), "walls");
        assertEquals("Add cross ties in wall A at 1833 and 3067 mm", Told.ways(walls.finding()).get(0));
    }

    /** No two walls of a pentagon face each other, so no tie serves one: posts do, 3299 apart at most, and behind the joints of long walls. */
    @Test
    void wallsThatNoWallFacesGetPosts() {
        Verdict walls = verdict(standing(Beds.bed("X", ring(5, 4400), 3, Lap.TURNING), on(SurfaceKind.SLAB)), "walls");
        assertEquals("Hold wall A by posts in the ground inside, at most 3290 mm apart", Told.ways(walls.finding()).get(0));
        Verdict corners = verdict(standing(Beds.bed("X", ring(5, 4400), 3, Lap.TURNING), on(SurfaceKind.SLAB)), "corners");
        assertEquals(Outcome.BOWS, corners.outcome());
        assertTrue(Told.ways(corners.finding()).stream().noneMatch(way -> way.contains("cross ties")), Told.ways(corners.finding()).toString());
        Verdict joints = verdict(standing(Beds.bed("X", ring(5, 6000), 3, Lap.TURNING), on(SurfaceKind.SLAB)), "joints");
        assertTrue(Told.ways(joints.finding()).stream().noneMatch(way -> way.contains("cross ties")), Told.ways(joints.finding()).toString());
    }

    private static Outline ring(int sides, double side) {
        List<Point> corners = new ArrayList<>();
        double x = 0;
        double y = 0;
        for (int i = 0; i < sides; i++) {
            corners.add(new Point(x, y));
            x += side * Math.cos(2 * Math.PI * i / sides);
            y += side * Math.sin(2 * Math.PI * i / sides);
        }
        return new Outline(corners);
    }

    /** One tie halves the run: 31.07 / 4 % and 8.56 / 16; wall F, 2200, is then the longest: (22 / 28)^2 and ^4. */
    @Test
    void aCrossTieMakesItHold() {
        Standing m = standing(bed(Beds.m(Lap.TURNING), CROSS), on(SurfaceKind.SLAB));
        assertEquals(31.07 * 22 * 22 / 28 / 28, value(m.quantities(), "wall.use"), 0.02);
        assertEquals(8.557 * Math.pow(22.0 / 28, 4), value(m.quantities(), "wall.bow"), 0.01);
        assertEquals(Outcome.HOLDS, verdict(m, "walls").outcome());
        assertEquals(Outcome.HOLDS, verdict(m, "corners").outcome());
    }

    /** Stamped C24: 31.07 x 14 / 24 %, 8.557 x 7000 / 11000. */
    @Test
    void aStampBringsItsStrength() {
        Section stamped = new Section("100x200", 100, 200, 600, List.of(), Optional.of(StrengthClass.C24), false, 1, false);
        Standing m = standing(Beds.section(Beds.m(Lap.TURNING), stamped), on(SurfaceKind.SLAB));
        assertEquals(31.07 * 14 / 24, value(m.quantities(), "wall.use"), 0.02);
        assertEquals(8.557 * 7 / 11, value(m.quantities(), "wall.bow"), 0.02);
        assertEquals(Outcome.HOLDS, verdict(m, "walls").outcome());
        Standing mixed = standing(Beds.section(Beds.m(Lap.TURNING), stamped), new Footing(Set.of(), 75, StrengthClass.LOWEST, true, ""));
        assertEquals(31.07, value(mixed.quantities(), "wall.use"), 0.02);
    }

    /**
     * Statics: a ring under even pressure pulls along each side with pressure x side / (2 tan(turn / 2)), and square to a
     * mitre with pressure x side / (2 sin(turn / 2)). Six sides of 2000 have inner faces of 2000 - 2 x 100 x tan 30 = 1884.5, so
     * twice what half a run pulls; eight of 1500 have 1417.2, so 1 / (2 sin 22.5) = 1.3066 times the run.
     */
    @ParameterizedTest(name = "{0} sides of {1}")
    @CsvSource({"6, 2000, 1884.53, 1.0", "8, 1500, 1417.16, 1.30656", "5, 1800, 1654.69, 0.85065", "12, 900, 846.41, 1.93185"})
    void aMitreIsPulledTheMoreTheLessItTurns(int sides, double side, double clear, double times) {
        Standing ring = standing(Beds.bed("X", ring(sides, side), 3, Lap.TURNING), on(SurfaceKind.SLAB));
        double push = SHARE * 15.696 * 0.505 * 0.505 / 2 + SHARE * 0.96 * 0.505;
        assertEquals(push * clear / 1000 * times, value(ring.quantities(), "corner.pull"), 0.002);
        // along the sides the same ring pulls pressure x radius to their middles: the cut through it holds itself
        assertTrue(Beds.quantity(ring.quantities(), "corner.pull").working().formula().contains("sin(turn / 2)"));
        double along = value(ring.quantities(), "corner.pull") * Math.cos(Math.PI / sides);
        assertEquals(push * clear / 2000 / Math.tan(Math.PI / sides), along, 0.002);
    }

    /**
     * Walls of different length at one mitre, by the balance of each wall: the pull's part square to a wall holds half its run
     * once what slips along the mitre is added for the longer wall and taken off for the shorter.
     */
    @Test
    void aMitreBetweenUnlikeWallsHoldsBoth() {
        Random random = new Random(1);
        for (int i = 0; i < 200; i++) {
            double turn = 20 + 120 * random.nextDouble();
            double before = 300 + 3000 * random.nextDouble();
            double after = 300 + 3000 * random.nextDouble();
            double pull = CornerCheck.pullKn(Joint.MITRE, turn, 1, before, after);
            double half = Math.toRadians(turn / 2);
            double slip = (before - after) / 4000 / Math.cos(half);
            assertEquals(before / 2000, pull * Math.sin(half) + slip * Math.cos(half), 1e-9);
            assertEquals(after / 2000, pull * Math.sin(half) - slip * Math.cos(half), 1e-9);
            assertEquals(Math.max(before, after) / 2000, CornerCheck.pullKn(Joint.LAP, turn, 1, before, after), 1e-12);
        }
    }

    /**
     * The everyday bed, 2400 x 1200 x 600, as it is built when nobody says otherwise: screws of 120 with their heads 40 from the
     * joint, 120 - 40 x 1.414 = 63.4 of thread each; 6 of them hold 6 x 19.65 x (350 / 1120)^2 x 6 x 63.4 x 0.4221 = 1.85 kN,
     * and (0.700 + 0.170) kN/m x 2.2 / 2 = 0.957 kN pulls.
     */
    @Test
    void theEverydayBedHolds() {
        Bed everyday = bed(Beds.fixed(Beds.bed("A", Outline.rectangle(2400, 1200), 3, Lap.TURNING), true,
                new Screws(120, 2, 6), Notches.USUAL), Ties.USUAL);
        Standing stands = standing(everyday, on());
        assertEquals(1.85, value(stands.quantities(), "corner.hold"), 0.01);
        assertEquals(0.957, value(stands.quantities(), "corner.pull"), 0.002);
        assertEquals(List.of(), stands.verdicts().stream().filter(one -> one.outcome() != Outcome.HOLDS).toList());
    }

    /** Wall E of 4800 is the longest; it is held at corners 5 and 6, far from where the bed begins. */
    private static Bed longBehind(Ties ties) {
        Outline outline = new Outline(List.of(new Point(0, 0), new Point(1800, 0), new Point(1800, 900), new Point(4800, 900), new Point(4800, 2400),
                new Point(0, 2400)));
        return bed(Beds.fixed(Beds.bed("L", outline, 3, Lap.TURNING), true, new Screws(120, 2, 6), Notches.USUAL), ties);
    }

    /**
     * The push of the everyday bed, 0.870 kN/m, over 4600 of wall E inside: 0.870 x 4.6 / 2 = 2.001 kN at corner 5, and 6 screws hold
     * 1.85, which is 108 %. One screw holds 0.3083, so 2.001 / 0.3083 = 6.5, over 3 courses 3 in each joint.
     */
    @Test
    void theWorstCornerIsNamedWithWhatHelps() {
        Standing pulled = standing(longBehind(Ties.NONE), on());
        assertEquals(2.001, value(pulled.quantities(), "corner.pull"), 0.005);
        assertEquals(1.85, value(pulled.quantities(), "corner.hold"), 0.01);
        assertEquals(1.3, input(pulled, "corner.pull", "run before"), 1e-9);
        assertEquals(4.6, input(pulled, "corner.pull", "run after"), 1e-9);
        assertEquals(6, input(pulled, "corner.hold", "screws"));
        assertTrue(Beds.quantity(pulled.quantities(), "corner.pull").working().formula().endsWith("the longer run / 2"));
        Verdict corners = verdict(pulled, "corners");
        assertEquals(Outcome.BOWS, corners.outcome());
        assertTrue(Told.text(corners.finding()).contains("Corner 5"), Told.text(corners.finding()));
        assertTrue(Told.text(corners.finding()).contains("108 %"), Told.text(corners.finding()));
        String ways = String.join("; ", Told.ways(corners.finding()));
        assertTrue(ways.contains("brackets") && ways.contains("cross ties") && ways.contains("3 screws"), ways);
    }

    /** Wall A, 7400 inside, pulls 3.219 kN: 3.48 screws in each of 3 joints, so 4. With 9400 it is 4.42: 5 would split the timber. */
    @ParameterizedTest(name = "{0} long, {1} screws a joint offered: {2}")
    @CsvSource({"7600, 4, true", "9600, 5, false"})
    void noMoreThanFourScrewsAJointAreOffered(double length, int screws, boolean offered) {
        Bed straight = Beds.fixed(Beds.bed("L", Outline.rectangle(length, 1200), 3, Lap.TURNING), true, new Screws(120, 2, 6), Notches.USUAL);
        String ways = String.join("; ", Told.ways(verdict(standing(bed(straight, Ties.NONE), on()), "corners").finding()));
        assertEquals(offered, ways.contains(screws + " screws"), ways);
    }

    /** Screws of 300 come out of 100 timber, so nothing holds the corners; 5 is pulled most. Brackets hold by their maker's figures. */
    @Test
    void cornersWithoutScrewsAreWeak() {
        Standing bare = standing(Beds.fixed(longBehind(Ties.NONE), true, new Screws(300, 2, 6), Notches.USUAL), on());
        assertEquals(Outcome.WEAK, verdict(bare, "corners").outcome());
        assertEquals(FindingKind.CORNER_NO_SCREWS, verdict(bare, "corners").finding().kind());
        assertEquals(2.001, value(bare.quantities(), "corner.pull"), 0.005);
        Standing held = standing(Beds.fixed(longBehind(BRACKETS), true, new Screws(300, 2, 6), Notches.USUAL), on());
        assertTrue(held.verdicts().stream().noneMatch(one -> one.about().equals("corners")));
    }

    private static final Ties BRACKETS = new Ties(new Ties.Corners(true, 6), new Ties.Courses(false, 600, Ties.CourseTie.BY_HEIGHT, 4), 50, new Ties.Across(false, 1800, 2400, 400), List.of());

    /** Whose corners have brackets is not told of screws. */
    @Test
    void bracketsHoldByTheirMakersFigures() {
        Verdict corners = verdict(standing(longBehind(BRACKETS), on()), "corners");
        assertEquals(Outcome.HOLDS, corners.outcome());
        assertTrue(Told.text(corners.finding()).contains("brackets hold by their maker's figures"), Told.text(corners.finding()));
        Verdict screwed = verdict(standing(bed(Beds.m(Lap.TURNING), CROSS), on(SurfaceKind.SLAB)), "corners");
        assertTrue(Told.text(screwed.finding()).contains("screws hold"), Told.text(screwed.finding()));
    }

    private static double input(Standing standing, String quantity, String name) {
        return Beds.input(Beds.quantity(standing.quantities(), quantity).working(), name);
    }

    /** 47 mm boards over 2800 take 31.07 x (100 / 47)^2 = 141 % of their strength. */
    @Test
    void thinBoardsAreTooWeakAndSaySo() {
        Section thin = new Section("47x200", 47, 200, 600, List.of(), Optional.empty(), false, 1, false);
        Standing weak = standing(Beds.section(Beds.bed("K", Outline.rectangle(2894, 1200), 3, Lap.TURNING), thin), on(SurfaceKind.SLAB));
        Verdict walls = verdict(weak, "walls");
        assertEquals(Outcome.WEAK, walls.outcome());
        assertTrue(Told.text(walls.finding()).contains(" 141 % of its strength"), Told.text(walls.finding()));
        assertTrue(Told.ways(walls.finding()).size() >= 2, Told.ways(walls.finding()).toString());
        assertTrue(weak.verdicts().stream().noneMatch(one -> one.about().equals("walls blocked")), "what may break drained is not told of drains");
    }

    /** 505 of soil and mulch on slats 95 x 22 over 400: 15.696 x 0.505 = 7.926 kN/m2. */
    @Test
    void bedMsSlatsHold() {
        Standing m = standing(Beds.m(Lap.TURNING), on(SurfaceKind.SLAB));
        Verdict slats = verdict(m, "slats");
        assertEquals(Outcome.HOLDS, slats.outcome());
        double carries = 95 + (1300 - 12 * 95) / 11.0;
        double use = 1.35 * 0.0079265 * carries * 400 * 400 / 8 / (95 * 22 * 22 / 6.0) / (0.5 * 14 / 1.3);
        assertEquals(use * 100, value(m.quantities(), "slats.use"), 0.01);
        assertEquals(Outcome.HOLDS, verdict(m, "ground").outcome());
    }

    /**
     * 7.926 x 5.08 m2 over (8 x 1.27 + 5 x 0.87) x 0.075 m2 of bearer: 37.0 kN/m2, where ground without its turf bears 40 at
     * least; under strips of 50 it is 55.5.
     */
    @Test
    void narrowBearersSinkIntoSoftGround() {
        Standing m = Standing.of(Beds.built(Beds.m(Lap.TURNING)), StandingRules.USUAL, on(SurfaceKind.GRASS));
        assertEquals(7.9265 * 5.08 / ((8 * 1.27 + 5 * 0.87) * 0.075), value(m.quantities(), "bearers.load"), 0.01);
        assertEquals(7.9265, input(m, "bearers.load", "pressure"), 1e-3);
        assertEquals(5.08, input(m, "bearers.load", "inside"), 1e-9);
        assertEquals(0.075, input(m, "bearers.load", "width"), 1e-9);
        assertEquals(Outcome.HOLDS, verdict(m, "ground").outcome());
        assertTrue(Told.text(verdict(m, "ground").finding()).contains("turf or filled ground bears 24 kN/m²"), Told.text(verdict(m, "ground").finding()));
        Standing narrow = Standing.of(
                Beds.built(Beds.m(Lap.TURNING)), StandingRules.USUAL, new Footing(Set.of(SurfaceKind.GRASS), 50, StrengthClass.LOWEST, false, ""));
        assertEquals(55.5, value(narrow.quantities(), "bearers.load"), 0.1);
        assertEquals(Outcome.BOWS, verdict(narrow, "ground").outcome());
        Standing half = Standing.of(Beds.built(Beds.m(Lap.TURNING)), StandingRules.USUAL,
                new Footing(Set.of(SurfaceKind.GRASS, SurfaceKind.GRAVEL, SurfaceKind.SLAB), 50, StrengthClass.LOWEST, false, ""));
        assertEquals(Outcome.BOWS, verdict(half, "ground").outcome(), "the softest of its grounds counts");
        String gravel = Told.text(verdict(standing(Beds.m(Lap.TURNING), on(SurfaceKind.GRAVEL)), "ground").finding());
        assertTrue(gravel.contains("gravel") && !gravel.contains("turf"), gravel);
        String both = Told.text(verdict(standing(Beds.m(Lap.TURNING), on(SurfaceKind.GRAVEL, SurfaceKind.GRASS)), "ground").finding());
        assertTrue(both.contains("turf or filled ground bears 24"), both);
        Standing unknown = standing(Beds.m(Lap.TURNING), new Footing(Set.of(SurfaceKind.GRASS), 0, StrengthClass.LOWEST, false, ""));
        assertTrue(unknown.verdicts().stream().noneMatch(one -> one.about().equals("ground")), "bearers of unknown width are not judged");
    }

    /** Ground that nobody drew is asked for, not judged. */
    @Test
    void groundThatNobodyDrewIsNotJudged() {
        Standing m = Standing.of(Beds.built(Beds.m(Lap.TURNING)), StandingRules.USUAL, on());
        assertTrue(m.verdicts().stream().noneMatch(one -> one.about().equals("ground")), m.verdicts().toString());
    }

    /** Timber 374.4 kg, 5.08 x 0.505 m3 of wet soil of 1600 kg/m3. */
    @Test
    void bedMSoakedWeighsFiveTonnes() {
        Standing m = standing(Beds.m(Lap.TURNING), on(SurfaceKind.SLAB));
        assertEquals(374.4 + 5.08 * 0.505 * 1600, value(m.quantities(), "mass.wet"), 0.5);
        assertEquals(374.4 * 470 / 600 + 5.08 * 0.505 * 1200 / 0.85, value(m.quantities(), "mass.dry"), 0.5);
        assertEquals((374.4 + 5.08 * 0.505 * 1600) * 9.81 / 1000 / (3.0 * 1.5 + 1.8 * 0.9), value(m.quantities(), "ground.load"), 0.01);
    }

    @Test
    void whatIsACaseForAnEngineerIsRefusedByName() {
        Standing deck = standing(Beds.m(Lap.TURNING), on(SurfaceKind.DECK, SurfaceKind.SLAB));
        assertEquals(1, deck.notDesigned().size());
        assertTrue(Told.text(deck.notDesigned().get(0)).contains("on a raised deck"), deck.notDesigned().toString());
        assertEquals(List.of("Ask a licensed engineer and the building authority", "Move it off the deck"), Told.ways(deck.notDesigned().get(0)));
        assertEquals(List.of(), deck.verdicts());
        Standing tall = standing(Beds.bed("K", Beds.N, 4, Lap.TURNING), on(SurfaceKind.SLAB));
        assertEquals(List.of(FindingKind.NOT_DESIGNED_DEEP), tall.notDesigned().stream().map(Finding::kind).toList());
        Bed.NEAR.forEach((word, words) ->
                assertTrue(Told.text(standing(bed(Beds.m(Lap.TURNING), Ties.USUAL, word), on(SurfaceKind.SLAB)).notDesigned().get(0)).endsWith(words + ".")));
        assertEquals(
                "Bed M is not designed here: boards of unknown treatment are in it (K1).",
                Told.text(standing(Beds.m(Lap.TURNING), new Footing(Set.of(), 75, StrengthClass.LOWEST, true, "K1")).notDesigned().get(0)));
    }

    /** A joint with nothing behind it is a hinge; ties put behind the joints hold them, at the places that are told. */
    @Test
    void aJointWithoutATieIsAHinge() {
        Bed long6200 = Beds.bed("K", Outline.rectangle(6200, 1000), 2, Lap.TURNING);
        Verdict loose = verdict(standing(long6200, on(SurfaceKind.SLAB)), "joints");
        assertEquals(Outcome.WEAK, loose.outcome());
        assertTrue(Told.text(loose.finding()).startsWith("2 joints of wall A of bed K have no tie"), Told.text(loose.finding()));
        assertEquals("Add cross ties in wall A at 2700 and 3500 mm", Told.ways(loose.finding()).get(0));
        Standing tied = standing(bed(long6200, CROSS), on(SurfaceKind.SLAB));
        assertEquals(Outcome.HOLDS, verdict(tied, "joints").outcome());
        assertEquals(Outcome.HOLDS, verdict(tied, "walls").outcome());
    }

    /** Strips 75 x 23 flat over pads: larger of bending and shear, hand-worked. Shear governs under 9.05 x 23 = 208. */
    @ParameterizedTest(name = "pads every {0}")
    @ValueSource(doubles = {300, 150})
    void bearersOnPadsAreReckonedAsBeams(double span) {
        Bed m = Beds.m(Lap.TURNING);
        var b = m.inside().base();
        Bed padded = Beds.filled(m, new lapyard.plan.Base(true, b.bearers(), b.slats(), span, false),
                m.inside().liner(), m.planting().fill(), m.making().finish());
        Standing standing = standing(padded, on(SurfaceKind.SLAB));
        double load = 1.35 * 0.0079265 * 400;
        double bending = load * span * span / 8 / (75 * 23 * 23 / 6.0) / (0.5 * 14 / 1.3 * 1.3);
        double shear = 1.5 * load * span / 2 / (0.67 * 75 * 23) / (0.5 * 3.0 / 1.3);
        assertEquals(100 * Math.max(bending, shear), value(standing.quantities(), "bearers.use"), 0.01);
        // C24 of EN 338:2016: bending 24 and shear 4.0 for 14 and 3.0
        Standing stamped = standing(padded, new Footing(Set.of(SurfaceKind.SLAB), 75, StrengthClass.C24, false, ""));
        assertEquals(100 * Math.max(bending * 14 / 24, shear * 3.0 / 4.0), value(stamped.quantities(), "bearers.use"), 0.01);
    }

    /**
     * Bearers of 75 x 23 stamped C24 carry 0.0079265 x 400 = 3.171 N/mm. Bending 1.35 x 3.171 x span^2 / 8 / 6612.5 of 0.5 x 24 / 1.3 x
     * 1.3 = 12 N/mm2, sag 3 x 5 x 3.171 x span^4 / (384 x 11000 x 76044), a 150th at most: over 350 they hold, over 370 they sag 2.8
     * where 2.5 is the most, over 390 they take 103 % of their strength.
     */
    @ParameterizedTest(name = "bearers over {0}: {1}")
    @CsvSource({"350, HOLDS, 82.6, 2.22", "370, BOWS, 92.3, 2.77", "390, WEAK, 102.6, 3.42"})
    void bearersBetweenPadsSagBeforeTheyBreak(double span, Outcome outcome, double percent, double sag) {
        Bed m = Beds.m(Lap.TURNING);
        Base padded = new Base(true, new Base.Bearers("50x75", 23, 400, 30), new Base.Slats(95, 22, 1200, 15, 5, 300), span, false);
        Standing standing = standing(Beds.filled(m, padded, m.inside().liner(), m.planting().fill(), m.making().finish()),
                new Footing(Set.of(SurfaceKind.SLAB), 75, StrengthClass.C24, false, ""));
        assertEquals(percent, value(standing.quantities(), "bearers.use"), 0.1);
        assertEquals(sag, value(standing.quantities(), "bearers.sag"), 0.01);
        assertEquals(12, input(standing, "bearers.use", "strength"), 1e-9);
        Verdict bearers = verdict(standing, "bearers");
        assertEquals(outcome, bearers.outcome());
        String said = Told.text(bearers.finding());
        assertTrue(said.contains(outcome == Outcome.BOWS ? "sag 2.8 mm over 370 mm" : Math.round(percent) + " %"), said);
        assertEquals(outcome == Outcome.HOLDS, Told.ways(bearers.finding()).isEmpty());
    }

    /**
     * Slats 95 x 22 in 10 rows over 1000 have gaps of 5.56 and carry 0.0079265 x 100.56 = 0.797 N/mm. Over 416 they use 56.4 % of their
     * strength and sag 1.58, a 263rd of the span, so they may span 416 x (263 / 150)^(1/3) = 502; over 520 they sag more than a
     * 150th, 1.58 x (520 / 416)^4 = 3.9, over 693 they take (693 / 416)^2 as much: 157 %.
     */
    @ParameterizedTest(name = "slats over bearers every {0}: {2}")
    @CsvSource({"416, 416, HOLDS, 56.4", "520, 520, BOWS, 88.1", "700, 693.333, WEAK, 156.6"})
    void slatsSagBeforeTheyBreak(double every, double span, Outcome outcome, double percent) {
        Bed plain = Beds.bed("S", Outline.rectangle(2280, 1200), 3, Lap.TURNING);
        Base wide = new Base(true, new Base.Bearers("50x75", 23, every, 30), new Base.Slats(95, 22, 2400, 15, 5, 300), 0, false);
        Standing standing = standing(Beds.filled(plain, wide, plain.inside().liner(), plain.planting().fill(), plain.making().finish()), on(SurfaceKind.SLAB));
        assertEquals(span, input(standing, "slats.use", "span"), 0.1);
        assertEquals(percent, value(standing.quantities(), "slats.use"), 0.2);
        assertEquals(502, value(standing.quantities(), "slats.span"), 1);
        assertEquals(100.56 / 95, input(standing, "slats.span", "spread"), 1e-3);
        Verdict slats = verdict(standing, "slats");
        assertEquals(outcome, slats.outcome());
        String said = Told.text(slats.finding());
        assertEquals(outcome == Outcome.BOWS, said.contains("3.9 mm"), said);
        if (outcome == Outcome.HOLDS) assertEquals(List.of(), Told.ways(slats.finding()));
        else assertTrue(Told.ways(slats.finding()).get(0).contains("at most 500 mm apart"), Told.ways(slats.finding()).toString());
    }
}
