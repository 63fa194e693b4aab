package lapyard.drawing;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.util.stream.IntStream;
import org.apache.fop.apps.io.InternalResourceResolver;
import org.apache.fop.apps.io.ResourceResolverFactory;
import org.apache.fop.fonts.CIDFontType;
import org.apache.fop.fonts.CMapSegment;
import org.apache.fop.fonts.EmbeddingMode;
import org.apache.fop.fonts.MultiByteFont;
import org.apache.fop.pdf.PDFAMode;
import org.apache.fop.pdf.PDFDocument;
import org.apache.xmlgraphics.io.Resource;
import org.apache.xmlgraphics.io.ResourceResolver;

/** The two fonts of one PDF file, which remember the signs that the file uses. */
final class PdfFonts {
    /** The flag of a font with signs beyond the standard Latin ones (ISO 32000-1, table 123). */
    private static final int SYMBOLIC = 4;

    final Face normal = new Face("F1", Fonts.signs(false));
    final Face bold = new Face("F2", Fonts.signs(true));

    /** Writes the used parts of both fonts into the document; to be called once, after the last text. */
    void embed(PDFDocument document) {
        // the list of a part's signs would have their numbers in the whole font; the library leaves it out of PDF/A-2
        document.getProfile().setPDFAMode(PDFAMode.PDFA_2U);
        normal.embed(document);
        bold.embed(document);
        document.getProfile().setPDFAMode(PDFAMode.DISABLED);
    }

    /** Font files out of the program itself, each read from its jar once. */
    private static final class OwnFiles implements ResourceResolver {
        private static final InternalResourceResolver RESOLVER =
                ResourceResolverFactory.createInternalResourceResolver(URI.create("font:/"), new OwnFiles());

        @Override
        public Resource getResource(URI uri) throws IOException {
            return new Resource(new ByteArrayInputStream(Fonts.bytes(uri.getPath().substring(1))));
        }

        @Override
        public OutputStream getOutputStream(URI uri) {
            throw new UnsupportedOperationException("fonts are not written");
        }
    }

    /** One font in one file. */
    static final class Face {
        final String name;
        private final Fonts.Signs signs;
        private final MultiByteFont font;
        /** Number of each sign in the file's part of the font; 0 where it was not used yet. */
        private final char[] numbers = new char[0x10000];

        private Face(String name, Fonts.Signs signs) {
            this.name = name;
            this.signs = signs;
            URI file = URI.create("font:/" + signs.file);
            font = new MultiByteFont(OwnFiles.RESOLVER, EmbeddingMode.SUBSET);
            font.setFontURI(file);
            font.setEmbedURI(file);
            font.setFontName(signs.name);
            font.setCapHeight(thousandths(signs.capital, signs));
            font.setXHeight(thousandths(signs.small, signs));
            font.setAscender(thousandths(signs.ascender, signs));
            font.setDescender(thousandths(signs.descender, signs));
            font.setFontBBox(IntStream.of(signs.box).map(side -> thousandths(side, signs)).toArray());
            font.setFlags(SYMBOLIC);
            font.setCIDType(CIDFontType.CIDTYPE2);
            font.setWidthArray(IntStream.of(signs.advances).map(advance -> thousandths(advance, signs)).toArray());
        }

        private static int thousandths(int units, Fonts.Signs signs) {
            return units * 1000 / signs.em;
        }

        /** @param c a sign that the font has, see {@link TextMeasure#drawable} */
        int number(char c) {
            if (numbers[c] == 0) {
                font.setCMap(new CMapSegment[] {new CMapSegment(c, c, signs.number(c))});
                numbers[c] = font.mapChar(c);
            }
            return numbers[c];
        }

        private void embed(PDFDocument document) {
            document.getResources()
                    .addFont(document.getFactory().makeFont(name, font.getEmbedFontName(), font.getEncodingName(), font, font));
        }
    }
}
