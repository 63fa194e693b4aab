package lapyard.diagrams;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import lapyard.drawing.Shape;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.ground.SunHours;
import lapyard.plan.Garden;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** The yard by its hours of direct sun on one day. */
final class LightShapes {
    private LightShapes() {}

    /** Squares of one kind of light are drawn as one area, cut at the edge of the yard. */
    static List<Shape> cells(Garden garden, SunHours sun, View view, Inks inks) {
        Map<SunHours.Light, List<Geometry>> squares = new EnumMap<>(SunHours.Light.class);
        for (SunHours.Cell cell : sun.cells()) {
            squares.computeIfAbsent(SunHours.Light.of(cell.hours()), light -> new ArrayList<>())
                    .add(Jts.area(Box.round(List.of(cell.middle())).grown(sun.cellMm() / 2).corners()));
        }
        List<Shape> shapes = new ArrayList<>();
        for (Outline yard : garden.ground().outline()) {
            Geometry ground = Jts.area(yard.corners());
            squares.forEach((light, own) -> {
                Inks.Filling filling = inks.light(light.ordinal());
                List<Shape> areas = Jts.areas(Jts.common(OverlayNGRobust.union(own), ground)).stream()
                        .map(rings -> (Shape) filling.areas(rings.stream().map(view::on).toList(), Optional.empty()))
                        .toList();
                shapes.add(new Shape.Group(
                        "light-" + light.name().toLowerCase(Locale.ROOT).replace('_', '-'), light.words, "light", areas));
            });
        }
        return shapes;
    }

    /** What a kind of light is called in a legend. */
    static String words(SunHours.Light light) {
        return light.words + switch (light) {
            case FULL_SUN -> ", 6 h and more";
            case PART_SHADE -> ", 3 to 6 h";
            case SHADE -> ", under 3 h";
        };
    }
}
