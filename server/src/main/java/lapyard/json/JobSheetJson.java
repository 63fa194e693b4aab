package lapyard.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
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
    private record Whole(String garden, Optional<Long> revision, @IfGiven Optional<Look> look, Later ground, Iterator<BedShape> beds, List<JobSheet.PathSheet> paths,
            List<Cutting> cutting, List<Cutting> strips, List<JobSheet.MaterialRolls> rolls, Later slip, Later weekends, Later tally, List<Finding> snags, @IfGiven Optional<String> caution, List<RackBoard> rack,
            List<Provenance> provenance, List<Caution> cautions, List<String> defaults) {}

    private record TakeOff(Iterator<BedShape> beds, List<JobSheet.PathSheet> paths) {}

    private record Order(@IfGiven Optional<Look> look, Later slip, List<Finding> snags, @IfGiven Optional<String> caution) {}

    private record Cutting(String section, OptionalInt boardsBedByBed, Later result, @Unwrapped SawWork saw) {}

    private record BedShape(String id, String name, String type, int stage, String section, int courses, double heightMm,
            Outline outline, Outline inner, List<Wall> walls, List<Rectangle> floor, List<Piece> pieces, List<Seam> seams,
            List<Notch> notches, List<Strip> strips, List<SlatCut> slats, List<LinerPiece> liner, List<Quantity> quantities,
            List<CornerScrew> screws, List<CrossTie> crossTies, List<CrossTies.Post> posts,
            List<FloorBay> base, Standing standing) {}

    private record Wall(String wall, double lengthMm, boolean seen, Joint joint, double turnDeg) {}

    /** @param revision of the stored garden; empty where nothing was stored */
    public static ObjectNode of(JobSheet sheet, Optional<Long> revision) {
        return Wire.of(whole(sheet, revision), words(sheet));
    }

    /** The whole, written bed by bed, so that it takes little beside the job sheet. */
    public static void write(JobSheet sheet, OutputStream out) throws IOException {
        Wire.write(whole(sheet, Optional.empty()), words(sheet), out);
    }

    /**
     * One of {@link #PARTS} as it stands in the whole; {@code take-off} is beds and paths, {@code order} slip and snags.
     *
     * @throws IllegalArgumentException for any other
     */
    public static void write(String part, JobSheet sheet, OutputStream out) throws IOException {
        Whole whole = whole(sheet, Optional.empty());
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

    private static Whole whole(JobSheet sheet, Optional<Long> revision) {
        return new Whole(
                sheet.garden().name(), revision, Optional.of(sheet.look()).filter(Look.FIRST::equals), new Later(() -> GroundJson.of(sheet)), beds(sheet),
                sheet.paths(),
                cuttings(sheet, sheet.cutting()), cuttings(sheet, sheet.strips()),
                sheet.rolls(),
                new Later(() -> SlipJson.of(sheet)), new Later(() -> WeekendsJson.shape(sheet)), new Later(() -> TallyJson.of(sheet)),
                sheet.snags(), Wording.caution(sheet.snags()),
                sheet.garden().goods().rack(),
                sheet.provenance(), sheet.cautions(), sheet.garden().defaulted());
    }

    private static Iterator<BedShape> beds(JobSheet sheet) {
        return sheet.beds().stream().map(bed -> {
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
