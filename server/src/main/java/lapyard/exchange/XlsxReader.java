package lapyard.exchange;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import lapyard.working.BrokenRule;
import lapyard.working.BrokenRule.Rule;
import lapyard.working.Csv;

/**
 * The first sheet of a workbook (ISO/IEC 29500-1, SpreadsheetML) as CSV, a line a row. Formulas stand as the value that was
 * saved with them. What a file unpacks to is bounded, and nothing that it refers to is fetched.
 */
public final class XlsxReader {
    /** What the parts that are read may unpack to, together. */
    private static final int MOST_BYTES = 20_000_000;
    private static final int MOST_ROWS = 5_000;
    private static final int MOST_COLUMNS = 200;
    private static final int MOST_DIGITS = 40;
    /** Digits that a spreadsheet keeps of a number; further ones are the noise of binary fractions. */
    private static final MathContext DIGITS = new MathContext(15);

    private static final XMLInputFactory XML = XMLInputFactory.newDefaultFactory();

    static {
        XML.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        XML.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        XML.setProperty(XMLInputFactory.IS_COALESCING, true);
    }

    private XlsxReader() {}

    /** Whether the bytes begin as a zip file does, of which a workbook is one. */
    public static boolean isWorkbook(byte[] file) {
        return file.length > 3 && file[0] == 'P' && file[1] == 'K' && file[2] == 3 && file[3] == 4;
    }

    /** @throws BrokenRule where it is no workbook, is damaged, or is larger than we read; the rule says which */
    public static String firstSheetAsCsv(byte[] file) {
        try {
            Map<String, byte[]> parts = parts(file);
            String sheet = "xl/worksheets/sheet1.xml";
            if (parts.containsKey("xl/workbook.xml") && parts.containsKey("xl/_rels/workbook.xml.rels")) {
                sheet = target(parts.get("xl/_rels/workbook.xml.rels"), firstId(parts.get("xl/workbook.xml")));
            }
            if (!parts.containsKey(sheet)) throw BrokenRule.of(Rule.WORKBOOK_KIND, "workbook");
            List<List<String>> rows = rows(parts.get(sheet), shared(parts.get("xl/sharedStrings.xml")));
            return Csv.text(text -> text.printRecords(rows));
        } catch (ZipException | XMLStreamException damaged) {
            throw BrokenRule.of(Rule.WORKBOOK_DAMAGED, "workbook");
        } catch (IOException broken) {
            throw BrokenRule.of(Rule.WORKBOOK_CUT, "workbook");
        }
    }

    private static Map<String, byte[]> parts(byte[] file) throws IOException {
        Map<String, byte[]> parts = new HashMap<>();
        int left = MOST_BYTES;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                byte[] bytes = zip.readNBytes(left + 1);
                if (bytes.length > left) throw BrokenRule.of(Rule.WORKBOOK_LARGE, "workbook").with("most", MOST_BYTES, "bytes");
                left -= bytes.length;
                if (entry.getName().startsWith("xl/")) parts.put(entry.getName(), bytes);
            }
        }
        return parts;
    }

    private static XMLStreamReader open(byte[] part) throws XMLStreamException {
        return XML.createXMLStreamReader(new ByteArrayInputStream(part));
    }

    private static String attribute(XMLStreamReader xml, String name) {
        for (int i = 0; i < xml.getAttributeCount(); i++) if (xml.getAttributeLocalName(i).equals(name) && !(name.equals("id") && xml.getAttributeNamespace(i) == null)) return xml.getAttributeValue(i);
        return "";
    }

    /** Of the first sheet. */
    private static String firstId(byte[] workbook) throws XMLStreamException {
        XMLStreamReader xml = open(workbook);
        while (xml.hasNext()) if (xml.next() == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("sheet")) return attribute(xml, "id");
        return "";
    }

    private static String target(byte[] rels, String id) throws XMLStreamException {
        XMLStreamReader xml = open(rels);
        while (xml.hasNext()) {
            if (xml.next() == XMLStreamConstants.START_ELEMENT && id.equals(xml.getAttributeValue(null, "Id"))) {
                String target = attribute(xml, "Target");
                return target.startsWith("/") ? target.substring(1) : "xl/" + target;
            }
        }
        return "";
    }

    /** Texts that cells name by number. */
    private static List<String> shared(byte[] part) throws XMLStreamException {
        List<String> texts = new ArrayList<>();
        if (part == null) return texts;
        XMLStreamReader xml = open(part);
        while (xml.hasNext()) if (xml.next() == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("si")) texts.add(text(xml, "si"));
        return texts;
    }

    /** All {@code t} within an element, without readings aloud. */
    private static String text(XMLStreamReader xml, String end) throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        int aloud = 0;
        while (true) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("rPh")) aloud++;
            else if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals("rPh")) aloud--;
            else if (event == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("t")) {
                String piece = xml.getElementText();
                if (aloud == 0) text.append(piece);
            } else if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals(end)) return text.toString();
        }
    }

    private static List<List<String>> rows(byte[] sheet, List<String> shared) throws XMLStreamException {
        List<List<String>> rows = new ArrayList<>();
        XMLStreamReader xml = open(sheet);
        while (xml.hasNext()) {
            if (xml.next() != XMLStreamConstants.START_ELEMENT) continue;
            if (xml.getLocalName().equals("row")) {
                String number = attribute(xml, "r");
                int at = number.matches("[0-9]{1,9}") ? Integer.parseInt(number) : rows.size() + 1;
                if (at > MOST_ROWS) throw BrokenRule.of(Rule.WORKBOOK_LARGE, "workbook").with("most", MOST_ROWS, "rows");
                while (rows.size() < at) rows.add(new ArrayList<>());
            } else if (xml.getLocalName().equals("c") && !rows.isEmpty()) {
                List<String> row = rows.get(rows.size() - 1);
                int column = column(attribute(xml, "r"), row.size());
                String value = value(xml, attribute(xml, "t"), shared);
                if (value.isEmpty()) continue;
                if (column >= MOST_COLUMNS) throw BrokenRule.of(Rule.WORKBOOK_LARGE, "workbook").with("most", MOST_COLUMNS, "columns");
                while (row.size() <= column) row.add("");
                row.set(column, value);
            }
        }
        return rows;
    }

    /** {@code C7} is column 2. */
    private static int column(String address, int otherwise) {
        int column = 0;
        int letters = 0;
        for (; letters < address.length() && address.charAt(letters) >= 'A' && address.charAt(letters) <= 'Z' && letters < 4; letters++) column = column * 26 + address.charAt(letters) - 'A' + 1;
        return letters == 0 ? otherwise : column - 1;
    }

    private static String value(XMLStreamReader xml, String type, List<String> shared) throws XMLStreamException {
        String value = "";
        while (true) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("v")) value = xml.getElementText();
            else if (event == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("is")) return text(xml, "is");
            else if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals("c")) break;
        }
        if (type.equals("s")) return value.matches("[0-9]{1,7}") && Integer.parseInt(value) < shared.size() ? shared.get(Integer.parseInt(value)) : "";
        if (!type.isEmpty() && !type.equals("n")) return value;
        try {
            // an exponent beyond those of doubles would be written out in as many digits
            return value.length() > MOST_DIGITS || value.matches(".*[eE][+-]?[0-9]{3,}") ? value : value.isEmpty() ? "" : new BigDecimal(value).round(DIGITS).stripTrailingZeros().toPlainString();
        } catch (NumberFormatException noNumber) {
            return value;
        }
    }
}
