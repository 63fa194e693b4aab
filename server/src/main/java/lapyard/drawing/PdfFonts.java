package lapyard.drawing;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import org.apache.fop.apps.io.InternalResourceResolver;
import org.apache.fop.apps.io.ResourceResolverFactory;
import org.apache.fop.fonts.EmbeddingMode;
import org.apache.fop.fonts.EncodingMode;
import org.apache.fop.fonts.MultiByteFont;
import org.apache.fop.fonts.truetype.OFFontLoader;
import org.apache.fop.pdf.PDFDocument;
import org.apache.xmlgraphics.io.Resource;
import org.apache.xmlgraphics.io.ResourceResolver;

/** The two fonts of one PDF file, which remember the signs that the file uses. The font files are read once a process. */
final class PdfFonts {
    final Face normal = new Face("F1", Read.NORMAL);
    final Face bold = new Face("F2", Read.BOLD);

    /** Writes the used parts of both fonts into the document; to be called once, after the last text. */
    void embed(PDFDocument document) {
        normal.embed(document);
        bold.embed(document);
    }

    private static final class Read {
        private static final MultiByteFont NORMAL = read(Fonts.NORMAL);
        private static final MultiByteFont BOLD = read(Fonts.BOLD);

        private static MultiByteFont read(String file) {
            try {
                return (MultiByteFont) new OFFontLoader(
                                URI.create("font:/" + file), null, true, EmbeddingMode.SUBSET, EncodingMode.CID, false, false, OwnFiles.RESOLVER,
                                false, false, false)
                        .getFont();
            } catch (IOException e) {
                throw Fonts.unreadable(file, e);
            }
        }
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
        private final MultiByteFont font;
        /** Number of each sign in the file's part of the font; 0 where it was not used yet. */
        private final char[] numbers = new char[0x10000];

        private Face(String name, MultiByteFont read) {
            this.name = name;
            font = new MultiByteFont(OwnFiles.RESOLVER, EmbeddingMode.SUBSET);
            font.setFontURI(read.getFontURI());
            font.setEmbedURI(read.getEmbedFileURI());
            font.setFontName(read.getFontName());
            font.setFullName(read.getFullName());
            font.setFamilyNames(read.getFamilyNames());
            font.setCapHeight(read.getCapHeight());
            font.setXHeight(read.getXHeight(1));
            font.setAscender(read.getAscender());
            font.setDescender(read.getDescender());
            font.setFontBBox(read.getFontBBox());
            font.setFlags(read.getFlags());
            font.setStemV(read.getStemV());
            font.setItalicAngle(read.getItalicAngle());
            font.setWeight(read.getWeight());
            font.setCIDType(read.getCIDType());
            font.setWidthArray(read.getWidths());
            font.setCMap(read.getCMap());
        }

        /** @param c a sign that the font has, see {@link TextMeasure#drawable} */
        int number(char c) {
            if (numbers[c] == 0) numbers[c] = font.mapChar(c);
            return numbers[c];
        }

        private void embed(PDFDocument document) {
            document.getResources()
                    .addFont(document.getFactory().makeFont(name, font.getEmbedFontName(), font.getEncodingName(), font, font));
        }
    }
}
