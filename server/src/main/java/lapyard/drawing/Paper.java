package lapyard.drawing;

import java.util.Arrays;
import java.util.Locale;
import lapyard.working.BrokenRule;

/**
 * Sheets of paper, upright, in millimetres. A4 to A0 by ISO 216: each is half of the next, rounded down to whole
 * millimetres. Letter is 8 1/2 by 11 inches and Tabloid 11 by 17.
 */
public enum Paper {
    A4(210, 297),
    A3(297, 420),
    A2(420, 594),
    A1(594, 841),
    A0(841, 1189),
    LETTER(215.9, 279.4),
    TABLOID(279.4, 431.8);

    public final double shortMm;
    public final double longMm;

    Paper(double shortMm, double longMm) {
        this.shortMm = shortMm;
        this.longMm = longMm;
    }

    /** As printed: {@code A3}, {@code Letter}. */
    public String label() {
        return name().startsWith("A") ? name() : name().charAt(0) + name().substring(1).toLowerCase(Locale.ROOT);
    }

    /**
     * By its name, in whatever case.
     *
     * @throws BrokenRule naming all sheets, where there is none of that name
     */
    public static Paper named(String name) {
        for (Paper paper : values()) if (paper.name().equalsIgnoreCase(name.strip())) return paper;
        throw BrokenRule.of(BrokenRule.Rule.FIELD_NO_SUCH, "paper").with("what", "paper").with("value", TextMeasure.cut(name, 1, false, 20))
                .with("there", Arrays.stream(values()).map(Paper::label).toList());
    }
}
