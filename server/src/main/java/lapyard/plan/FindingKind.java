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

    TIE_NO_WALL("wall.untied", Weight.NOTE, DANGER, true),

    SCREW_THROUGH("screw.through", Weight.SNAG, WORK, true),
    SCREW_COVER("screw.cover", Weight.SNAG, WORK, true),
    WALL_TOO_LONG("wall.too-long", Weight.SNAG, WORK, true),
    WALL_NOT_JOINABLE("wall.not-joinable", Weight.SNAG, WORK, true),
    MITRE_TOO_STEEP("corner.mitre", Weight.SNAG, WORK, true),
    BUTT_TOO_SHARP("corner.sharp", Weight.SNAG, WORK, true),
    LINER_NO_ROOM("liner.no-room", Weight.SNAG, WORK, true),
    SOIL_NONE("soil.none", Weight.SNAG, WORK, true),
    NOTCHES_NONE_FIT("notch.none-fit", Weight.SNAG, WORK, true),
    DRAIN_DAMMED("base.dammed", Weight.SNAG, WORK, true),
    NOTCH_DEEP("notch.deep", Weight.SNAG, WORK, true),
    PIECE_SHORT("piece.short", Weight.SNAG, WORK, true),
    JOINT_STAGGER("joint.stagger", Weight.SNAG, WORK, true),
    LINER_LAP("liner.lap", Weight.SNAG, WORK, true),
    SCREW_NEAR_END("screw.near-end", Weight.NOTE, WORK, true),
    GROUND_NOT_DRAWN("ground.not-drawn", Weight.NOTE, WORK),
    NOTCHES_NO_LEVELS("notch.no-levels", Weight.NOTE, WORK, true),
    NOTCHES_NO_LOW_WALL("notch.no-low-wall", Weight.NOTE, WORK, true),
    NOTCH_WALL_SHORT("notch.wall-short", Weight.NOTE, WORK, true),
    JOINT("joint", Weight.NOTE, WORK, true),
    SAW_ANGLES("saw.angles", Weight.NOTE, WORK, true),
    NOTCH_MOVED("notch.moved", Weight.NOTE, WORK, true),
    SLATS_RIPPED("base.slats-ripped", Weight.NOTE, WORK, true),

    ANGLE_POINTS("piece.points", Weight.NOTE, MONEY, true),

    SOIL_SHALLOW("soil.shallow", Weight.NOTE, COMFORT, true),
    MULCH_OVER_RIM("mulch.over-rim", Weight.SNAG, COMFORT, true),

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
