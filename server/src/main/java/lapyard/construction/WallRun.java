package lapyard.construction;

import lapyard.construction.Piece.RunsPast;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Lap;

/**
 * One wall's timber in the courses of one kind, odd or even, joined or not.
 *
 * @param fromMm along the wall from its outer start corner; below 0 where it fills the square of an inside corner
 * @param toMm   likewise its end
 */
record WallRun(int side, double fromMm, double toMm, boolean pastStart, boolean pastEnd) {
    /**
     * The lap. At an outer corner the timber that runs past reaches the corner and the other stops one thickness
     * short; at an inside corner the one that runs past goes one thickness beyond it, filling the square, and the
     * other stops at the corner.
     */
    static WallRun of(Outline outline, int side, double thicknessMm, Lap lap, boolean odd) {
        boolean pastStart = lap == Lap.TURNING ? odd : side % 2 == 0 == odd;
        boolean pastEnd = lap == Lap.TURNING ? !odd : pastStart;
        double start = reachMm(outline.insideCorner(side), pastStart, thicknessMm);
        double end = reachMm(outline.insideCorner(side + 1), pastEnd, thicknessMm);
        return new WallRun(
                side, Lengths.steady(-start), Lengths.steady(outline.sideMm(side) + end), pastStart, pastEnd);
    }

    /** How far beyond the corner the timber goes. */
    private static double reachMm(boolean insideCorner, boolean past, double thicknessMm) {
        if (insideCorner) {
            return past ? thicknessMm : 0;
        }
        return past ? 0 : -thicknessMm;
    }

    double lengthMm() {
        return toMm - fromMm;
    }

    RunsPast runsPast(boolean first, boolean last) {
        boolean start = first && pastStart;
        boolean end = last && pastEnd;
        return start ? end ? RunsPast.BOTH : RunsPast.START : end ? RunsPast.END : RunsPast.NONE;
    }

    /** The timber between two places of the wall, seen from above. */
    static Rectangle lies(Outline outline, int side, double thicknessMm, double fromMm, double toMm) {
        Point corner = outline.corner(side);
        Point along = outline.uprightDirection(side);
        double x1 = corner.x() + along.x() * fromMm;
        double y1 = corner.y() + along.y() * fromMm;
        // One thickness to the left of the way round lies the inner face.
        double x2 = corner.x() + along.x() * toMm - along.y() * thicknessMm;
        double y2 = corner.y() + along.y() * toMm + along.x() * thicknessMm;
        return new Rectangle(
                Lengths.steady(Math.min(x1, x2)),
                Lengths.steady(Math.min(y1, y2)),
                Lengths.steady(Math.abs(x2 - x1)),
                Lengths.steady(Math.abs(y2 - y1)));
    }
}
