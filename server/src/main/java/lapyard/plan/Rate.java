package lapyard.plan;

/**
 * How long work takes, in minutes; common practice, no source: a first guess that every crew puts right.
 *
 * @see Crew#minutes
 */
public enum Rate {
    SET_OUT("setOut", 45, "a bed, pegs and diagonals"),
    GROUND("ground", 6, "a metre of wall, ground scraped level"),
    /** Two to three hours a bed. */
    SCRIBE("scribe", 150, "a bed scribed to ground that falls"),
    DIG("dig", 180, "a cubic metre dug"),
    SUB_BASE("subBase", 120, "a cubic metre of sub-base laid and compacted"),
    /** Two people place 0.08 to 0.15 m3 an hour by hand: 13 to 25 person-hours, so 19. */
    POUR("pour", 1140, "a cubic metre of concrete mixed and poured"),
    CUT("cut", 4, "a cut, those that trim an end among them"),
    SETTING("setting", 3, "a setting of the saw stop"),
    STRIP("strip", 1, "a cut of a bearer strip, those that rip a board or trim an end among them"),
    MARK("mark", 5, "a piece marked and its ends sealed"),
    NOTCH("notch", 10, "a drain notch"),
    FIRST_COURSE("firstCourse", 15, "a piece of course 1, level and square"),
    COURSE("course", 8, "a piece of the courses above"),
    /** Six fixings of 1 to 1.5 minutes each. */
    BRACKET("bracket", 8, "a corner bracket, or a plate behind a joint, with its screws"),
    COURSE_TIE("courseTie", 2, "a screw or strap that ties two courses"),
    CROSS_TIE("crossTie", 25, "a cross tie, both walls drilled"),
    POST("post", 25, "a post behind a joint, dug in and screwed"),
    COAT("coat", 8, "a square metre and coat of finish"),
    BASE("base", 3, "a bearer, beam or slat"),
    LINER("liner", 5, "a square metre of liner laid, slit, folded and stapled"),
    BARROW("barrow", 8, "a barrow filled, wheeled and tipped"),
    PLANT("plant", 15, "a square metre planted and mulched"),
    PATH("path", 15, "a square metre of path laid"),
    /** 35 to 45 minutes. */
    STONE_PATH("stonePath", 40, "a square metre of path with stone: dug, its soil wheeled off, laid and compacted"),
    EDGING("edging", 5, "a metre of edging"),
    TOP_UP("topUp", 30, "a bed topped up");

    /** The name in the document. */
    public final String field;
    public final double usualMinutes;
    /** What the minutes are for, in words. */
    public final String per;

    Rate(String field, double usualMinutes, String per) {
        this.field = field;
        this.usualMinutes = usualMinutes;
        this.per = per;
    }
}
