package lapyard.exchange;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Map;
import java.util.stream.DoubleStream;
import lapyard.geometry.Point;

/**
 * A drawing as DXF text, version AC1015 (2000), units of millimetres, true size.
 *
 * @see "Autodesk, DXF Reference (2012): group codes; sections HEADER, TABLES, BLOCKS, ENTITIES, OBJECTS"
 */
public final class DxfWriter {
    /** Handles below this stand in the frame. */
    private static final int FIRST_HANDLE = 0x100;

    private static final String MODEL = "1F";

    private final StringBuilder text = new StringBuilder();
    private int handle = FIRST_HANDLE;

    private DxfWriter() {}

    public static String write(LayeredDrawing drawing) {
        DxfWriter writer = new DxfWriter();
        writer.header(drawing);
        writer.tables(drawing.layers());
        writer.blocks();
        writer.entities(drawing);
        writer.objects();
        writer.put(0, "EOF");
        return writer.text.toString();
    }

    private DxfWriter put(int code, String value) {
        text.append(code).append("\r\n").append(value).append("\r\n");
        return this;
    }

    private DxfWriter put(int code, long value) {
        return put(code, Long.toString(value));
    }

    private DxfWriter put(int code, double value) {
        return put(code, BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString());
    }

    private String next() {
        return Integer.toHexString(handle++).toUpperCase(Locale.ROOT);
    }

    private void section(String name) {
        put(0, "SECTION").put(2, name);
    }

    private void end() {
        put(0, "ENDSEC");
    }

    private void header(LayeredDrawing drawing) {
        double[] xs = drawing.lines().stream().flatMap(line -> line.points().stream()).mapToDouble(Point::x).toArray();
        double[] ys = drawing.lines().stream().flatMap(line -> line.points().stream()).mapToDouble(Point::y).toArray();
        section("HEADER");
        put(9, "$ACADVER").put(1, "AC1015");
        put(9, "$DWGCODEPAGE").put(3, "ANSI_1252");
        put(9, "$INSUNITS").put(70, 4);
        put(9, "$MEASUREMENT").put(70, 1);
        put(9, "$LUNITS").put(70, 2);
        put(9, "$EXTMIN").put(10, DoubleStream.of(xs).min().orElse(0)).put(20, DoubleStream.of(ys).min().orElse(0)).put(30, 0L);
        put(9, "$EXTMAX").put(10, DoubleStream.of(xs).max().orElse(1000)).put(20, DoubleStream.of(ys).max().orElse(1000)).put(30, 0L);
        // above all that will be given out
        put(9, "$HANDSEED").put(5, Integer.toHexString(FIRST_HANDLE + 10 + drawing.layers().size() + drawing.lines().size() + drawing.spots().size() + drawing.words().size()).toUpperCase(Locale.ROOT));
        end();
    }

    private DxfWriter table(String name, String handle, long entries) {
        return put(0, "TABLE").put(2, name).put(5, handle).put(330, "0").put(100, "AcDbSymbolTable").put(70, entries);
    }

    private DxfWriter entry(String type, String handle, String owner, String kind) {
        put(0, type).put(type.equals("DIMSTYLE") ? 105 : 5, handle).put(330, owner).put(100, "AcDbSymbolTableRecord");
        return kind.isEmpty() ? this : put(100, kind);
    }

    private void tables(Map<String, LayeredDrawing.Colour> layers) {
        section("TABLES");
        table("VPORT", "8", 0).put(0, "ENDTAB");
        table("LTYPE", "5", 3);
        for (String[] one : new String[][] {{"14", "ByBlock", ""}, {"15", "ByLayer", ""}, {"16", "Continuous", "Solid line"}}) {
            entry("LTYPE", one[0], "5", "AcDbLinetypeTableRecord").put(2, one[1]).put(70, 0).put(3, one[2]).put(72, 65).put(73, 0).put(40, 0.0);
        }
        put(0, "ENDTAB");
        table("LAYER", "2", layers.size() + 1L);
        entry("LAYER", "10", "2", "AcDbLayerTableRecord").put(2, "0").put(70, 0).put(62, 7).put(6, "Continuous");
        layers.forEach((name, colour) -> entry("LAYER", next(), "2", "AcDbLayerTableRecord").put(2, name).put(70, 0).put(62, colour.index).put(6, "Continuous"));
        put(0, "ENDTAB");
        table("STYLE", "3", 1);
        entry("STYLE", "11", "3", "AcDbTextStyleTableRecord").put(2, "Standard").put(70, 0).put(40, 0.0).put(41, 1.0).put(50, 0.0).put(71, 0).put(42, 2.5).put(3, "txt").put(4, "");
        put(0, "ENDTAB");
        table("VIEW", "6", 0).put(0, "ENDTAB");
        table("UCS", "7", 0).put(0, "ENDTAB");
        table("APPID", "9", 1);
        entry("APPID", "12", "9", "AcDbRegAppTableRecord").put(2, "ACAD").put(70, 0);
        put(0, "ENDTAB");
        table("DIMSTYLE", "A", 1).put(100, "AcDbDimStyleTable");
        entry("DIMSTYLE", "27", "A", "AcDbDimStyleTableRecord").put(2, "Standard").put(70, 0);
        put(0, "ENDTAB");
        table("BLOCK_RECORD", "1", 2);
        entry("BLOCK_RECORD", MODEL, "1", "AcDbBlockTableRecord").put(2, "*Model_Space");
        entry("BLOCK_RECORD", "1B", "1", "AcDbBlockTableRecord").put(2, "*Paper_Space");
        put(0, "ENDTAB");
        end();
    }

    private void blocks() {
        section("BLOCKS");
        block("*Model_Space", MODEL, "20", "21");
        block("*Paper_Space", "1B", "1C", "1D");
        end();
    }

    private void block(String name, String record, String begin, String finish) {
        put(0, "BLOCK").put(5, begin).put(330, record).put(100, "AcDbEntity").put(8, "0").put(100, "AcDbBlockBegin").put(2, name).put(70, 0);
        put(10, 0L).put(20, 0L).put(30, 0L).put(3, name).put(1, "");
        put(0, "ENDBLK").put(5, finish).put(330, record).put(100, "AcDbEntity").put(8, "0").put(100, "AcDbBlockEnd");
    }

    private DxfWriter entity(String type, String layer) {
        return put(0, type).put(5, next()).put(330, MODEL).put(100, "AcDbEntity").put(8, layer);
    }

    private void entities(LayeredDrawing drawing) {
        section("ENTITIES");
        for (LayeredDrawing.Line line : drawing.lines()) {
            entity("LWPOLYLINE", line.layer()).put(100, "AcDbPolyline").put(90, line.points().size()).put(70, line.closed() ? 1 : 0);
            if (line.heightMm() != 0) put(39, line.heightMm());
            line.points().forEach(point -> put(10, point.x()).put(20, point.y()));
        }
        for (LayeredDrawing.Spot spot : drawing.spots())
            entity("POINT", spot.layer()).put(100, "AcDbPoint").put(10, spot.at().x()).put(20, spot.at().y()).put(30, spot.zMm());
        for (LayeredDrawing.Words words : drawing.words()) {
            entity("TEXT", words.layer()).put(100, "AcDbText").put(10, words.at().x()).put(20, words.at().y()).put(30, 0L).put(40, words.tallMm())
                    .put(1, plain(words.text())).put(72, 1).put(11, words.at().x()).put(21, words.at().y()).put(31, 0L).put(100, "AcDbText").put(73, 2);
        }
        end();
    }

    /** One line of the file; what is not plain ASCII is written by its number, as the reference says. */
    private static String plain(String words) {
        StringBuilder plain = new StringBuilder();
        for (char sign : words.replaceAll("\\p{Cntrl}+", " ").toCharArray()) {
            if (sign == '%' || sign == '\\' || sign == '^') plain.append(' '); // these begin codes of the text
            else if (sign < 127) plain.append(sign);
            else plain.append(String.format("\\U+%04X", (int) sign));
        }
        return plain.toString();
    }

    private void objects() {
        section("OBJECTS");
        put(0, "DICTIONARY").put(5, "C").put(330, "0").put(100, "AcDbDictionary").put(281, 1).put(3, "ACAD_GROUP").put(350, "D");
        put(0, "DICTIONARY").put(5, "D").put(330, "C").put(100, "AcDbDictionary").put(281, 1);
        end();
    }
}
