package lapyard.plan;

import lapyard.geometry.Point;

/**
 * The line from which beds are pegged out.
 *
 * @param standOffMm how far beyond a bed's corners its strings are pegged; 0 for no such pegs
 */
public record Baseline(Point from, Point to, double standOffMm) {
    /** Marks nearer to each other than this fix no direction, mm; common practice, no source. */
    public static final double LEAST_MM = 100;
}
