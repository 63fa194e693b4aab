package lapyard.answers;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import lapyard.drawing.PdfWriter;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.job.TryOut;
import lapyard.json.DocumentText;
import lapyard.json.GardenReader;
import lapyard.json.JobSheetJson;
import lapyard.json.LayOutJson;
import lapyard.json.Reading;
import lapyard.json.SizesJson;
import lapyard.json.SolveLine;
import lapyard.json.TryOutJson;
import lapyard.layout.LayOut;
import lapyard.order.Variation;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.FindingList;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.prints.OrderPrint;
import lapyard.prints.PrintAsk;
import lapyard.sizes.SizeLook;
import lapyard.sizes.SizesThatGive;
import lapyard.words.Wording;
import lapyard.working.Look;
import lapyard.working.Progress;

/**
 * What computes behind the answers. Every method is a pure function of its arguments, safe for many threads; nothing heavy is loaded before
 * the first call, and no answer is remembered here, only searches, so that a change is searched for only where it changes one.
 */
public class GardenDesk {
    /** Gardens of more beds may take seconds. */
    private static final int MANY_BEDS = 100;
    /** Share of the heap that remembered searches may take. */
    private static final int SEARCHES_SHARE = 24;

    /** What a timber of a wall may take while a job sheet is prepared, written and printed: 1000 beds of 6 courses in 256 MB. */
    private static final long TIMBER_BYTES = 9_000;

    private final long mostTimbers;
    private final SearchMemory memory = new SearchMemory(Runtime.getRuntime().maxMemory() / SEARCHES_SHARE);

    /** Takes gardens that the heap has room for. */
    public GardenDesk() {
        this(Runtime.getRuntime().maxMemory() / TIMBER_BYTES);
    }

    GardenDesk(long mostTimbers) {
        this.mostTimbers = mostTimbers;
    }

    /**
     * What is to be said of a document before it is kept; a STOP means that it cannot be. Quick.
     *
     * @param onlyTheSheetTells whether more STOPs may show once the job sheet is prepared
     */
    public record Checked(List<Finding> findings, boolean onlyTheSheetTells) {
        public Checked {
            findings = List.copyOf(findings);
        }

        public boolean holdsStop() {
            return !FindingList.stops(findings).isEmpty();
        }
    }

    public Checked check(GivenDocument document) {
        Reading reading = reading(document);
        return new Checked(reading.findings(), reading instanceof Reading.Read read && !read.garden().people().tally().boards().isEmpty());
    }

    /** Whether its job sheet, or a first look, may take long, seen without working it out. */
    public boolean isLarge(GivenDocument document, Look look) {
        try {
            JsonNode tree = document.tree();
            // what is being built has no first look
            boolean whole = look == Look.WHOLE || !tree.path("tally").isEmpty();
            return tree.path("beds").size() > MANY_BEDS || whole && tree.path("search").asText().equals("long");
        } catch (CannotAnswer refusedLater) {
            return false;
        }
    }

    /**
     * The job sheet, once for all its forms. An interrupt ends its searches early, with the best found by then.
     *
     * @param progress listener that hears how far a search is, by the name of the search
     * @param look     how much is looked for; a first look may come out whole, see {@link Job#prepare}
     * @throws Refused if the document holds a STOP
     */
    public PreparedGarden prepare(GivenDocument document, Function<String, Progress> progress, Look look) {
        Reading reading = reading(document);
        if (!(reading instanceof Reading.Read read)) throw new Refused(reading.findings(), document.words());
        JobSheet sheet = Job.prepare(read.garden(), read.findings(), progress, look, memory);
        if (!sheet.stops().isEmpty()) throw new Refused(Stream.concat(read.findings().stream(), sheet.stops().stream()).toList(), document.words());
        return new PreparedGarden(sheet);
    }

    /** The whole, unheard. */
    public PreparedGarden prepare(GivenDocument document) {
        return prepare(document, what -> Progress.UNHEARD, Look.WHOLE);
    }

    /** The document read, and refused too for what only shows once beds, paths and levels stand together. */
    private Reading reading(GivenDocument document) {
        try {
            Reading reading = GardenReader.read(document.tree());
            if (reading instanceof Reading.Read read) {
                List<Finding> stops = new ArrayList<>(tooMany(read.garden()));
                if (stops.isEmpty()) stops.addAll(Job.stops(read.garden()));
                if (!stops.isEmpty()) return new Reading.Refused(Stream.concat(read.findings().stream(), stops.stream()).toList());
            }
            return reading;
        } catch (CannotAnswer e) {
            return new Reading.Refused(e.findings());
        }
    }

    /** A STOP where all courses of all walls together are more timbers than the heap has room for. */
    private List<Finding> tooMany(Garden garden) {
        long timbers = garden.beds().stream().mapToLong(bed -> (long) bed.courses() * bed.outline().sides()).sum();
        return timbers <= mostTimbers
                ? List.of()
                : List.of(Finding.of(FindingKind.GARDEN_LARGE, Place.field("beds")).with("timbers", Fact.count(timbers, "timbers"))
                        .with("most", Fact.count(mostTimbers, "timbers")).way(WayKind.MORE_MEMORY).way(WayKind.SPLIT_GARDEN));
    }

    /**
     * What a change does to the order, line by line, as JSON.
     *
     * @throws Refused if they are in two currencies
     */
    public String variation(PreparedGarden before, PreparedGarden after) {
        return JobSheetJson.of(between(before.sheet(), after.sheet()), after.sheet().garden().imperial()).toString();
    }

    /**
     * The same on paper.
     *
     * @param from what the sheet says of the earlier revision, {@code to} of the later
     * @throws Refused as {@link #variation}
     */
    public void variationSheet(PreparedGarden before, PreparedGarden after, String from, String to, OutputStream out) throws IOException {
        JobSheet was = before.sheet();
        JobSheet is = after.sheet();
        out.write(PdfWriter.write(OrderPrint.variation(was, is, between(was, is), from, to, PrintAsk.usual(to, ""))));
    }

    private static Variation between(JobSheet before, JobSheet after) {
        try {
            return Variation.between(before.slip(), after.slip(), after.garden().imperial());
        } catch (IllegalArgumentException e) {
            throw Refused.of(e, Wording.of(after.garden().imperial()));
        }
    }

    /**
     * A garden and a copy of it with changes, side by side as JSON, asked as {@link TryOutJson#read} says.
     *
     * @param sheets prepares each of the two
     */
    public String tryOut(String asked, Function<GivenDocument, PreparedGarden> sheets) {
        TryOutJson.Both both = TryOutJson.read(asked);
        JobSheet before = sheets.apply(GivenDocument.of(both.before())).sheet();
        return TryOutJson.write(TryOut.of(before, sheets.apply(GivenDocument.of(both.after())).sheet()), both.after()).toString();
    }

    /**
     * One problem's result as JSON.
     *
     * @param kind    {@code cutting}, {@code rolls} or {@code staging}; {@code sizes} and {@code lay-out} of a garden document
     * @param seconds at most so long; an interrupt ends it earlier, with the best found by then
     * @throws CannotAnswer if it is not a problem of that kind
     */
    public String solve(String kind, String problem, double seconds, Function<String, Progress> progress) {
        return (switch (kind) {
            case "sizes" -> ofGarden(problem, (tree, garden) -> SizesJson.of(tree, garden, SizesThatGive.of(
                    garden, garden.asking().giving(), SizeLook.ofSeconds(seconds, garden.beds().size()), progress.apply("Sizes"), memory)));
            case "lay-out" -> ofGarden(problem, (tree, garden) -> LayOutJson.of(
                    tree, garden, LayOut.of(garden, garden.asking().wishes(), seconds, progress.apply("Beds"), memory)));
            default -> SolveLine.solve(kind, problem, seconds, progress.apply(kind));
        }).toString();
    }

    private ObjectNode ofGarden(String document, BiFunction<JsonNode, Garden, ObjectNode> answer) {
        GivenDocument given = GivenDocument.of(document, DocumentText.parse(document));
        Reading reading = reading(given);
        if (!(reading instanceof Reading.Read read)) throw new Refused(reading.findings(), given.words());
        return answer.apply(given.tree(), read.garden());
    }
}
