package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.stream.IntStream;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.HeaderTable;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FontSignsTest {
    /** FontBox reads the same files: each code point up to U+FFFF, each advance, the box and the heights of letters. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void signsAreReadAsFontBoxReadsThem(boolean bold) throws IOException {
        Fonts.Signs signs = Fonts.signs(bold);
        try (TrueTypeFont font = Fonts.open(signs.file)) {
            assertEquals(font.getName(), signs.name);
            assertEquals(font.getUnitsPerEm(), signs.em);
            CmapLookup lookup = font.getUnicodeCmapLookup();
            for (int c = 0; c < Fonts.Signs.TABLE; c++) assertEquals(lookup.getGlyphId(c), signs.numbers[c], "U+" + Integer.toHexString(c));
            int[] advances = new int[font.getNumberOfGlyphs()];
            for (int sign = 0; sign < advances.length; sign++) advances[sign] = font.getAdvanceWidth(sign);
            assertArrayEquals(advances, signs.advances);
            HeaderTable head = font.getHeader();
            assertArrayEquals(new int[] {head.getXMin(), head.getYMin(), head.getXMax(), head.getYMax()}, signs.box);
            assertArrayEquals(
                    IntStream.of('H', 'x', 'd').map(letter -> yMaximum(font, signs, letter)).toArray(), new int[] {signs.capital, signs.small, signs.ascender});
            assertEquals(font.getGlyph().getGlyph(signs.numbers['p']).getYMinimum(), signs.descender);
        }
    }

    private static int yMaximum(TrueTypeFont font, Fonts.Signs signs, int letter) {
        try {
            return font.getGlyph().getGlyph(signs.numbers[letter]).getYMaximum();
        } catch (IOException e) {
            throw Fonts.unreadable(signs.file, e);
        }
    }
}
