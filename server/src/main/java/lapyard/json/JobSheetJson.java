package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
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
import lapyard.cutting.CuttingResult;
import lapyard.cutting.Replan;
import lapyard.geometry.Outline;
import lapyard.geometry.Rectangle;
import lapyard.job.Caution;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.job.MerchantOffers;
import lapyard.job.Payments;
import lapyard.job.Provenance;
import lapyard.job.SawAdvice;
import lapyard.job.SectionReplan;
import lapyard.job.StagingCost;
import lapyard.json.Wire.Exact;
import lapyard.json.Wire.IfGiven;
import lapyard.json.Wire.Later;
import lapyard.json.Wire.To;
import lapyard.json.Wire.Unwrapped;
import lapyard.order.Quote;
import lapyard.order.Variation;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Joint;
import lapyard.plan.QuoteTerms;
import lapyard.plan.RackBoard;
import lapyard.plan.Tally;
import lapyard.standing.Standing;
import lapyard.words.Wording;
import lapyard.working.Abandonable;
import lapyard.working.Look;
import lapyard.working.Quantity;
import lapyard.working.Working;

/** The wire form of a job sheet: its parts in the order in which they stand, each as {@link Wire} writes it. */
public final class JobSheetJson {
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

    /** The whole with what is worked out for a file of it alone. */
    private record Filed(@Unwrapped Wire.Picked whole, @IfGiven Optional<Later> advice, Later loads, @IfGiven Optional<Later> quote) {}

    private record TakeOff(Iterator<BedShape> beds, List<JobSheet.PathSheet> paths) {}

    private record Order(@IfGiven Optional<Look> look, Later slip, List<Finding> snags, @IfGiven Optional<String> caution) {}

    private record Offer(String number, String client, String validUntil, String currency, BigDecimal margin, BigDecimal cost,
            BigDecimal price, boolean atLeast, List<Quote.Line> lines, List<String> exclusions, Working working) {}

    private record Cutting(String section, OptionalInt boardsBedByBed, Later result, @Unwrapped SawWork saw) {}

    private record BedShape(String id, String name, String type, int stage, String section, int courses, double heightMm,
            Outline outline, Outline inner, List<Wall> walls, List<Rectangle> floor, List<Piece> pieces, List<Seam> seams,
            List<Notch> notches, List<Strip> strips, List<SlatCut> slats, List<LinerPiece> liner, List<Quantity> quantities,
            List<CornerScrew> screws, List<CrossTie> crossTies, List<CrossTies.Post> posts,
            List<FloorBay> base, Standing standing) {}

    private record Wall(String wall, double lengthMm, boolean seen, Joint joint, double turnDeg) {}

    /** What was done and what is left of each section. */
    private record Tallied(int day, List<Tally.Done> done, List<Tally.Bought> bought, List<Rest> sections) {}

    private record Rest(String section, int cut, int wanted, @To(3) double needed, @To(3) double there, int fit,
            List<Lacking> lacking, Map<String, Integer> buy, Optional<BigDecimal> extra, CuttingResult result) {}

    private record Lacking(@To(3) double length, int count) {}

    /** The parts that a job sheet has under their own names. */
    static List<String> names() {
        return Stream.of(Whole.class.getRecordComponents()).map(RecordComponent::getName).filter(name -> !name.equals("caution") && !name.equals("look")).toList();
    }

    /** What is asked for, written bed by bed, so that it takes little beside the job sheet. */
    public static void write(JobSheet sheet, SheetAsk ask, OutputStream out) throws IOException {
        Wire.write(new Wire.Picked(whole(sheet, ask, Optional.empty()), ask::has), words(sheet), out);
    }

    /**
     * The whole as a file to read, with loads, what staging costs, and the quote where its terms are given.
     *
     * @param advice whether it holds what only the office needs and takes a search of its own
     */
    public static void file(JobSheet sheet, boolean advice, OutputStream out) throws IOException {
        QuoteTerms terms = sheet.garden().terms().quote();
        Wire.print(new Filed(
                new Wire.Picked(whole(sheet, SheetAsk.WHOLE, Optional.of(StagingCost.of(sheet))), SheetAsk.WHOLE::has),
                advice ? Optional.of(new Later(() -> SawAdvice.of(sheet))) : Optional.empty(), new Later(() -> Loads.of(sheet)),
                terms.given() ? Optional.of(new Later(() -> quote(sheet.quote(), terms))) : Optional.empty()), words(sheet), out);
    }

    /** One part as a file to read. */
    public static void file(JobSheetPart part, JobSheet sheet, OutputStream out) throws IOException {
        Wire.print(shape(part, sheet), words(sheet), out);
    }

    /** One part as {@link #part} has it. */
    public static void write(JobSheetPart part, JobSheet sheet, OutputStream out) throws IOException {
        Wire.write(shape(part, sheet), words(sheet), out);
    }

    /** @throws IllegalArgumentException where there is no part of that name */
    public static JsonNode part(String part, JobSheet sheet) {
        return Wire.tree(shape(JobSheetPart.of(part), sheet), words(sheet));
    }

    private static Object shape(JobSheetPart part, JobSheet sheet) {
        Whole whole = whole(sheet, SheetAsk.WHOLE, Optional.empty());
        return switch (part) {
            case TAKE_OFF -> new TakeOff(whole.beds(), whole.paths());
            case CUTTING -> whole.cutting();
            case ROLLS -> whole.rolls();
            case SLIP -> whole.slip();
            case SNAGS -> whole.snags();
            case ORDER -> new Order(whole.look(), whole.slip(), whole.snags(), whole.caution());
            case TALLY -> whole.tally();
            case GROUND -> whole.ground();
            case PEGS -> GroundJson.pegs(sheet);
            case SUN -> GroundJson.sun(sheet);
            case WEEKENDS -> WeekendsJson.shape(sheet, Optional.of(StagingCost.of(sheet)));
            case ADVICE -> SawAdvice.of(sheet);
            case LOADS -> Loads.of(sheet);
            case OFFERS -> MerchantOffers.of(sheet);
            case PAYMENTS -> Payments.of(sheet);
            case QUOTE -> quote(sheet.quote(), sheet.garden().terms().quote());
        };
    }

    private static Offer quote(Quote quote, QuoteTerms terms) {
        return new Offer(terms.number(), terms.client(), terms.validUntil(), quote.currency().getCode(), quote.marginPercent(),
                quote.cost(), quote.price(), quote.atLeast(), quote.lines(), terms.exclusions(), quote.working());
    }

    /** What a change does to the order. */
    public static ObjectNode of(Variation variation, boolean imperial) {
        return Wire.of(variation, Wording.of(imperial));
    }

    private static Wording words(JobSheet sheet) {
        return Wording.of(sheet.garden().imperial());
    }

    private static Whole whole(JobSheet sheet, SheetAsk ask, Optional<List<StagingCost.Way>> staging) {
        return new Whole(
                sheet.garden().name(), Optional.of(sheet.look()).filter(Look.FIRST::equals), new Later(() -> GroundJson.of(sheet)),
                sheet.beds().stream().map(JobSheetJson::fromAbove).iterator(), beds(sheet, ask),
                sheet.paths(),
                cuttings(sheet, sheet.cutting()), cuttings(sheet, sheet.strips()),
                sheet.rolls(), new Later(() -> searches(sheet)),
                new Later(() -> SlipJson.of(sheet)), new Later(() -> WeekendsJson.shape(sheet, staging)), new Later(() -> tally(sheet)),
                sheet.snags(), Wording.caution(sheet.snags()),
                sheet.garden().goods().rack(),
                sheet.provenance(), sheet.cautions(), sheet.garden().defaulted());
    }

    private static Tallied tally(JobSheet sheet) {
        Tally tally = sheet.garden().people().tally();
        return new Tallied(
                tally.day(), tally.done(), tally.bought(),
                tally.boards().isEmpty() ? List.of() : SectionReplan.of(sheet).sections().stream().map(JobSheetJson::rest).toList());
    }

    private static Rest rest(SectionReplan rest) {
        Replan.Planned planned = rest.planned();
        return new Rest(rest.section(), planned.cut(), planned.wanted(), planned.neededMm(), planned.thereMm(), planned.fit(),
                planned.lacking().stream().map(piece -> new Lacking(piece.lengthMm(), piece.count())).toList(), planned.buy(),
                rest.extra(), planned.result());
    }

    private static YardBed fromAbove(JobSheet.BedSheet sheet) {
        Bed bed = sheet.work().bed();
        return new YardBed(bed.id(), sheet.work().pieces().stream().filter(piece -> piece.course() == bed.courses()).map(Piece::lies).toList());
    }

    /** None at a first look, which may improve in all of them. */
    private static List<Search> searches(JobSheet sheet) {
        if (sheet.look() == Look.FIRST) return List.of();
        return Stream.of(
                sheet.cutting().stream().map(JobSheetJson::search), sheet.strips().stream().map(JobSheetJson::search),
                sheet.rolls().stream().map(one -> new Search(one.search(), one.result().cost(), one.result().lowerBound(), one.result().proven(),
                        one.costBedByBed().isPresent() ? Optional.empty() : Optional.of("m")))).flatMap(all -> all).toList();
    }

    private static Search search(JobSheet.SectionCutting one) {
        return new Search(one.search(), one.result().cost(), one.result().lowerBound(), one.result().proven(), one.priced() ? Optional.empty() : Optional.of("boards"));
    }

    private static Iterator<BedShape> beds(JobSheet sheet, SheetAsk ask) {
        return sheet.beds().stream().filter(bed -> ask.hasBed(bed.work().bed().id())).map(bed -> {
            Abandonable.check();
            return bed(bed);
        }).iterator();
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

    public static String text(JsonNode json) {
        return json.toPrettyString() + "\n";
    }
}
