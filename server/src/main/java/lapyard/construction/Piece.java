package lapyard.construction;

import java.util.List;
import java.util.stream.Stream;
import lapyard.construction.PieceEnd.Kind;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;

/**
 * One timber of one course.
 *
 * @param mark     as written on it: bed-course-wall, with a or b for a joined part: {@code M-2C}, {@code M-1Aa}
 * @param course   1 is the lowest
 * @param part     empty, or {@code a}, {@code b} ... from the wall's start
 * @param lengthMm from long point to long point: what is cut off the board, to 0.1 mm
 * @param fromMm   where it begins, measured along the wall from the wall's outer start corner; may be below 0 at an
 *     inside corner
 * @param lies     the timber seen from above in the bed's own frame: start and end of its outer face, then end and
 *     start of its inner face
 * @param seen     whether its wall is seen
 */
public record Piece(
        String mark,
        int course,
        String wall,
        String part,
        double lengthMm,
        double fromMm,
        Outline lies,
        boolean seen,
        PieceEnd start,
        PieceEnd end) {

    /** Which ends of the piece run past the corner. */
    public enum RunsPast {
        START,
        END,
        BOTH,
        NONE
    }

    public RunsPast runsPast() {
        boolean first = start.kind() == Kind.RUNS_PAST;
        boolean last = end.kind() == Kind.RUNS_PAST;
        return first ? last ? RunsPast.BOTH : RunsPast.START : last ? RunsPast.END : RunsPast.NONE;
    }

    public boolean squareEnds() {
        return start.squareCut() && end.squareCut();
    }

    /** How the saw is set for each of its ends that is not square, in the order of the wall. */
    public List<Double> setsDeg() {
        return Stream.of(start, end).filter(one -> !one.squareCut()).map(PieceEnd::setDeg).toList();
    }

    public double outerFaceMm() {
        return Lengths.toTenth(end.outerMm() - start.outerMm());
    }

    public double innerFaceMm() {
        return Lengths.toTenth(end.innerMm() - start.innerMm());
    }

    /** From short point to short point: the length over which the timber has its whole thickness. */
    public double shortMm() {
        return Lengths.toTenth(Math.min(end.outerMm(), end.innerMm()) - Math.max(start.outerMm(), start.innerMm()));
    }

    /** Mean of the outer and the inner face: what its volume goes by. */
    public double meanMm() {
        return squareEnds()
                ? lengthMm
                : (end.outerMm() - start.outerMm() + end.innerMm() - start.innerMm()) / 2;
    }
}
