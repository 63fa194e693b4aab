package lapyard.plan;

/**
 * How long work takes, in minutes; common practice, no source: a first guess that every crew puts right.
 *
 * @see Crew#minutes
 */
public enum Rate {
    SET_OUT("setOut", 45, "a bed, pegs and diagonals"),
    GROUND("ground", 6, "a metre of wall, scraped level or scribed"),
    DIG("dig", 180, "a cubic metre dug"),
    POUR("pour", 600, "a cubic metre of concrete mixed and poured"),
    CUT("cut", 4, "a cut"),
    SETTING("setting", 10, "a setting of the saw stop"),
    MARK("mark", 2, "a piece marked and its ends sealed"),
    NOTCH("notch", 10, "a drain notch"),
    FIRST_COURSE("firstCourse", 15, "a piece of course 1, level and square"),
    COURSE("course", 8, "a piece of the courses above"),
    COAT("coat", 8, "a square metre and coat of finish"),
    BASE("base", 3, "a bearer, beam or slat"),
    LINER("liner", 5, "a square metre of liner laid, slit, folded and stapled"),
    BARROW("barrow", 6, "a barrow filled, wheeled and tipped"),
    PLANT("plant", 15, "a square metre planted and mulched"),
    PATH("path", 15, "a square metre of path laid"),
    EDGING("edging", 5, "a metre of edging"),
    TOP_UP("topUp", 30, "a bed topped up");

    private final String field;
    private final double usualMinutes;
    private final String per;

    Rate(String field, double usualMinutes, String per) {
        this.field = field;
        this.usualMinutes = usualMinutes;
        this.per = per;
    }

    /** The name in the document. */
    public String field() {
        return field;
    }

    public double usualMinutes() {
        return usualMinutes;
    }

    /** What the minutes are for, in words. */
    public String per() {
        return per;
    }
}
