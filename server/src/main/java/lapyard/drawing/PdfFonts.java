package lapyard.drawing;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.fop.pdf.PDFArray;
import org.apache.fop.pdf.PDFDictionary;
import org.apache.fop.pdf.PDFDocument;
import org.apache.fop.pdf.PDFName;
import org.apache.fop.pdf.PDFReference;
import org.apache.fop.pdf.PDFStream;

/**
 * The two fonts of one PDF file, which remember the signs that the file uses (ISO 32000-1:2008, 9.6 to 9.10). The library's own fonts
 * read all tables of a font file for each PDF.
 */
final class PdfFonts {
    /** The flag of a font with signs beyond the standard Latin ones (ISO 32000-1:2008, table 123). */
    private static final int SYMBOLIC = 4;

    /** So many signs at most stand in one list of their code points. */
    private static final int LISTED = 100;

    final Face normal = new Face("F1", "LAPYAA", Fonts.signs(false));
    final Face bold = new Face("F2", "LAPYAB", Fonts.signs(true));

    /** Writes the used parts of both fonts into the document; to be called once, after the last text. */
    void embed(PDFDocument document) {
        PDFDictionary fonts = new PDFDictionary();
        for (Face face : List.of(normal, bold)) if (face.used()) fonts.put(face.name, face.embed(document));
        document.getResources().put("Font", fonts);
    }

    private static PDFReference in(PDFDocument document, PDFDictionary object) {
        document.registerObject(object);
        return object.makeReference();
    }

    private static PDFReference in(PDFDocument document, PDFStream stream) {
        document.registerObject(stream);
        return new PDFReference(stream.referencePDF());
    }

    private static PDFDictionary dictionary(String type) {
        PDFDictionary dictionary = new PDFDictionary();
        dictionary.put("Type", new PDFName(type));
        return dictionary;
    }

    /** One font in one file. */
    static final class Face {
        final String name;
        /** Six letters say that it is a part of the font (ISO 32000-1:2008, 9.6.4). */
        private final PDFName partName;

        private final Fonts.Signs signs;
        private final FontPart part;
        /** Number of each code point's sign in the part; 0 where it was not used yet. */
        private final char[] numbers = new char[0x10000];
        /** The code point of each sign of the part. */
        private final StringBuilder codes = new StringBuilder("\0");

        private Face(String name, String tag, Fonts.Signs signs) {
            this.name = name;
            this.signs = signs;
            partName = new PDFName(tag + "+" + signs.name);
            part = new FontPart(signs.tables);
        }

        private int thousandths(int units) {
            return units * 1000 / signs.em;
        }

        /** @param c a sign that the font has, see {@link TextMeasure#drawable} */
        int number(char c) {
            if (numbers[c] == 0) {
                numbers[c] = (char) part.place(signs.number(c));
                if (numbers[c] == codes.length()) codes.append(c);
            }
            return numbers[c];
        }

        private boolean used() {
            return codes.length() > 1;
        }

        private PDFReference embed(PDFDocument document) {
            byte[] bytes = part.file();
            PDFStream file = PdfStreams.packed(bytes);
            file.put("Length1", bytes.length);
            PDFDictionary descriptor = dictionary("FontDescriptor");
            descriptor.put("FontName", partName);
            descriptor.put("Flags", SYMBOLIC);
            PDFArray box = new PDFArray(descriptor);
            for (int side : signs.tables.box()) box.add(thousandths(side));
            descriptor.put("FontBBox", box);
            descriptor.put("ItalicAngle", 0);
            descriptor.put("Ascent", thousandths(signs.top('d')));
            descriptor.put("Descent", thousandths(signs.bottom('p')));
            descriptor.put("CapHeight", thousandths(signs.top('H')));
            descriptor.put("StemV", 0);
            descriptor.put("FontFile2", in(document, file));
            PDFDictionary numbered = font("CIDFontType2");
            PDFDictionary system = new PDFDictionary(numbered);
            system.put("Registry", "Adobe");
            system.put("Ordering", "Identity");
            system.put("Supplement", 0);
            numbered.put("CIDSystemInfo", system);
            numbered.put("CIDToGIDMap", new PDFName("Identity"));
            numbered.put("FontDescriptor", in(document, descriptor));
            numbered.put("W", widths(numbered));
            PDFDictionary font = font("Type0");
            font.put("Encoding", new PDFName("Identity-H"));
            font.put("DescendantFonts", new PDFArray(font, new Object[] {in(document, numbered)}));
            font.put("ToUnicode", in(document, PdfStreams.packed(codePoints().getBytes(StandardCharsets.US_ASCII))));
            return in(document, font);
        }

        private PDFDictionary font(String subtype) {
            PDFDictionary font = dictionary("Font");
            font.put("Subtype", new PDFName(subtype));
            font.put("BaseFont", partName);
            return font;
        }

        private PDFArray widths(PDFDictionary numbered) {
            PDFArray each = new PDFArray(numbered);
            for (int i = 0; i < part.count(); i++) each.add(thousandths(signs.tables.advance(part.sign(i))));
            return new PDFArray(numbered, new Object[] {0, each});
        }

        /** Which code point each sign stands for, so that text can be searched and copied (ISO 32000-1:2008, 9.10.3). */
        private String codePoints() {
            StringBuilder map = new StringBuilder("""
                    /CIDInit /ProcSet findresource begin
                    12 dict begin
                    begincmap
                    /CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
                    /CMapName /Adobe-Identity-UCS def
                    /CMapType 2 def
                    1 begincodespacerange
                    <0000> <FFFF>
                    endcodespacerange
                    """);
            for (int from = 1; from < codes.length(); from += LISTED) {
                int to = Math.min(from + LISTED, codes.length());
                map.append(to - from).append(" beginbfchar\n");
                for (int i = from; i < to; i++) {
                    map.append('<');
                    PdfCanvas.hex(map, i);
                    map.append("> <");
                    PdfCanvas.hex(map, codes.charAt(i));
                    map.append(">\n");
                }
                map.append("endbfchar\n");
            }
            return map.append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n").toString();
        }
    }
}
