package lapyard.construction;

import lapyard.geometry.Inset;
import lapyard.geometry.Lengths;

/**
 * One end of a timber, places measured along the wall from its outer start corner.
 *
 * @param outerMm where its outer face ends
 * @param innerMm where its inner face ends; the same as {@code outerMm} for a square cut
 * @param setDeg  saw set off square, to 0.1 degree
 */
public record PieceEnd(Kind kind, double outerMm, double innerMm, double setDeg) {
    public enum Kind {
        RUNS_PAST,
        STOPS_SHORT,
        MITRE,
        SEAM
    }

    public boolean squareCut() {
        return setDeg == 0;
    }

    static PieceEnd seam(double atMm) {
        return new PieceEnd(Kind.SEAM, atMm, atMm, 0);
    }

    /**
     * A lapped timber ends on the outer or on the inner face of the other. At an outer corner the one that runs past
     * ends flush with the other's outer face and the one that stops short against its inner face; at an inside corner
     * the other way round. A mitre runs from the outer to the inner corner.
     *
     * @param cornerMm    place of the corner along the wall: 0 for its start, its length for its end
     * @param start       whether this is the start of the wall
     * @param turnDeg     of the outline at the corner, above 0 for an outer corner
     * @param thicknessMm of this timber
     * @param neighbourMm thickness of the timber that it meets
     */
    static PieceEnd of(Kind kind, double cornerMm, boolean start, double turnDeg, double thicknessMm, double neighbourMm) {
        // how far both faces reach beyond the outer corner; below 0 where they end before it
        double innerCorner = Inset.innerCornerMm(turnDeg, thicknessMm, neighbourMm);
        double slope = Math.abs(turnDeg) == 90 ? 0 : thicknessMm / Math.tan(Math.toRadians(turnDeg));
        boolean toOuterFace = turnDeg > 0 == (kind == Kind.RUNS_PAST);
        double outer = kind == Kind.MITRE || toOuterFace ? 0 : innerCorner - slope;
        double inner = kind != Kind.MITRE && toOuterFace ? slope : innerCorner;
        int sense = start ? -1 : 1;
        double set = Math.toDegrees(Math.atan2(Math.abs(outer - inner), thicknessMm));
        return new PieceEnd(
                kind, Lengths.steady(cornerMm + sense * outer), Lengths.steady(cornerMm + sense * inner), Lengths.toTenth(set));
    }
}
