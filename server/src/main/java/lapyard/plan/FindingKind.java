package lapyard.plan;

import static lapyard.plan.FindingKind.Concern.COMFORT;
import static lapyard.plan.FindingKind.Concern.DANGER;
import static lapyard.plan.FindingKind.Concern.MONEY;
import static lapyard.plan.FindingKind.Concern.WORK;
import static lapyard.plan.WayKind.*;

import java.util.List;
import lapyard.plan.Finding.Weight;

/**
 * Every kind of finding, the most serious first within its concern. Codes are stable: they stand in JSON, and programs may
 * rely on them. Their sentences and meanings stand in {@code words/findings.properties}.
 */
public enum FindingKind {
    FIELD_MISSING("field.missing", Weight.STOP, WORK, GIVE_MM, GIVE_LIKE, ONE_OUTLINE),
    FIELD_SHAPE("field.shape", Weight.STOP, WORK, WRITE_LIKE, WITHOUT_QUOTES, IN_QUOTES, TRUE_OR_FALSE, SQUARE_BRACKETS, CURLY_BRACKETS, TWO_NUMBERS),
    FIELD_LOW("field.low", Weight.STOP, WORK, GIVE_BETWEEN),
    FIELD_HIGH("field.high", Weight.STOP, WORK, GIVE_BETWEEN),
    FIELD_FINE("field.fine", Weight.STOP, WORK, WRITE_NUMBER, ROUND_TO),
    FIELD_LONG("field.long", Weight.STOP, WORK, SHORTEN_BY),
    FIELD_MANY("field.many", Weight.STOP, WORK, SPLIT_GARDEN, SPLIT_PROBLEM),
    FIELD_CODE("field.code", Weight.STOP, WORK, CODE_LETTERS),
    FIELD_CHOICE("field.choice", Weight.STOP, WORK, USE_WORD),
    FIELD_FEW("field.few", Weight.STOP, WORK, GIVE_AT_LEAST),
    FIELD_TWICE("field.twice", Weight.STOP, WORK, ANOTHER_CODE, KEEP_ONE),
    FIELD_NO_SUCH("field.no-such", Weight.STOP, WORK, USE_WORD, ADD_TO, BED_BY_CODE),
    FIELD_RENAMED("field.renamed", Weight.STOP, WORK, KEEP_NEW_NAME),
    FIELDS_NEEDED("field.needed", Weight.STOP, WORK, WRITE_LIKE),
    FIELDS_CLASH("field.clash", Weight.STOP, WORK, TAKE_ONE_OUT),
    FIELDS_DISAGREE("field.disagree", Weight.STOP, WORK, CORRECT_ONE),
    FORMAT_UNKNOWN("format.unknown", Weight.STOP, WORK, NEWER_PROGRAM),
    DATE_PAST("date.past", Weight.STOP, WORK, TAKE_OUT, BEGIN_EARLIER),
    DATE_FAR("date.far", Weight.STOP, WORK, CORRECT_DATE),
    DATE_NO_START("date.no-start", Weight.STOP, WORK, GIVE_START, COUNT_DAYS),
    CREW_NOBODY("crew.nobody", Weight.STOP, WORK, COME_ON),
    MARGIN_WHOLE("quote.margin", Weight.STOP, MONEY, MARGIN_UNDER),
    TONNES_NO_DENSITY("goods.no-density", Weight.STOP, MONEY, GIVE_LIKE),
    OUTLINE_TWICE("outline.twice", Weight.STOP, WORK, ONE_OUTLINE),
    WALLS_OPEN("outline.walls-open", Weight.STOP, WORK, SAME_SUMS, END_AT_START, CHECK_TURNS),
    POINTS_SAME("line.points-same", Weight.STOP, WORK, TAKE_ONE_OUT),
    MARKS_NEAR("tape.marks-near", Weight.STOP, WORK, TWO_MARKS),
    TAPES_ONE_MARK("tape.one-mark", Weight.STOP, WORK, GIVE_LIKE),
    CHECK_SAME_CORNER("tape.same-corner", Weight.STOP, WORK, TWO_CORNERS),
    FIXING_LONG("fixing.long", Weight.STOP, WORK, FIXINGS_AT_MOST, TIMBER_THICK),
    SHARES_SUM("fill.shares", Weight.STOP, WORK, GIVE_MORE, GIVE_LESS),
    BAD_PART_OFF("board.bad-part", Weight.STOP, WORK, MEASURE_FROM_MARK),
    TALLY_SAME_PIECES("tally.same-pieces", Weight.STOP, WORK, NAME_EACH_BOARD),
    TALLY_SAWN_UNMARKED("tally.sawn-unmarked", Weight.STOP, WORK, CUT_OR_SPOILED, TAKE_OUT),
    CORNERS_FEW("outline.corners-few", Weight.STOP, WORK, ADD_CORNERS),
    CORNERS_SAME("outline.corners-same", Weight.STOP, WORK, LEAVE_OUT_CORNER),
    SIDES_CROSS("outline.sides-cross", Weight.STOP, WORK, MOVE_CORNER_OR_ORDER),
    SIDES_TOUCH("outline.sides-touch", Weight.STOP, WORK, MOVE_SIDE_AWAY),
    CORNER_NOT_SQUARE("outline.not-square", Weight.STOP, WORK, SQUARE_THE_CORNER),
    CORNER_FLAT("outline.corner-flat", Weight.STOP, WORK, LEAVE_OUT_CORNER),
    CORNER_SHARP("outline.corner-sharp", Weight.STOP, WORK, OPEN_OR_CUT_OFF),
    OUTLINE_TILTED("outline.tilted", Weight.STOP, WORK, DRAW_ALONG_AXES),
    SIDE_SHORT("outline.side-short", Weight.STOP, WORK, LENGTHEN_SIDE),
    INSIDE_NARROW("outline.inside-narrow", Weight.STOP, WORK, MOVE_SIDE_OUT),
    BED_NARROW("bed.narrow", Weight.STOP, WORK, MAKE_AT_LEAST, THINNER_TIMBER),
    PATH_BARE("path.bare", Weight.NOTE, MONEY, true, GIVE_LAYERS),

    TALLY_BOUGHT_ELSEWHERE("tally.bought-elsewhere", Weight.SNAG, MONEY, OFF_THE_ORDER),
    TALLY_BOUGHT_MORE("tally.bought-more", Weight.SNAG, MONEY, KEEP_ITS_BED, TAKE_BACK),
    TRY_CUT_UNWANTED("try.cut-unwanted", Weight.SNAG, MONEY, true, LEAVE_BED, RACK_AS_OFFCUT),
    TRY_CUT_OTHER("try.cut-other", Weight.SNAG, MONEY, true, LEAVE_BED, RACK_AS_OFFCUT),
    TRY_DONE_UNWANTED("try.done-unwanted", Weight.SNAG, MONEY, true, LEAVE_BED),

    TIE_NO_WALL("wall.untied", Weight.NOTE, DANGER, true, POST_INSIDE, WALL_ACROSS),
    TIE_CROSSED("wall.tie-crossed", Weight.NOTE, DANGER, true, POST_INSIDE),

    SCREW_THROUGH("screw.through", Weight.SNAG, WORK, true, SCREWS_AT_MOST, BRACKETS),
    SCREW_COVER("screw.cover", Weight.SNAG, WORK, true, SCREWS_AT_MOST, BRACKETS),
    WALL_TOO_LONG("wall.too-long", Weight.SNAG, WORK, true, ALLOW_JOINT, SHORTEN_WALL, LONGER_BOARD),
    WALL_NOT_JOINABLE("wall.not-joinable", Weight.SNAG, WORK, true, SHORTER_LEAST_PART, SHORTEN_WALL, LONGER_BOARD),
    MITRE_TOO_STEEP("corner.mitre", Weight.SNAG, WORK, true, LAP_CORNER, CUT_POINT_OFF, OPEN_CORNER),
    BUTT_TOO_SHARP("corner.sharp", Weight.SNAG, WORK, true, OPEN_CORNER, CUT_POINT_OFF),
    LINER_NO_ROOM("liner.no-room", Weight.SNAG, WORK, true, ADD_COURSES, LINER_NEARER_RIM),
    SOIL_NONE("soil.none", Weight.SNAG, WORK, true, ADD_COURSES, OPEN_BASE, LESS_MULCH_BY),
    NOTCHES_NONE_FIT("notch.none-fit", Weight.SNAG, WORK, true, OTHER_LOW_WALL, LONGER_LOW_WALL),
    DRAIN_DAMMED("base.dammed", Weight.SNAG, WORK, true, DRAIN_GAP),
    NOTCH_DEEP("notch.deep", Weight.SNAG, WORK, true, NOTCHES_AT_MOST),
    PIECE_SHORT("piece.short", Weight.SNAG, WORK, true, LENGTHEN_WALL, THINNER_TIMBER),
    JOINT_STAGGER("joint.stagger", Weight.SNAG, WORK, true, SHORTEN_WALL_NO_JOINT, ACCEPT_IT),
    LINER_LAP("liner.lap", Weight.SNAG, WORK, true, LAP_BY),
    SCREW_NEAR_END("screw.near-end", Weight.NOTE, WORK, true, SCREWS_AT_MOST, SHORTER_SCREWS, BRACKETS),
    GROUND_NOT_DRAWN("ground.not-drawn", Weight.NOTE, WORK, DRAW_SURFACE, NAME_BASE),
    NOTCHES_NO_LEVELS("notch.no-levels", Weight.NOTE, WORK, true, TAKE_LEVELS, NAME_LOW_WALLS),
    NOTCHES_NO_LOW_WALL("notch.no-low-wall", Weight.NOTE, WORK, true, TAKE_LEVELS, NAME_LOW_WALLS),
    NOTCH_WALL_SHORT("notch.wall-short", Weight.NOTE, WORK, true, OTHER_LOW_WALL),
    JOINT("joint", Weight.NOTE, WORK, true),
    SAW_ANGLES("saw.angles", Weight.NOTE, WORK, true, TRY_ON_SCRAP),
    NOTCH_MOVED("notch.moved", Weight.NOTE, WORK, true),
    SLATS_RIPPED("base.slats-ripped", Weight.NOTE, WORK, true),

    ANGLE_POINTS("piece.points", Weight.NOTE, MONEY, true, GOOD_FACES_TWO),

    SOIL_SHALLOW("soil.shallow", Weight.NOTE, COMFORT, true, ADD_COURSES, OPEN_BASE, LESS_MULCH_BY),
    MULCH_OVER_RIM("mulch.over-rim", Weight.SNAG, COMFORT, true, LESS_MULCH_BY),

    BED_TOO_NEAR("bed.too-near", Weight.SNAG, DANGER, true, MOVE_LEFT, MOVE_RIGHT, MOVE_AWAY, MOVE_TOWARDS, CUT_WIDTH, CUT_DEPTH, MOVE_TO_FREE_PLACE),
    SOIL_OVER_DAMP_COURSE("soil.damp-course", Weight.SNAG, DANGER, true, MOVE_OFF_WALL, TAKE_OFF_COURSES),

    BED_OVER_EDGE("bed.over-edge", Weight.SNAG, WORK, true, MOVE_LEFT, MOVE_RIGHT, MOVE_AWAY, MOVE_TOWARDS, CUT_WIDTH, CUT_DEPTH, MOVE_TO_FREE_PLACE),
    BED_ON_BEDS("bed.on-beds", Weight.SNAG, WORK, true, MOVE_LEFT, MOVE_RIGHT, MOVE_AWAY, MOVE_TOWARDS, CUT_WIDTH, CUT_DEPTH, MOVE_TO_FREE_PLACE),
    BED_IN_SWING("bed.in-swing", Weight.SNAG, WORK, true, MOVE_LEFT, MOVE_RIGHT, MOVE_AWAY, MOVE_TOWARDS, CUT_WIDTH, CUT_DEPTH, MOVE_TO_FREE_PLACE),
    OUTLINE_CROSSES("outline.crosses", Weight.STOP, WORK, CHECK_CORNER, CORNERS_IN_ORDER),
    LEVELS_FEW("levels.few", Weight.STOP, WORK, TAKE_MORE_LEVELS),
    LEVELS_IN_LINE("levels.in-line", Weight.STOP, WORK, LEVEL_BESIDE),
    PATH_OUTSIDE("path.outside", Weight.STOP, WORK, BEGIN_LATER, END_SOONER, NARROW_TO, MOVE_POINT_IN),
    TAPES_CANNOT_MEET("tape.cannot-meet", Weight.STOP, WORK, TAPE_AGAIN, CHECK_MARKS),
    NO_BASELINE("pegs.no-baseline", Weight.STOP, WORK, TWO_MARKS),
    SCRIBE_DEEP("scribe.deep", Weight.SNAG, WORK, true, LEVEL_STRIP, STEP_BASE),
    RIM_OFF_GROUP("rim.off-group", Weight.SNAG, WORK, true, ADD_COURSES, TAKE_OFF_COURSES, ADD_COURSES_AND, TAKE_OFF_COURSES_AND, TAKE_OUT_OF_GROUP),
    RIM_UNKNOWN_BED("rim.unknown-bed", Weight.SNAG, WORK, true, TAKE_OUT_OF_GROUP, ADD_BED),
    OUTLINE_OPEN("outline.open", Weight.SNAG, WORK, TAPE_SIDES, TAKE_DIAGONAL),
    CHECK_TAPE_OFF("tape.check-off", Weight.SNAG, WORK, true, TAPE_AGAIN),
    LEVEL_OFF("levels.off", Weight.SNAG, WORK, true, READ_AGAIN, READ_ROUND_IT),
    BED_ON_TWO_SURFACES("bed.two-surfaces", Weight.SNAG, WORK, true,
            MOVE_LEFT, MOVE_RIGHT, MOVE_AWAY, MOVE_TOWARDS, CUT_WIDTH, CUT_DEPTH, MOVE_TO_FREE_PLACE, ONE_GROUND),
    SURFACES_OVERLAP("surface.overlap", Weight.SNAG, WORK, true, COMMON_EDGE),
    PATH_NOTHING("path.nothing", Weight.SNAG, WORK, true, PATH_LINE, DELETE_PATH),
    PATH_UNDER_BED("path.under-bed", Weight.NOTE, WORK, true,
            MOVE_LEFT, MOVE_RIGHT, MOVE_AWAY, MOVE_TOWARDS, CUT_WIDTH, CUT_DEPTH, MOVE_TO_FREE_PLACE),
    TAPES_FLAT("tape.flat", Weight.NOTE, WORK, true, THIRD_TAPE),
    RIM_NO_LEVELS("rim.no-levels", Weight.NOTE, WORK, true, TAKE_LEVELS),
    SURFACE_MISSING("surface.missing", Weight.NOTE, WORK, DRAW_SURFACE),

    WALLS_HIDDEN("wall.hidden", Weight.NOTE, MONEY, true, NAME_SEEN_WALLS),

    GAP_NARROW("gap.narrow", Weight.NOTE, COMFORT, true, MOVE_APART, NARROWER_BY, LEAVE_ONE_OUT),
    PATH_NARROW("path.narrow", Weight.NOTE, COMFORT, true, WIDEN_TO),
    PATH_PINCHED("path.pinched", Weight.NOTE, COMFORT, true, MOVE_OBSTACLE, LEAD_ROUND),
    PATH_STEEP("path.steep", Weight.NOTE, COMFORT, true, ACROSS_FALL, STEPS_AND_RAMPS, CUT_UPPER_SIDE),
    PATH_CROSS_FALL("path.cross-fall", Weight.NOTE, COMFORT, true, ACROSS_FALL, STEPS_AND_RAMPS, CUT_UPPER_SIDE),
    PATH_TURNING("path.turning", Weight.NOTE, COMFORT, true, FREE_TURNING, LEAD_ON),
    PATH_PASSING("path.passing", Weight.NOTE, COMFORT, true, PASSING_PLACES, WIDEN_TO),
    REACH_NONE("reach.none", Weight.NOTE, COMFORT, true, STANDING_ROOM),
    REACH_FAR("reach.far", Weight.NOTE, COMFORT, true, MAKE_NARROWER, STEPPING_BOARD, FREE_WALL),
    RIM_HEIGHT("rim.height", Weight.NOTE, COMFORT, true, ADD_COURSES, TAKE_OFF_COURSES, STEP_GROUND),

    NOT_DESIGNED_DEEP("standing.deep", Weight.SNAG, DANGER, true, ASK_ENGINEER, LESS_SOIL),
    NOT_DESIGNED_DECK("standing.deck", Weight.SNAG, DANGER, true, ASK_ENGINEER, OFF_DECK),
    NOT_DESIGNED_NEAR("standing.near", Weight.SNAG, DANGER, true, ASK_ENGINEER, MOVE_BED),
    NOT_DESIGNED_BOARDS("standing.unknown-boards", Weight.SNAG, DANGER, true, ASK_ENGINEER, NAME_TREATMENT),
    WALL_WEAK("wall.weak", Weight.SNAG, DANGER, true, true, TIES_AT, POSTS_AT_MOST, TIMBER_THICK, TIMBER_STAMPED),
    JOINT_HINGE("joint.hinge", Weight.SNAG, DANGER, true, true, TIES_AT_JOINTS, POSTS_AT_JOINTS),
    CORNER_NO_SCREWS("corner.no-screws", Weight.SNAG, DANGER, true, true, FITTING_SCREWS, BRACKETS),
    CORNER_PULLS("corner.pulls", Weight.SNAG, DANGER, true, true, SCREWS_A_JOINT, BRACKETS, CROSS_TIES),
    SLATS_WEAK("slats.weak", Weight.SNAG, DANGER, true, true, BEARERS_APART, THICKER_SLATS),
    BEARERS_WEAK("bearers.weak", Weight.SNAG, DANGER, true, true, PADS_CLOSER, BEARERS_ON_GROUND, DEEPER_BEARER),
    GROUND_SOFT("ground.soft", Weight.SNAG, DANGER, true, true, SLABS_UNDER_BEARERS, BEARERS_CLOSER, OPEN_BASE),
    WALL_BLOCKED("wall.blocked", Weight.NOTE, DANGER, true, true, KEEP_NOTCHES_OPEN, TIES_APART),
    WALL_BOWS("wall.bows", Weight.NOTE, DANGER, true, true, TIES_AT, POSTS_AT_MOST, TIMBER_THICK, TIMBER_STAMPED),
    SLATS_SAG("slats.sag", Weight.NOTE, DANGER, true, true, BEARERS_APART, THICKER_SLATS),
    BEARERS_SAG("bearers.sag", Weight.NOTE, DANGER, true, true, PADS_CLOSER, BEARERS_ON_GROUND, DEEPER_BEARER),
    WALL_HOLDS("wall.holds", Weight.NOTE, DANGER, false, true),
    JOINTS_HELD("joint.held", Weight.NOTE, DANGER, false, true),
    CORNER_HOLDS("corner.holds", Weight.NOTE, DANGER, false, true),
    CORNER_BRACKETS("corner.brackets", Weight.NOTE, DANGER, false, true),
    SLATS_HOLD("slats.hold", Weight.NOTE, DANGER, false, true),
    BEARERS_HOLD("bearers.hold", Weight.NOTE, DANGER, false, true),
    GROUND_BEARS("ground.bears", Weight.NOTE, DANGER, false, true),
    GROUND_PAVED("ground.paved", Weight.NOTE, DANGER, false, true),

    BOARD_BARRED("board.barred", Weight.SNAG, DANGER, true, LICENSED_TIP),
    BOARD_NOT_FOOD("board.not-food", Weight.SNAG, DANGER, true, USE_WHERE_NOT_PLANTED, NAME_ORIGIN, NAME_BOARD_TREATMENT, OTHER_SECTION_FOR_REST),
    SLATS_NOT_FOOD("slats.not-food", Weight.SNAG, DANGER, true, LOOK_FOR_HT),
    LIFTS_BEYOND("lift.beyond", Weight.NOTE, DANGER, true, WHEELS, MORE_LIFTERS),
    BOARDS_BEYOND("lift.boards-beyond", Weight.NOTE, DANGER, true, WHEELS, MORE_LIFTERS, MERCHANT_CUTS),
    LIFTS("lift.heavy", Weight.NOTE, DANGER, true, HELPER, WHEELS),
    BOARDS_HEAVY("lift.boards", Weight.NOTE, DANGER, true, WHEELS, MERCHANT_CUTS),

    TALLY_CUT_TWICE("tally.cut-twice", Weight.STOP, WORK, CALL_SPOILED, TAKE_OFF_BOARD),
    TALLY_BOARD_TWICE("tally.board-twice", Weight.STOP, WORK, KEEP_ONE),
    TALLY_BOARD_NAME("tally.board-name", Weight.STOP, WORK, OWN_NUMBER),
    TALLY_CUT_MORE("tally.cut-more", Weight.STOP, WORK, TAKE_PIECES_OFF, PLAN_PIECES),
    TALLY_STOCK_MORE("tally.stock-more", Weight.STOP, WORK, NAME_STOCK),
    TALLY_STOCK_UNKNOWN("tally.stock-unknown", Weight.STOP, WORK, USE_STOCK),
    TALLY_PIECE_UNKNOWN("tally.piece-unknown", Weight.STOP, WORK, TAKE_OFF_TALLY),
    TALLY_NOT_OPENED("tally.not-opened", Weight.STOP, WORK, OPEN_BOARD, TAKE_PIECES_OFF),
    TALLY_NEGATIVE("tally.negative", Weight.STOP, WORK, MEASURE_AGAIN),
    TALLY_CUT_OVER("tally.cut-over", Weight.STOP, WORK, WHICH_BOARD),
    TALLY_LEFT_OVER("tally.left-over", Weight.STOP, WORK, MEASURE_AGAIN, TAKE_PIECE_OFF),
    TALLY_LOST_OVER("tally.lost-over", Weight.STOP, WORK, GIVE_LEFT),
    PIECE_NO_BOARD("piece.no-board", Weight.SNAG, WORK, true, LONGER_STOCK, JOIN_OR_SHORTEN),
    SELLER_SHORT("seller.short", Weight.NOTE, MONEY, SHORTER_LIST),
    BOARDS_RUN_OUT("board.run-out", Weight.SNAG, WORK, true, GET_BOARDS, GET_BOARDS_AND, LONGER_STOCK, JOIN_OR_SHORTEN),
    BOARDS_RUN_OUT_PERHAPS("board.run-out-perhaps", Weight.SNAG, WORK, true, GET_BOARDS, GET_BOARDS_AND, LONGER_STOCK, JOIN_OR_SHORTEN),
    BEARERS_NO_BOARD("bearers.no-board", Weight.SNAG, WORK, true, LONGER_STOCK),
    BEARERS_THICK("bearers.thick", Weight.SNAG, WORK, true, STRIPS_AT_MOST, THICKER_BEARERS),
    ROLL_NARROW("roll.narrow", Weight.SNAG, WORK, true, WIDER_ROLL, NARROWER_OR_NO_LINER),
    LINER_LAP_WIDE("liner.lap-wide", Weight.SNAG, WORK, true, LAP_BY, LARGER_ROLL),
    STRIP_LAP_WIDE("membrane.lap-wide", Weight.SNAG, WORK, true, LAP_BY, LARGER_ROLL),
    BOARD_OFF_SIZE("board.off-size", Weight.SNAG, WORK, true, OWN_SECTION, MEASURE_AGAIN),
    GOOD_FACES_LACKING("board.good-faces-lacking", Weight.SNAG, WORK, true, FIND_GOOD_FACES, HIDE_WALL),
    CUTS_UNSEALED("cut.unsealed", Weight.SNAG, WORK, true, CHOOSE_SEAL, ACCEPT_DURABLE),
    SLATS_SHORT("slats.short", Weight.SNAG, WORK, true, FIND_SLATS, OPEN_BASE),
    BAGS_NO_ROOM("delivery.bags", Weight.SNAG, WORK, true, BAGS_LATER, WHEEL_FIRST),
    PASSAGE_NARROW("delivery.passage", Weight.SNAG, WORK, true, OVER_FENCE, CARRY_ON_EDGE),
    PASSAGE_TURN("delivery.turn", Weight.SNAG, WORK, true, FIRST_CUT_TO, BUY_SHORTER, OVER_FENCE),
    LOAD_LONG("delivery.long", Weight.SNAG, WORK, true, FIRST_CUT_TO, HAVE_BROUGHT),
    LOAD_HEAVY("delivery.heavy", Weight.SNAG, WORK, true, HAVE_BROUGHT, SMALLER_PACKS),
    LOAD_LARGE("delivery.large", Weight.SNAG, WORK, true, HAVE_BROUGHT, SMALLER_PACKS),
    NOBODY_COMES("day.nobody", Weight.SNAG, WORK, TAKE_HOLIDAYS_OUT, SAY_WHO_COMES),
    WORK_LEFT("day.work-left", Weight.SNAG, WORK, SAY_WHO_COMES, LONGER_DAYS),
    ORDER_LATE("order.late", Weight.SNAG, WORK, ORDER_BY, BEGIN_LATER_BY, QUICKER_SUPPLIER),
    TALLY_DONE_UNKNOWN("tally.done-unknown", Weight.SNAG, WORK, true, BED_BACK, TAKE_OFF_TALLY),
    TALLY_DONE_EARLY("tally.done-early", Weight.SNAG, WORK, true, TICK_TOO, LOOK_HIDDEN),
    TALLY_DONE_UNCUT("tally.done-uncut", Weight.SNAG, WORK, true, CALL_CUT, TAKE_OFF_TALLY),
    TALLY_STOCK_GONE("tally.stock-gone", Weight.NOTE, MONEY, true, LIST_AGAIN),
    TALLY_CUT_OTHER("tally.cut-other", Weight.SNAG, WORK, true, KEEP_AS_CUT, RACK_AS_OFFCUT),
    TALLY_CUT_UNKNOWN("tally.cut-unknown", Weight.SNAG, WORK, true, KEEP_AS_CUT, RACK_AS_OFFCUT),
    OVERBOOKED("day.overbooked", Weight.NOTE, WORK, true, LATER_WEEKEND, MORE_PEOPLE, LONGER_DAYS),
    STANDS_LATE("day.stands-late", Weight.NOTE, WORK, true, LATER_WEEKEND, MORE_PEOPLE, LONGER_DAYS),
    CONCRETE_CURES("day.concrete", Weight.NOTE, WORK, true, POUR_EARLIER, LEVEL_INSTEAD),
    DAY_WET("day.wet", Weight.NOTE, WORK, true, DAY_DRY),
    TALLY_SHORT("tally.short", Weight.NOTE, WORK, true, BUY_BOARDS, SHORTEN_THOSE),
    LINER_DIVIDED("liner.divided", Weight.NOTE, WORK, true, WIDER_ROLL),
    STRIP_DIVIDED("membrane.divided", Weight.NOTE, WORK, true),
    NESTS("piece.nests", Weight.NOTE, WORK, true, SAW_AS_SHOWN, LOOK_AT_MARKS),
    NESTS_BOTH_FACES("piece.nests-both-faces", Weight.NOTE, WORK, true, SAW_AS_SHOWN, GOOD_FACES_ONE),

    BEARERS_UNKNOWN("bearers.unknown", Weight.SNAG, MONEY, true, ADD_SECTION, OTHER_BEARERS),
    ROLL_UNKNOWN("roll.unknown", Weight.SNAG, MONEY, true, ADD_ROLL),
    PRICE_MISSING("price.missing", Weight.NOTE, MONEY, GIVE_PRICE),
    EXAMPLE_PRICES("price.examples", Weight.NOTE, MONEY, OWN_PRICES),
    SUPPLIERS_NOT_PROVED("order.not-proved", Weight.NOTE, MONEY, PIN_LINES),
    NEAR_FREE_DELIVERY("delivery.near-free", Weight.NOTE, MONEY, true, BRING_FORWARD),
    LINER_SPLIT("liner.split", Weight.NOTE, MONEY, true),
    GOOD_FACES_BOUGHT("board.good-faces-bought", Weight.NOTE, MONEY, true, BUY_GOOD_FACES, HIDE_WALL),

    FIELD_UNKNOWN("field.unknown", Weight.STOP, WORK, DID_YOU_MEAN, TAKE_OUT),
    PIN_UNKNOWN("pin.unknown", Weight.SNAG, MONEY, NAME_CATALOGUE_GOODS, TAKE_OUT_PIN),
    PIN_NOT_SOLD("pin.not-sold", Weight.SNAG, MONEY, NAME_SELLER, TAKE_OUT_PIN),
    ACCEPTED_NOWHERE("accepted.nowhere", Weight.NOTE, WORK, PLACE_AS_LISTED, TAKE_OUT),
    DOCUMENT_UTF16("document.utf-sixteen", Weight.STOP, WORK, SAVE_UTF8),
    DOCUMENT_NOT_UTF8("document.not-utf", Weight.STOP, WORK, SAVE_UTF8),
    DOCUMENT_LARGE("document.large", Weight.STOP, WORK, TAKE_OUT_OTHER),
    DOCUMENT_EMPTY("document.empty", Weight.STOP, WORK, LEAST_GARDEN),
    DOCUMENT_DEEP("document.deep", Weight.STOP, WORK, TAKE_OUT_OTHER),
    DOCUMENT_NAME_TWICE("document.name-twice", Weight.STOP, WORK, KEEP_ONE),
    DOCUMENT_NOT_JSON("document.not-json", Weight.STOP, WORK, LOOK_FOR_COMMA),
    GARDEN_LARGE("garden.large", Weight.STOP, WORK, MORE_MEMORY, SPLIT_GARDEN),
    ROLL_STEP_LONG("roll.step-long", Weight.STOP, WORK, LONGER_RUN),
    ROLLS_NOT_EXACT("roll.not-exact", Weight.STOP, WORK, ROUND_SIZES, SPLIT_PROBLEM),
    TASK_USES_LISTED("task.uses-listed", Weight.STOP, WORK, ONE_FOR_EACH),
    TASK_USES_MORE("task.uses-more", Weight.STOP, WORK, MORE_OF_RESOURCE),
    TASK_CIRCLE("task.circle", Weight.STOP, WORK, TAKE_WAIT_OUT),
    TASK_NEVER("task.never", Weight.STOP, WORK, MORE_OF_RESOURCE),
    TASK_UNBROKEN("task.unbroken", Weight.STOP, WORK, LET_PAUSE, LONGER_STRETCH),
    TASKS_FAR("task.far", Weight.STOP, WORK, LARGER_UNITS),
    CALENDAR_EMPTY("calendar.empty", Weight.STOP, WORK, MARK_WORKING),
    CALENDAR_LISTED("calendar.listed", Weight.STOP, WORK, ONE_FOR_EACH),
    CURRENCIES_DIFFER("order.currencies", Weight.STOP, MONEY, SAME_CURRENCY),
    WORKBOOK_KIND("workbook.kind", Weight.STOP, WORK, SAVE_XLSX),
    WORKBOOK_DAMAGED("workbook.damaged", Weight.STOP, WORK, SAVE_IN_SPREADSHEET),
    WORKBOOK_CUT("workbook.cut", Weight.STOP, WORK, SEND_WHOLE),
    WORKBOOK_LARGE("workbook.large", Weight.STOP, WORK, KEEP_PRICES),
    PHOTO_KIND("photo.kind", Weight.STOP, WORK, SAVE_PICTURE),
    PHOTO_DAMAGED("photo.damaged", Weight.STOP, WORK, SEND_WHOLE),
    PHOTO_LARGE("photo.large", Weight.STOP, WORK, SMALLER_PICTURE),
    PDF_LOCKED("pdf.locked", Weight.STOP, WORK, SAVE_WITHOUT_PASSWORD),
    PDF_NO_PAGE("pdf.no-page", Weight.STOP, WORK, SAVE_PAGE),
    PDF_UNREADABLE("pdf.unreadable", Weight.STOP, WORK, PRINT_PDF_AGAIN),
    PDF_HEAVY("pdf.heavy", Weight.STOP, WORK, SAVE_PICTURE),
    PDF_SLOW("pdf.slow", Weight.STOP, WORK, SAVE_PICTURE),
    PLAN_NOT_ON_SHEET("plan.not-on-sheet", Weight.STOP, WORK, SCALE_OF, LARGER_PAPER),
    PLAN_SHEETS_MANY("plan.sheets-many", Weight.STOP, WORK, SMALLER_SCALE, LARGER_PAPER),
    LABELS_SMALL("labels.small", Weight.STOP, WORK, FEWER_LABELS),
    SUN_NO_PLACE("sun.no-place", Weight.STOP, WORK, GIVE_SUN),
    ACCESS_NO_STANDARD("access.no-standard", Weight.STOP, WORK, NAME_STANDARD),
    BOARDS_NONE_TRACED("board.none-traced", Weight.STOP, WORK, RACK_BOARDS, MARK_FOOD),
    GARDEN_NO_BEDS("garden.no-beds", Weight.STOP, WORK, ADD_A_BED),
    SNAG_LIST_EMPTY("snag-list.empty", Weight.STOP, WORK, ADD_SNAGS),
    ORDER_EMPTY("order.empty", Weight.STOP, MONEY, ADD_A_BED, GIVE_PRICES),
    OFFERS_FEW("offers.few", Weight.STOP, MONEY, TAKE_LISTS),
    OFFERS_MANY("offers.many", Weight.STOP, MONEY, TAKE_TABLE),
    QUOTE_NONE("quote.none", Weight.STOP, MONEY, GIVE_QUOTE),
    YARD_NONE("yard.none", Weight.STOP, WORK, DRAW_YARD),
    LAY_OUT_NOTHING("lay-out.nothing", Weight.STOP, WORK, NAME_TYPES, DRAW_BEDS),
    SIZES_FIXED("sizes.fixed", Weight.STOP, MONEY, SAY_GIVE),
    SIZES_NOT_MADE("sizes.not-made", Weight.STOP, MONEY, SOLVE_SNAGS),
    SIZES_BOUGHT("sizes.bought", Weight.STOP, MONEY, TAKE_OFF_TALLY),
    SUPPLIER_NOT_ON_SLIP("request.supplier", Weight.STOP, WORK, NAME_SUPPLIER_OF);

    /** What a finding is about, the most urgent first. */
    public enum Concern {
        /** Structure, lifting, food, buried services: somebody may be hurt. */
        DANGER,
        /** Work cannot go on, or would have to be done again. */
        WORK,
        MONEY,
        COMFORT
    }

    public final String code;
    /** The weight it has unless the place where it is found says otherwise. */
    public final Weight weight;
    public final Concern concern;
    /** Whether several of this kind are shown as one, with a list behind it. */
    public final boolean merges;
    /** Whether it rests on the estimate of strength, of which a caution is due: an estimate, not a design. */
    public final boolean estimate;
    /** The ways out that a finding of this kind may offer, each only where it was tried; empty for mere information. */
    public final List<WayKind> ways;

    FindingKind(String code, Weight weight, Concern concern, WayKind... ways) {
        this(code, weight, concern, false, false, ways);
    }

    FindingKind(String code, Weight weight, Concern concern, boolean merges, WayKind... ways) {
        this(code, weight, concern, merges, false, ways);
    }

    FindingKind(String code, Weight weight, Concern concern, boolean merges, boolean estimate, WayKind... ways) {
        this.code = code;
        this.weight = weight;
        this.concern = concern;
        this.merges = merges;
        this.estimate = estimate;
        this.ways = List.of(ways);
    }
}
