package lapyard.catalogue;

import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.geometry.Length;
import lapyard.geometry.Measure;
import lapyard.geometry.ScrewLength;

/**
 * What goods are called in a garden in feet and inches: sizes of timber and screws are nominal, contents are turned. A name without
 * such an amount stays as its merchant has it.
 *
 * @see "NIST SP 811 (2008) for the units; nominal sizes are common practice, no source"
 */
public final class TradeName {
    /** The thinnest board whose size a code is taken to give in mm: nobody sells timber of as many inches. */
    private static final int LEAST_MM = 16;

    /** A nominal inch of timber, mm. */
    private static final double NOMINAL_MM = 25;

    private static final Pattern SECTION = Pattern.compile("(\\d{2,3})x(\\d{2,3})");
    private static final Pattern SIZES = Pattern.compile("\\d+(?: x \\d+)+");
    private static final Pattern SCREW = Pattern.compile("(?<=crews |crews, course to course |crews for brackets and straps )(\\d{2,3}(?:\\.\\d)?)(?: mm)?\\b");
    private static final Pattern LENGTH = Pattern.compile("(\\d+(?:\\.\\d+)?) mm\\b");
    private static final Pattern CONTENT = Pattern.compile("(\\d+(?:\\.\\d+)?) (l|m3|kg|t|m)\\b");

    private TradeName() {}

    /** A section by its code: {@code 50x75}, {@code 2x3}. */
    public static String section(String id, boolean imperial) {
        Matcher size = SECTION.matcher(id);
        if (!imperial || !size.matches() || Integer.parseInt(size.group(1)) < LEAST_MM || Integer.parseInt(size.group(2)) < LEAST_MM) return id;
        return Math.round(Integer.parseInt(size.group(1)) / NOMINAL_MM) + "x" + Math.round(Integer.parseInt(size.group(2)) / NOMINAL_MM);
    }

    /** Goods by what a list calls them: {@code Angled screws 120}, {@code Angled screws 4 1/2"}. */
    static String label(String label, boolean imperial) {
        if (!imperial) return label;
        String sized = SIZES.matcher(label).replaceAll(sizes -> Pattern.compile("\\d+").matcher(sizes.group()).replaceAll(TradeName::nominal));
        sized = SCREW.matcher(sized).replaceAll(screw -> ScrewLength.inches(Double.parseDouble(screw.group(1))));
        return LENGTH.matcher(sized).replaceAll(TradeName::nominal);
    }

    /** A pack: {@code bulk bag 0.75 m³}, {@code bag of 15.85 gal}. */
    static String pack(String name, boolean imperial) {
        return CONTENT.matcher(name).replaceAll(content -> {
            if (!imperial) return Measure.sign(content.group());
            double amount = Double.parseDouble(content.group(1));
            return content.group(2).equals("m") ? Length.feetAndInches(amount * 1000) : Measure.of(content.group(2)).orElseThrow().plain(amount, 2, true);
        });
    }

    /** To the nearest eighth of an inch. */
    private static String nominal(MatchResult mm) {
        double eighth = Length.INCH_MM / 8;
        String number = mm.groupCount() > 0 ? mm.group(1) : mm.group();
        return Length.feetAndInches(Math.rint(Double.parseDouble(number) / eighth) * eighth);
    }
}
