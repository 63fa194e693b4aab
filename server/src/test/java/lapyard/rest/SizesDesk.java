package lapyard.rest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import lapyard.answers.GardenDesk;
import lapyard.answers.FileAsk;
import lapyard.answers.GivenDocument;
import lapyard.answers.PreparedGarden;
import lapyard.answers.Refused;
import lapyard.json.JobSheetPart;
import lapyard.json.SheetAsk;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Told;
import lapyard.plan.WayKind;
import lapyard.prints.PrintAsk;
import lapyard.working.Look;
import lapyard.working.Progress;


/** A small desk that knows widths and depths: enough to see what the server does with what a desk says. */
public class SizesDesk extends GardenDesk {
    private static final int PAPER_LONG_MM = 420;

    /** How many job sheets were really made. */
    public final AtomicInteger made = new AtomicInteger();

    @Override
    public Checked check(GivenDocument document) {
        return new Checked(findings(document.text()), false);
    }

    @Override
    public boolean isLarge(GivenDocument document, Look look) {
        return false;
    }

    private static List<Finding> findings(String document) {
        List<Finding> findings = new ArrayList<>();
        int number = 0;
        for (JsonNode bed : read(document).path("beds")) {
            String where = "bed " + bed.path("id").asText(String.valueOf(++number));
            for (String size : List.of("width", "depth")) {
                double mm = bed.path(size).asDouble(0);
                if (mm <= 0)
                    findings.add(Finding.of(FindingKind.FIELD_LOW, Place.field(where)).with("name", Fact.name(size)).with("value", Fact.mm(mm))
                            .with("least", Fact.mm(1)).by(Fact.mm(mm)).way(WayKind.GIVE_BETWEEN, Fact.mm(1), Fact.mm(6000)));
                else if (mm > 6000)
                    findings.add(Told.saying(Finding.Weight.SNAG, Place.field(where), size + " is over 6000 mm").by(Fact.mm(mm - 6000)).way(WayKind.TAKE_OUT));
            }
        }
        return findings;
    }

    @Override
    public PreparedGarden prepare(GivenDocument document, Function<String, Progress> progress, Look look) {
        List<Finding> findings = findings(document.text());
        if (findings.stream().anyMatch(finding -> finding.weight() == Finding.Weight.STOP)) throw new Refused(findings);
        return new Sizes(document.text(), findings.size(), look);
    }

    private final class Sizes extends PreparedGarden {
        private final String document;
        private final int findings;
        private final Look look;

        Sizes(String document, int findings, Look look) {
            super(null);
            this.document = document;
            this.findings = findings;
            this.look = look;
        }

        @Override
        public Look look() {
            return look;
        }

        @Override
        public long sizeBytes() {
            return 10;
        }

        @Override
        public void jobSheet(SheetAsk ask, OutputStream out) throws IOException {
            out.write(shown().toString().getBytes(StandardCharsets.UTF_8));
        }

        private ObjectNode shown() {
            made.incrementAndGet();
            ObjectNode sheet = Late.MAPPER.createObjectNode();
            sheet.put("garden", read(document).path("name").asText());
            if (look == Look.FIRST) sheet.put("look", "first");
            ArrayNode beds = sheet.putArray("beds");
            for (JsonNode bed : read(document).path("beds"))
                beds.addObject().put("area", bed.path("width").asDouble() * bed.path("depth").asDouble() / 1e6);
            sheet.put("snags", findings);
            return sheet;
        }

        @Override
        public String slipJson() {
            return "{}";
        }

        @Override
        public void part(JobSheetPart part, OutputStream out) throws IOException {
            out.write(shown().path(part == JobSheetPart.TAKE_OFF ? "beds" : part.code()).toString().getBytes(StandardCharsets.UTF_8));
        }

        @Override
        public void print(String name, String format, int page, PrintAsk ask, OutputStream out) throws IOException {
            if (name.equals("plan")) {
                out.write(plan(document, format, ask));
                return;
            }
            int beds = read(document).path("beds").size();
            if (page > beds)
                throw new Refused(List.of(Told.saying(Finding.Weight.STOP, Place.field(name), "there are " + beds + " sheets").way(WayKind.TAKE_OUT)));
            out.write((name + " " + ask.stamp().stale().orElse("fresh") + " " + ask.stamp().revision()).getBytes(StandardCharsets.UTF_8));
        }

        @Override
        public void file(FileAsk ask, OutputStream out) throws IOException {
            String name = ask.name();
            String text = name.endsWith(".xlsx") ? "PK"
                    : name.endsWith(".ics") ? "BEGIN:VCALENDAR " + ask.garden() + " " + ask.revision()
                    : name.equals("plan.dxf") ? "0\r\nEOF\r\n"
                    : name.equals("slip.csv") ? "item,need\r\ntimber," + read(document).path("beds").size() + "\r\n"
                    : name.equals("weekends.csv") ? "weekend,item\r\n1,timber\r\n" : "item,price\r\n";
            out.write(text.getBytes(StandardCharsets.UTF_8));
        }
    }

    private static byte[] plan(String document, String format, PrintAsk ask) {
        double longest = 0;
        for (JsonNode bed : read(document).path("beds"))
            longest = Math.max(longest, bed.path("width").asDouble());
        double mm = longest / ask.plan().scale().orElse(50);
        if (mm > PAPER_LONG_MM)
            throw new Refused(List.of(Told.saying(Finding.Weight.STOP, Place.field("plan"), "does not fit; 1:" + (int) Math.ceil(longest / PAPER_LONG_MM) + " does")
                    .by(Fact.mm(mm - PAPER_LONG_MM)).way(WayKind.TAKE_OUT)));
        return ("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + mm + "mm\"><title>" + format + " "
                        + ask.paper().orElse("A3") + " " + ask.stamp().revision() + "</title></svg>")
                .getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public String tryOut(String asked, Function<GivenDocument, PreparedGarden> sheets) {
        if (!read(asked).has("garden"))
            throw new Refused(List.of(Told.saying(Finding.Weight.STOP, Place.field("try-out"), "has no garden").way(WayKind.TAKE_OUT)));
        return "{\"before\":{},\"after\":{}}";
    }

    @Override
    public String variation(PreparedGarden before, PreparedGarden after) {
        return "{\"before\":" + beds(before) + ",\"after\":" + beds(after) + "}";
    }

    private static int beds(PreparedGarden sheet) {
        return read(((Sizes) sheet).document).path("beds").size();
    }

    @Override
    public void variationSheet(PreparedGarden before, PreparedGarden after, String from, String to, OutputStream out) throws IOException {
        out.write((from + " to " + to).getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public String solve(String kind, String problem, double seconds, Function<String, Progress> progress) {
        if (!read(problem).has("pieces"))
            throw new Refused(List.of(Told.saying(Finding.Weight.STOP, Place.field("problem"), "has no pieces").way(WayKind.TAKE_OUT)));
        return "{\"name\":\"" + kind + "\",\"pieces\":"
                + read(problem).path("pieces").size() + "}";
    }

    /** Made when the first document is read: making it loads some 500 classes, and a server's start needs none. */
    private static final class Late {
        static final JsonMapper MAPPER = new JsonMapper();
    }

    private static JsonNode read(String text) {
        try {
            return Late.MAPPER.readTree(text);
        } catch (JsonProcessingException notJson) {
            throw new IllegalArgumentException("the server should have refused this", notJson);
        }
    }
}
