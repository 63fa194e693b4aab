package lapyard.json;

import java.util.List;
import lapyard.construction.BedWork;
import lapyard.construction.CrossTies;
import lapyard.construction.FloorBay;
import lapyard.geometry.Rectangle;

/** Places of posts, bearers and slats of a bed. */
final class FixingsJson {
    private FixingsJson() {}

    record Bay(Rectangle floor, String bearersRun, double bearerMm, List<Double> bearersAtMm, int rows, double gapMm,
            double rippedMm, List<Double> rowMm) {}

    static List<CrossTies.Post> posts(BedWork work) {
        return CrossTies.of(work.bed(), work.frame().inner(), work.frame().seams()).posts();
    }

    static List<Bay> bays(BedWork work) {
        return work.bottom().bays().stream().map(FixingsJson::bay).toList();
    }

    private static Bay bay(FloorBay bay) {
        return new Bay(bay.floor(), bay.alongY() ? "up" : "across", bay.bearerMm(), bay.bearersAtMm(), bay.slats().rows(),
                bay.slats().gapMm(), bay.slats().rippedMm(), bay.slats().piecesMm());
    }
}
