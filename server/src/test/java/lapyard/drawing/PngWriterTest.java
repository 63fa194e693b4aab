package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class PngWriterTest {
    private static BufferedImage read(byte[] png) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    /** A4 at 96 pixels in an inch of 25.4 mm: 793.7 by 1122.5. */
    @Test
    void hasThePixelsOfItsSheet() throws Exception {
        BufferedImage image = read(PngWriter.write(new Page("p", 210, 297, List.of(TestPages.line()), List.of()), 96));
        assertEquals(794, image.getWidth());
        assertEquals(1123, image.getHeight());
    }

    @Test
    void aLineLiesWhereItsMillimetresSay() throws Exception {
        // 254 dpi is 10 pixels to the millimetre.
        BufferedImage image = read(PngWriter.write(TestPages.plain(), 254));
        int darkest = 0x23303A;
        assertEquals(darkest, image.getRGB(500, 1000) & 0xFFFFFF);
        assertEquals(0xFFFFFF, image.getRGB(500, 1006) & 0xFFFFFF);
        int dark = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            dark += (image.getRGB(x, 1000) & 0xFFFFFF) == darkest ? 1 : 0;
        }
        assertEquals(600 + 5, dark, 2, "60 mm and its round ends of a quarter millimetre each");
    }

    /** PNG (ISO/IEC 15948), 11.3.5.3: pHYs holds pixels per metre in x and y and the unit, 1 for the metre. */
    @Test
    void saysHowLargeItsPixelsAre() {
        byte[] png = PngWriter.write(TestPages.plain(), 254);
        int at = new String(png, StandardCharsets.ISO_8859_1).indexOf("pHYs");
        assertTrue(at > 0);
        ByteBuffer chunk = ByteBuffer.wrap(png, at + 4, 9);
        assertEquals(10_000, chunk.getInt());
        assertEquals(10_000, chunk.getInt());
        assertEquals(1, chunk.get());
    }

    @Test
    void isTheSameToTheByteEachTime() {
        assertArrayEquals(PngWriter.write(TestPages.plain(), 100), PngWriter.write(TestPages.plain(), 100));
    }

    @Test
    void drawsWhatPeopleType() throws Exception {
        for (String words : TestPages.HOSTILE) {
            BufferedImage image = read(PngWriter.write(TestPages.saying(TextMeasure.cut(words, 4, false, 150)), 72));
            int ink = 0;
            for (int y = 0; y < image.getHeight(); y++) {
                for (int x = 0; x < image.getWidth(); x++) {
                    ink += (image.getRGB(x, y) & 0xFF) < 0x80 ? 1 : 0;
                }
            }
            assertTrue(ink > 20, "no ink for " + TextMeasure.cut(words, 4, false, 100));
        }
    }

    @Test
    void tooManyPixelsAreRefusedNamingTheMost() {
        Page page = new Page("p", 841, 1189, List.of(TestPages.line()), List.of());
        var e = assertThrows(IllegalArgumentException.class, () -> PngWriter.write(page, 600));
        assertTrue(e.getMessage().contains("203"), e.getMessage());
        assertThrows(IllegalArgumentException.class, () -> PngWriter.write(page, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> PngWriter.write(page, 0));
    }
}
