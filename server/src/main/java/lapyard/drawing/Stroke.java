package lapyard.drawing;

import java.util.List;

/**
 * A pen.
 *
 * @param colour  {@code #RRGGBB}
 * @param widthMm on paper, above 0
 * @param dashMm  lengths of dash and gap in turn, empty for an unbroken line
 */
public record Stroke(String colour, double widthMm, List<Double> dashMm) {
    public Stroke {
        requireColour(colour);
        dashMm = List.copyOf(dashMm);
        if (!(widthMm > 0) || dashMm.stream().anyMatch(length -> !(length > 0))) {
            throw new IllegalArgumentException("a pen and its dashes are above 0 mm, were " + widthMm + ", " + dashMm);
        }
    }

    public static Stroke of(String colour, double widthMm) {
        return new Stroke(colour, widthMm, List.of());
    }

    public Stroke dashed(double dashMm, double gapMm) {
        return new Stroke(colour, widthMm, List.of(dashMm, gapMm));
    }

    static void requireColour(String colour) {
        boolean written = colour.length() == 7 && colour.charAt(0) == '#';
        for (int i = 1; written && i < 7; i++) written = "0123456789ABCDEF".indexOf(colour.charAt(i)) >= 0;
        if (!written) throw new IllegalArgumentException("a colour is #RRGGBB in capitals, was " + colour);
    }
}
