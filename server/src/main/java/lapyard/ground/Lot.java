package lapyard.ground;

import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A bed as it lies in the yard.
 *
 * @param index place in the document
 * @param area  outside faces
 * @param core  the area less what only touches
 */
record Lot(int index, Bed bed, Geometry area, Geometry core) {
    static Lot of(int index, Bed bed) {
        return of(index, bed, bed.inYard());
    }

    static Lot of(int index, Bed bed, Outline inYard) {
        Geometry area = Shapes.area(inYard);
        return new Lot(index, bed, area, Shapes.offset(area, -Shapes.TOUCH_MM));
    }

    Lot moved(double dxMm, double dyMm) {
        AffineTransformation move = AffineTransformation.translationInstance(dxMm, dyMm);
        return new Lot(index, bed, move.transform(area), move.transform(core));
    }

    String where() {
        return "bed " + bed.id();
    }
}
