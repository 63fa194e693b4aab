package lapyard.standing;

import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;

/**
 * One plain answer about a bed.
 *
 * @param about   what was looked at: {@code walls}, {@code walls blocked}, {@code joints}, {@code corners},
 *     {@code slats}, {@code bearers}, {@code ground}
 * @param finding the answer with its figures; ways out only where it does not hold
 */
public record Verdict(String about, Outcome outcome, Finding finding) {
    /** {@code WEAK} may break; {@code BOWS} holds but gives more than it may, or only while it drains. */
    public enum Outcome {
        HOLDS,
        BOWS,
        WEAK
    }

    /** An answer about a part of a bed, still without figures. */
    static Finding about(String bed, String about, FindingKind kind) {
        return Finding.of(kind, Place.bed(bed).then(What.FIELD, about));
    }
}
