package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import lapyard.exchange.CoordinateCsv;
import lapyard.exchange.DxfReader;
import lapyard.exchange.GeoJsonReader;
import lapyard.exchange.LayeredDrawing;
import lapyard.exchange.SiteDrawing;
import lapyard.exchange.SiteDrawing.Layer;
import lapyard.exchange.SiteDrawing.LengthUnit;
import lapyard.exchange.SiteDrawing.Spot;
import lapyard.geometry.Jts;
import lapyard.geometry.Point;
import lapyard.json.Wire.IfGiven;
import lapyard.json.Wire.To;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.FindingList;
import lapyard.plan.KeepClearKind;
import lapyard.plan.SurfaceKind;
import lapyard.plan.WayKind;
import lapyard.words.Wording;
import lapyard.working.BrokenRule;
import org.locationtech.jts.geom.Envelope;

/**
 * A yard from a DXF, GeoJSON or CSV file: what is on its layers, and the garden with what was taken of them. The lower left corner of
 * the outline, or of all that is taken where there is none, becomes the origin of a garden that has no yard yet.
 */
public final class SiteFileJson {
    /** Numbers are the same however their zeros are written. */
    private static final Comparator<JsonNode> BY_VALUE =
            (one, other) -> one.isNumber() && other.isNumber() ? one.decimalValue().compareTo(other.decimalValue()) : one.equals(other) ? 0 : 1;

    private static final String OUTLINE = "outline";
    private static final String LEVELS = "levels";
    private static final List<String> SURFACES = Stream.of(SurfaceKind.values()).map(SurfaceKind::code).toList();
    private static final List<String> THINGS = Stream.of(KeepClearKind.values()).filter(kind -> kind != KeepClearKind.GATE).map(KeepClearKind::code).sorted().toList();
    /** Words of layers that are ours under another name, most telling first. */
    private static final Map<String, List<String>> WORDS = new TreeMap<>(Map.of(
            OUTLINE, List.of("outline", "boundary", "yard", "plot", "site"), LEVELS, List.of("level", "height", "spot"), "slab", List.of("slab", "paving", "patio"),
            "concrete", List.of("concrete"), "gravel", List.of("gravel"), "grass", List.of("grass", "lawn", "turf"), "deck", List.of("deck"),
            "tree", List.of("tree"), "cover", List.of("cover", "manhole"), "drain", List.of("drain", "sewer")));
    private static final double LARGEST_MM = 1_000_000;

    private SiteFileJson() {}

    /**
     * @param body {@code {"file": text, "unit": "m", "take": {"LAYER": "outline"}, "garden": {...}}}; unit, take and garden may be left out
     * @throws lapyard.plan.CannotAnswer for a field that is not what it should be
     * @throws CannotAnswer       when the body is no JSON at all
     */
    public static ObjectNode preview(String body) {
        return Asked.read("site-file", DocumentText.parse(body), ask -> {
            String file = Asked.text(ask, "file");
            Optional<LengthUnit> unit = ask.has("unit") ? Optional.of(ask.choice("unit", LengthUnit.MM)) : Optional.empty();
            Map<String, String> take = new TreeMap<>();
            List<String> taken = Stream.of(List.of(OUTLINE, LEVELS), SURFACES, THINGS).flatMap(List::stream).toList();
            for (Map.Entry<String, JsonNode> one : Asked.object(ask, "take").properties()) {
                String as = one.getValue().asText();
                if (!as.isEmpty() && !taken.contains(as)) ask.add(ask.fault(FindingKind.FIELD_CHOICE, "take").with("value", Fact.name(BrokenRule.cut(as))).way(WayKind.USE_WORD, new Fact.Choice(taken)));
                if (!as.isEmpty()) take.put(one.getKey(), as);
            }
            return preview(drawing(file, unit), unit, take, Asked.object(ask, "garden"));
        });
    }

    /** By what it begins with. */
    static SiteDrawing drawing(String text, Optional<LengthUnit> unit) {
        String plain = DocumentText.unmarked(text);
        String begins = plain.strip();
        if (begins.startsWith("AC10")) return refused("dxf", "this is a DWG file, which is no open format", "save it as ASCII DXF");
        if (begins.startsWith("AutoCAD Binary DXF")) return refused("dxf", "this is a binary DXF file", "save it as ASCII DXF");
        if (begins.startsWith("PK")) return refused("csv", "this is a packed file", "unpack it, or save the table as CSV");
        if (begins.startsWith("{")) {
            try {
                return GeoJsonReader.read(DocumentText.parse(begins));
            } catch (CannotAnswer unreadable) {
                return refused("geojson", Wording.METRIC.text(unreadable.findings().get(0)).replaceAll("\\.$", ""), "save it again as GeoJSON");
            }
        }
        String first = begins.lines().findFirst().orElse("").strip();
        return first.equals("0") || first.equals("999") ? DxfReader.read(begins) : CoordinateCsv.read(plain, unit);
    }

    private static SiteDrawing refused(String format, String text, String way) {
        return new SiteDrawing(format, Optional.empty(), List.of(), Map.of(), List.of(new SiteDrawing.Bad(0, text, way)));
    }

    /** {@code garden} in the answer is null where nothing was taken, because it was not asked, a unit is missing, or something is wrong. */
    private static ObjectNode preview(SiteDrawing drawing, Optional<LengthUnit> told, Map<String, String> take, ObjectNode garden) {
        Optional<LengthUnit> unit = drawing.unit().or(() -> told);
        List<SiteDrawing.Bad> bad = new ArrayList<>(drawing.bad());
        List<Shown> layers = bad.isEmpty() ? drawing.layers().stream().map(layer -> shown(layer, unit)).toList() : List.of();
        List<Finding> findings = List.of();
        Optional<ObjectNode> with = Optional.empty();
        if (bad.isEmpty() && !take.isEmpty() && unit.isPresent()) {
            ObjectNode changed = garden.deepCopy();
            taken(drawing, unit.get(), take, changed, bad);
            if (bad.isEmpty()) {
                Reading reading = GardenReader.read(changed);
                findings = FindingList.stops(reading.findings());
                with = Optional.of(changed).filter(whole -> reading instanceof Reading.Read);
            }
        }
        return Wire.of(new Preview(drawing.format(), unit.map(LengthUnit::code), drawing.unit().isPresent(), layers,
                drawing.passedOver().entrySet().stream().map(passed -> new Passed(passed.getKey(), passed.getValue())).toList(),
                bad.stream().map(one -> new Wrong(one.line() > 0 ? Optional.of(one.line()) : Optional.empty(), one.text(), one.way())).toList(),
                findings, with));
    }

    private record Preview(String format, Optional<String> unit, boolean unitFromFile, List<Shown> layers, List<Passed> passedOver, List<Wrong> bad,
            List<Finding> findings, Optional<ObjectNode> garden) {}

    /** In the file's own unit where none is known, so that whoever is asked for it sees what it must be. */
    private record Shown(String name, long closed, long open, int points, @To(1) double width, @To(1) double depth, String suggested) {}

    private record Passed(String what, Object count) {}

    private record Wrong(@IfGiven Optional<Long> line, String text, String way) {}

    private static Shown shown(Layer layer, Optional<LengthUnit> unit) {
        List<Point> all = new ArrayList<>();
        layer.lines().forEach(line -> all.addAll(line.points()));
        layer.spots().forEach(spot -> all.add(spot.at()));
        Envelope box = Jts.box(all);
        long closed = layer.lines().stream().filter(SiteDrawing.Line::closed).count();
        double scale = unit.map(one -> one.mm).orElse(1.0);
        return new Shown(layer.name(), closed, layer.lines().size() - closed, layer.spots().size(), box.getWidth() * scale,
                box.getHeight() * scale, suggested(layer));
    }

    /** What the layer's name says; empty where it says nothing. */
    private static String suggested(Layer layer) {
        String name = layer.name().toLowerCase(Locale.ROOT);
        for (String kind : SURFACES) if (name.equals("surface " + kind)) return kind;
        for (String kind : THINGS) if (name.equals("keep clear " + kind)) return kind;
        boolean spots = layer.lines().isEmpty();
        for (Map.Entry<String, List<String>> one : WORDS.entrySet())
            if (one.getValue().stream().anyMatch(name::contains) && (spots ? !one.getKey().equals(OUTLINE) && !SURFACES.contains(one.getKey()) : !one.getKey().equals(LEVELS)))
                return one.getKey();
        return "";
    }

    /** Writes what is taken into the garden's ground, or says why not. */
    private static void taken(SiteDrawing drawing, LengthUnit unit, Map<String, String> take, ObjectNode garden, List<SiteDrawing.Bad> bad) {
        List<Layer> layers = drawing.layers().stream().filter(layer -> take.containsKey(layer.name())).toList();
        for (String name : take.keySet())
            if (layers.stream().noneMatch(layer -> layer.name().equals(name))) bad.add(new SiteDrawing.Bad(0, "the file has no layer \"" + BrokenRule.cut(name) + "\"", "take one of those that it has"));
        List<Layer> outlines = layers.stream().filter(layer -> take.get(layer.name()).equals(OUTLINE)).toList();
        List<SiteDrawing.Line> yards = outlines.stream().flatMap(layer -> layer.lines().stream()).toList();
        if (!outlines.isEmpty() && (yards.size() != 1 || !yards.get(0).closed()))
            bad.add(new SiteDrawing.Bad(0, "the outline of a yard is one closed line, and there are " + yards.stream().filter(SiteDrawing.Line::closed).count()
                    + " closed and " + yards.stream().filter(line -> !line.closed()).count() + " open ones", "join its lines in the file, or take another layer"));
        if (!bad.isEmpty()) return;

        ObjectNode ground = garden.path("ground") instanceof ObjectNode there ? there : garden.putObject("ground");
        boolean hasYard = ground.has("outline") || ground.has("survey");
        List<Point> anchor = new ArrayList<>();
        (yards.isEmpty() ? layers.stream().flatMap(layer -> layer.lines().stream()).toList() : yards).forEach(line -> anchor.addAll(line.points()));
        if (anchor.isEmpty()) layers.forEach(layer -> layer.spots().forEach(spot -> anchor.add(spot.at())));
        Envelope box = Jts.box(anchor);
        // a second file of the same yard keeps its own origin only where the yard came with it
        boolean own = isOwn(drawing);
        Envelope from = own || hasYard && yards.isEmpty() ? new Envelope(0, 0, 0, 0) : box;
        if (box.getWidth() * unit.mm > LARGEST_MM || box.getHeight() * unit.mm > LARGEST_MM) {
            bad.add(new SiteDrawing.Bad(0, "in " + unit.code() + " it is " + Wire.number(box.getWidth() * unit.mm / 1000, 1) + " m by " + Wire.number(box.getHeight() * unit.mm / 1000, 1)
                    + " m, larger than any yard", "give the unit of the file, or take fewer layers"));
            return;
        }
        Placing placing = new Placing(unit, from);
        if (!yards.isEmpty()) {
            ground.remove("survey");
            ground.set("outline", placing.line(yards.get(0).points()));
        }
        double top = own ? 0 : layers.stream().filter(layer -> take.get(layer.name()).equals(LEVELS)).flatMap(layer -> layer.spots().stream())
                .filter(spot -> spot.height().isPresent()).mapToDouble(spot -> spot.height().getAsDouble()).max().orElse(0);
        if (take.containsValue(LEVELS)) ground.putArray(LEVELS);
        for (Layer layer : layers) {
            String as = take.get(layer.name());
            if (as.equals(LEVELS)) levels(layer, placing, top, ground, bad);
            else if (SURFACES.contains(as)) surfaces(layer, as, placing, ground, bad);
            else if (!as.equals(OUTLINE)) things(layer, as, placing, ground);
        }
    }

    private static void levels(Layer layer, Placing placing, double top, ObjectNode ground, List<SiteDrawing.Bad> bad) {
        for (Spot spot : layer.spots()) {
            OptionalDouble drop = spot.drop().isPresent() ? spot.drop() : spot.height().isPresent() ? OptionalDouble.of(top - spot.height().getAsDouble()) : OptionalDouble.empty();
            if (drop.isEmpty()) {
                bad.add(new SiteDrawing.Bad(0, "a point of layer \"" + BrokenRule.cut(layer.name()) + "\" has no height", "give each point of the levels its height"));
                return;
            }
            ground.withArray(LEVELS).addObject().<ObjectNode>set("at", placing.point(spot.at())).set("drop", placing.mm(drop.getAsDouble()));
        }
        if (layer.spots().isEmpty()) bad.add(new SiteDrawing.Bad(0, "layer \"" + BrokenRule.cut(layer.name()) + "\" has no points for levels", "take a layer of points with heights"));
    }

    private static void surfaces(Layer layer, String kind, Placing placing, ObjectNode ground, List<SiteDrawing.Bad> bad) {
        for (SiteDrawing.Line line : layer.lines()) {
            if (!line.closed()) {
                bad.add(new SiteDrawing.Bad(0, "layer \"" + BrokenRule.cut(layer.name()) + "\" holds a line that is not closed, and a surface is", "close it in the file, or take the layer as something else"));
                return;
            }
            add(ground.withArray("surfaces"), kind, "outline", placing.line(line.points()));
        }
    }

    private static void things(Layer layer, String kind, Placing placing, ObjectNode ground) {
        for (SiteDrawing.Line line : layer.lines())
            add(ground.withArray("keepClear"), kind, line.closed() ? "outline" : "line", placing.line(line.points()));
        for (Spot spot : layer.spots()) add(ground.withArray("keepClear"), kind, "at", placing.point(spot.at()));
    }

    /** What the garden has already, perhaps with what a drawing does not hold, is not there twice. */
    private static void add(ArrayNode there, String kind, String shape, ArrayNode points) {
        for (JsonNode one : there) if (one.path("kind").asText().equals(kind) && one.path(shape).equals(BY_VALUE, points)) return;
        there.addObject().put("kind", kind).set(shape, points);
    }

    /** A plan that we drew, as nobody else has a layer of that name: its places are the garden's own, its levels lie below the string at 0. */
    private static boolean isOwn(SiteDrawing drawing) {
        return drawing.layers().stream().anyMatch(layer -> layer.name().equals(LayeredDrawing.INNER_FACES));
    }

    /** From the file's place and unit to the garden's. */
    private record Placing(LengthUnit unit, Envelope from) {
        JsonNode mm(double length) {
            return Wire.number(length * unit.mm, 1);
        }

        ArrayNode point(Point point) {
            return DocumentText.MAPPER.createArrayNode().add(mm(point.x() - from.getMinX())).add(mm(point.y() - from.getMinY()));
        }

        ArrayNode line(List<Point> points) {
            ArrayNode line = DocumentText.MAPPER.createArrayNode();
            points.forEach(point -> line.add(point(point)));
            return line;
        }
    }
}
