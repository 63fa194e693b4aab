package lapyard.drawing;

import java.nio.charset.StandardCharsets;

/**
 * What a PDF says of itself: its title, and that it keeps to PDF/UA-1 (XMP, ISO 16684-1:2012; ISO 14289-1:2014, clauses 5 and 7.1).
 */
final class PdfMetadata {
    private static final String XMP = """
            <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">TITLE</rdf:li></rdf:Alt></dc:title>
            <pdfuaid:part>1</pdfuaid:part>
            </rdf:Description></rdf:RDF></x:xmpmeta>
            <?xpacket end="r"?>""";

    private PdfMetadata() {}

    /** @param title {@link PlainText} */
    static byte[] of(String title) {
        StringBuilder escaped = new StringBuilder();
        SvgWriter.escaped(title, "\"", escaped);
        return XMP.replace("TITLE", escaped).getBytes(StandardCharsets.UTF_8);
    }
}
