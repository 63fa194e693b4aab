package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.StreamSupport;
import lapyard.catalogue.Catalogue;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Crew;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.GardenState;
import lapyard.plan.Give;
import lapyard.plan.RackBoard;
import lapyard.plan.Saw;
import lapyard.plan.SearchLength;
import lapyard.plan.SlatBoards;
import lapyard.plan.StandingRules;
import lapyard.plan.Treatment;
import lapyard.plan.WayKind;
import lapyard.working.OwnFile;
import org.joda.money.CurrencyUnit;

/** Reads the garden document: strict, every finding with its place, every default written down. */
public final class GardenReader {
    /** Money of a garden that names none. */
    static final String CURRENCY = "GBP";

    /** The document format that this program writes and the newest that it reads. */
    public static final int FORMAT = 1;

    /** What older documents call treatments. */
    private static final Map<String, Treatment> OLD_TREATMENTS =
            Map.of("gas", Treatment.METHYL_BROMIDE, "arsenic", Treatment.CCA, "tar", Treatment.CREOSOTE);
    /** What a placement of a type may say without becoming a bed of its own making. */
    private static final Set<String> PLACING = Set.of("id", "name", "type", "at", "turn", "mirror", "give", "stage");

    private GardenReader() {}

    /** The JSON Schema (2020-12) of the garden document. */
    public static String schema() {
        return OwnFile.text("lapyard/json/garden.schema.json");
    }

    /** Whether the field is a number of millimetres. @param path from the garden, without places in lists: {@code /beds/screws/length} */
    public static boolean isLength(String path) {
        int name = path.lastIndexOf('/') + 1;
        FieldTable at = FieldTable.GARDEN;
        for (String step : path.substring(0, name).split("/")) {
            if (step.isEmpty()) continue;
            if (!at.has(step)) return false;
            at = at.inner(step);
        }
        return at.has(path.substring(name)) && at.field(path.substring(name)).unit().equals("mm");
    }

    /** @throws CannotAnswer when it is no JSON at all */
    public static Reading read(String text) {
        return read(DocumentText.parse(text));
    }

    /** As above, of a text that is parsed already. */
    public static Reading read(JsonNode document) {
        Cursor.Notes notes = new Cursor.Notes();
        try {
            return read(document, notes);
        } catch (Cursor.Full full) {
            return new Reading.Refused(notes.findings);
        }
    }

    static Reading read(JsonNode document, Cursor.Notes notes) {
        Cursor cursor = new Cursor(document, FieldTable.GARDEN, "", "", notes);
        if (notes.stopped()) return new Reading.Refused(notes.findings);
        format(cursor);
        String name = cursor.text("name");
        String currency = currency(cursor);
        boolean imperial = cursor.choice("units").equals("imperial");
        Cursor crew = cursor.object("crew");
        Catalogue catalogue = cursor.read("catalogue", lines -> CatalogueReader.read(lines, imperial, crew.raw("leadDays").asInt(Crew.Waits.USUAL.leadDays()),
                cursor.raw("tally").path("bought")));
        BedReader.Manner usual = cursor.read("defaults", defaults -> BedReader.Manner.OURS.changed(defaults, Optional.empty()));
        Map<String, Bed> types = new HashMap<>();
        Map<String, Give> gives = new HashMap<>();
        List<Bed> beds = beds(cursor, new BedReader(catalogue, usual), types, gives);
        Crew read = CrewReader.read(crew, TermsReader.barrowMinutes(cursor.object("loadIn")));
        Garden garden = new Garden(
                name,
                imperial,
                cursor.read("ground", ground -> GroundReader.read(ground, imperial)),
                beds,
                cursor.coded("paths", "path", "P", "path", GardenReader::path),
                new Garden.Goods(
                        catalogue,
                        cursor.coded("rack", "board", "R", "board", (board, id) -> Optional.of(board(board, id, catalogue))),
                        slatBoards(cursor),
                        cursor.like("saw", Saw.USUAL),
                        cursor.choice("search", SearchLength.SHORT)),
                new Garden.People(
                        read, crew.number("liftLimit"), cursor.read("tally", tally -> TallyReader.read(tally, read.dates().start())), cursor.read("handOver", handOver -> HandOverReader.read(handOver, beds))),
                terms(cursor, currency),
                accepted(cursor),
                notes.defaulted,
                new Garden.Asking(AskingReader.giving(cursor, beds, gives), AskingReader.wishes(cursor, beds, types)));
        crew.refuseUnknown();
        ShelfPiece.check(cursor);
        cursor.refuseUnknown();
        notes.findings.addAll(OutlineFindings.of(garden));
        return notes.stopped() ? new Reading.Refused(notes.findings) : new Reading.Read(garden, notes.findings);
    }

    private static void format(Cursor cursor) {
        int format = cursor.count("format", FORMAT);
        if (format != FORMAT && !cursor.notes.stopped()) {
            cursor.add(cursor.fault(FindingKind.FORMAT_UNKNOWN, "format").with("format", Fact.name(String.valueOf(format))).with("known", Fact.name(String.valueOf(FORMAT))).way(WayKind.NEWER_PROGRAM));
        }
    }

    private static Garden.Terms terms(Cursor cursor, String currency) {
        return new Garden.Terms(
                currency, TermsReader.wayIn(cursor), cursor.read("quote", quote -> TermsReader.quote(quote, cursor.has("quote"))), cursor.like("loads", StandingRules.USUAL),
                cursor.choice("state", GardenState.PENCILLED));
    }

    private static String currency(Cursor cursor) {
        String code = cursor.text("currency");
        try {
            CurrencyUnit unit = CurrencyUnit.of(code);
            if (!unit.isPseudoCurrency()) return unit.getCode();
        } catch (RuntimeException e) {
            // told below, as what is no money
        }
        cursor.misshapen("currency", "the ISO 4217 code of money that goods are paid in", cursor.raw("currency"), "\"GBP\"");
        return CURRENCY;
    }

    /** @param types and {@code gives}, by bed, are filled in */
    private static List<Bed> beds(Cursor garden, BedReader reader, Map<String, Bed> types, Map<String, Give> gives) {
        Map<String, Give> typeGives = new HashMap<>();
        Map<String, Cursor> typeCursors = types(garden, reader, types, typeGives);
        List<Cursor> placed = garden.objects("beds", "bed").stream()
                .map(bed -> bed.renamed("weekend", "stage"))
                .toList();
        List<String> given = placed.stream().map(bed -> bed.code("id", "")).toList();
        Set<String> taken = new HashSet<>();
        for (int i = 0; i < given.size(); i++) {
            if (!given.get(i).isEmpty() && !taken.add(given.get(i))) placed.get(i).twice("id", "bed code", Fact.name(given.get(i)), WayKind.ANOTHER_CODE);
        }
        List<String> ids = codes(given);
        List<Bed> beds = new ArrayList<>();
        for (int i = 0; i < placed.size(); i++) {
            String id = ids.get(i);
            Cursor bed = placed.get(i).named("bed " + id);
            Give give = AskingReader.give(bed, typeGives.getOrDefault(bed.raw("type").asText(""), Give.NOTHING));
            if (bed.has("give") || typeGives.containsKey(bed.raw("type").asText(""))) gives.put(id, give);
            bed(bed, id, typeCursors, types, reader).ifPresent(beds::add);
        }
        return beds;
    }

    /**
     * @param types that can be read, and what they {@code give}, by code: filled in
     * @return all types by code
     */
    private static Map<String, Cursor> types(Cursor garden, BedReader reader, Map<String, Bed> types, Map<String, Give> gives) {
        Map<String, Cursor> cursors = new LinkedHashMap<>();
        for (Cursor each : garden.objects("types", "type")) {
            Cursor type = each.renamed("weekend", "stage");
            String id = type.code("id", "");
            if (id.isEmpty()) {
                type.missing("id", "\"id\": \"T\"");
            } else if (cursors.putIfAbsent(id, type) != null) {
                type.twice("id", "type code", Fact.name(id), WayKind.ANOTHER_CODE);
            } else {
                Cursor named = type.named("type " + id);
                if (named.has("give")) gives.put(id, AskingReader.give(named, Give.NOTHING));
                reader.read(named, id, id).ifPresent(bed -> types.put(id, bed));
            }
        }
        return cursors;
    }

    /** Each bed's code; where it has none, the next letter that no bed has. */
    private static List<String> codes(List<String> given) {
        Iterator<String> free = Bed.freeLetters(given);
        return given.stream().map(code -> code.isEmpty() ? free.next() : code).toList();
    }

    /** The codes of the beds of a document that can be read, as its garden has them. */
    public static List<String> beds(JsonNode document) {
        return codes(StreamSupport.stream(document.path("beds").spliterator(), false).map(bed -> bed.path("id").asText("")).toList());
    }

    private static Optional<Bed> bed(
            Cursor bed,
            String id,
            Map<String, Cursor> typeCursors,
            Map<String, Bed> types,
            BedReader reader) {
        String type = bed.text("type");
        if (type.isEmpty()) return reader.read(bed, id, "");
        if (!typeCursors.containsKey(type)) {
            bed.add(bed.noSuch("type", "type", type, typeCursors.keySet()).way(WayKind.ADD_TO, Fact.name("\"types\"")));
            return Optional.empty();
        }
        if (!types.containsKey(type)) return Optional.empty();
        ObjectNode own = (ObjectNode) bed.node();
        boolean plain = true;
        for (Iterator<String> names = own.fieldNames(); names.hasNext(); ) plain &= PLACING.contains(names.next());
        if (plain) {
            int before = bed.notes.findings.size();
            String name = bed.text("name");
            Placement placement = BedReader.placement(bed);
            int stage = bed.count("stage", types.get(type).stage());
            return bed.notes.findings.size() > before
                    ? Optional.empty()
                    : Optional.of(types.get(type).placedAs(id, name, placement, stage));
        }
        ObjectNode merged = (ObjectNode) typeCursors.get(type).node().deepCopy();
        merged.remove("id");
        if (own.has("width") || own.has("depth") || own.has("walls") || own.has("outline")) {
            boolean sized = own.has("width") || own.has("depth");
            merged.remove(List.of("walls", "outline"));
            if (!sized) merged.remove(List.of("width", "depth"));
        }
        merged.setAll(own);
        return reader.read(bed.over(merged), id, type);
    }

    private static Optional<GardenPath> path(Cursor path, String id) {
        String name = path.text("name");
        var line = path.points("line");
        for (int i = 1; i < line.size(); i++) {
            if (line.get(i).equals(line.get(i - 1))) {
                path.add(path.fault(FindingKind.POINTS_SAME, "line").with("first", Fact.name(String.valueOf(i)))
                        .with("second", Fact.name(String.valueOf(i + 1))).way(WayKind.TAKE_ONE_OUT));
            }
        }
        if (line.size() < 2) path.few("line", line.size(), 2, "points");
        double width = path.number("width");
        List<GardenPath.Layer> layers = path.each("layers", "layer", layer -> new GardenPath.Layer(layer.text("material"), layer.number("depth")));
        String edging = path.text("edging");
        String membrane = path.text("membrane");
        double lap = path.number("membraneLap", GardenPath.USUAL_LAP_MM);
        return line.size() < 2 ? Optional.empty() : Optional.of(new GardenPath(id, name, line, width, layers, edging, membrane, lap));
    }

    private static RackBoard board(Cursor board, String id, Catalogue catalogue) {
        String section = board.text("section", BedReader.Manner.OURS.section());
        if (catalogue.section(section).isEmpty()) {
            board.add(board.noSuch("section", "section", section, List.of()).way(WayKind.ADD_TO, Fact.name("\"sections\" of the catalogue")));
        }
        double length = board.neededLength("length");
        List<RackBoard.Span> bad = board.list("bad").stream().flatMap(span -> span(board, span, length).stream()).toList();
        int count = board.count("count");
        int goodFaces = board.count("goodFaces");
        String origin = board.text("origin");
        boolean coated = board.flag("coated");
        RackBoard.Measured measured = new RackBoard.Measured(board.number("weight"), board.number("thickness"), board.number("height"));
        RackBoard.Past past = new RackBoard.Past(origin, coated, treatment(board), board.text("checkedBy"));
        return new RackBoard(id, section, length, count, bad, goodFaces, past, measured, board.price("salvage"));
    }

    private static Optional<RackBoard.Span> span(Cursor board, JsonNode span, double length) {
        if (!span.isArray() || span.size() != 2 || !span.get(0).isNumber() || !span.get(1).isNumber()) {
            board.misshapen("bad", "parts of the board as two numbers of mm", span, "[[0, 150]]");
            return Optional.empty();
        }
        double from = span.get(0).doubleValue();
        double to = span.get(1).doubleValue();
        if (!(from >= 0 && from < to && to <= length)) {
            board.add(board.fault(FindingKind.BAD_PART_OFF, "bad").with("from", Fact.mm(from)).with("to", Fact.mm(to)).with("length", Fact.mm(length))
                    .by(Fact.mm(Math.max(Math.max(-from, to - length), Math.max(from - to, 0)))).way(WayKind.MEASURE_FROM_MARK));
            return Optional.empty();
        }
        return Optional.of(new RackBoard.Span(from, to));
    }

    private static List<SlatBoards> slatBoards(Cursor garden) {
        return garden.coded("slatBoards", "slat boards", "S", "slat board", (boards, id) -> Optional.of(new SlatBoards(
                id, boards.neededLength("width"), boards.neededLength("thickness"), boards.neededLength("length"), boards.count("count"), treatment(boards))));
    }

    private static Treatment treatment(Cursor board) {
        Treatment old = OLD_TREATMENTS.get(board.raw("treatment").asText());
        return old != null ? old : Treatment.valueOf(Cursor.constant(board.choice("treatment")));
    }

    private static Map<String, String> accepted(Cursor garden) {
        Map<String, String> accepted = new LinkedHashMap<>();
        garden.each("accepted", "accepted snag", one -> {
            String where = one.text("where");
            String reason = one.text("reason");
            if (where.isEmpty() || reason.isEmpty()) {
                one.needed("{\"where\": \"bed M, wall D\", \"reason\": \"a fence is behind it\"}", "\"where\"", "\"reason\"");
            }
            return accepted.put(where, reason);
        });
        return accepted;
    }

    /** An outline that fits no bed is also no yard: one reading serves both. */
    static Optional<Outline> outline(Cursor cursor, String field) {
        return corners(cursor, field, true).map(corners -> new Outline(corners).counterClockwise());
    }

    /** Three or more; the first may stand again at the end. {@code empty} is whether nothing is said of an empty list. */
    static Optional<List<Point>> corners(Cursor cursor, String field, boolean empty) {
        List<Point> corners = cursor.points(field);
        if (corners.size() > 1 && corners.get(0).equals(corners.get(corners.size() - 1))) corners.remove(corners.size() - 1);
        if (corners.size() >= 3) return Optional.of(corners);
        if (!corners.isEmpty() || !empty) cursor.few(field, corners.size(), 3, "corners");
        return Optional.empty();
    }
}
