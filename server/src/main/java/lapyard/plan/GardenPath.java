package lapyard.plan;

import java.util.List;
import lapyard.geometry.Point;

/**
 * A path along a centre line; bends are mitred, ends flat.
 *
 * @param layers  bottom first
 * @param edging  catalogue item for its edges, empty for none
 * @param membrane catalogue roll material under it, empty for none
 * @param lapMm   by which strips of it lie over each other
 */
public record GardenPath(
        String id, String name, List<Point> line, double widthMm, List<Layer> layers, String edging, String membrane,
        double lapMm) {
    /** Usual overlap of membrane strips, mm; common practice, no source. */
    public static final double USUAL_LAP_MM = 200;

    public GardenPath {
        line = List.copyOf(line);
        layers = List.copyOf(layers);
    }

    /** {@code item} as the catalogue sells it, {@code path.bark}; depth in millimetres. */
    public record Layer(String item, double depthMm) {}
}
