package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import lapyard.construction.Piece;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.AccessSheet;
import lapyard.ground.BedFall;
import lapyard.ground.BedGround;
import lapyard.ground.Fall;
import lapyard.ground.GroundSheet;
import lapyard.ground.Nearness;
import lapyard.ground.Pegs;
import lapyard.ground.SettingOut;
import lapyard.ground.SunHours;
import lapyard.job.JobSheet;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.Ground;
import lapyard.words.Wording;

/** The ground in a job sheet, and its parts that are worked out only when asked for: pegs and sun. */
public final class GroundJson {
    /** Names of the parts. */
    public static final List<String> PARTS = List.of("ground", "pegs", "sun");

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mmxxx");

    private GroundJson() {}

    /** @throws IllegalArgumentException for a part that is none of {@link #PARTS} */
    public static ObjectNode part(String part, JobSheet sheet) {
        return switch (part) {
            case "ground" -> of(sheet);
            case "pegs" -> pegs(SettingOut.of(sheet.garden(), sheet.ground().fall()), Wording.of(sheet.garden().imperial()));
            case "sun" -> sun(SunHours.of(sheet.garden(), sheet.ground().fall()));
            default -> throw new IllegalArgumentException("the ground has no part " + part);
        };
    }

    static ObjectNode of(JobSheet sheet) {
        GroundSheet ground = sheet.ground();
        ObjectNode json = NODES.objectNode();
        ArrayNode outline = json.putArray("outline");
        sheet.garden().ground().outline().forEach(yard -> corners(outline, yard.corners()));
        usual(json.putObject("usual"));
        ground.survey().ifPresent(survey -> {
            ObjectNode own = json.putObject("survey");
            corners(own.putArray("corners"), survey.corners());
            own.set("closingError", number(survey.closingErrorMm(), 1));
            own.set("quantities", JobSheetJson.quantities(survey.quantities()));
        });
        ground.fall().ifPresent(fall -> fall(json, fall, sheet.garden().ground().levels()));
        json.set("quantities", JobSheetJson.quantities(ground.quantities()));
        ArrayNode beds = json.putArray("beds");
        for (int i = 0; i < ground.beds().size(); i++) {
            bed(beds.addObject(), ground.beds().get(i), sheet.beds().get(i));
        }
        ArrayNode keepClear = json.putArray("keepClear");
        ground.keepClear().forEach(one -> nearness(keepClear.addObject(), one));
        ArrayNode rims = json.putArray("rims");
        ground.rims().forEach(rim -> {
            ObjectNode one = rims.addObject();
            one.put("bed", rim.bed());
            one.set("quantities", JobSheetJson.quantities(rim.quantities()));
        });
        access(json.putObject("access"), ground.access());
        return json;
    }

    /** What the page offers before anything is typed. */
    private static void usual(ObjectNode usual) {
        ObjectNode clearances = usual.putObject("clearances");
        GroundReader.CLEARANCE.entrySet().stream()
                .sorted(java.util.Map.Entry.comparingByKey())
                .forEach(entry -> clearances.set(entry.getKey(), number(entry.getValue(), 1)));
        ObjectNode standards = usual.putObject("standards");
        for (AccessStandard standard : List.of(AccessStandard.USUAL, AccessStandard.ADA_2010)) {
            standard(standards.putObject(standard.id()), standard);
        }
    }

    private static void standard(ObjectNode json, AccessStandard standard) {
        json.put("name", standard.name());
        json.put("source", standard.source());
        json.set("path", number(standard.pathMm(), 1));
        json.set("pinch", number(standard.pinchMm(), 1));
        json.set("pinchLength", number(standard.pinchLengthMm(), 1));
        json.set("turning", number(standard.turningMm(), 1));
        json.set("passing", number(standard.passingMm(), 1));
        json.set("passingEvery", number(standard.passingEveryMm(), 1));
        json.set("gradient", number(standard.gradient(), 1));
        json.set("crossGradient", number(standard.crossGradient(), 1));
        json.set("reach", number(standard.reachMm(), 1));
        json.set("stand", number(standard.standMm(), 1));
        json.set("standAlong", number(standard.standAlongMm(), 1));
        json.set("rimLeast", number(standard.rimLeastMm(), 1));
        json.set("rimMost", number(standard.rimMostMm(), 1));
    }

    private static void fall(ObjectNode json, Fall fall, List<Ground.Level> levels) {
        ObjectNode own = json.putObject("fall");
        own.set("oneIn", number(fall.oneIn(), 2));
        ArrayNode downhill = own.putArray("downhill");
        double steep = Math.hypot(fall.a(), fall.b());
        downhill.add(number(steep == 0 ? 0 : fall.a() / steep, 6)).add(number(steep == 0 ? 0 : fall.b() / steep, 6));
        ArrayNode readings = own.putArray("readings");
        for (int i = 0; i < levels.size(); i++) {
            ObjectNode reading = readings.addObject();
            point(reading.putArray("at"), levels.get(i).at());
            reading.set("drop", number(levels.get(i).dropMm(), 1));
            reading.set("residual", number(fall.residualsMm().get(i), 1));
        }
    }

    private static void bed(ObjectNode json, BedGround ground, JobSheet.BedSheet sheet) {
        json.put("bed", ground.bed());
        json.put("surface", ground.surface());
        json.put("way", ground.way());
        ArrayNode scribes = json.putArray("scribes");
        Outline outline = sheet.work().bed().outline();
        for (Piece piece : sheet.work().pieces()) {
            if (piece.course() == 1 && !ground.scribes().isEmpty()) {
                int wall = sheet.work().bed().wallLetters().indexOf(piece.wall());
                BedFall.Scribe scribe = ground.scribes().get(wall);
                double length = outline.sideMm(wall);
                ObjectNode one = scribes.addObject();
                one.put("mark", piece.mark());
                one.set("start", number(scribe.atMm(within(piece.fromMm() / length)), 1));
                one.set("end", number(scribe.atMm(within((piece.fromMm() + piece.lengthMm()) / length)), 1));
            }
        }
    }

    private static double within(double share) {
        return Math.max(0, Math.min(1, share));
    }

    private static void nearness(ObjectNode json, Nearness one) {
        json.put("number", one.number());
        json.put("kind", one.kind());
        json.set("clearance", number(one.clearanceMm(), 1));
        ArrayNode zone = json.putArray("zone");
        one.zone().forEach(outline -> zone.add(JobSheetJson.outline(outline)));
        ArrayNode beds = json.putArray("beds");
        one.beds().forEach(near -> {
            ObjectNode bed = beds.addObject();
            bed.put("bed", near.bed());
            bed.set("distance", number(near.distanceMm(), 1));
            bed.set("missing", number(near.missingMm(), 1));
        });
    }

    private static void access(ObjectNode json, AccessSheet access) {
        json.put("standard", access.standard().id());
        json.put("named", access.standard().named());
        standard(json.putObject("values"), access.standard());
        ArrayNode rows = json.putArray("rows");
        for (AccessSheet.Row row : access.rows()) {
            ObjectNode one = rows.addObject();
            one.put("where", row.where());
            one.put("what", row.what());
            one.set("measured", number(row.measured(), 1));
            one.set("limit", number(row.limit(), 1));
            one.put("unit", row.unit());
            one.put("pass", row.pass());
            one.set("missing", number(row.missing(), 1));
            row.at().ifPresent(at -> point(one.putArray("at"), at));
        }
    }

    private static ObjectNode pegs(SettingOut out, Wording words) {
        ObjectNode json = NODES.objectNode();
        out.baseline().ifPresentOrElse(
                line -> {
                    ObjectNode own = json.putObject("baseline");
                    point(own.putArray("from"), line.from());
                    point(own.putArray("to"), line.to());
                    own.set("length", number(line.from().distanceMm(line.to()), 1));
                    own.set("standOff", number(line.standOffMm(), 1));
                },
                () -> json.putNull("baseline"));
        json.set("tolerance", number(Pegs.TOLERANCE_MM, 1));
        triangle(json, out.square());
        ArrayNode beds = json.putArray("beds");
        for (SettingOut.BedPegs bed : out.beds()) {
            ObjectNode one = beds.addObject();
            one.put("bed", bed.bed().id());
            ArrayNode running = one.putArray("running");
            bed.pegs().runningMm().forEach(mark -> running.add(number(mark, 1)));
            ArrayNode offsets = one.putArray("offsets");
            bed.pegs().offsetsMm().forEach(mark -> offsets.add(number(mark, 1)));
            ArrayNode pegs = one.putArray("pegs");
            for (int i = 0; i < bed.pegs().pegs().size(); i++) {
                peg(pegs.addObject(), bed.pegs().pegs().get(i), bed.tapes().get(i));
            }
            ArrayNode strings = one.putArray("stringPegs");
            bed.pegs().linePegs().forEach(peg -> {
                ObjectNode string = strings.addObject();
                string.put("wall", peg.wall());
                string.put("past", peg.beyond());
                string.set("along", number(peg.alongMm(), 1));
                string.set("off", number(peg.offMm(), 1));
            });
            ArrayNode diagonals = one.putArray("diagonals");
            bed.pegs().diagonals().forEach(diagonal -> {
                ObjectNode pair = diagonals.addObject();
                pair.put("from", diagonal.from());
                pair.put("to", diagonal.to());
                pair.set("length", number(diagonal.lengthMm(), 1));
            });
            triangle(one, bed.square());
            bed.pushForTenMm().ifPresent(push -> one.set("pushForTen", number(push, 2)));
            one.set("quantities", JobSheetJson.quantities(bed.pegs().quantities()));
        }
        json.set("snags", FindingsJson.of(out.findings(), words));
        return json;
    }

    private static void peg(ObjectNode json, Pegs.Peg peg, SettingOut.Tapes tapes) {
        json.put("peg", peg.number());
        json.set("along", number(peg.alongMm(), 1));
        json.set("off", number(peg.offMm(), 1));
        json.set("first", number(tapes.firstMm(), 1));
        json.set("second", number(tapes.secondMm(), 1));
        json.put("flat", tapes.flat());
        if (peg.dropMm().isPresent()) {
            json.set("drop", number(peg.dropMm().getAsDouble(), 1));
        }
    }

    private static void triangle(ObjectNode json, Optional<SettingOut.Triangle> square) {
        square.ifPresent(triangle -> {
            ObjectNode own = json.putObject("square");
            own.put("peg", triangle.peg());
            if (triangle.peg() > 0) {
                own.put("wall", Bed.wallLetter(triangle.peg() - 1));
            }
            own.set("along", number(triangle.alongMm(), 1));
            own.set("other", number(triangle.otherMm(), 1));
            own.set("across", number(triangle.acrossMm(), 1));
        });
    }

    private static ObjectNode sun(Optional<SunHours> hours) {
        ObjectNode json = NODES.objectNode();
        if (hours.isEmpty()) {
            json.putNull("day");
            json.putArray("beds");
            json.putArray("cells");
            return json;
        }
        SunHours sun = hours.get();
        json.put("day", sun.day().day().toString());
        json.put("zone", sun.day().zone().getId());
        time(json, "rise", sun.rise());
        time(json, "set", sun.set());
        ArrayNode beds = json.putArray("beds");
        sun.beds().forEach(bed -> {
            ObjectNode one = beds.addObject();
            one.put("bed", bed.bed());
            one.put("light", bed.light().words);
            one.set("quantities", JobSheetJson.quantities(bed.quantities()));
        });
        json.set("cell", number(sun.cellMm(), 1));
        ArrayNode cells = json.putArray("cells");
        sun.cells().forEach(cell -> cells.addArray()
                .add(number(cell.middle().x(), 1))
                .add(number(cell.middle().y(), 1))
                .add(number(cell.hours(), 2)));
        return json;
    }

    private static void time(ObjectNode json, String field, Optional<ZonedDateTime> at) {
        at.ifPresentOrElse(time -> json.put(field, MINUTE.format(time)), () -> json.putNull(field));
    }

    private static void corners(ArrayNode json, List<Point> corners) {
        corners.forEach(corner -> point(json.addArray(), corner));
    }

    private static void point(ArrayNode json, Point point) {
        json.add(number(point.x(), 1)).add(number(point.y(), 1));
    }

    private static com.fasterxml.jackson.databind.JsonNode number(double value, int decimals) {
        return JobSheetJson.number(value, decimals);
    }
}
