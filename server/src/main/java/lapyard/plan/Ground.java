package lapyard.plan;

import java.util.List;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;

/**
 * The yard.
 *
 * @param outline  one corner list, or empty where no yard was drawn
 * @param levels   drops below a level string, mm, so a larger drop is lower ground
 * @param northDeg direction of north, degrees counter-clockwise from straight away from the house
 */
public record Ground(List<Outline> outline, List<Surface> surfaces, List<KeepClear> keepClear, List<Level> levels, double northDeg) {
    public Ground {
        outline = List.copyOf(outline);
        surfaces = List.copyOf(surfaces);
        keepClear = List.copyOf(keepClear);
        levels = List.copyOf(levels);
    }

    public record Surface(String kind, Outline outline) {}

    public record Level(Point at, double dropMm) {}

    /**
     * Something that beds must keep away from.
     *
     * @param shape       one point (cover, tap), a line, or a closed outline
     * @param clearanceMm round the shape
     * @param leafMm      of a gate that swings about the first point of {@code shape}; 0 for everything else
     */
    public record KeepClear(String kind, List<Point> shape, double clearanceMm, double leafMm, boolean swingsIn) {
        public KeepClear {
            shape = List.copyOf(shape);
        }
    }
}
