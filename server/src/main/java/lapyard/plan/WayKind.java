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
    RACK_AS_OFFCUT;

    /** Its stable name in JSON and in the words: {@code raise-course}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
