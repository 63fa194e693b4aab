package lapyard.plan;

import java.util.List;
import lapyard.geometry.Point;

/**
 * Something that throws shade.
 *
 * @param shape    one point for a tree, two or more for what stands along a line
 * @param heightMm above the ground
 * @param spreadMm diameter of a tree's crown; 0 along a line
 * @param stemMm   clear height under a crown, 0 where it shades from the ground up
 */
public record Tall(String kind, List<Point> shape, double heightMm, double spreadMm, double stemMm) {
    public Tall {
        shape = List.copyOf(shape);
    }
}
