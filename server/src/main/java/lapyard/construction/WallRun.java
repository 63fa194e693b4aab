package lapyard.construction;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Joint;
import lapyard.plan.Lap;

/** One wall's timber in the courses of one kind, odd or even, joined or not. */
record WallRun(int side, PieceEnd start, PieceEnd end) {
    static final double COS_45 = Math.sqrt(0.5);

    static WallRun of(Bed bed, int side, boolean odd) {
        Outline outline = bed.outline();
        int next = (side + 1) % outline.sides();
        return new WallRun(
                side,
                end(bed, side, kind(bed, side, true, odd), true),
                end(bed, next, kind(bed, next, false, odd), false));
    }

    /** The longest timber of the wall in any course, before it is joined. */
    static double longestMm(Bed bed, int side) {
        double odd = of(bed, side, true).lengthMm();
        return bed.courses() > 1 ? Math.max(odd, of(bed, side, false).lengthMm()) : odd;
    }

    private static PieceEnd end(Bed bed, int corner, PieceEnd.Kind kind, boolean start) {
        double thickness = bed.section().thicknessMm();
        double at = start ? 0 : bed.outline().sideMm(corner - 1);
        return PieceEnd.of(kind, at, start, bed.outline().turnDeg(corner), thickness, thickness);
    }

    private static PieceEnd.Kind kind(Bed bed, int corner, boolean start, boolean odd) {
        if (bed.joint(corner) == Joint.MITRE) return PieceEnd.Kind.MITRE;
        return startsPast(bed, corner, odd) == start ? PieceEnd.Kind.RUNS_PAST : PieceEnd.Kind.STOPS_SHORT;
    }

    /** Whether the wall that starts at a lapped corner runs past the one that ends there. */
    private static boolean startsPast(Bed bed, int corner, boolean odd) {
        boolean before = withWallA(bed.outline(), corner - 1);
        boolean after = withWallA(bed.outline(), corner);
        return bed.walls().lap() == Lap.LONG_WALL && before != after ? after == odd : odd;
    }

    /** Walls that run along wall A, more or less, are the long walls. */
    private static boolean withWallA(Outline outline, int side) {
        return Math.abs(outline.direction(0).dot(outline.direction(side))) >= COS_45 - 1e-9;
    }

    /** Where the timber begins, its longest face: along the wall from its outer start corner. */
    double fromMm() {
        return Math.min(start.outerMm(), start.innerMm());
    }

    double toMm() {
        return Math.max(end.outerMm(), end.innerMm());
    }

    double lengthMm() {
        return toMm() - fromMm();
    }

    /** Lengths of the parts that seams at these places leave. */
    DoubleStream partsMm(List<Double> seamsMm) {
        return IntStream.rangeClosed(0, seamsMm.size())
                .mapToDouble(i -> (i < seamsMm.size() ? seamsMm.get(i) : toMm()) - (i == 0 ? fromMm() : seamsMm.get(i - 1)));
    }

    /** The timber between two ends, seen from above: outer face first, counter-clockwise. */
    static Outline lies(Outline outline, int side, double thicknessMm, PieceEnd start, PieceEnd end) {
        return new Outline(Stream.of(
                outline.at(side, start.outerMm(), 0), outline.at(side, end.outerMm(), 0),
                outline.at(side, end.innerMm(), thicknessMm), outline.at(side, start.innerMm(), thicknessMm)).map(Point::steady).toList());
    }
}
