package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Ground;
import lapyard.plan.Preparation;
import lapyard.plan.RimGroup;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

class RimsTest {
    /** 1:80 to the rear, no fall along the house. */
    private static final List<Ground.Level> REARWARDS = List.of(
            new Ground.Level(new Point(0, 0), 412), new Ground.Level(new Point(3000, 0), 412), new Ground.Level(new Point(0, 2400), 442));

    private static GroundSheet sheet(List<Ground.Level> levels, List<RimGroup> rims, Bed... beds) {
        Ground ground = new Ground(
                List.of(), List.of(), List.of(), levels, 0, Optional.empty(), Optional.empty(), Preparation.USUAL, rims,
                AccessStandard.USUAL, List.of(), Optional.empty());
        return BedGroundTest.sheet(Beds.garden(ground, beds));
    }

    /** Worked by hand: beds 4 m apart on 1:80 differ by 50. */
    @Test
    void rimsFourMetresApartDifferByFifty() {
        Bed a = Beds.box("A", 1000, 1000, 2400, 1200);
        Bed b = Beds.box("B", 1000, 5000, 2400, 1200);
        List<Rims> rims = sheet(REARWARDS, List.of(new RimGroup(List.of("A", "B"), OptionalDouble.empty())), a, b).rims();
        assertEquals(0, rims.get(0).quantities().get(1).value(), 1e-9);
        assertEquals(50, rims.get(1).quantities().get(1).value(), 1e-9);
    }

    /** Each way out is done: courses on or off and the packing under or the letting in bring the rim to the string, by no more than half a course. */
    @Test
    void theWayOutOfARimBringsItToTheString() {
        Bed bed = Beds.box("A", 1000, 1000, 2400, 1200);
        double rim = 412 + 2200 / 80.0 - 600;
        List<RimGroup> groups = new ArrayList<>();
        for (int off = -520; off <= 520; off += 20) groups.add(new RimGroup(List.of("A"), OptionalDouble.of(rim - off)));
        GroundSheet sheet = sheet(REARWARDS, groups, bed);
        List<Finding> found = sheet.findings().stream().filter(one -> one.kind() == FindingKind.RIM_OFF_GROUP).toList();
        int told = 0;
        for (int i = 0; i < groups.size(); i++) {
            double off = 20 * i - 520;
            assertEquals(rim, sheet.rims().get(i).quantities().get(0).value(), 1e-9);
            assertEquals(off, sheet.rims().get(i).quantities().get(1).value(), 1e-9);
            if (Math.abs(off) <= 100) continue;
            Finding one = found.get(told++);
            assertEquals(Math.abs(off), one.amount().orElseThrow().value(), 1e-9);
            assertEquals("The rim of bed A is " + Math.round(Math.abs(off)) + " mm " + (off > 0 ? "below" : "above") + " that of its group; 100 mm is the most.", Told.text(one));
            String way = Told.ways(one).get(0);
            var read = Pattern.compile("(Add|Take off) (\\d) courses?( and (pack it up|let it in) by (\\d+) mm)?").matcher(way);
            assertTrue(read.matches(), way);
            double courses = 200 * Integer.parseInt(read.group(2)) * (read.group(1).equals("Add") ? 1 : -1);
            double packed = read.group(3) == null ? 0 : Integer.parseInt(read.group(5)) * (read.group(4).equals("pack it up") ? 1 : -1);
            assertEquals(off, courses + packed, 1e-9, way);
            assertTrue(read.group(3) == null || packed != 0 && Math.abs(packed) <= 100, way);
        }
        assertEquals(found.size(), told);
    }

    /** Without levels nothing is said of a rim, and each group asks for them. */
    @Test
    void aRimGroupWithoutLevelsAsksForThem() {
        List<RimGroup> groups = List.of(new RimGroup(List.of("A"), OptionalDouble.empty()), new RimGroup(List.of("A", "Z"), OptionalDouble.of(5)));
        GroundSheet sheet = sheet(List.of(), groups, Beds.box("A", 1000, 1000, 2400, 1200));
        assertEquals(List.of(), sheet.rims());
        assertEquals(List.of("rim group 1", "rim group 2"), sheet.findings().stream().filter(one -> one.kind() == FindingKind.RIM_NO_LEVELS).map(Finding::where).toList());
        assertEquals("rim group 2", Beds.about(sheet.findings(), "", FindingKind.RIM_UNKNOWN_BED).orElseThrow().where());
    }
}
