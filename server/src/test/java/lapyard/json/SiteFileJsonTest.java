package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.exchange.DxfWriter;
import lapyard.exchange.LayeredDrawing;
import lapyard.exchange.LayeredDrawing.Colour;
import lapyard.geometry.Point;
import lapyard.job.Gardens;
import lapyard.prints.GardenLayers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files of a site; the DXF files under {@code exchange} were written by ezdxf 0.18.1, which is not ours. */
class SiteFileJsonTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    private static String file(String name) throws Exception {
        try (InputStream in = SiteFileJsonTest.class.getResourceAsStream("/exchange/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static JsonNode read(String file, String more) throws Exception {
        ObjectNode body = (ObjectNode) MAPPER.readTree("{" + more + "}");
        body.put("file", file);
        return SiteFileJson.preview(body.toString());
    }

    private static JsonNode layer(JsonNode answer, String name) {
        for (JsonNode layer : answer.path("layers")) if (layer.path("name").asText().equals(name)) return layer;
        throw new AssertionError("no layer " + name + " in " + answer.path("layers"));
    }

    private static double areaM2(JsonNode outline) {
        double twice = 0;
        for (int i = 0; i < outline.size(); i++) {
            JsonNode a = outline.get(i);
            JsonNode b = outline.get((i + 1) % outline.size());
            twice += a.get(0).asDouble() * b.get(1).asDouble() - b.get(0).asDouble() * a.get(1).asDouble();
        }
        return Math.abs(twice) / 2e6;
    }

    /** The yard was drawn as six single lines in any order and direction, 12.4 m by 9.1 m with 4 m by 3.1 m left out. */
    /** Drawn as seen from below x runs to the left, and an arc that went left goes right: a half round on the side from 4 to 0 bulges out of the yard either way. */
    @Test
    void anArcThatIsMirroredBulgesToTheSameSide() throws Exception {
        for (String seen : List.of("1", "-1")) {
            String x = seen.equals("1") ? "4" : "-4";
            String dxf = "0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\nPlot\n70\n1\n230\n" + seen + "\n10\n0\n20\n0\n10\n" + x + "\n20\n0\n10\n" + x
                    + "\n20\n3\n42\n" + (seen.equals("1") ? "1" : "-1") + "\n10\n0\n20\n3\n0\nENDSEC\n0\nEOF\n";
            double top = 0;
            for (JsonNode corner : read(dxf, "\"unit\":\"m\",\"take\":{\"Plot\":\"outline\"}").at("/garden/ground/outline")) top = Math.max(top, corner.get(1).asDouble());
            assertEquals(5000, top, 5, "seen from " + seen);
        }
    }

    /** Programs write nothing left of 0 as -0.0, and what calculating adds with it. By hand, no source. */
    @Test
    void linesThatMeetInZeroBelowZeroAreOne() throws Exception {
        String[][] sides = {{"-0.0", "0.0", "9", "0"}, {"9", "-0.0", "9", "7.0000000000001"}, {"9", "7", "0", "7"}, {"0", "7", "0", "-0.0"}};
        StringBuilder dxf = new StringBuilder("0\nSECTION\n2\nENTITIES\n");
        for (String[] side : sides) dxf.append("0\nLINE\n8\nPlot\n10\n%s\n20\n%s\n11\n%s\n21\n%s\n".formatted((Object[]) side));
        JsonNode answer = read(dxf.append("0\nENDSEC\n0\nEOF\n").toString(), "\"unit\":\"m\",\"take\":{\"Plot\":\"outline\"}");
        assertEquals("[[0,0],[9000,0],[9000,7000],[0,7000]]", answer.at("/garden/ground/outline").toString());
    }

    @Test
    void singleLinesBecomeOneOutlineAndTheUnitIsAskedFor() throws Exception {
        String dxf = file("yard-of-lines-r12.dxf");
        JsonNode asked = read(dxf, "\"take\":{\"BOUNDARY\":\"outline\"}");
        assertTrue(asked.path("unit").isNull());
        assertTrue(asked.path("garden").isNull());
        assertEquals("[]", asked.path("bad").toString());
        assertEquals(1, layer(asked, "BOUNDARY").path("closed").asInt());
        assertEquals("outline", layer(asked, "BOUNDARY").path("suggested").asText());
        assertEquals("levels", layer(asked, "SPOT LEVELS").path("suggested").asText());
        JsonNode taken = read(dxf, "\"unit\":\"m\",\"take\":{\"BOUNDARY\":\"outline\",\"SPOT LEVELS\":\"levels\"}");
        JsonNode ground = taken.path("garden").path("ground");
        assertEquals(6, ground.path("outline").size());
        assertEquals(12.4 * 9.1 - 4 * 3.1, areaM2(ground.path("outline")), 1e-3);
        assertTrue(ground.path("outline").toString().contains("[0,0]"), ground::toString);
        assertEquals("{\"at\":[12400,9100],\"drop\":300}", ground.path("levels").get(2).toString());
        assertEquals("{\"at\":[0,0],\"drop\":0}", ground.path("levels").get(0).toString());
    }

    /** Half a circle of radius 2 m stands on one side; blocks, texts, circles and what is on paper are counted. */
    @Test
    void arcsAreFollowedAndWhatIsNotTakenIsCounted() throws Exception {
        JsonNode answer = read(file("yard-with-arc-2010.dxf"), "\"take\":{\"Plot\":\"outline\",\"Lawn\":\"grass\",\"Trees\":\"tree\"},\"garden\":{\"name\":\"Y\",\"beds\":[]}");
        assertEquals("m", answer.path("unit").asText());
        assertTrue(answer.path("unitFromFile").asBoolean());
        JsonNode ground = answer.path("garden").path("ground");
        assertEquals(10 * 4 + Math.PI * 2 * 2 / 2, areaM2(ground.path("outline")), 0.01);
        assertEquals("grass", ground.at("/surfaces/0/kind").asText());
        assertEquals("{\"kind\":\"tree\",\"at\":[8000,2000]}", ground.at("/keepClear/0").toString());
        assertEquals("[{\"what\":\"CIRCLE\",\"count\":1},{\"what\":\"INSERT\",\"count\":2},{\"what\":\"TEXT\",\"count\":1},{\"what\":\"on paper\",\"count\":1}]", answer.path("passedOver").toString());
        assertEquals("Y", answer.path("garden").path("name").asText());
    }

    @Test
    void whatOurWriterWritesComesBackAsItWas() throws Exception {
        Random random = new Random(4);
        for (int round = 0; round < 50; round++) {
            LayeredDrawing drawing = new LayeredDrawing().layer("Outline", Colour.INK).layer("Surface slab", Colour.GREEN).layer("Levels", Colour.BLUE);
            List<Point> yard = new ArrayList<>();
            int corners = 3 + random.nextInt(8);
            for (int i = 0; i < corners; i++) {
                double angle = 2 * Math.PI * i / corners;
                double radius = 3000 + random.nextInt(60000) / 10.0;
                yard.add(new Point(Math.rint(radius * Math.cos(angle) * 10) / 10, Math.rint(radius * Math.sin(angle) * 10) / 10));
            }
            drawing.line("Outline", yard, true, 0);
            drawing.line("Surface slab", List.of(new Point(0, 0), new Point(900, 0), new Point(900, 600)), true, 0);
            for (int i = 0; i < 3; i++) drawing.spot("Levels", yard.get(i), -100 * i);
            JsonNode answer = read(DxfWriter.write(drawing), "\"take\":{\"Outline\":\"outline\",\"Surface slab\":\"slab\",\"Levels\":\"levels\"}");
            assertEquals("mm", answer.path("unit").asText());
            assertEquals("slab", layer(answer, "Surface slab").path("suggested").asText());
            JsonNode outline = answer.path("garden").path("ground").path("outline");
            double left = yard.stream().mapToDouble(Point::x).min().orElseThrow();
            double front = yard.stream().mapToDouble(Point::y).min().orElseThrow();
            for (int i = 0; i < corners; i++) {
                assertEquals(yard.get(i).x() - left, outline.get(i).get(0).asDouble(), 0.051);
                assertEquals(yard.get(i).y() - front, outline.get(i).get(1).asDouble(), 0.051);
            }
            assertEquals(200, answer.at("/garden/ground/levels/2/drop").asDouble());
        }
    }

    /** A plan that goes out and comes back, perhaps after somebody drew in it, leaves the yard where its beds are. */
    @ParameterizedTest
    @ValueSource(longs = {61, 62, 63, 64, 65, 66, 67, 68})
    void aPlanOfOursComesBackToTheGardenAsItWas(long seed) throws Exception {
        Random random = new Random(seed);
        int left = random.nextInt(4000) - 2000;
        int front = random.nextInt(4000) - 2000;
        String box = "[[%d,%d],[%d,%d],[%d,%d],[%d,%d]]".formatted(left, front, left + 9000, front, left + 9000, front + 7000, left, front + 7000);
        JsonNode garden = MAPPER.readTree("""
                {"name":"Back","beds":[{"id":"A","at":[%d,%d],"width":2400,"depth":1200}],
                 "ground":{"outline":%s,"levels":[{"at":[%d,%d],"drop":%d},{"at":[%d,%d],"drop":%d.5}],"surfaces":[{"kind":"grass","outline":%s}],
                  "keepClear":[{"kind":"drain","line":[[%d,%d],[%d,%d]]},{"kind":"tree","at":[%d,%d],"clearance":750}]}}""".formatted(left + 500, front + 500, box, left, front,
                100 + random.nextInt(900), left + 9000, front, random.nextInt(900), box, left, front + 6500, left + 5000, front + 6500, left + 8000, front + 6000));
        String dxf = DxfWriter.write(GardenLayers.of(Gardens.sheet(garden.toString())));
        List<String> take = new ArrayList<>();
        read(dxf, "").path("layers").forEach(layer -> take.add(layer.path("name") + ":" + layer.path("suggested")));
        String all = "\"take\":{" + String.join(",", take) + "}";
        assertEquals(garden.path("ground"), MAPPER.readTree(read(dxf, all + ",\"garden\":" + garden).at("/garden/ground").toString()));
        ((ObjectNode) garden.at("/ground/keepClear/1")).remove("clearance"); // which no drawing holds
        assertEquals(garden.path("ground"), MAPPER.readTree(read(dxf, all).at("/garden/ground").toString()));
    }

    /** A table program keeps rows that were emptied; a metre is 1000 mm, a foot 304.8 mm (international yard of 1959). */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            x (m);y (m);drop (mm)         | 0;0;120\\n5;0;150                | 120, 150
            x (mm);y (m);height (cm)      | 0;0;20\\n;;\\n5000;0;5\\n;;\\n      | 0, 150
            ;;\\nx (m);y (m);drop          | 0;0;0,12\\n5;0;0,15             | 120, 150
            x (ft);y (ft);height (in)     | 0;0;12\\n16.404199;0;0            | 0, 304.8
            longitude;latitude;drop (mm)  | 10;50;120\\n10.00006984;50;150    | 120, 150
            """)
    void eachColumnMaySayItsUnitAndEmptyRowsSayNothing(String head, String rows, String drops) throws Exception {
        JsonNode levels = read((head + "\n" + rows).replace("\\n", "\n"), "\"take\":{\"\":\"levels\"}").at("/garden/ground/levels");
        assertEquals(List.of(drops.split(", ")), levels.findValuesAsText("drop"));
        assertEquals(5000, levels.at("/1/at/0").asDouble(), 10);
    }

    /** A comma parts thousands in English lists and decimals in others (common practice, no source); metres with three decimals are usual in surveys. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            x (mm);y (mm)      | 0;0\\n5,200;0\\n5,200;4000  | mm | 3 | 5.2 or 5200
            x;y                | 0;0\\n5,200;0\\n5,200;4000  | ft | 3 | 5.2 or 5200
            x (m);y (mm)       | 0;0\\n5,200;0\\n5,200;-4,000 | mm | 4 | -4 or -4000
            x (m);y (m)        | 0;0\\n5,200;0\\n5,200;4     | mm | 0 | [[0,0],[5200,0],[5200,4000]]
            x;y                | 0;0\\n5,200;0\\n5,200;4     | m  | 0 | [[0,0],[5200,0],[5200,4000]]
            x (cm);y (cm)      | 0;0\\n520,000;0\\n520,000;400,0 | mm | 0 | [[0,0],[5200,0],[5200,4000]]
            """)
    void aCommaThatMayPartThousandsIsAskedAbout(String head, String rows, String unit, int line, String told) throws Exception {
        JsonNode answer = read((head + "\n" + rows).replace("\\n", "\n"), "\"unit\":\"" + unit + "\",\"take\":{\"\":\"outline\"}");
        if (line == 0) assertEquals(told, answer.at("/garden/ground/outline").toString(), answer.path("bad").toString());
        else assertEquals(List.of(line + "", "write " + told), List.of(answer.at("/bad/0/line").asText(), answer.at("/bad/0/way").asText()), answer.toString());
        assertEquals(0, line == 0 ? answer.path("bad").size() : answer.path("layers").size());
    }

    @Test
    void acrossAndAwayMayBeInTwoUnits() throws Exception {
        assertEquals("[[0,0],[5000,0],[5000,4000]]", read("x,y (cm)\n0,0\n500,0\n500,400\n", "\"take\":{\"\":\"outline\"}").at("/garden/ground/outline").toString(), "one that says none has the other's");
        assertEquals("[[0,0],[5000,0],[5000,4000]]", read("x (m),y (cm)\n0,0\n5,0\n5,400\n", "\"take\":{\"\":\"outline\"}").at("/garden/ground/outline").toString());
    }

    @Test
    void levelsOfTwoLayersAreTakenTogether() throws Exception {
        JsonNode answer = read("x (m),y (m),height,layer\n0,0,1.2,low\n5,0,1.1,low\n0,4,1.5,high\n", "\"take\":{\"low\":\"levels\",\"high\":\"levels\"}");
        assertEquals(List.of("300", "400", "0"), answer.at("/garden/ground/levels").findValuesAsText("drop"));
    }

    /** Length of a thousandth of a degree, m: tables of WGS 84 (NIMA TR8350.2's ellipsoid), values from memory. */
    @ParameterizedTest
    @CsvSource({"0, 111.320, 110.574", "45, 78.847, 111.132", "60, 55.800, 111.412"})
    void degreesAreLaidOnThePlaneThatTouchesTheEarthThere(double latitude, double east, double north) throws Exception {
        String box = "[[10,%1$s],[10.001,%1$s],[10.001,%2$s],[10,%2$s],[10,%1$s]]".formatted(latitude, latitude + 0.001);
        JsonNode answer = read("{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"kind\":\"plot\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[" + box + "]}}]}",
                "\"take\":{\"plot\":\"outline\"}");
        assertEquals("geojson", answer.path("format").asText());
        JsonNode corner = answer.at("/garden/ground/outline/2");
        assertEquals(east, corner.get(0).asDouble() / 1000, 0.01);
        assertEquals(north, corner.get(1).asDouble() / 1000, 0.01);
    }

    @Test
    void coordinatesAsCsvAreLinesAndLevels() throws Exception {
        String csv = "what;easting (m);northing (m);height\r\nplot;500;200;\r\nplot;508;200;\r\nplot;508;206;\r\nplot;500;206;\r\nlevel;500;200;12,5\r\nlevel;508;200;12,4\r\nlevel;508;206;12,1\r\n";
        JsonNode answer = read(csv, "\"take\":{\"plot\":\"outline\",\"level\":\"levels\"}");
        assertEquals("m", answer.path("unit").asText());
        assertEquals("[[0,0],[8000,0],[8000,6000],[0,6000]]", answer.at("/garden/ground/outline").toString());
        assertEquals("{\"at\":[8000,6000],\"drop\":400}", answer.at("/garden/ground/levels/2").toString());
        JsonNode unknown = read("x,y\n0,0\n5,0\n5,4\n", "\"take\":{\"\":\"outline\"}");
        assertTrue(unknown.path("unit").isNull() && unknown.path("garden").isNull());
        assertEquals("[[0,0],[1524,0],[1524,1219.2]]", read("x,y\n0,0\n5,0\n5,4\n", "\"unit\":\"ft\",\"take\":{\"\":\"outline\"}").at("/garden/ground/outline").toString());
        // as table programs save it: with a byte order mark, names of columns in quotes
        assertEquals("[[0,0],[5000,0],[5000,4000]]", read("\uFEFF\"x (m)\",\"y (m)\"\n0,0\n5,0\n5,4\n", "\"take\":{\"\":\"outline\"}").at("/garden/ground/outline").toString());
    }

    /** Place, what is wrong, and nothing taken. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            x,y\\n1,2\\n1,two\\n                                          | 3 | y needs a number
            x,y\\n1,2\\n1\\n                                              | 3 | no second coordinate
            a,b\\n1,2\\n                                                  | 1 | no columns for the coordinates
            x,y,drop (mm)\\n1,2,3\\n                                       | 1 | one column says its unit
            longitude,latitude\\n200,10\\n                                | 2 | no place of a yard
            0\\nSECTION\\n2\\nENTITIES\\n0\\nLINE\\n8\\nA\\n10\\nx1\\n0\\nENDSEC\\n0\\nEOF\\n | 10 | needs a number
            0\\nSECTION\\n2\\nENTITIES\\n0\\nLINE\\n8\\nA\\n10\\n1\\n        | 10 | breaks off
            0\\nSECTION\\nhello\\nENTITIES\\n                              | 3 | group code
            0\\nSECTION\\n2\\nHEADER\\n0\\nENDSEC\\n0\\nEOF\\n               | 8 | no section
            AC1032 something                                              | 0 | DWG
            AutoCAD Binary DXF and more                                   | 0 | binary DXF
            PK and more                                                   | 0 | packed
            {"type":"Feature","geometry":{"type":"Blob"}}                 | 0 | feature 1 has no type
            {"type":"Point","coordinates":["a",1]}                        | 0 | not two numbers
            {"type":"Point",                                              | 0 | line 1
            """)
    void aBadFileSaysWhereAndWhatAndNothingIsTaken(String file, int line, String what) throws Exception {
        JsonNode answer = read(file.replace("\\n", "\n"), "\"unit\":\"m\",\"take\":{\"A\":\"outline\"}");
        JsonNode bad = answer.path("bad").path(0);
        assertTrue(bad.path("text").asText().contains(what), answer::toString);
        assertEquals(line, bad.path("line").asInt(), answer::toString);
        assertFalse(bad.path("way").asText().isEmpty());
        assertTrue(answer.path("garden").isNull());
    }

    @Test
    void whatIsNoYardIsRefusedWhole() throws Exception {
        String open = "x,y,layer,line\n0,0,A,1\n5,0,A,1\n";
        assertTrue(read(open, "\"unit\":\"m\",\"take\":{\"A\":\"outline\"}").at("/bad/0/text").asText().contains("one closed line"));
        assertTrue(read(open, "\"unit\":\"m\",\"take\":{\"B\":\"outline\"}").at("/bad/0/text").asText().contains("no layer"));
        assertTrue(read(open, "\"unit\":\"m\",\"take\":{\"A\":\"slab\"}").at("/bad/0/text").asText().contains("not closed"));
        assertTrue(read(open, "\"unit\":\"m\",\"take\":{\"A\":\"levels\"}").at("/bad/0/text").asText().contains("no points"));
        String wide = "x,y\n0,0\n5000,0\n5000,5000\n";
        assertTrue(read(wide, "\"unit\":\"m\",\"take\":{\"\":\"outline\"}").at("/bad/0/text").asText().contains("larger than any yard"));
        JsonNode crossing = read("x,y\n0,0\n5,5\n5,0\n0,5\n", "\"unit\":\"m\",\"take\":{\"\":\"outline\"}");
        assertTrue(crossing.path("garden").isNull());
        assertFalse(crossing.path("findings").isEmpty());
        assertThrows(IllegalArgumentException.class, () -> read("x,y\n", "\"unit\":\"yard\""));
        assertThrows(IllegalArgumentException.class, () -> read("x,y\n", "\"take\":{\"A\":\"lake\"}"));
    }

    @Test
    void aFileWithoutEndIsReadWithinBounds() throws Exception {
        String many = "x,y\n" + "1,2\n3,4\n".repeat(40_000);
        assertTrue(read(many, "\"unit\":\"m\"").at("/bad/0/text").asText().contains("50000 points"));
        StringBuilder layers = new StringBuilder("x,y,layer\n");
        for (int i = 0; i < 500; i++) layers.append("1,2,L").append(i).append('\n');
        assertTrue(read(layers.toString(), "\"unit\":\"m\"").at("/bad/0/text").asText().contains("200 layers"));
        StringBuilder dxf = new StringBuilder("0\nSECTION\n2\nENTITIES\n");
        for (int i = 0; i < 60_000; i++) dxf.append("0\nPOINT\n8\nA\n10\n1\n20\n").append(i).append('\n');
        assertTrue(read(dxf.append("0\nENDSEC\n0\nEOF\n").toString(), "\"unit\":\"m\"").at("/bad/0/text").asText().contains("50000 points"));
        assertTrue(read("[".repeat(5000), "").path("garden").isNull());
        assertTrue(read("{\"type\":" + "{\"a\":".repeat(5000), "").at("/bad/0/text").asText().length() > 5);
    }
}
