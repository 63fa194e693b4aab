package lapyard.plan;

import java.util.Locale;

/** Every kind of way out. Its sentence stands in {@code words/findings.properties} under {@code way.} and its code. */
public enum WayKind {
    SAID,
    DID_YOU_MEAN,
    TAKE_OUT,
    NAME_CATALOGUE_GOODS,
    NAME_SELLER,
    TAKE_OUT_PIN,
    SEND_OBJECT,
    LEAVE_OUT_PARAMETER,
    NAME_SUPPLIER_OF,
    SAME_CURRENCY,
    SEND_LIST,
    MEND_NAMED,
    KEEP_ITS_BED,
    TAKE_BACK,
    LEAVE_BED,
    RACK_AS_OFFCUT,
    GOOD_FACES_TWO,
    TRY_ON_SCRAP,
    LAP_CORNER,
    CUT_POINT_OFF,
    OPEN_CORNER,
    DRAW_SURFACE,
    NAME_BASE,
    POST_INSIDE,
    WALL_ACROSS,
    SHORTER_LEAST_PART,
    ALLOW_JOINT,
    SHORTEN_WALL,
    LONGER_BOARD,
    SHORTEN_WALL_NO_JOINT,
    BUY_LONGER,
    ACCEPT_IT,
    LENGTHEN_WALL,
    THINNER_TIMBER,
    SCREWS_AT_MOST,
    SHORTER_SCREWS,
    BRACKETS,
    DRAIN_GAP,
    ADD_COURSES,
    LINER_NEARER_RIM,
    LAP_BY,
    TAKE_LEVELS,
    NAME_LOW_WALLS,
    OTHER_LOW_WALL,
    LONGER_LOW_WALL,
    NOTCHES_AT_MOST,
    OPEN_BASE,
    LESS_MULCH_BY;

    /** Its stable name in JSON and in the words: {@code raise-course}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
