package lapyard.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine.Model.OptionSpec;

/** Commands as typed: what they print, what they write, how they end. */
@ResourceLock("standard streams")
class CommandsTest {
    private static final Set<String> USUAL = Set.of("plan.svg", "slip.csv", "slip.json", "sheets.pdf", "job-sheet.json");
    private static final Set<String> ALL =
            Set.of("job.pdf", "job-N.svg", "client-plan.pdf", "client-plan-N.svg", "plan.svg", "plan.pdf", "office.pdf", "office-N.svg", "labels.pdf", "labels-N.svg", "slip.csv", "slip.json", "job-sheet.json",
                    "saw-day.pdf", "saw-day-N.svg", "rolls.pdf", "rolls-N.svg", "slip.pdf", "slip-N.svg", "load-in.pdf",
                    "load-in-N.svg", "bed-register.pdf", "bed-register-N.svg", "course-cards.pdf", "course-cards-N.svg", "sheets.pdf",
                    "weekends.csv", "weekends.ics", "weekends.pdf", "weekends-N.svg", "base-and-liner.pdf", "base-and-liner-N.svg",
                    "garden.xlsx", "price-request.pdf", "price-request-N.svg", "price-request.csv", "price-request.xlsx", "as-built.pdf", "as-built-N.svg", "care.pdf", "care-N.svg", "care.ics", "hand-over.pdf", "payments.pdf", "payments-N.svg", "payments.csv", "payments.xlsx", "plan.dxf");
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    Path folder;

    private record Ended(int code, String out, String err) {}

    private static Ended run(String... args) {
        PrintStream oldOut = System.out;
        PrintStream oldErr = System.err;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
        System.setErr(new PrintStream(err, true, StandardCharsets.UTF_8));
        try {
            int code = Lapyard.run(args);
            return new Ended(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
        } finally {
            System.setOut(oldOut);
            System.setErr(oldErr);
        }
    }

    private static Ended piped(String input, String... args) {
        InputStream old = System.in;
        System.setIn(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)));
        try {
            return run(args);
        } finally {
            System.setIn(old);
        }
    }

    private Path garden(String text) throws IOException {
        return Files.writeString(folder.resolve("garden.json"), text);
    }

    static Stream<Path> samples() throws IOException {
        return Files.list(Path.of("../samples")).filter(file -> file.toString().endsWith(".json")).sorted();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void takeOffWritesEveryFileOfASample(Path sample) throws IOException {
        Path out = folder.resolve("deep/er/out");
        Ended ended = run("take-off", sample.toString(), "--out", out.toString(), "--all", "--as", "pdf,svg");
        assertEquals(0, ended.code(), ended.err());
        JsonNode sheet = MAPPER.readTree(out.resolve("job-sheet.json").toFile());
        TreeSet<String> wanted = new TreeSet<>(ALL);
        sheet.at("/slip/orders").forEach(order -> {
            if (!order.get("supplier").asText().isEmpty()) {
                wanted.add("slip-" + order.get("supplier").asText() + ".csv");
            }
        });
        if (sheet.has("quote")) {
            wanted.addAll(Set.of("quote.pdf", "quote-N.svg"));
        }
        JsonNode document = MAPPER.readTree(sample.toFile());
        if (document.has("rack") || document.toString().contains("\"food\":true")) {
            wanted.addAll(Set.of("provenance.pdf", "provenance-N.svg"));
        }
        if (document.at("/catalogue/suppliers").size() > 1) {
            wanted.addAll(Set.of("offers.pdf", "offers-N.svg", "offers.csv", "offers.xlsx"));
        }
        JsonNode ground = document.path("ground");
        if (ground.has("baseline") || ground.has("outline")) {
            wanted.addAll(Set.of("setting-out.pdf", "setting-out-N.svg"));
        }
        if (ground.has("access")) {
            wanted.addAll(Set.of("access.pdf", "access-N.svg"));
        }
        if (ground.has("sun")) {
            wanted.addAll(Set.of("shade.pdf", "shade-N.svg"));
        }
        assertEquals(wanted, names(out));
        assertEquals(sheet.get("slip"), MAPPER.readTree(out.resolve("slip.json").toFile()));
        for (String key : List.of("garden", "beds", "paths", "cutting", "rolls", "slip", "snags")) {
            assertTrue(sheet.has(key), key);
        }
        for (JsonNode bed : sheet.get("beds")) {
            for (JsonNode quantity : bed.get("quantities")) {
                assertFalse(quantity.at("/working/formula").asText().isBlank(), quantity.toString());
                assertFalse(quantity.at("/working/source").asText().isBlank(), quantity.toString());
            }
        }
        assertTrue(Files.readString(out.resolve("slip.csv")).contains(sheet.at("/slip/total").asText()));
        for (JsonNode cutting : sheet.get("cutting")) {
            int boards = cutting.get("boards").size();
            assertEquals(cutting.at("/result/boards").asInt(), boards);
            assertEquals(boards, cutting.at("/boards/" + (boards - 1) + "/number").asInt());
            assertTrue(cutting.at("/batches/minutes").asDouble() > 0, cutting.get("section").asText());
            assertTrue(cutting.at("/ledger/stages").size() > 0);
        }
        assertEquals(sheet.get("cutting").size(), sheet.get("advice").size());
        for (String sheets : List.of("saw-day", "rolls")) {
            int pages = pages(out.resolve(sheets + ".pdf"));
            for (int page = 1; page <= pages; page++) {
                String svg = Files.readString(out.resolve("%s-%02d.svg".formatted(sheets, page)));
                assertTrue(svg.contains("sheet " + page + " of " + pages), sheets + page);
            }
            assertFalse(Files.exists(out.resolve("%s-%02d.svg".formatted(sheets, pages + 1))));
        }
    }

    private static int pages(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return document.getNumberOfPages();
        }
    }

    /** Of the words of a command only that one is looked at; each must be found by the name under which all are listed. */
    @Test
    void eachCommandIsFoundAloneByItsName() {
        Set<String> all = Lapyard.commands().getSubcommands().keySet();
        assertTrue(all.containsAll(Set.of("take-off", "gardens", "serve")), all.toString());
        all.forEach(name -> assertEquals(Set.of(name), Lapyard.commands(name, "--help").getSubcommands().keySet()));
        assertEquals(all, Lapyard.commands("--help").getSubcommands().keySet());
        assertEquals(all, Lapyard.commands("snag").getSubcommands().keySet());
    }

    /** A name such as PostgreSQL or PKCS#12 keeps its capitals; the lines for help and version are the library's. */
    @Test
    void theHelpOfEachOptionIsAPhraseWithoutFullStop() {
        Lapyard.commands().getSubcommands().values().stream().flatMap(command -> command.getCommandSpec().args().stream())
                .filter(arg -> !(arg instanceof OptionSpec option && (option.usageHelp() || option.versionHelp())))
                .forEach(arg -> {
                    String help = String.join(" ", arg.description());
                    assertTrue(help.matches("(\\p{Lower}|\\p{Upper}\\S*\\p{Upper}).*[^.]"), help);
                });
    }

    @Test
    void aSmallerGardenLeavesNoOlderSheetsBehind() throws IOException {
        Path out = folder.resolve("out");
        run("take-off", "../samples/terrace-feet.json", "--out", out.toString(), "--only", "saw-day", "--as", "svg,pdf");
        assertTrue(Files.exists(out.resolve("saw-day-08.svg")));
        Path own = Files.writeString(out.resolve("saw-day-notes.svg"), "mine");
        run("take-off", "../samples/three-entries.json", "--out", out.toString(), "--mono", "--only", "saw-day", "--as", "svg,pdf");
        assertEquals(pages(out.resolve("saw-day.pdf")), Files.list(out).filter(f -> f.getFileName().toString().matches("saw-day-\\d+\\.svg")).count());
        assertTrue(Files.exists(own));
        run("take-off", "../samples/three-entries.json", "--out", out.toString());
        assertFalse(Files.exists(out.resolve("saw-day.pdf")), "what is in the folder is of one garden");
    }

    @Test
    void takeOffWritesWhatIsNamedAlone() throws IOException {
        Path out = folder.resolve("out");
        Ended ended = run("take-off", "../samples/three-entries.json", "--out", out.toString(), "--only", "plan,slip,saw-day");
        assertEquals(0, ended.code(), ended.err());
        assertEquals(new TreeSet<>(Set.of("plan.svg", "slip.pdf", "slip.csv", "slip.json", "saw-day.pdf")), names(out));
        assertTrue(ended.out().strip().endsWith("; 5 files in " + out), ended.out());
        assertEquals(2, run("take-off", "../samples/three-entries.json", "--out", out.toString(), "--only", "shade").code());
        assertEquals(5, names(out).size(), "a refused run leaves the folder as it was");
    }

    /** The plan and the slip are made once for two files each; on a scale of its own, so that no other plan fits. */
    @Test
    void whatIsMadeForTwoFilesIsWhatEachWouldHaveAlone() throws IOException {
        Path both = folder.resolve("both");
        Path alone = folder.resolve("alone");
        run("take-off", "../samples/three-entries.json", "--out", both.toString(), "--scale", "40");
        run("take-off", "../samples/three-entries.json", "--out", alone.toString(), "--scale", "40", "--only", "sheets");
        assertArrayEquals(Files.readAllBytes(alone.resolve("sheets.pdf")), Files.readAllBytes(both.resolve("sheets.pdf")));
        run("take-off", "../samples/three-entries.json", "--out", alone.toString(), "--only", "slip");
        assertEquals(seconds(Files.readString(alone.resolve("slip.json"))), seconds(Files.readString(both.resolve("slip.json"))));
    }

    private static String seconds(String json) {
        return json.replaceAll("\"seconds\" : [0-9.]+", "");
    }

    /** 9 boards of 2400: 9 trims, 6 x 2300 and 3 x two of 1100 are 21 cuts at 2 settings; at 1 and 20 minutes 21 + 40 = 61. */
    @Test
    void timesAndFirstCutsFollowWhatIsAsked() throws IOException {
        Path out = folder.resolve("out");
        Ended ended = run("take-off", "../samples/three-entries.json", "--out", out.toString(), "--minutes-a-cut", "1", "--minutes-a-setting", "20",
                "--longest", "2000", "--only", "saw-day", "--as", "svg");
        assertEquals(0, ended.code(), ended.err());
        String first = Files.readString(out.resolve("saw-day-01.svg"));
        assertTrue(first.contains("First cuts at the merchant") && first.contains(">1110<") && first.contains("stays too long"), first);
        assertTrue(Files.readString(out.resolve("saw-day-02.svg")).contains("21 cuts, 9 of them to trim × 1 min + 2 settings × 20 min = 61 min"));
    }

    /** As a server gives it out: {@code GET /api/gardens/{id}/file}. */
    @Test
    void takeOffReadsAGardensWholeFileAndShowsItsPhotos() throws IOException {
        var jpeg = new java.io.ByteArrayOutputStream();
        javax.imageio.ImageIO.write(new java.awt.image.BufferedImage(40, 30, java.awt.image.BufferedImage.TYPE_INT_RGB), "jpeg", jpeg);
        String photo = java.util.Base64.getEncoder().encodeToString(jpeg.toByteArray());
        String id = lapyard.answers.Answer.hash(lapyard.drawing.Photo.of(jpeg.toByteArray()).bytes());
        String older = "{\"name\":\"G\",\"beds\":[]}";
        String newest = "{\"name\":\"G\",\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}],\"handOver\":{\"snags\":[{\"text\":\"Rim splinters\",\"photos\":[\"" + id + "\"]}]}}";
        String whole = MAPPER.writeValueAsString(java.util.Map.of("photos", List.of(photo), "revisions", List.of(
                java.util.Map.of("number", 1, "saved", "2026-05-02T10:00:00Z", "document", older), java.util.Map.of("number", 2, "saved", "2026-05-03T10:00:00Z", "document", newest))));
        whole = "{\"lapyard\":\"garden\",\"format\":1," + whole.substring(1);
        Path out = folder.resolve("out");
        Ended ended = run("take-off", garden(whole).toString(), "--out", out.toString(), "--only", "snag-list", "--as", "svg");
        assertEquals(0, ended.code(), ended.err());
        assertTrue(Files.readString(out.resolve("snag-list-01.svg")).contains("<image"));
        run("take-off", garden(newest).toString(), "--out", out.toString(), "--only", "snag-list", "--as", "svg");
        assertTrue(Files.readString(out.resolve("snag-list-01.svg")).contains("0 of 1 shown"), "a document carries no photos");
        Ended refused = run("take-off", garden(whole.replace("\"2026-05-03T", "\"soon")).toString(), "--out", out.toString());
        assertEquals(2, refused.code());
        assertTrue(refused.err().contains("revision 2 of the file"), refused.err());
    }

    @Test
    void takeOffReadsStandardInput() throws IOException {
        Path out = folder.resolve("out");
        Ended ended = piped("{\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}", "take-off", "-", "--out", out.toString());
        assertEquals(0, ended.code(), ended.err());
        assertEquals(new TreeSet<>(USUAL), names(out));
    }

    @Test
    void whatCannotBeMadeIsLeftOutAndTheRestIsWritten() throws IOException {
        Path out = folder.resolve("out");
        Ended ended = run("take-off",
                garden("{\"beds\":[{\"width\":6000,\"depth\":1200,\"courses\":1,\"seams\":false}]}").toString(), "--out", out.toString());
        assertEquals(1, ended.code());
        assertTrue(ended.out().startsWith("at least GBP"), ended.out());
        assertTrue(ended.err().contains("5900"), ended.err());
        assertEquals(new TreeSet<>(USUAL), names(out));
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(delimiter = '|', textBlock = """
            {"beds":[{"width":2400,"depth":1200,"colour":1}]} | bed A, colour
            {"beds":[{"outline":[[0,0],[3000,3000],[3000,0],[0,3000]]}]} | crosses
            {"beds":[{"outline":[[0,0],[3000,0],[3020,2000],[0,2000]]}]} | degrees off a right angle
            {"beds":[{"width":240,"depth":1200}]} | Bed A is 240 mm wide; at least 500 mm is needed with timber 100 mm thick. Make it at least 500 mm wide
            {"units":"imperial","beds":[{"width":250,"depth":1200}]} | at least 1' 7 11/16" is needed
            {"beds":[{"width":460,"depth":1200}]} | Bed A is 460 mm wide; at least 500 mm is needed
            {"ground":{"outline":[[0,0],[5000,0],[5000,5000],[0,5000]]},"beds":[],"paths":[{"line":[[0,2000],[6000,2000]],"width":900}]} | path P1
            {"ground":{"levels":[{"at":[0,0],"drop":1}]},"beds":[]} | a fall needs 3 readings
            """)
    void aStopIsSaidAndNothingIsWritten(String text, String says) throws IOException {
        Path out = folder.resolve("out");
        Ended ended = run("take-off", garden(text).toString(), "--out", out.toString());
        assertEquals(2, ended.code());
        assertTrue(ended.err().contains(says), ended.err());
        assertTrue(ended.err().startsWith("Must be solved ("), ended.err());
        assertFalse(Files.exists(out));
        Ended snags = run("snags", folder.resolve("garden.json").toString());
        assertEquals(2, snags.code());
        assertTrue(snags.out().contains(says), snags.out());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            site-file     | {"type":"FeatureCollection","features":[{"a":1}]} | : feature 0 has no type that GeoJSON knows.
            merchant-list | item,price;screws,abc                            | , line 2: price "abc" is no number.
            """)
    void whatIsWrongInAListOrDrawingIsToldByFileAndLine(String command, String text, String says) throws IOException {
        Path file = Files.writeString(folder.resolve("given"), text.replace(';', '\n'));
        Ended ended = run(command, file.toString());
        assertEquals(2, ended.code());
        assertTrue(ended.err().startsWith(file + says), ended.err());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            take-off absent.json --out x          | absent.json is not there
            take-off ../samples --out x           | is a folder
            take-off ../samples/three-entries.json | lapyard take-off needs --out DIR. See lapyard take-off --help.
            take-off ../samples/three-entries.json --out pom.xml | is a file, not a folder
            take-off ../samples/village-hall.json --out target/never --scale 0  | scale
            take-off ../samples/village-hall.json --out target/never --paper A9 | A9
            take-off ../samples/three-entries.json --out target/never --longest 0 | "longest" is 0 mm; at least 1 mm is needed
            take-off ../samples/three-entries.json --out target/never --minutes-a-cut -1 | "minutes a cut" is -1
            take-off ../samples/three-entries.json --out target/never --only mulch | mulch
            take-off ../samples/three-entries.json --out target/never --as doc | doc
            take-off ../samples/three-entries.json --out target/never --only plan --all | leave one out
            take-off ../samples/village-hall.json --out target/never --only sheets --scale 10 | too large for A3. Use 1:75
            take-off ../samples/three-entries.json --out target/never --only shade | latitude
            snags                                 | GARDEN.json
            solve cutting absent.jsonl            | absent.jsonl is not there
            solve planting x                      | what lapyard solve takes cannot be "planting": give cutting, rolls, staging. See lapyard solve --help.
            solve cutting x --seconds ten         | --seconds cannot be "ten": give a number. See lapyard solve --help.
            solve cutting pom.xml                 | pom.xml, line 1
            solve cutting pom.xml --seconds 0     | --seconds is 0.0; above 0 and at most 3600 is possible. Give a time such as 10.
            dig                                   | lapyard has no command dig
            snag x                                | Did you mean snags?
            snags x y                             | lapyard snags has no room for y. See lapyard snags --help.
            shelf --wide                          | lapyard shelf has no option --wide
            serve --port 99999                    | Port 99999 is outside 0 to 65535. Give 8080
            rescue --data target/never --out x    | with --data
            take-off ../samples/three-entries.json --out target/never --only labels --labels 50x3 | Give a value from 1 to 40
            take-off ../samples/three-entries.json --out target/never --only offers | offers is not written: 1 merchant has prices; two are needed to compare offers.
            variation ../samples/three-entries.json ../samples/terrace-feet.json | only prices in one currency
            variation ../samples/three-entries.json ../samples/three-entries.json --out target/never/v.pdf | target/never/v.pdf cannot be written
            """)
    void whatIsTypedWrongIsOneLineAndExitCodeTwo(String line, String says) {
        Ended ended = run(line.strip().split("\\s+"));
        assertEquals(2, ended.code(), ended.out() + ended.err());
        assertTrue(ended.err().contains(says), ended.err());
        assertEquals(1, ended.err().strip().lines().count(), ended.err());
        assertFalse(ended.err().contains("Exception"), ended.err());
        assertFalse(Files.exists(Path.of("target/never")));
    }

    /** A sheet that cannot be drawn stops no other: the rest is written, and the exit code says that something is missing. */
    @Test
    void whatIsRefusedIsToldAndTheRestIsWritten() throws IOException {
        Path out = folder.resolve("rest");
        Ended ended = run("take-off", "../samples/three-entries.json", "--out", out.toString(), "--only", "offers,slip,saw-day,snag-list");
        assertEquals(1, ended.code(), ended.err());
        assertTrue(ended.err().contains("offers is not written: 1 merchant has prices"), ended.err());
        assertTrue(ended.err().contains("snag-list is not written: The snag list is empty. Add what you find under Hand-over."), ended.err());
        try (Stream<Path> files = Files.list(out)) {
            Set<String> names = files.map(file -> file.getFileName().toString()).collect(Collectors.toSet());
            assertTrue(names.containsAll(Set.of("slip.csv", "slip.json", "saw-day.pdf")), names::toString);
            assertTrue(names.stream().noneMatch(name -> name.startsWith("offers") || name.startsWith("snag-list") || name.startsWith(".")), names::toString);
        }
    }

    @Test
    void aHundredMegabytesAreRefusedWithTheirSize() throws IOException {
        Path large = folder.resolve("large.json");
        try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
            file.setLength(100_000_000);
        }
        Ended ended = run("snags", large.toString());
        assertEquals(2, ended.code());
        assertTrue(ended.err().contains("100 MB"), ended.err());
    }

    @Test
    void snagsEndWithZeroForNotesAndOneForSnags() throws IOException {
        assertEquals(0, run("snags", garden("{\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}").toString()).code());
        Ended overlapping = run("snags", garden("{\"beds\":[{\"width\":2400,\"depth\":1200},{\"width\":2400,\"depth\":1200,\"at\":[1000,0]}]}").toString());
        assertEquals(1, overlapping.code());
        assertTrue(overlapping.out().lines().anyMatch(line -> line.startsWith("Look at this (bed")), overlapping.out());
    }

    /** Three of 996 with two kerfs of 4 fill 2996 of a 3000 board; a 6100 fits nowhere. */
    @Test
    void solveAnswersEachLineInOrder() throws IOException {
        Path problems = Files.writeString(folder.resolve("problems.jsonl"), """
                {"name":"first","kerf":4,"endTrim":0,"keepOffcut":300,"stock":[{"id":"L","length":3000}],"pieces":[{"id":"a","length":996,"count":3}]}

                {"name":"second","kerf":4,"endTrim":10,"keepOffcut":300,"stock":[{"id":"L","length":4800,"price":36.00}],"pieces":[{"id":"z","length":6100}]}
                """);
        Ended ended = run("solve", "cutting", problems.toString());
        assertEquals(1, ended.code(), ended.err());
        List<String> lines = ended.out().lines().toList();
        assertEquals(2, lines.size());
        JsonNode first = MAPPER.readTree(lines.get(0));
        assertEquals("first", first.get("name").asText());
        assertEquals(1, first.get("boards").asInt());
        assertTrue(first.get("proven").asBoolean());
        JsonNode second = MAPPER.readTree(lines.get(1));
        assertEquals("z", second.at("/unplaced/0/id").asText());
        Path results = folder.resolve("results.jsonl");
        assertEquals(1, run("solve", "cutting", problems.toString(), "--out", results.toString()).code());
        assertEquals(2, Files.readAllLines(results).size());
    }

    private static Set<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString().replaceAll("-\\d+\\.svg$", "-N.svg")).collect(Collectors.toCollection(TreeSet::new));
        }
    }

    @Test
    void sizesAndLayOutSayTheirAnswersAndWriteEachAsAGarden() throws IOException {
        String asked = garden("""
                {"ground":{"outline":[[0,0],[9000,0],[9000,6000],[0,6000]]},"give":{"width":[-60,0],"depth":[-60,0],"step":20},
                 "beds":[{"width":2400,"depth":1200,"at":[1500,1500]},{"width":1500,"depth":900,"at":[5500,1500]}]}""").toString();
        Path out = folder.resolve("asked");
        Ended sizes = run("sizes", asked, "--seconds", "1", "--out", out.toString());
        assertEquals(0, sizes.code(), sizes.err());
        assertTrue(sizes.out().contains("GBP ") && sizes.out().contains(" as it stands."), sizes.out());
        Ended laid = run("lay-out", asked, "--out", out.toString());
        assertEquals(0, laid.code(), laid.err());
        assertTrue(laid.out().startsWith("1. ") && laid.out().contains(" 2 beds, "), laid.out());
        assertEquals(2, MAPPER.readTree(out.resolve("lay-out-1.json").toFile()).path("beds").size());
        assertTrue(MAPPER.readTree(out.resolve("sizes.json").toFile()).has("bound"));
        assertEquals(2, run("sizes", garden("{\"beds\":[{\"width\":2400,\"depth\":1200}]}").toString()).code());
        Ended narrow = run("lay-out", garden("""
                {"ground":{"outline":[[0,0],[2400,0],[2400,2100],[0,2100]],"access":{"path":900,"reach":1200,"turning":0}},
                 "beds":[{"width":2400,"depth":1200}]}""").toString());
        assertTrue(narrow.out().contains("Only 2 proposals of 6 orders tried: 4 left no bed that passes every check."), narrow.out());
    }
}
