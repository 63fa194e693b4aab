package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Preparation;
import lapyard.plan.SurfaceKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Edges that touch, corners that are shared, corners in a line, and places far from the origin. */
class FarAndTouchingTest {
    private static Point moved(Point point, double by) {
        return new Point(point.x() + by, point.y() + by);
    }

    private static Outline moved(Outline outline, double by) {
        return new Outline(outline.corners().stream().map(point -> moved(point, by)).toList());
    }

    /** Beds side by side, corner to corner, at the edge of the yard, on a path and over a cover; the yard has corners in a line. */
    private static Garden garden(double by) {
        Outline yard = moved(Beds.outline(0, 0, 4000, 0, 8000, 0, 12000, 0, 12000, 9000, 6000, 9000, 0, 9000), by);
        List<Bed> beds = List.of(
                at("A", 0, 0, by), at("B", 2400, 0, by), at("C", 4800, 1200, by), at("D", 9600, 7800, by), at("E", 9600, 3000, by),
                at("F", 3000, 4000, by), at("G", 6000, 5500, by));
        Ground.KeepClear cover = new Ground.KeepClear(KeepClearKind.COVER, moved(Beds.outline(3200, 5300, 3800, 5300, 3800, 5900, 3200, 5900), by).corners(), 300, 0, true, 0);
        Ground ground = new Ground(
                List.of(yard),
                List.of(
                        new Ground.Surface(SurfaceKind.SLAB, moved(Outline.rectangle(12000, 4000), by)),
                        new Ground.Surface(SurfaceKind.GRASS, moved(Beds.outline(0, 4000, 12000, 4000, 12000, 9000, 0, 9000), by))),
                List.of(cover),
                List.of(
                        new Ground.Level(moved(new Point(0, 0), by), 400), new Ground.Level(moved(new Point(12000, 0), by), 430),
                        new Ground.Level(moved(new Point(0, 9000), by), 520), new Ground.Level(moved(new Point(12000, 9000), by), 550)),
                0, Optional.empty(), Optional.empty(), Preparation.USUAL, List.of(), AccessStandard.ADA_2010, List.of(), Optional.empty());
        GardenPath path = new GardenPath("P", "", List.of(moved(new Point(5400, 2400), by), moved(new Point(5400, 8990), by)), 1200, List.of(), "edging", "", GardenPath.USUAL_LAP_MM);
        return Beds.garden(ground, beds, List.of(path));
    }

    private static Bed at(String id, double x, double y, double by) {
        return Beds.bed(id, Outline.rectangle(2400, 1200), new Placement(new Point(x + by, y + by), 0, false));
    }

    @ParameterizedTest
    @CsvSource({"1e6", "1e7", "-1e7"})
    void farFromTheOriginTheSameIsFound(double by) {
        GroundSheet near = BedGroundTest.sheet(garden(0));
        GroundSheet far = BedGroundTest.sheet(garden(by));
        assertEquals(near.findings().stream().map(Finding::where).toList(), far.findings().stream().map(Finding::where).toList());
        for (int i = 0; i < near.findings().size(); i++) {
            double own = near.findings().get(i).amount().map(Finding.Amount::value).orElse(0.0);
            double there = far.findings().get(i).amount().map(Finding.Amount::value).orElse(0.0);
            assertEquals(own, there, 0.11, near.findings().get(i) + " and " + far.findings().get(i));
        }
        for (int i = 0; i < near.paths().get(0).quantities().size(); i++) {
            assertEquals(near.paths().get(0).quantities().get(i).value(), far.paths().get(0).quantities().get(i).value(), 1e-3);
        }
        for (int i = 0; i < near.access().rows().size(); i++) {
            assertEquals(near.access().rows().get(i).measured(), far.access().rows().get(i).measured(), 6);
        }
    }

    @Test
    void whatTouchesDoesNotOverlap() {
        List<Finding> found = BedGroundTest.sheet(garden(0)).findings();
        assertTrue(found.stream().noneMatch(f -> f.kind() == FindingKind.BED_ON_BEDS || f.kind() == FindingKind.BED_OVER_EDGE), found.toString());
        assertTrue(Beds.about(found, "bed F", FindingKind.BED_ON_TWO_SURFACES).isEmpty(), "its edge lies on the seam of two surfaces");
        assertTrue(Beds.about(found, "bed F", FindingKind.BED_TOO_NEAR).isPresent());
    }
}
