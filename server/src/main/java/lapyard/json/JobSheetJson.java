package lapyard.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import lapyard.construction.BedWork;
import lapyard.construction.Piece;
import lapyard.construction.PieceEnd;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.job.JobSheet;
import lapyard.job.SawAdvice;
import lapyard.job.StagingCost;
import lapyard.plan.Bed;
import lapyard.plan.RackBoard;
import lapyard.words.Wording;
import lapyard.working.Quantity;
import lapyard.words.Wording;
import lapyard.working.Working;

/** The wire form of a job sheet, a slip and findings. Numbers of mm to 0.1, other amounts to six decimals. */
public final class JobSheetJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private JobSheetJson() {}

    /** @param revision of the stored garden; empty where nothing was stored */
    public static ObjectNode of(JobSheet sheet, Optional<Long> revision) {
        ObjectNode json = NODES.objectNode();
        json.put("garden", sheet.garden().name());
        revision.ifPresentOrElse(number -> json.put("revision", number), () -> json.putNull("revision"));
        json.set("ground", GroundJson.of(sheet));
        ArrayNode beds = json.putArray("beds");
        Wording words = Wording.of(sheet.garden().imperial());
        sheet.beds().forEach(bed -> beds.add(bed(bed, words)));
        ArrayNode paths = json.putArray("paths");
        for (JobSheet.PathSheet path : sheet.paths()) {
            ObjectNode one = paths.addObject();
            one.put("id", path.path().id());
            one.put("name", path.path().name());
            ArrayNode cover = one.putArray("cover");
            path.cover().forEach(outline -> cover.add(outline(outline)));
            one.set("quantities", quantities(path.quantities()));
        }
        json.set("cutting", cuttings(sheet.cutting()));
        json.set("strips", cuttings(sheet.strips()));
        ArrayNode rolls = json.putArray("rolls");
        for (JobSheet.MaterialRolls material : sheet.rolls()) {
            ObjectNode one = rolls.addObject();
            one.put("material", material.material());
            one.set("metresBedByBed", number(material.metresBedByBed(), 3));
            money(one, "costBedByBed", material.costBedByBed());
            one.set("result", RollsJson.write(material.result()));
        }
        json.set("slip", slip(sheet));
        json.set("weekends", WeekendsJson.of(sheet));
        json.set("tally", TallyJson.of(sheet));
        json.set("snags", FindingsJson.of(sheet.snags(), words));
        Wording.caution(sheet.snags()).ifPresent(caution -> json.put("caution", caution));
        ArrayNode rack = json.putArray("rack");
        for (RackBoard board : sheet.garden().goods().rack()) {
            ObjectNode one = rack.addObject();
            one.put("id", board.id());
            one.put("section", board.section());
            one.set("length", number(board.lengthMm(), 1));
            one.put("count", board.count());
        }
        SafetyJson.into(json, sheet);
        ArrayNode defaults = json.putArray("defaults");
        sheet.garden().defaulted().forEach(defaults::add);
        return json;
    }

    /** The advice of each section of wall timber, as it stands beside a job sheet under the key {@code advice}. */
    public static ArrayNode advice(List<SawAdvice> advice) {
        return SawWorkJson.advice(advice);
    }

    private static ObjectNode bed(JobSheet.BedSheet sheet, Wording words) {
        BedWork work = sheet.work();
        Bed bed = work.bed();
        ObjectNode json = NODES.objectNode();
        json.put("id", bed.id());
        json.put("name", bed.name());
        json.put("type", bed.type());
        json.put("stage", bed.stage());
        json.put("section", bed.section().id());
        json.put("courses", bed.courses());
        json.set("height", number(bed.heightMm(), 1));
        json.set("outline", outline(bed.inYard()));
        json.set("inner", outline(work.frame().inner().placed(bed.placement())));
        ArrayNode walls = json.putArray("walls");
        for (int side = 0; side < bed.outline().sides(); side++) {
            ObjectNode wall = walls.addObject();
            String letter = Bed.wallLetter(side);
            wall.put("wall", letter);
            wall.set("length", number(bed.outline().sideMm(side), 1));
            wall.put("seen", !bed.walls().hidden().contains(letter));
            wall.put("joint", bed.joint(side).name().toLowerCase(Locale.ROOT));
            wall.set("turn", number(bed.outline().turnDeg(side), 1));
        }
        ArrayNode floor = json.putArray("floor");
        work.bottom().floor().forEach(rectangle -> floor.add(rectangle(rectangle)));
        ArrayNode pieces = json.putArray("pieces");
        work.pieces().forEach(piece -> pieces.add(piece(piece)));
        ArrayNode seams = json.putArray("seams");
        work.frame().seams().forEach(seam -> {
            ObjectNode one = seams.addObject();
            one.put("course", seam.course());
            one.put("wall", seam.wall());
            one.set("at", number(seam.atMm(), 1));
        });
        ArrayNode notches = json.putArray("notches");
        work.frame().notches().forEach(notch -> {
            ObjectNode one = notches.addObject();
            one.put("wall", notch.wall());
            one.set("at", number(notch.atMm(), 1));
        });
        ArrayNode strips = json.putArray("strips");
        work.bottom().strips().forEach(strip -> {
            ObjectNode one = strips.addObject();
            one.put("id", strip.id());
            one.put("use", strip.use());
            one.set("length", number(strip.lengthMm(), 1));
        });
        ArrayNode slats = json.putArray("slats");
        work.bottom().slats().forEach(cut -> {
            ObjectNode one = slats.addObject();
            one.set("length", number(cut.lengthMm(), 1));
            one.put("count", cut.count());
        });
        ArrayNode liner = json.putArray("liner");
        work.liner().forEach(piece -> {
            ObjectNode one = liner.addObject();
            one.put("id", piece.id());
            one.set("width", number(piece.widthMm(), 1));
            one.set("height", number(piece.heightMm(), 1));
            one.put("layingOrder", piece.layingOrder());
            if (piece.wall().isEmpty()) {
                one.set("floor", rectangle(piece.floor()));
            } else {
                one.put("wall", piece.wall());
            }
        });
        json.set("quantities", quantities(sheet.quantities()));
        FixingsJson.into(json, work);
        json.set("standing", StandingJson.of(sheet.standing(), words));
        return json;
    }

    private static ObjectNode piece(Piece piece) {
        ObjectNode json = NODES.objectNode();
        json.put("mark", piece.mark());
        json.put("course", piece.course());
        json.put("wall", piece.wall());
        json.put("part", piece.part());
        json.set("length", number(piece.lengthMm(), 1));
        json.put("runsPast", piece.runsPast().name().toLowerCase(Locale.ROOT));
        json.set("from", number(piece.fromMm(), 1));
        json.put("seen", piece.seen());
        json.set("lies", outline(piece.lies()));
        json.set("short", number(piece.shortMm(), 1));
        json.set("outerFace", number(piece.outerFaceMm(), 1));
        json.set("innerFace", number(piece.innerFaceMm(), 1));
        json.set("start", end(piece.start()));
        json.set("end", end(piece.end()));
        return json;
    }

    /** Places of the end's outer and inner face along the wall from its outer start corner; {@code set} 0 is a square cut. */
    private static ObjectNode end(PieceEnd end) {
        ObjectNode json = NODES.objectNode();
        json.put("cut", end.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        json.set("outer", number(end.outerMm(), 1));
        json.set("inner", number(end.innerMm(), 1));
        json.set("set", number(end.setDeg(), 1));
        return json;
    }

    private static ArrayNode cuttings(List<JobSheet.SectionCutting> cuttings) {
        ArrayNode json = NODES.arrayNode();
        for (JobSheet.SectionCutting cutting : cuttings) {
            ObjectNode one = json.addObject();
            one.put("section", cutting.section());
            one.put("boardsBedByBed", cutting.boardsBedByBed());
            one.set("result", CuttingJson.write(cutting.result()));
            one.setAll(SawWorkJson.of(cutting.saw()));
        }
        return json;
    }

    public static ArrayNode quantities(List<Quantity> quantities) {
        ArrayNode json = NODES.arrayNode();
        for (Quantity quantity : quantities) {
            ObjectNode one = json.addObject();
            one.put("key", quantity.key());
            one.set("value", number(quantity.value(), 6));
            one.put("unit", quantity.unit());
            one.set("working", working(quantity.working()));
        }
        return json;
    }

    static ObjectNode working(Working working) {
        ObjectNode json = NODES.objectNode();
        ArrayNode inputs = json.putArray("inputs");
        for (Working.Input input : working.inputs()) {
            ObjectNode one = inputs.addObject();
            one.put("name", input.name());
            one.set("value", number(input.value(), 6));
            one.put("unit", input.unit());
        }
        json.put("formula", working.formula());
        json.put("source", working.source());
        return json;
    }

    /** Money is text, so that no reader rounds it. */
    public static ObjectNode slip(JobSheet sheet) {
        Map<String, Double> areasM2 = new HashMap<>();
        sheet.beds().forEach(bed -> areasM2.put("bed " + bed.work().bed().id(), bed.work().frame().inner().areaMm2() / 1e6));
        return SlipJson.of(sheet.slip(), areasM2);
    }

    /** The weekends with what staging costs, which takes longer to work out than the rest of them. */
    public static ObjectNode weekends(JobSheet sheet) {
        ObjectNode json = WeekendsJson.of(sheet);
        json.set("cost", WeekendsJson.cost(StagingCost.of(sheet)));
        return json;
    }

    static void money(ObjectNode json, String field, Optional<BigDecimal> amount) {
        amount.ifPresentOrElse(money -> json.put(field, money.toPlainString()), () -> json.putNull(field));
    }

    static ArrayNode outline(Outline outline) {
        ArrayNode corners = NODES.arrayNode();
        for (Point corner : outline.corners()) {
            corners.addArray().add(number(corner.x(), 1)).add(number(corner.y(), 1));
        }
        return corners;
    }

    static ObjectNode rectangle(Rectangle rectangle) {
        ObjectNode json = NODES.objectNode();
        json.set("x", number(rectangle.x(), 1));
        json.set("y", number(rectangle.y(), 1));
        json.set("width", number(rectangle.widthMm(), 1));
        json.set("depth", number(rectangle.depthMm(), 1));
        return json;
    }

    /** A plain decimal without trailing zeros; null where it is not finite. */
    static JsonNode number(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return NODES.nullNode();
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros();
        return rounded.scale() <= 0 && rounded.precision() - rounded.scale() <= 18
                ? NODES.numberNode(rounded.longValueExact())
                : NODES.numberNode(rounded);
    }

    public static String text(JsonNode json) {
        try {
            return DocumentText.MAPPER.writer(SerializationFeature.INDENT_OUTPUT).writeValueAsString(json) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
