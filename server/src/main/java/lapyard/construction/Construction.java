package lapyard.construction;

import java.util.Optional;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Saw;

/** Builds a bed on paper. */
public final class Construction {
    private Construction() {}

    /**
     * @param bed       with a right-angled outline that {@code plan} has passed
     * @param longestMm longest piece that some board can give for this section (stock or rack), for seams
     * @param downhill  the fall of the ground as a slope (x, y) in the bed's own frame, pointing downhill; empty where no levels were taken
     */
    public static BedWork of(Bed bed, Saw saw, double longestMm, Optional<Point> downhill) {
        throw new UnsupportedOperationException();
    }
}
