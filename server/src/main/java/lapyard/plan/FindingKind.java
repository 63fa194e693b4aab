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
    FIELD_MISSING("field.missing", Weight.STOP, WORK),
    FIELD_SHAPE("field.shape", Weight.STOP, WORK),
    FIELD_LOW("field.low", Weight.STOP, WORK),
    FIELD_HIGH("field.high", Weight.STOP, WORK),
    FIELD_FINE("field.fine", Weight.STOP, WORK),
    FIELD_LONG("field.long", Weight.STOP, WORK),
    FIELD_MANY("field.many", Weight.STOP, WORK),
    FIELD_CODE("field.code", Weight.STOP, WORK),
    FIELD_CHOICE("field.choice", Weight.STOP, WORK),
    FIELD_FEW("field.few", Weight.STOP, WORK),
    FIELD_TWICE("field.twice", Weight.STOP, WORK),
    FIELD_NO_SUCH("field.no-such", Weight.STOP, WORK),
    FIELD_RENAMED("field.renamed", Weight.STOP, WORK),
    FIELDS_NEEDED("field.needed", Weight.STOP, WORK),
    FIELDS_CLASH("field.clash", Weight.STOP, WORK),
    FIELDS_DISAGREE("field.disagree", Weight.STOP, WORK),
    FORMAT_UNKNOWN("format.unknown", Weight.STOP, WORK),
    DATE_PAST("date.past", Weight.STOP, WORK),
    DATE_FAR("date.far", Weight.STOP, WORK),
    DATE_NO_START("date.no-start", Weight.STOP, WORK),
    CREW_NOBODY("crew.nobody", Weight.STOP, WORK),
    MARGIN_WHOLE("quote.margin", Weight.STOP, MONEY),
    TONNES_NO_DENSITY("goods.no-density", Weight.STOP, MONEY),
    OUTLINE_TWICE("outline.twice", Weight.STOP, WORK),
    WALLS_OPEN("outline.walls-open", Weight.STOP, WORK),
    POINTS_SAME("line.points-same", Weight.STOP, WORK),
    MARKS_NEAR("tape.marks-near", Weight.STOP, WORK),
    TAPES_ONE_MARK("tape.one-mark", Weight.STOP, WORK),
    CHECK_SAME_CORNER("tape.same-corner", Weight.STOP, WORK),
    FIXING_LONG("fixing.long", Weight.STOP, WORK),
    SHARES_SUM("fill.shares", Weight.STOP, WORK),
    BAD_PART_OFF("board.bad-part", Weight.STOP, WORK),
    TALLY_SAME_PIECES("tally.same-pieces", Weight.STOP, WORK),
    CORNERS_FEW("outline.corners-few", Weight.STOP, WORK),
    CORNERS_SAME("outline.corners-same", Weight.STOP, WORK),
    SIDES_CROSS("outline.sides-cross", Weight.STOP, WORK),
    SIDES_TOUCH("outline.sides-touch", Weight.STOP, WORK),
    CORNER_NOT_SQUARE("outline.not-square", Weight.STOP, WORK),
    CORNER_FLAT("outline.corner-flat", Weight.STOP, WORK),
    CORNER_SHARP("outline.corner-sharp", Weight.STOP, WORK),
    OUTLINE_TILTED("outline.tilted", Weight.STOP, WORK),
    SIDE_SHORT("outline.side-short", Weight.STOP, WORK),
    INSIDE_NARROW("outline.inside-narrow", Weight.STOP, WORK),
    BED_NARROW("bed.narrow", Weight.STOP, WORK),
    PATH_BARE("path.bare", Weight.NOTE, MONEY, true),

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

    BED_ON_DECK("bed.on-deck", Weight.SNAG, DANGER, true),
    BED_TOO_NEAR("bed.too-near", Weight.SNAG, DANGER, true),
    SOIL_OVER_DAMP_COURSE("soil.damp-course", Weight.SNAG, DANGER, true),

    BED_OVER_EDGE("bed.over-edge", Weight.SNAG, WORK, true),
    BED_ON_BEDS("bed.on-beds", Weight.SNAG, WORK, true),
    BED_IN_SWING("bed.in-swing", Weight.SNAG, WORK, true),
    OUTLINE_CROSSES("outline.crosses", Weight.STOP, WORK),
    LEVELS_FEW("levels.few", Weight.STOP, WORK),
    LEVELS_IN_LINE("levels.in-line", Weight.STOP, WORK),
    PATH_OUTSIDE("path.outside", Weight.STOP, WORK),
    TAPES_CANNOT_MEET("tape.cannot-meet", Weight.STOP, WORK),
    NO_BASELINE("pegs.no-baseline", Weight.STOP, WORK),
    SCRIBE_DEEP("scribe.deep", Weight.SNAG, WORK, true),
    RIM_OFF_GROUP("rim.off-group", Weight.SNAG, WORK, true),
    RIM_UNKNOWN_BED("rim.unknown-bed", Weight.SNAG, WORK, true),
    OUTLINE_OPEN("outline.open", Weight.SNAG, WORK),
    CHECK_TAPE_OFF("tape.check-off", Weight.SNAG, WORK, true),
    LEVEL_OFF("levels.off", Weight.SNAG, WORK, true),
    BED_ON_TWO_SURFACES("bed.two-surfaces", Weight.SNAG, WORK, true),
    SURFACES_OVERLAP("surface.overlap", Weight.SNAG, WORK, true),
    PATH_NOTHING("path.nothing", Weight.SNAG, WORK, true),
    PATH_UNDER_BED("path.under-bed", Weight.NOTE, WORK, true),
    TAPES_FLAT("tape.flat", Weight.NOTE, WORK, true),
    RIM_NO_LEVELS("rim.no-levels", Weight.NOTE, WORK, true),
    SURFACE_MISSING("surface.missing", Weight.NOTE, WORK),

    WALLS_HIDDEN("wall.hidden", Weight.NOTE, MONEY, true),

    GAP_NARROW("gap.narrow", Weight.NOTE, COMFORT, true),
    PATH_NARROW("path.narrow", Weight.NOTE, COMFORT, true),
    PATH_PINCHED("path.pinched", Weight.NOTE, COMFORT, true),
    PATH_STEEP("path.steep", Weight.NOTE, COMFORT, true),
    PATH_CROSS_FALL("path.cross-fall", Weight.NOTE, COMFORT, true),
    PATH_TURNING("path.turning", Weight.NOTE, COMFORT, true),
    PATH_PASSING("path.passing", Weight.NOTE, COMFORT, true),
    REACH_NONE("reach.none", Weight.NOTE, COMFORT, true),
    REACH_FAR("reach.far", Weight.NOTE, COMFORT, true),
    RIM_HEIGHT("rim.height", Weight.NOTE, COMFORT, true),

    NOT_DESIGNED_DEEP("standing.deep", Weight.SNAG, DANGER, true),
    NOT_DESIGNED_DECK("standing.deck", Weight.SNAG, DANGER, true),
    NOT_DESIGNED_NEAR("standing.near", Weight.SNAG, DANGER, true),
    NOT_DESIGNED_BOARDS("standing.unknown-boards", Weight.SNAG, DANGER, true),
    WALL_WEAK("wall.weak", Weight.SNAG, DANGER, true, true),
    JOINT_HINGE("joint.hinge", Weight.SNAG, DANGER, true, true),
    CORNER_NO_SCREWS("corner.no-screws", Weight.SNAG, DANGER, true, true),
    CORNER_PULLS("corner.pulls", Weight.SNAG, DANGER, true, true),
    SLATS_WEAK("slats.weak", Weight.SNAG, DANGER, true, true),
    BEARERS_WEAK("bearers.weak", Weight.SNAG, DANGER, true, true),
    GROUND_SOFT("ground.soft", Weight.SNAG, DANGER, true, true),
    WALL_BLOCKED("wall.blocked", Weight.NOTE, DANGER, true, true),
    WALL_BOWS("wall.bows", Weight.NOTE, DANGER, true, true),
    SLATS_SAG("slats.sag", Weight.NOTE, DANGER, true, true),
    BEARERS_SAG("bearers.sag", Weight.NOTE, DANGER, true, true),
    WALL_HOLDS("wall.holds", Weight.NOTE, DANGER, false, true),
    JOINTS_HELD("joint.held", Weight.NOTE, DANGER, false, true),
    CORNER_HOLDS("corner.holds", Weight.NOTE, DANGER, false, true),
    CORNER_BRACKETS("corner.brackets", Weight.NOTE, DANGER, false, true),
    SLATS_HOLD("slats.hold", Weight.NOTE, DANGER, false, true),
    BEARERS_HOLD("bearers.hold", Weight.NOTE, DANGER, false, true),
    GROUND_BEARS("ground.bears", Weight.NOTE, DANGER, false, true),
    GROUND_PAVED("ground.paved", Weight.NOTE, DANGER, false, true),

    BOARD_BARRED("board.barred", Weight.SNAG, DANGER, true),
    BOARD_NOT_FOOD("board.not-food", Weight.SNAG, DANGER, true),
    SLATS_NOT_FOOD("slats.not-food", Weight.SNAG, DANGER, true),
    LIFTS_BEYOND("lift.beyond", Weight.NOTE, DANGER, true),
    BOARDS_BEYOND("lift.boards-beyond", Weight.NOTE, DANGER, true),
    LIFTS("lift.heavy", Weight.NOTE, DANGER, true),
    BOARDS_HEAVY("lift.boards", Weight.NOTE, DANGER, true),

    TALLY_CUT_TWICE("tally.cut-twice", Weight.STOP, WORK),
    TALLY_BOARD_TWICE("tally.board-twice", Weight.STOP, WORK),
    TALLY_BOARD_NAME("tally.board-name", Weight.STOP, WORK),
    TALLY_CUT_MORE("tally.cut-more", Weight.STOP, WORK),
    TALLY_STOCK_MORE("tally.stock-more", Weight.STOP, WORK),
    TALLY_STOCK_UNKNOWN("tally.stock-unknown", Weight.STOP, WORK),
    TALLY_PIECE_UNKNOWN("tally.piece-unknown", Weight.STOP, WORK),
    TALLY_NOT_OPENED("tally.not-opened", Weight.STOP, WORK),
    TALLY_NEGATIVE("tally.negative", Weight.STOP, WORK),
    TALLY_CUT_OVER("tally.cut-over", Weight.STOP, WORK),
    TALLY_LEFT_OVER("tally.left-over", Weight.STOP, WORK),
    TALLY_LOST_OVER("tally.lost-over", Weight.STOP, WORK),
    PIECE_NO_BOARD("piece.no-board", Weight.SNAG, WORK, true),
    BOARDS_RUN_OUT("board.run-out", Weight.SNAG, WORK, true),
    BOARDS_RUN_OUT_PERHAPS("board.run-out-perhaps", Weight.SNAG, WORK, true),
    BEARERS_NO_BOARD("bearers.no-board", Weight.SNAG, WORK, true),
    BEARERS_THICK("bearers.thick", Weight.SNAG, WORK, true),
    ROLL_NARROW("roll.narrow", Weight.SNAG, WORK, true),
    LINER_LAP_WIDE("liner.lap-wide", Weight.SNAG, WORK, true),
    STRIP_LAP_WIDE("membrane.lap-wide", Weight.SNAG, WORK, true),
    BOARD_OFF_SIZE("board.off-size", Weight.SNAG, WORK, true),
    GOOD_FACES_LACKING("board.good-faces-lacking", Weight.SNAG, WORK, true),
    CUTS_UNSEALED("cut.unsealed", Weight.SNAG, WORK, true),
    SLATS_SHORT("slats.short", Weight.SNAG, WORK, true),
    BAGS_NO_ROOM("delivery.bags", Weight.SNAG, WORK, true),
    PASSAGE_NARROW("delivery.passage", Weight.SNAG, WORK, true),
    PASSAGE_TURN("delivery.turn", Weight.SNAG, WORK, true),
    LOAD_LONG("delivery.long", Weight.SNAG, WORK, true),
    LOAD_HEAVY("delivery.heavy", Weight.SNAG, WORK, true),
    LOAD_LARGE("delivery.large", Weight.SNAG, WORK, true),
    NOBODY_COMES("day.nobody", Weight.SNAG, WORK),
    ORDER_LATE("order.late", Weight.SNAG, WORK),
    TALLY_DONE_UNKNOWN("tally.done-unknown", Weight.SNAG, WORK, true),
    TALLY_DONE_EARLY("tally.done-early", Weight.SNAG, WORK, true),
    TALLY_CUT_UNKNOWN("tally.cut-unknown", Weight.SNAG, WORK, true),
    OVERBOOKED("day.overbooked", Weight.NOTE, WORK, true),
    STANDS_LATE("day.stands-late", Weight.NOTE, WORK, true),
    CONCRETE_CURES("day.concrete", Weight.NOTE, WORK, true),
    DAY_WET("day.wet", Weight.NOTE, WORK, true),
    TALLY_SHORT("tally.short", Weight.NOTE, WORK, true),
    LINER_DIVIDED("liner.divided", Weight.NOTE, WORK, true),
    STRIP_DIVIDED("membrane.divided", Weight.NOTE, WORK, true),
    NESTS("piece.nests", Weight.NOTE, WORK, true),
    NESTS_BOTH_FACES("piece.nests-both-faces", Weight.NOTE, WORK, true),

    BEARERS_UNKNOWN("bearers.unknown", Weight.SNAG, MONEY, true),
    ROLL_UNKNOWN("roll.unknown", Weight.SNAG, MONEY, true),
    PRICE_MISSING("price.missing", Weight.NOTE, MONEY),
    EXAMPLE_PRICES("price.examples", Weight.NOTE, MONEY),
    SUPPLIERS_NOT_PROVED("order.not-proved", Weight.NOTE, MONEY),
    NEAR_FREE_DELIVERY("delivery.near-free", Weight.NOTE, MONEY, true),
    LINER_SPLIT("liner.split", Weight.NOTE, MONEY, true),
    GOOD_FACES_BOUGHT("board.good-faces-bought", Weight.NOTE, MONEY, true),

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
