package lapyard.catalogue;

import java.util.Optional;

/**
 * The goods that beds and paths ask for. Their codes are the items of the catalogue; a code may have a part of its own
 * behind a point: a length, as in {@code screws.60}, or a name that a garden gives, as in {@code soil.loam}.
 */
public enum Goods {
    SCREWS("screws", "Angled screws", Sold.PACKS),
    JOINT_PLATES("seam.plates", "Backing plates for joints", Sold.PACKS),
    JOINT_SCREWS("seam.screws", "Screws for backing plates", Sold.PACKS),
    BRACKETS("brackets", "Corner brackets", Sold.PACKS),
    FIXINGS("fixings", "Screws for brackets and straps", Sold.PACKS),
    COURSE_TIES("course.ties", "Straps over the joints of courses", Sold.PACKS),
    COURSE_SCREWS("course.screws", "Long screws, course to course", Sold.PACKS),
    CROSS_TIES("cross.ties", "Cross ties", Sold.PACKS),
    POSTS("posts", "Posts in the ground behind a wall", Sold.PACKS),
    STAPLES("staples", "Liner staples", Sold.PACKS),
    SLATS("slats", "Slat boards", Sold.PACKS),
    FINISH("finish", "Finish", Sold.PACKS),
    SEAL("seal", "Seal for cut ends", Sold.PACKS),
    SOIL("soil", "Soil", Sold.LOOSE),
    MULCH("mulch", "Mulch", Sold.PACKS),
    CONCRETE("concrete", "Concrete", Sold.PACKS),
    SUB_BASE("sub-base", "Sub-base stone, loose", Sold.LOOSE),
    GRAVEL("gravel", "Path gravel", Sold.LOOSE),
    BARK("bark", "Path bark", Sold.PACKS),
    EDGING_PEGS("edging.pegs", "Pegs for edgings", Sold.PACKS),
    EDGING("edging", "Edging", Sold.PACKS),
    LINER("liner", "Liner", Sold.ROLLS),
    MEMBRANE("membrane", "Membrane", Sold.ROLLS);

    /** How goods are sold. */
    public enum Sold {
        PACKS,
        /** In bags or by the load; some of it sticks, spills and sinks. */
        LOOSE,
        /** Off the roll. */
        ROLLS
    }

    private final String code;
    private final String words;
    public final Sold sold;

    Goods(String code, String words, Sold sold) {
        this.code = code;
        this.words = words;
        this.sold = sold;
    }

    /** The item of the catalogue for the usual kind of these goods. */
    public String item() {
        return code;
    }

    /** @param part a length in mm or a name: {@code screws.60} */
    public String item(String part) {
        return code + "." + part;
    }

    /** The goods that an item of the catalogue belongs to; empty for what only a garden knows. */
    public static Optional<Goods> of(String item) {
        for (Goods goods : values()) if (item.equals(goods.code) || item.startsWith(goods.code + ".")) return Optional.of(goods);
        return Optional.empty();
    }

    /** What an item is called where no catalogue says it: {@code Angled screws 30 mm}. */
    public static String label(String item, boolean imperial) {
        return TradeName.label(of(item).map(goods -> goods.labelled(item.substring(goods.code.length()))).orElse(item), imperial);
    }

    private String labelled(String part) {
        if (part.isEmpty()) return words;
        String own = part.substring(1);
        return own.matches("[\\d.]+") ? words + " " + own + " mm" : words + " (" + own + ")";
    }
}
