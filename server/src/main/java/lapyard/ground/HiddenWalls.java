package lapyard.ground;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Place;
import lapyard.plan.SurfaceKind;
import lapyard.plan.WayKind;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * Walls that nobody sees because a fence, a wall, a deck or another bed stands closer than a hand along their whole length.
 *
 * @param garden   the same with these walls hidden
 * @param findings one note a bed that has any
 */
public record HiddenWalls(Garden garden, List<Finding> findings) {
    /** Nobody looks or reaches into a gap as wide as a hand. Common practice, no source. */
    static final double HAND_MM = 100;

    public HiddenWalls {
        findings = List.copyOf(findings);
    }

    private record Screen(String name, Geometry shape, Geometry near, int bed) {
        static Screen of(String name, Geometry shape, int bed) {
            return new Screen(name, shape, Shapes.round(shape, HAND_MM + Shapes.TOUCH_MM), bed);
        }
    }

    /** Beds that name their seen walls keep to what they say. */
    public static HiddenWalls of(Garden garden) {
        List<Screen> screens = screens(garden);
        List<Bed> beds = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed bed = garden.beds().get(i);
            Set<String> walls = new LinkedHashSet<>();
            Set<String> by = new LinkedHashSet<>();
            if (bed.walls().hidden().isEmpty()) hidden(bed, i, screens, walls, by);
            beds.add(walls.isEmpty() ? bed : bed.hiding(walls));
            if (!walls.isEmpty()) {
                findings.add(Finding.of(FindingKind.WALLS_HIDDEN, Place.bed(bed.id()))
                        .with("walls", Fact.names(List.copyOf(walls))).with("near", Fact.names(List.copyOf(by))).with("hand", Fact.mm(HAND_MM))
                        .by(Fact.count(walls.size(), "walls")).way(WayKind.NAME_SEEN_WALLS));
            }
        }
        return new HiddenWalls(findings.isEmpty() ? garden : garden.withBeds(beds), findings);
    }

    private static void hidden(Bed bed, int index, List<Screen> screens, Set<String> walls, Set<String> by) {
        Outline outline = bed.inYard();
        Geometry area = Shapes.area(outline);
        Envelope reach = area.getEnvelopeInternal();
        for (Screen screen : screens) {
            if (screen.bed() == index || !screen.near().getEnvelopeInternal().intersects(reach)
                    || area.intersects(screen.shape()) && area.intersection(screen.shape()).getArea() > 1) {
                continue;
            }
            for (int side = 0; side < outline.sides(); side++) {
                Geometry wall = Jts.line(List.of(outline.corner(side), outline.corner(side + 1)));
                if (screen.near().covers(wall)) {
                    walls.add(Bed.wallLetter(side));
                    by.add(screen.name());
                }
            }
        }
    }

    private static List<Screen> screens(Garden garden) {
        List<Screen> screens = new ArrayList<>();
        for (Ground.KeepClear one : garden.ground().keepClear()) {
            if (one.kind() == KeepClearKind.WALL) screens.add(Screen.of("a wall or fence", Zone.of(0, one, Optional.empty()).shape(), -1));
        }
        for (Ground.Surface surface : garden.ground().surfaces()) {
            if (surface.kind() == SurfaceKind.DECK) screens.add(Screen.of("a deck", Shapes.area(surface.outline()), -1));
        }
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed bed = garden.beds().get(i);
            screens.add(Screen.of("bed " + bed.id(), Shapes.area(bed.inYard()), i));
        }
        return screens;
    }
}
