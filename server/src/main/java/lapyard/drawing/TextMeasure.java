package lapyard.drawing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TrueTypeFont;

/** How wide text comes out in the font that all pages use, without asking the machine for fonts. */
public final class TextMeasure {
    private TextMeasure() {}

    private static final class Widths {
        private static final Widths NORMAL = new Widths(Fonts.NORMAL);
        private static final Widths BOLD = new Widths(Fonts.BOLD);
        private static final int TABLE = 0x10000;

        /** Advance of each code point below TABLE in ems, below 0 where the font has no sign for it. */
        private final float[] ems = new float[TABLE];

        Widths(String file) {
            try (TrueTypeFont font = Fonts.open(file)) {
                CmapLookup glyphs = font.getUnicodeCmapLookup();
                for (int c = 0; c < TABLE; c++) {
                    int glyph = glyphs.getGlyphId(c);
                    ems[c] = glyph == 0 ? -1 : (float) font.getAdvanceWidth(glyph) / font.getUnitsPerEm();
                }
            } catch (IOException e) {
                throw Fonts.unreadable(file, e);
            }
        }

        /** Signs of other fonts are mostly of wide scripts and pictures, which take about one em. */
        double em(int c) {
            return has(c) ? ems[c] : 1.3;
        }

        boolean has(int c) {
            return c < TABLE && ems[c] >= 0;
        }
    }

    /** Width in millimetres of one line in this size; kerning, which only narrows, is left out. */
    public static double widthMm(String text, double sizeMm, boolean bold) {
        return ems(0, text, bold) * sizeMm;
    }

    /** The width of a line in ems, from that of what stands before this text on it. */
    private static double ems(double before, String text, boolean bold) {
        Widths widths = bold ? Widths.BOLD : Widths.NORMAL;
        double ems = before;
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            ems += widths.em(c);
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
        return Widths.NORMAL.has(c) && Widths.BOLD.has(c);
    }

    /** The text, or as much of it as fits with an ellipsis; the ellipsis alone where nothing else fits. */
    public static String cut(String text, double sizeMm, boolean bold, double mostMm) {
        String plain = PlainText.of(text);
        // No letter is narrower than a twentieth of an em, so the rest of a huge name need not be measured.
        if (plain.length() * sizeMm <= mostMm * 20 && widthMm(plain, sizeMm, bold) <= mostMm) {
            return plain;
        }
        Widths widths = bold ? Widths.BOLD : Widths.NORMAL;
        double left = mostMm / sizeMm - widths.em('…');
        int end = 0;
        while (end < plain.length()) {
            int c = plain.codePointAt(end);
            left -= widths.em(c);
            if (left < 0) {
                break;
            }
            end += Character.charCount(c);
        }
        return plain.substring(0, end).stripTrailing() + "…";
    }

    /** The text in lines no wider than {@code mostMm}, broken between words; a longer word is cut. */
    public static List<String> wrap(String text, double sizeMm, boolean bold, double mostMm) {
        List<String> lines = new ArrayList<>();
        String line = "";
        double ems = 0;
        for (String word : PlainText.of(text).split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            ems = line.isEmpty() ? ems(0, word, bold) : ems(ems(ems, " ", bold), word, bold);
            if (!line.isEmpty() && ems * sizeMm > mostMm) {
                lines.add(line);
                longer = word;
                ems = ems(0, word, bold);
            }
            line = longer;
            if (ems * sizeMm > mostMm) {
                line = cut(word, sizeMm, bold, mostMm);
                ems = ems(0, line, bold);
            }
        }
        lines.add(line);
        return lines;
    }
}
