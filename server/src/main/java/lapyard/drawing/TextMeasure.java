package lapyard.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** How wide text comes out in the font that all pages use, without asking the machine for fonts. */
public final class TextMeasure {
    /** Between words; a length in feet, inches and a fraction is one word. */
    private static final Pattern SPACE = Pattern.compile(" (?!(?<=[0-9]' )[0-9])(?!(?<=[0-9] )[0-9]+/[0-9])");

    private TextMeasure() {}

    /** Width in millimetres of one line in this size; kerning, which only narrows, is left out. */
    public static double widthMm(String text, double sizeMm, boolean bold) {
        return ems(0, text, bold) * sizeMm;
    }

    /** The width of a line in ems, from that of what stands before this text on it. */
    private static double ems(double before, String text, boolean bold) {
        Fonts.Signs signs = Fonts.signs(bold);
        double ems = before;
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            ems += signs.em(c);
            i += Character.charCount(c);
        }
        return ems;
    }

    /** The text with U+FFFD for each run of signs that the font does not have: paper cannot fetch another font. */
    static String drawable(String text) {
        int plain = 0;
        while (plain < text.length() && has(text.charAt(plain))) plain++;
        if (plain == text.length()) return text;
        StringBuilder out = new StringBuilder(text.length()).append(text, 0, plain);
        boolean lacked = false;
        for (int i = plain; i < text.length(); ) {
            int c = text.codePointAt(i);
            i += Character.charCount(c);
            boolean has = has(c);
            if (has) {
                out.appendCodePoint(c);
            } else if (!lacked) {
                out.append('\uFFFD');
            }
            lacked = !has;
        }
        return out.toString();
    }

    private static boolean has(int c) {
        return Fonts.signs(false).has(c) && Fonts.signs(true).has(c);
    }

    /** The text, or as much of it as fits with an ellipsis; the ellipsis alone where nothing else fits. */
    public static String cut(String text, double sizeMm, boolean bold, double mostMm) {
        String plain = PlainText.of(text);
        // No letter is narrower than a twentieth of an em, so the rest of a huge name need not be measured.
        if (plain.length() * sizeMm <= mostMm * 20 && widthMm(plain, sizeMm, bold) <= mostMm) return plain;
        Fonts.Signs signs = Fonts.signs(bold);
        double left = mostMm / sizeMm - signs.em('…');
        int end = 0;
        while (end < plain.length()) {
            int c = plain.codePointAt(end);
            left -= signs.em(c);
            if (left < 0) break;
            end += Character.charCount(c);
        }
        return plain.substring(0, end).stripTrailing() + "…";
    }

    /** What {@link #wrap} keeps together where it can. */
    public static List<String> words(String text) {
        return List.of(text.indexOf('\'') < 0 && text.indexOf('/') < 0 ? text.split(" ", -1) : SPACE.split(text, -1));
    }

    /** The text in lines no wider than {@code mostMm}, broken between words; a longer word is cut. */
    public static List<String> wrap(String text, double sizeMm, boolean bold, double mostMm) {
        List<String> lines = new ArrayList<>();
        String line = "";
        double ems = 0;
        for (String word : words(PlainText.of(text).stripTrailing())) {
            String longer = line.isEmpty() ? word : line + " " + word;
            ems = line.isEmpty() ? ems(0, word, bold) : ems(ems(ems, " ", bold), word, bold);
            if (!line.isEmpty() && ems * sizeMm > mostMm) {
                lines.add(line);
                longer = word;
                ems = ems(0, word, bold);
            }
            line = longer;
            while (ems * sizeMm > mostMm && line.codePointCount(0, line.length()) > 1) {
                int end = breaks(line, sizeMm, bold, mostMm);
                lines.add(line.substring(0, end));
                line = line.substring(end).stripLeading();
                ems = ems(0, line, bold);
            }
        }
        lines.add(line);
        return lines;
    }

    /** Where a word that is too long is broken: at a space or after a hyphen where one stands early enough, else where the line is full. */
    private static int breaks(String word, double sizeMm, boolean bold, double mostMm) {
        int end = word.offsetByCodePoints(0, 1);
        while (end < word.length()) {
            int next = word.offsetByCodePoints(end, 1);
            if (next >= word.length() || widthMm(word.substring(0, next), sizeMm, bold) > mostMm) break;
            end = next;
        }
        int space = word.lastIndexOf(' ', end);
        if (space > 0) return space;
        int hyphen = word.lastIndexOf('-', end - 1);
        return hyphen > 0 ? hyphen + 1 : end;
    }
}
