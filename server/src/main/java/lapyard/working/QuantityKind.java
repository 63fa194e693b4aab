package lapyard.working;

/**
 * Every kind of quantity of a job sheet, and how it is bought. The code is its fixed name there; a {@code *} in it stands
 * for which one: a corner, a wall, a surface or a material.
 */
public enum QuantityKind {
    TIMBER_LENGTH("timber.length", Sale.BOARDS),
    TIMBER_VOLUME("timber.volume", Sale.NONE),
    TIMBER_MASS("timber.mass", Sale.NONE),
    ENDS_AREA("ends.area", Sale.NONE),
    LIFTS_TWO_PEOPLE("lifts.two-people", Sale.NONE),
    NOTCHES("notches", Sale.NONE),
    NOTCHES_AREA("notches.area", Sale.NONE),
    SCREWS("screws", Sale.PACKS),
    PILOTS("pilots", Sale.NONE),
    BRACKETS("brackets", Sale.PACKS),
    BRACKET_FIXINGS("brackets.fixings", Sale.PACKS),
    COURSE_TIES("ties.course", Sale.PACKS),
    COURSE_TIE_FIXINGS("ties.course.fixings", Sale.PACKS),
    CROSS_TIES("ties.cross", Sale.PACKS),
    POSTS("posts", Sale.PACKS),
    JOINT_PLATES("seam.plates", Sale.PACKS),
    JOINT_SCREWS("seam.screws", Sale.PACKS),
    FINISH_AREA("finish.area", Sale.NONE),
    FINISH_LITRES("finish.litres", Sale.PACKS),
    SEAL_LITRES("seal.litres", Sale.PACKS),
    INNER_AREA("inner.area", Sale.NONE),
    BEARERS("base.bearers", Sale.BOARDS),
    SLATS("base.slats", Sale.PACKS),
    /** Of the slats those that are not on hand; where it stands it is bought in place of {@link #SLATS}. */
    SLATS_BOUGHT("base.slats.bought", Sale.PACKS),
    LINER("liner", Sale.ROLLS),
    LINER_AREA("liner.area", Sale.NONE),
    LINER_SLITS("liner.slits", Sale.NONE),
    STAPLES("staples", Sale.PACKS),

    SOIL_DEPTH("soil.depth", Sale.NONE),
    SOIL_SETTLED("soil.settled", Sale.NONE),
    /** Bought as the materials that it is mixed from. */
    SOIL_LOOSE("soil.loose", Sale.NONE),
    SOIL_MASS("soil.mass", Sale.NONE),
    SOIL_TOP_UP("soil.top-up", Sale.NONE),
    BARROWS("barrows", Sale.NONE),
    BARROWS_TOP_UP("barrows.top-up", Sale.NONE),
    MULCH("mulch", Sale.PACKS),
    /** A layer of soil or of a path, by its material: {@code soil.topsoil}. */
    MATERIAL("*", Sale.PACKS),

    GROUND("ground.*", Sale.NONE),
    LEVEL("level.*", Sale.NONE),
    SCRIBE_START("scribe.*.start", Sale.NONE),
    SCRIBE_END("scribe.*.end", Sale.NONE),
    SCRIBE_MOST("scribe.most", Sale.NONE),
    STRIP_LENGTH("strip.length", Sale.NONE),
    /** Poured: bought as {@link #CONCRETE}. */
    PADS("pads", Sale.NONE),
    DIG("dig", Sale.NONE),
    SPOIL_LOOSE("spoil.loose", Sale.NONE),
    CONCRETE("concrete", Sale.PACKS),
    /** A bed's own share: bought as {@link #CONCRETE}, over all beds. */
    CONCRETE_BAGS("concrete.bags", Sale.NONE),
    SUB_BASE("sub-base", Sale.PACKS),
    DECK_LOAD("deck.load", Sale.NONE),
    RIM_LEVEL("rim.level", Sale.NONE),
    RIM_PACKING("rim.packing", Sale.NONE),

    PATH_AREA("path.area", Sale.NONE),
    PATH_VOLUME("path.volume", Sale.NONE),
    PATH_MASS("path.mass", Sale.NONE),
    /** Bought by {@link #MEMBRANE_STRIP}. */
    MEMBRANE("membrane", Sale.NONE),
    MEMBRANE_STRIP("membrane.strip", Sale.ROLLS),
    EDGING_LENGTH("edging.length", Sale.PACKS),
    EDGING_PEGS("edging.pegs", Sale.PACKS),

    FALL("fall.one-in", Sale.NONE),
    SURFACE("surface.*", Sale.NONE),
    PEG_ALONG("peg.*.along", Sale.NONE),
    PEG_OFF("peg.*.off", Sale.NONE),
    DIAGONAL("diagonal.*", Sale.NONE),
    SURVEY_X("survey.*.x", Sale.NONE),
    SURVEY_Y("survey.*.y", Sale.NONE),
    SURVEY_CLOSING("survey.closing", Sale.NONE),
    SURVEY_SHIFT("survey.shift.*", Sale.NONE),
    SURVEY_AREA("survey.area", Sale.NONE),
    SURVEY_PERIMETER("survey.perimeter", Sale.NONE),
    SURVEY_SIDE("survey.side.*", Sale.NONE),
    SUN_MEAN("sun.mean", Sale.NONE),
    SUN_LEAST("sun.least", Sale.NONE),
    SUN_MOST("sun.most", Sale.NONE),

    MASS_DRY("mass.dry", Sale.NONE),
    MASS_WET("mass.wet", Sale.NONE),
    GROUND_LOAD("ground.load", Sale.NONE),
    SLATS_SPAN("slats.span", Sale.NONE),
    SLATS_USE("slats.use", Sale.NONE),
    SLATS_SAG("slats.sag", Sale.NONE),
    BEARERS_USE("bearers.use", Sale.NONE),
    BEARERS_SAG("bearers.sag", Sale.NONE),
    BEARERS_LOAD("bearers.load", Sale.NONE),
    CORNER_PULL("corner.pull", Sale.NONE),
    CORNER_HOLD("corner.hold", Sale.NONE),
    WALL_PUSH("wall.push", Sale.NONE),
    WALL_PUSH_BLOCKED("wall.push.blocked", Sale.NONE),
    WALL_PUSH_GUIDE("wall.push.guide", Sale.NONE),
    WALL_USE("wall.use", Sale.NONE),
    WALL_BOW("wall.bow", Sale.NONE),
    TIES_SPACING("ties.spacing", Sale.NONE),
    TIES_SPACING_BLOCKED("ties.spacing.blocked", Sale.NONE),
    TIES_ADVISED("ties.advised", Sale.NONE),
    TIES_FORCE("ties.force", Sale.NONE);

    /** How a kind of quantity comes into the order. */
    public enum Sale {
        /** Cut from boards of a section. */
        BOARDS,
        /** Cut from rolls. */
        ROLLS,
        /** By the pack, bag, tin or loose load. */
        PACKS,
        /** Not for sale: a size, a load, work, or bought under another name. */
        NONE
    }

    /** The name in the job sheet, {@code *} where {@link QuantityKey} says which one. */
    public final String code;
    public final Sale sale;

    QuantityKind(String code, Sale sale) {
        this.code = code;
        this.sale = sale;
    }

    /** The only one of its kind. */
    public QuantityKey alone() {
        return new QuantityKey(this, "");
    }

    /** @param part which one: corner {@code 2}, wall {@code A}, {@code grass}, {@code soil.topsoil} */
    public QuantityKey of(String part) {
        return new QuantityKey(this, part);
    }

    /** @param part its number, from 1 */
    public QuantityKey of(int part) {
        return of(String.valueOf(part));
    }
}
