package lapyard.ground;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;

/**
 * Room to walk and to reach, held against a standard, value by value.
 *
 * @param findings snags where the garden asks for the standard, notes where it does not
 */
public record AccessSheet(AccessStandard standard, List<Row> rows, List<Finding> findings) {
    public AccessSheet {
        rows = List.copyOf(rows);
        findings = List.copyOf(findings);
    }

    /** What is measured; {@code words} is how sheets and documents name it. */
    public enum AccessCheck {
        GAP("gap"),
        REACH("reach"),
        RIM("rim"),
        WIDTH("width"),
        NARROWEST("narrowest"),
        GRADIENT("gradient"),
        CROSS_FALL("cross fall"),
        TURNING("turning"),
        PASSING("passing");

        public final String words;

        AccessCheck(String words) {
            this.words = words;
        }
    }

    /**
     * @param where    as in {@code bed M} or {@code path P1}
     * @param measured in the unit; for a gradient, n of 1:n
     * @param limit    that it must meet: at least for rooms and gradients, at most for reach and passing
     * @param missing  by which it fails; 0 where it passes
     * @param at       the place that was measured, empty where it is not one place
     */
    public record Row(String where, AccessCheck what, double measured, double limit, String unit, double missing, Optional<Point> at) {
        Row(String where, AccessCheck what, double measured, double limit, String unit, double missing) {
            this(where, what, measured, limit, unit, missing, Optional.empty());
        }

        public boolean pass() {
            return missing == 0;
        }
    }

    /** A finding held against the standard: a snag once the garden names one, else information. */
    static Finding finding(AccessStandard standard, FindingKind kind, Place place, double limitMm, double missingMm) {
        Finding finding = Finding.of(kind, place).weighing(standard.named() ? Finding.Weight.SNAG : Finding.Weight.NOTE)
                .with("limit", Fact.mm(limitMm)).by(Fact.mm(missingMm));
        return standard.named() ? finding.with("standard", Fact.name(standard.called())) : finding.with("usual", Fact.mm(limitMm));
    }
}
