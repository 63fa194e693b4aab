package lapyard.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lapyard.construction.BedWork;
import lapyard.construction.CornerScrew;
import lapyard.construction.CrossTie;
import lapyard.construction.CrossTies;
import lapyard.construction.FloorBay;
import lapyard.construction.LinerPiece;
import lapyard.construction.Notch;
import lapyard.construction.Piece;
import lapyard.construction.Seam;
import lapyard.construction.SlatCut;
import lapyard.construction.Strip;
import lapyard.geometry.Outline;
import lapyard.geometry.Rectangle;
import lapyard.job.Caution;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet;
import lapyard.job.Provenance;
import lapyard.job.SawAdvice;
import lapyard.job.StagingCost;
import lapyard.json.Wire.Exact;
import lapyard.json.Wire.IfGiven;
import lapyard.json.Wire.Later;
import lapyard.json.Wire.Unwrapped;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Joint;
import lapyard.plan.RackBoard;
import lapyard.standing.Standing;
import lapyard.words.Wording;
import lapyard.working.Abandonable;
import lapyard.working.Look;
import lapyard.working.Quantity;

/** The wire form of a job sheet: its parts in the order in which they stand, each as {@link Wire} writes it. */
public final class JobSheetJson {
    /** Names of the parts that stand in the whole. */
    public static final List<String> PARTS = List.of("take-off", "cutting", "rolls", "slip", "snags", "order", "tally");

    private JobSheetJson() {}

    /** {@code look} is {@code first} where the sheet may still improve, else it is left out. */
    private record Whole(String garden, @IfGiven Optional<Look> look, Later ground, Iterator<YardBed> yard, Iterator<BedShape> beds, List<JobSheet.PathSheet> paths,
            List<Cutting> cutting, List<Cutting> strips, List<JobSheet.MaterialRolls> rolls, Later searches, Later slip, Later weekends, Later tally, List<Finding> snags, @IfGiven Optional<String> caution, List<RackBoard> rack,
            List<Provenance> provenance, List<Caution> cautions, List<String> defaults) {}

    /** A bed as one looks down on it: the timbers of its top course, each in the bed's own frame. */
    private record YardBed(String bed, List<Outline> timbers) {}

    /**
     * How good the plan of a search is.
     *
     * @param of   as the search is called while it goes on
     * @param unit {@code boards} or {@code m} where the plan has no price
     */
    private record Search(String of, @Exact BigDecimal cost, @Exact BigDecimal lowerBound, boolean proven, Optional<String> unit) {}

    private record TakeOff(Iterator<BedShape> beds, List<JobSheet.PathSheet> paths) {}

    private record Order(@IfGiven Optional<Look> look, Later slip, List<Finding> snags, @IfGiven Optional<String> caution) {}

    private record Cutting(String section, OptionalInt boardsBedByBed, Later result, @Unwrapped SawWork saw) {}

    private record BedShape(String id, String name, String type, int stage, String section, int courses, double heightMm,
            Outline outline, Outline inner, List<Wall> walls, List<Rectangle> floor, List<Piece> pieces, List<Seam> seams,
            List<Notch> notches, List<Strip> strips, List<SlatCut> slats, List<LinerPiece> liner, List<Quantity> quantities,
            List<CornerScrew> screws, List<CrossTie> crossTies, List<CrossTies.Post> posts,
            List<FloorBay> base, Standing standing) {}

    private record Wall(String wall, double lengthMm, boolean seen, Joint joint, double turnDeg) {}

    public static ObjectNode of(JobSheet sheet) {
        return Wire.of(new Wire.Picked(whole(sheet, SheetAsk.WHOLE), SheetAsk.WHOLE::has), words(sheet));
    }

    /** The parts that a job sheet has under their own names. */
    static List<String> names() {
        return Stream.of(Whole.class.getRecordComponents()).map(RecordComponent::getName).filter(name -> !name.equals("caution") && !name.equals("look")).toList();
    }

    /** What is asked for, written bed by bed, so that it takes little beside the job sheet. */
    public static void write(JobSheet sheet, SheetAsk ask, OutputStream out) throws IOException {
        Wire.write(new Wire.Picked(whole(sheet, ask), ask::has), words(sheet), out);
    }

    /**
     * One of {@link #PARTS} as it stands in the whole; {@code take-off} is beds and paths, {@code order} slip and snags.
     *
     * @throws IllegalArgumentException for any other
     */
    public static void write(String part, JobSheet sheet, OutputStream out) throws IOException {
        Whole whole = whole(sheet, SheetAsk.WHOLE);
        Wire.write(switch (part) {
            case "take-off" -> new TakeOff(whole.beds(), whole.paths());
            case "cutting" -> whole.cutting();
            case "rolls" -> whole.rolls();
            case "slip" -> whole.slip();
            case "snags" -> whole.snags();
            case "order" -> new Order(whole.look(), whole.slip(), whole.snags(), whole.caution());
            case "tally" -> whole.tally();
            default -> throw new IllegalArgumentException("a job sheet has no part " + part);
        }, words(sheet), out);
    }

    private static Wording words(JobSheet sheet) {
        return Wording.of(sheet.garden().imperial());
    }

    private static Whole whole(JobSheet sheet, SheetAsk ask) {
        return new Whole(
                sheet.garden().name(), Optional.of(sheet.look()).filter(Look.FIRST::equals), new Later(() -> GroundJson.of(sheet)),
                sheet.beds().stream().map(JobSheetJson::fromAbove).iterator(), beds(sheet, ask),
                sheet.paths(),
                cuttings(sheet, sheet.cutting()), cuttings(sheet, sheet.strips()),
                sheet.rolls(), new Later(() -> searches(sheet)),
                new Later(() -> SlipJson.of(sheet)), new Later(() -> WeekendsJson.shape(sheet)), new Later(() -> TallyJson.of(sheet)),
                sheet.snags(), Wording.caution(sheet.snags()),
                sheet.garden().goods().rack(),
                sheet.provenance(), sheet.cautions(), sheet.garden().defaulted());
    }

    private static YardBed fromAbove(JobSheet.BedSheet sheet) {
        Bed bed = sheet.work().bed();
        return new YardBed(bed.id(), sheet.work().pieces().stream().filter(piece -> piece.course() == bed.courses()).map(Piece::lies).toList());
    }

    /** None at a first look, which may improve in all of them. */
    private static List<Search> searches(JobSheet sheet) {
        if (sheet.look() == Look.FIRST) return List.of();
        return Stream.of(
                sheet.cutting().stream().map(one -> search("Timber " + one.section(), one)),
                sheet.strips().stream().map(one -> search("Bearers " + one.section(), one)),
                sheet.rolls().stream().map(one -> new Search(Wording.capital(one.material()), one.result().cost(), one.result().lowerBound(), one.result().proven(),
                        one.costBedByBed().isPresent() ? Optional.<String>empty() : Optional.of("m")))).flatMap(all -> all).toList();
    }

    private static Search search(String of, JobSheet.SectionCutting one) {
        boolean priced = one.saw().ways().stream().anyMatch(way -> way.cost().isPresent());
        return new Search(of, one.result().cost(), one.result().lowerBound(), one.result().proven(), priced ? Optional.empty() : Optional.of("boards"));
    }

    private static Iterator<BedShape> beds(JobSheet sheet, SheetAsk ask) {
        return sheet.beds().stream().filter(bed -> ask.hasBed(bed.work().bed().id())).map(bed -> {
            Abandonable.check();
            return bed(bed);
        }).iterator();
    }

    /** The advice of each section of wall timber, as it stands beside a job sheet under the key {@code advice}. */
    public static ArrayNode advice(List<SawAdvice> advice, boolean imperial) {
        return (ArrayNode) Wire.tree(advice, Wording.of(imperial));
    }

    private static BedShape bed(JobSheet.BedSheet sheet) {
        BedWork work = sheet.work();
        Bed bed = work.bed();
        return new BedShape(
                bed.id(), bed.name(), bed.type(), bed.stage(), bed.section().id(), bed.courses(), bed.heightMm(), bed.inYard(),
                work.frame().inner().placed(bed.placement()),
                IntStream.range(0, bed.outline().sides())
                        .mapToObj(side -> new Wall(Bed.wallLetter(side), bed.outline().sideMm(side),
                                !bed.walls().hidden().contains(Bed.wallLetter(side)), bed.joint(side), bed.outline().turnDeg(side)))
                        .toList(),
                work.bottom().floor(), work.pieces(), work.frame().seams(),
                work.frame().notches(), work.bottom().strips(), work.bottom().slats(),
                work.liner(),
                sheet.quantities(), work.frame().screws(), work.frame().crossTies(), CrossTies.of(bed, work.frame().inner(), work.frame().seams()).posts(),
                work.bottom().bays(), sheet.standing());
    }

    private static List<Cutting> cuttings(JobSheet sheet, List<JobSheet.SectionCutting> cuttings) {
        return cuttings.stream()
                .map(one -> new Cutting(one.section(), sheet.look() == Look.FIRST ? OptionalInt.empty() : OptionalInt.of(one.boardsBedByBed()), new Later(one::result), one.saw()))
                .toList();
    }

    public static ObjectNode slip(JobSheet sheet) {
        return Wire.of(SlipJson.of(sheet), words(sheet));
    }

    /** The weekends with what staging costs, which takes longer to work out than the rest of them. */
    public static ObjectNode weekends(JobSheet sheet) {
        ObjectNode json = Wire.of(WeekendsJson.shape(sheet));
        json.set("cost", Wire.tree(StagingCost.of(sheet).ways()));
        return json;
    }

    public static String text(JsonNode json) {
        try {
            return DocumentText.MAPPER.writer(SerializationFeature.INDENT_OUTPUT).writeValueAsString(json) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
