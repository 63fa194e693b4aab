package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.catalogue.StrengthClass;
import lapyard.geometry.Inset;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Lap;
import lapyard.plan.Notches;
import lapyard.plan.Screws;
import lapyard.plan.Told;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.Working.Input;
import org.junit.jupiter.api.Test;

/**
 * Screws of square laps and drain notches against a plain reckoning. 10 mm of timber left over a screw, screws sold from 30 mm on, notches
 * 200 from corners and joints and 900 apart: common practice, no source.
 */
class ScrewsAndNotchesTest {
    private static Bed screwed(double thicknessMm, double screwMm) {
        Section section = new Section("s", thicknessMm, 200, 600, List.of(), Optional.empty(), false, 1, false);
        return Beds.fixed(Beds.section(Beds.bed("K", Outline.rectangle(2400, 1200), 2, Lap.TURNING), section), true, new Screws(screwMm, 2, 6), Notches.USUAL);
    }

    /** The head goes in 0.354 of the length from the joint, to the nearest 5, at 45 degrees: it gets as deep at the joint, the tip as the rest. */
    private static double left(double thicknessMm, double screwMm) {
        double entry = 5 * Math.round(0.354 * screwMm / 5);
        return thicknessMm - Math.max(entry, screwMm / Math.sqrt(2) - entry);
    }

    /** The tip lies as far along the timber that runs past as the screw is long along it. */
    private static double leftAtTheEnd(double thicknessMm, double screwMm) {
        return thicknessMm - screwMm / Math.sqrt(2);
    }

    @Test
    void theLongestScrewThatKeepsItsTimberIsAdvised() {
        int broken = 0;
        int near = 0;
        int held = 0;
        int none = 0;
        for (double t = 20; t <= 120; t += 5) {
            for (double screw = 30; screw <= 200; screw += 3) {
                String name = screw + " in " + t;
                List<Quantity> quantities = new ArrayList<>();
                List<Finding> findings = new ArrayList<>();
                boolean holds = Fixings.screws(screwed(t, screw), quantities, findings);
                assertEquals(left(t, screw) >= 10 - 1e-6, holds, name);
                assertEquals(holds ? 2 : 0, quantities.size(), name);
                if (!holds) {
                    broken++;
                    assertEquals(1, findings.size(), name);
                    assertEquals(left(t, screw) < 0 ? FindingKind.SCREW_THROUGH : FindingKind.SCREW_COVER, findings.get(0).kind(), name);
                    assertEquals(10 - left(t, screw), findings.get(0).amount().orElseThrow().value(), 0.06, name);
                    double longest = 200;
                    while (longest >= screw || longest >= 30 && left(t, longest) < 10 - 1e-6) longest -= 10;
                    none += longest < 30 ? 1 : 0;
                    assertEquals(longest < 30 ? "none" : advised(longest), advised(findings.get(0)), name);
                } else if (leftAtTheEnd(t, screw) < 10 - 1e-6) {
                    near++;
                    assertEquals(FindingKind.SCREW_NEAR_END, findings.get(0).kind(), name);
                    assertEquals(10 - leftAtTheEnd(t, screw), findings.get(0).amount().orElseThrow().value(), 0.06, name);
                    double longest = 200;
                    while (longest > screw || longest >= 30 && leftAtTheEnd(t, longest) < 10 - 1e-6) longest -= 5;
                    none += longest < 30 ? 1 : 0;
                    assertEquals(longest < 30 ? "none" : advised(longest), advised(findings.get(0)), name);
                } else {
                    held++;
                    assertEquals(List.of(), findings, name);
                }
            }
        }
        assertTrue(broken > 100 && near > 100 && held > 100 && none > 60, broken + " " + near + " " + held + " " + none);
    }

    private static String advised(double mm) {
        return "Use screws up to " + (int) mm + " mm";
    }

    private static String advised(Finding finding) {
        if (finding.ways().get(0).kind() == WayKind.SCREWS_AT_MOST) return Told.ways(finding).get(0);
        assertEquals(WayKind.BRACKETS, finding.ways().get(finding.ways().size() - 1).kind());
        return "none";
    }

    /** The longest screw sold that leaves 10 everywhere; where none does, the shortest. */
    @Test
    void theUsualScrewIsTheLongestThatIsSoldAndHolds() {
        TreeSet<Double> usual = new TreeSet<>();
        for (double t = 15; t <= 120; t += 0.5) {
            double longest = 30;
            for (double screw : new double[] {40, 50, 60, 70, 80, 90, 100, 120}) {
                if (left(t, screw) >= 10 - 1e-6 && leftAtTheEnd(t, screw) >= 10 - 1e-6) longest = screw;
            }
            assertEquals(longest, Construction.usualScrewMm(screwed(t, 100)), "timber of " + t);
            usual.add(longest);
        }
        assertEquals(9, usual.size());
    }

    /** A rectangle with one corner cut off: three square corners and two of 135 degrees inside are told apart by their numbers. */
    @Test
    void cornersOfTwoKindsAreToldApart() {
        BedWork work = Beds.built(Beds.bed("K", Beds.outline(0, 0, 2100, 0, 2400, 300, 2400, 1200, 0, 1200), 2, Lap.TURNING));
        List<String> names = Beds.quantity(work.quantities(), "screws").working().inputs().stream().map(Input::name).toList();
        assertTrue(names.contains("entry from the joint, corner 1, 4, 5") && names.contains("entry from the joint, corner 2, 3"), names.toString());
        assertEquals(6, names.stream().filter(name -> name.contains(", corner ")).count());
        BedWork square = Beds.built(Beds.bed("K", Outline.rectangle(2400, 1200), 2, Lap.TURNING));
        assertTrue(Beds.quantity(square.quantities(), "screws").working().inputs().stream().noneMatch(input -> input.name().contains("corner ")));
    }

    /** Fewest even places from 200 beside either corner with no gap over 900, counted up from one. */
    @Test
    void notchesAreTheFewestThatLeaveNoGapOver900() {
        for (double wall = 600; wall <= 9000; wall += 25) {
            Bed bed = Beds.low(Beds.bed("K", Outline.rectangle(wall, 1200), 1, Lap.TURNING), "C");
            List<Double> places = places(Notching.of(bed, LowSide.of(bed, Optional.empty()), List.of()));
            // 100 of timber and 200 kept at both ends
            double free = wall - 600;
            int fewest = 1;
            while (fewest == 1 ? free > 1e-6 : free / (fewest - 1) > 900 + 1e-6) fewest++;
            assertEquals(fewest, places.size(), "wall of " + wall);
            for (int i = 0; i < fewest; i++) assertEquals(fewest == 1 ? wall / 2 : 300 + free * i / (fewest - 1), places.get(i), 0.051, "wall of " + wall);
        }
    }

    /** A screw of 300 ends 212.1 from the corner: the first notch lies that far from the neighbour's timber of 100, and the working says so. */
    @Test
    void theWorkingTellsHowFarNotchesKeepFromCorners() {
        Bed bed = Beds.fixed(Beds.low(Beds.bed("K", Outline.rectangle(3000, 1200), 1, Lap.TURNING), "C"), true, new Screws(300, 2, 6), Notches.USUAL);
        BedWork work = Beds.built(bed);
        assertEquals(312.1, work.frame().notches().get(0).atMm(), 0.05);
        assertEquals(212.1, Beds.input(Beds.quantity(work.quantities(), "notches").working(), "keep from corners and joints"), 0.05);
    }

    private static List<Double> places(Notching.Cut cut) {
        return cut.notches().stream().map(Notch::atMm).toList();
    }

    /** Wherever a wall is joined, every notch keeps 200 from joint and corners, and one that moves goes no further than it must. */
    @Test
    void notchesKeepClearOfJointsAndMoveNoFurtherThanTheyMust() {
        Random random = new Random(77);
        int moved = 0;
        for (int i = 0; i < 3000; i++) {
            double wall = 1500 + random.nextInt(7500);
            double joint = 400 + random.nextInt((int) wall - 800);
            Bed bed = Beds.low(Beds.bed("K", Outline.rectangle(wall, 1200), 1, Lap.TURNING), "C");
            LowSide low = LowSide.of(bed, Optional.empty());
            Notching.Cut cut = Notching.of(bed, low, List.of(new Seam(1, "C", joint)));
            String name = "wall of " + wall + ", joint at " + joint;
            List<Double> even = places(Notching.of(bed, low, List.of()));
            double before = Double.NEGATIVE_INFINITY;
            for (double place : places(cut)) {
                assertTrue(place >= 300 - 0.06 && place <= wall - 300 + 0.06 && Math.abs(place - joint) >= 200 - 0.06, name + ": " + place);
                if (before > 0) assertTrue(place > before && place - before <= 900 + 0.11, name + ": " + before + ", " + place);
                before = place;
            }
            List<Double> amounts = cut.findings().stream().filter(one -> one.kind() == FindingKind.NOTCH_MOVED).map(one -> one.amount().orElseThrow().value()).toList();
            List<Double> least = new ArrayList<>();
            for (double place : even) {
                if (Math.abs(place - joint) >= 200 - 0.06) continue;
                double nearest = Double.POSITIVE_INFINITY;
                for (double to : new double[] {joint - 200, joint + 200}) {
                    if (to >= 300 && to <= wall - 300) nearest = Math.min(nearest, Math.abs(to - place));
                }
                least.add(nearest);
            }
            assertEquals(least.size(), amounts.size(), name);
            for (int k = 0; k < least.size(); k++) assertEquals(least.get(k), amounts.get(k), 0.11, name);
            moved += least.size();
        }
        assertTrue(moved > 500, "moved: " + moved);
    }

    /**
     * Whatever is asked for, on walls of any corners with joints anywhere: notches keep off the neighbours' timber, joints and tips of screws, none runs
     * into another, and where a gap is wider than asked, no place between (tried every millimetre) would do.
     */
    @Test
    void notchesOfAnySettingsKeepOffAndLeaveNoGapThatCouldBeClosed() {
        Random random = new Random(78);
        int wide = 0;
        int none = 0;
        List<Outline> outlines = List.of(Beds.M, Beds.U, Beds.outline(0, 0, 2100, 0, 2400, 300, 2400, 1200, 0, 1200), Outline.rectangle(6000, 1200), Outline.rectangle(1000, 600));
        for (int i = 0; i < 1000; i++) {
            Outline outline = outlines.get(i % outlines.size());
            int side = random.nextInt(outline.sides());
            double length = outline.sideMm(side);
            Notches wanted = new Notches(25, 50, 100 + random.nextInt(1000), 50 + random.nextInt(400));
            double screw = 40 + random.nextInt(260);
            Bed bed = Beds.fixed(Beds.low(Beds.bed("K", outline, 1, Lap.TURNING), Bed.wallLetter(side)), true, new Screws(screw, 2, 6), wanted);
            List<Seam> seams = new ArrayList<>();
            Outline inner = Inset.of(outline, 100);
            double from = Math.max(0, along(outline, side, inner.corner(side)));
            double to = Math.min(length, along(outline, side, inner.corner(side + 1)));
            for (int joints = random.nextInt(3); joints > 0; joints--) seams.add(new Seam(1, Bed.wallLetter(side), from + (to - from) * random.nextDouble()));
            List<Double> places = places(Notching.of(bed, LowSide.of(bed, Optional.empty()), seams));
            TreeSet<Double> off = new TreeSet<>(List.of(from, to));
            seams.forEach(seam -> off.add(seam.atMm()));
            double keep = Math.max(wanted.fromCornersMm(), screw / Math.sqrt(2));
            String name = bed.outline() + " " + side + " " + wanted + ", off " + off + " by " + keep + ": " + places;
            double before = off.first() - 100_000;
            for (double place : places) {
                assertTrue(mayStand(place, off, keep - 0.06), name);
                assertTrue(place - before >= 25 - 0.11, name);
                before = place;
            }
            for (int k = 0; k + 1 < places.size(); k++) {
                if (places.get(k + 1) - places.get(k) <= wanted.maxGapMm() + 0.11) continue;
                wide++;
                for (double at = places.get(k) + 25.1; at < places.get(k + 1) - 25.1; at++) assertTrue(!mayStand(at, off, keep), name + " but none at " + at);
            }
            if (!places.isEmpty()) continue;
            none++;
            for (double at = 0; at < length; at++) assertTrue(!mayStand(at, off, keep + 0.01), name + " but none at " + at);
        }
        assertTrue(wide > 30 && none > 100, wide + " wide gaps, none in " + none);
    }

    private static boolean mayStand(double place, TreeSet<Double> off, double keep) {
        return place >= off.first() && place <= off.last() && off.stream().allMatch(each -> Math.abs(each - place) >= keep);
    }

    /** How far along a side a point lies. */
    private static double along(Outline outline, int side, Point point) {
        Point way = outline.direction(side);
        Point from = outline.corner(side);
        return (point.x() - from.x()) * way.x() + (point.y() - from.y()) * way.y();
    }

    /** Pilot holes of 70 % of the root, which is two thirds of the shank (NDS commentary on wood screws); screws of a joint share its height evenly. */
    @Test
    void theWorkingsOfScrewsGiveTheirHolesAndHeights() {
        for (int perJoint = 1; perJoint <= 4; perJoint++) {
            Bed bed = Beds.fixed(screwed(100, 100), true, new Screws(100, perJoint, 6), Notches.USUAL);
            List<Quantity> quantities = new ArrayList<>();
            Fixings.screws(bed, quantities, new ArrayList<>());
            assertEquals(8 * perJoint, Beds.value(quantities, "screws"));
            Quantity pilots = Beds.quantity(quantities, "pilots");
            assertEquals(8 * perJoint, pilots.value());
            assertEquals(List.of(6.0, 4.0, 0.7, 2.8), Stream.of("shank", "root", "share of root", "pilot").map(name -> Beds.input(pilots.working(), name)).toList());
            List<Double> heights = Beds.quantity(quantities, "screws").working().inputs().stream().filter(input -> input.name().startsWith("height ")).map(Input::value).toList();
            assertEquals(perJoint, heights.size());
            double before = 0;
            for (double height : heights) {
                assertEquals(before == 0 ? 100.0 / perJoint : 200.0 / perJoint, height - before, 1e-9);
                before = height;
            }
            assertEquals(200 - 100.0 / perJoint, before, 1e-9);
        }
        Section oak = new Section("oak", 100, 200, 700, List.of(), Optional.of(StrengthClass.D30), false, 1, false);
        assertEquals(0.9 * 4, Fixings.pilotMm(Beds.section(screwed(100, 100), oak)), 1e-9, "90 % in hardwood");
    }

    /** One plate a joint with four screws; common practice, no source. */
    @Test
    void everyJointHasAPlateWithFourScrews() {
        for (int seams = 0; seams <= 3; seams++) {
            List<Quantity> quantities = new ArrayList<>();
            Fixings.seams(seams, quantities);
            assertEquals(seams == 0 ? List.of() : List.of(1.0 * seams, 4.0 * seams), quantities.stream().map(Quantity::value).toList());
        }
    }

    /** Depth 500, clear 300: 400 is kept from its corners, 100 more than there is. A quarter of 200 is 50. */
    @Test
    void whatDoesNotFitIsToldByItsAmount() {
        Bed bed = Beds.low(Beds.bed("K", Outline.rectangle(2400, 500), 1, Lap.TURNING), "B", "C");
        Notching.Cut cut = Notching.of(bed, LowSide.of(bed, Optional.empty()), List.of());
        assertEquals(List.of(FindingKind.NOTCH_WALL_SHORT), cut.findings().stream().map(Finding::kind).toList());
        assertEquals(new Finding.Amount(100, "mm"), cut.findings().get(0).amount().orElseThrow());
        Bed deep = Beds.fixed(bed, true, Screws.USUAL, new Notches(25, 60, 900, 200));
        Finding told = Notching.of(deep, LowSide.of(deep, Optional.empty()), List.of()).findings().get(0);
        assertTrue(Told.ways(told).get(0).contains("50 mm"), Told.ways(told).toString());
        Bed quarter = Beds.fixed(bed, true, Screws.USUAL, new Notches(25, 50, 900, 200));
        assertTrue(Notching.of(quarter, LowSide.of(quarter, Optional.empty()), List.of()).findings().stream().noneMatch(one -> one.kind() == FindingKind.NOTCH_DEEP));
        assertEquals(FindingKind.NOTCHES_NO_LEVELS, Notching.of(bed, new LowSide(Optional.empty(), List.of()), List.of()).findings().get(0).kind());
        assertEquals(FindingKind.NOTCHES_NO_LOW_WALL, Notching.of(bed, new LowSide(Optional.of(new Point(0, 1)), List.of()), List.of()).findings().get(0).kind());
    }
}
