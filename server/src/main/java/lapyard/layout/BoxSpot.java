package lapyard.layout;

import java.util.List;
import lapyard.geometry.Point;

/** A bed's place in the frame: where the left front corner of its box lies. */
record BoxSpot(BoxedBed kind, double x, double y) {
    double right() {
        return x + kind.w();
    }

    double back() {
        return y + kind.d();
    }

    /** The rectangles that the bed fills, each larger by {@code by} on all sides: left, front, right, back. */
    List<double[]> parts(double by) {
        return kind.parts().stream()
                .map(part -> new double[] {x + part.x() - by, y + part.y() - by, x + part.x() + part.w() + by, y + part.y() + part.d() + by})
                .toList();
    }

    List<List<Point>> rings() {
        return parts(0).stream().map(Boxes::ring).toList();
    }
}
