package lapyard.ground;

import java.util.List;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;

/**
 * How far somebody must reach into a bed: all that it depends on, so that equal beds have equal answers.
 *
 * @param outline outer faces, in the bed's own frame
 */
public record WallReach(Outline outline, double thicknessMm, List<Stretch> stretches) {
    public WallReach {
        stretches = List.copyOf(stretches);
    }

    /** Reach is told in whole millimetres. */
    static final double TO_MM = 1;

    /** A stretch of wall that can be reached, in millimetres from its start. */
    public record Stretch(int wall, double fromMm, double toMm) {}

    /** @param at where the reach is furthest */
    public record Worst(double mm, Point at) {}

    /** The greatest distance from a place inside the walls to the nearest outer face that can be reached. */
    public Worst worst() {
        Geometry inside = Shapes.offset(Shapes.area(outline), -thicknessMm);
        if (outline.sides() == 4 && Cut.square(outline) && allRound()) {
            return new Worst(Math.min(outline.sideMm(0), outline.sideMm(1)) / 2, outline.corner(0).middle(outline.corner(2)));
        }
        List<LineSegment> faces = stretches.stream()
                .map(stretch -> new LineSegment(
                        Shapes.coordinate(along(stretch, stretch.fromMm())),
                        Shapes.coordinate(along(stretch, stretch.toMm()))))
                .toList();
        return Reach.worst(inside, faces, TO_MM);
    }

    private boolean allRound() {
        return stretches.size() == outline.sides()
                && stretches.stream().allMatch(s -> s.fromMm() == 0 && s.toMm() == Math.rint(outline.sideMm(s.wall())));
    }

    private Point along(Stretch stretch, double mm) {
        return outline.corner(stretch.wall()).towards(outline.corner(stretch.wall() + 1), Math.min(1, mm / outline.sideMm(stretch.wall())));
    }
}
