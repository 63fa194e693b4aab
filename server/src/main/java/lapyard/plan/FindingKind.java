package lapyard.plan;

import static lapyard.plan.FindingKind.Concern.COMFORT;
import static lapyard.plan.FindingKind.Concern.DANGER;
import static lapyard.plan.FindingKind.Concern.MONEY;
import static lapyard.plan.FindingKind.Concern.WORK;

import lapyard.plan.Finding.Weight;

/**
 * Every kind of finding, the most serious first within its concern. Codes are stable: they stand in JSON, and programs may
 * rely on them. Their sentences and meanings stand in {@code words/findings.properties}.
 */
public enum FindingKind {
    SAID("said", Weight.SNAG, WORK),

    TALLY_BOUGHT_MORE("tally.bought-more", Weight.SNAG, MONEY),
    TRY_CUT_UNWANTED("try.cut-unwanted", Weight.SNAG, MONEY, true),
    TRY_CUT_OTHER("try.cut-other", Weight.SNAG, MONEY, true),
    TRY_DONE_UNWANTED("try.done-unwanted", Weight.SNAG, MONEY, true),

    FIELD_UNKNOWN("field.unknown", Weight.STOP, WORK),
    PIN_UNKNOWN("pin.unknown", Weight.SNAG, MONEY),
    PIN_NOT_SOLD("pin.not-sold", Weight.SNAG, MONEY),
    REQUEST_REFUSED("request.refused", Weight.STOP, WORK),
    SUPPLIER_NOT_ON_SLIP("request.supplier", Weight.STOP, WORK);

    /** What a finding is about, the most urgent first. */
    public enum Concern {
        /** Structure, lifting, food, buried services: somebody may be hurt. */
        DANGER,
        /** Work cannot go on, or would have to be done again. */
        WORK,
        MONEY,
        COMFORT
    }

    private final String code;
    private final Weight weight;
    private final Concern concern;
    private boolean merges;
    private boolean estimate;

    FindingKind(String code, Weight weight, Concern concern) {
        this.code = code;
        this.weight = weight;
        this.concern = concern;
    }

    /** Several of this kind are shown as one, with a list behind it. */
    FindingKind(String code, Weight weight, Concern concern, boolean merges) {
        this(code, weight, concern);
        this.merges = merges;
    }

    FindingKind(String code, Weight weight, Concern concern, boolean merges, boolean estimate) {
        this(code, weight, concern, merges);
        this.estimate = estimate;
    }

    public String code() {
        return code;
    }

    /** The weight it has unless the place where it is found says otherwise. */
    public Weight weight() {
        return weight;
    }

    public Concern concern() {
        return concern;
    }

    public boolean merges() {
        return merges;
    }

    /** Whether it rests on the estimate of strength, of which a caution is due: an estimate, not a design. */
    public boolean estimate() {
        return estimate;
    }
}
