package lapyard.construction;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lapyard.geometry.Lengths;
import lapyard.plan.Base;
import lapyard.working.Whole;

/**
 * Slats over one rectangle of floor, in rows square to its bearers.
 *
 * @param rows      rows side by side
 * @param gapMm     between rows
 * @param rippedMm  width of one row that must be ripped to fit, 0 where all rows are whole slats
 * @param rowsMm    the pieces of each row, end to end; all rows alike but in a floor with slanted sides
 */
public record SlatRows(int rows, double gapMm, double rippedMm, List<List<Double>> rowsMm) {
    /**
     * Narrowest row and shortest piece that is worth laying (common practice, no source). At the tip of a slanted floor
     * the bearers along its walls carry what would lie there.
     */
    static final double LEAST_MM = 20;

    public SlatRows {
        List<List<Double>> own = new ArrayList<>();
        for (int i = 0; i < rowsMm.size(); i++) {
            own.add(i > 0 && rowsMm.get(i) == rowsMm.get(i - 1) ? own.get(i - 1) : List.copyOf(rowsMm.get(i)));
        }
        rowsMm = List.copyOf(own);
    }

    /** The same rows, each cut to its own length. */
    SlatRows with(List<List<Double>> piecesMm) {
        return new SlatRows(rows, gapMm, rippedMm, piecesMm);
    }

    /** The pieces of the longest row. */
    public List<Double> piecesMm() {
        List<Double> longest = List.of();
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < rowsMm.size(); i++) {
            if (i > 0 && rowsMm.get(i) == rowsMm.get(i - 1)) continue;
            double sum = rowsMm.get(i).stream().mapToDouble(mm -> mm).sum();
            if (sum <= most) continue;
            most = sum;
            longest = rowsMm.get(i);
        }
        return longest;
    }

    /**
     * @param acrossMm clear width that the rows must fill
     * @param alongMm  clear length of a row
     */
    static SlatRows of(double acrossMm, double alongMm, Base base) {
        double w = base.slats().slatWidthMm();
        double g = base.slats().slatMaxGapMm();
        int rows = Math.max(1, (int) Whole.up((acrossMm + g) / (w + g)));
        double gap = rows == 1 ? 0 : (acrossMm - rows * w) / (rows - 1);
        double ripped = 0;
        if (rows == 1 && w > acrossMm) {
            ripped = acrossMm;
        } else if (gap < 0) {
            // One row fewer leaves gaps over g, so the last row is ripped: as wide as the widest gaps allow.
            ripped = acrossMm - (rows - 1) * (w + g);
            gap = g;
            if (ripped < LEAST_MM) {
                double room = acrossMm - (rows - 1) * w;
                ripped = Math.min(room, LEAST_MM);
                gap = (room - ripped) / (rows - 1);
            }
        }
        return new SlatRows(rows, gap, Lengths.toTenth(ripped), Collections.nCopies(rows, row(alongMm - base.slats().slatClearanceMm(), base)));
    }

    /** Whole slats and a rest; a rest under the least length takes what it lacks from the slat before it. */
    static List<Double> row(double lengthMm, Base base) {
        double slat = base.slats().slatLengthMm();
        int whole = (int) Math.floor((lengthMm + 1e-6) / slat);
        double rest = Lengths.toTenth(lengthMm - whole * slat);
        List<Double> pieces = new ArrayList<>();
        for (int i = 0; i < whole; i++) pieces.add(slat);
        if (rest > 0) {
            double lacking = base.slats().slatLeastMm() - rest;
            if (lacking > 0 && whole > 0 && slat - lacking >= base.slats().slatLeastMm()) {
                pieces.set(whole - 1, Lengths.toTenth(slat - lacking));
                rest = base.slats().slatLeastMm();
            }
            pieces.add(rest);
        }
        return pieces;
    }

    /** Boards for these rows together; a whole slat is a board of its own. */
    static int boards(List<SlatRows> all, Base base, double kerfMm) {
        FirstFit fit = new FirstFit();
        all.forEach(rows -> rows.addTo(fit));
        return fit.boards(base.slats().slatLengthMm(), kerfMm);
    }

    void addTo(FirstFit fit) {
        rowsMm.forEach(row -> row.forEach(piece -> fit.add(piece, 1)));
    }
}
