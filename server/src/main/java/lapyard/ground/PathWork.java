package lapyard.ground;

import java.util.List;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.GardenPath;
import lapyard.working.Quantity;

/**
 * What one path takes. Shared area belongs to the path that stands first in the document.
 *
 * @param cover      the ground this path covers: union of its widths less beds and earlier paths, for the drawing; holes are cut open
 * @param quantities path.area, path.volume (one a layer under the layer's item), edging.length, membrane
 */
public record PathWork(GardenPath path, List<Outline> cover, List<Quantity> quantities) {
    public PathWork {
        cover = List.copyOf(cover);
        quantities = List.copyOf(quantities);
    }

    public static List<PathWork> of(List<GardenPath> paths, List<Bed> beds) {
        throw new UnsupportedOperationException();
    }
}
