package lapyard.plan;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;

/**
 * The yard.
 *
 * @param outline     one corner list, or empty where no yard was drawn
 * @param levels      drops below a level string, mm, so a larger drop is lower ground
 * @param northDeg    direction of north, degrees counter-clockwise from straight away from the house
 * @param survey      how the outline was taped, where it was not drawn
 * @param baseline    for pegging out
 * @param tall        what throws shade
 */
public record Ground(
        List<Outline> outline,
        List<Surface> surfaces,
        List<KeepClear> keepClear,
        List<Level> levels,
        double northDeg,
        Optional<YardSurvey> survey,
        Optional<Baseline> baseline,
        Preparation preparation,
        List<RimGroup> rims,
        AccessStandard access,
        List<Tall> tall,
        Optional<SunDay> sun) {
    public Ground {
        outline = List.copyOf(outline);
        surfaces = List.copyOf(surfaces);
        keepClear = List.copyOf(keepClear);
        levels = List.copyOf(levels);
        rims = List.copyOf(rims);
        tall = List.copyOf(tall);
    }

    /** A yard as drawn, everything else as usual. */
    public Ground(List<Outline> outline, List<Surface> surfaces, List<KeepClear> keepClear, List<Level> levels, double northDeg) {
        this(outline, surfaces, keepClear, levels, northDeg, Optional.empty(), Optional.empty(), Preparation.USUAL,
                List.of(), AccessStandard.USUAL, List.of(), Optional.empty());
    }

    /** Open ground without edge, obstacle or fall, held to the same access standard. */
    public Ground bare() {
        return new Ground(List.of(), List.of(), List.of(), List.of(), northDeg, Optional.empty(), Optional.empty(), preparation,
                List.of(), access, List.of(), Optional.empty());
    }

    public record Surface(SurfaceKind kind, Outline outline) {}

    public record Level(Point at, double dropMm) {}

    /**
     * Something that beds must keep away from.
     *
     * @param shape        one point (cover, tap), a line, or a closed outline
     * @param clearanceMm  round the shape
     * @param leafMm       of a gate that swings about the first point of {@code shape}; 0 for everything else
     * @param dampCourseMm height of a house wall's damp-proof course above the ground; 0 where none is known
     */
    public record KeepClear(KeepClearKind kind, List<Point> shape, double clearanceMm, double leafMm, boolean swingsIn, double dampCourseMm) {
        public KeepClear {
            shape = List.copyOf(shape);
        }
    }
}
