package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.answers.Answer;
import lapyard.answers.AnswerService;
import lapyard.answers.Busy;
import lapyard.answers.GivenDocument;
import lapyard.answers.Refused;
import lapyard.history.Merge;
import lapyard.plan.Finding;
import lapyard.plan.FindingList;
import lapyard.rest.QueryParameters.With;
import lapyard.store.Change;
import lapyard.store.GardenStore;
import lapyard.store.KeptRevision;
import lapyard.store.NewGarden;
import lapyard.store.StoreFault;
import lapyard.store.Stored;

/** The store in the words of HTTP: entity tags are revisions, and what came of a change is a response. */
final class Shelf {
    private static final System.Logger LOG = System.getLogger("lapyard.rest");
    private static final int MOST_REMEMBERED = 1000;

    private final Supplier<GardenStore> store;
    private final AnswerService answers;
    private final Metrics metrics;
    /** Revisions whose print is in the store already. */
    private final Set<String> printed = ConcurrentHashMap.newKeySet();

    Shelf(Supplier<GardenStore> store, AnswerService answers, Metrics metrics) {
        this.store = store;
        this.answers = answers;
        this.metrics = metrics;
    }

    GardenStore store() {
        return store.get();
    }

    /** A garden that is there; 404 where there never was one, 410 where it was deleted. */
    Stored standing(String id) {
        Stored stored = everKept(id);
        if (stored.deleted()) throw deleted(stored);
        return stored;
    }

    /** A garden that is there or was deleted; 404 where there never was one. */
    Stored everKept(String id) {
        return store().find(id).orElseThrow(() -> noGarden(id));
    }

    /** Checks and keeps a new garden; {@code then} is told of it before it is answered with 201 and a receipt. */
    Response create(String text, ObjectNode tree, With also, Consumer<Stored> then) {
        GivenDocument document = GivenDocument.of(text, tree);
        QueryParameters.checkBed(also.ask(), document);
        List<Finding> findings = checked(document);
        Stored stored = store().create(new NewGarden(Ids.next(), Documents.name(tree), text));
        metrics.saves.increment();
        then.accept(stored);
        return created(stored, new Receipt(findings, document, also, false));
    }

    /** Remembers the print, so that its revision is never thinned out. A print is not refused for that. */
    void printed(Stored stored) {
        String key = stored.id() + " " + stored.revision();
        if (printed.contains(key)) return;
        try {
            store().printed(stored.id(), stored.revision());
        } catch (StoreFault fault) {
            LOG.log(System.Logger.Level.WARNING, "the print of " + key + " is not remembered: " + fault.getMessage());
            return;
        }
        if (printed.size() >= MOST_REMEMBERED) printed.clear();
        printed.add(key);
    }

    /** What is said of a document; 422 where a STOP is among it. */
    List<Finding> checked(GivenDocument document) {
        List<Finding> findings = answers.check(document);
        if (!FindingList.stops(findings).isEmpty()) throw new ProblemException(findings, document.words());
        return findings;
    }

    /** Those of a garden file, with a mark on each that holds a STOP: it can be read and not restored. */
    List<KeptRevision> marked(List<KeptRevision> history) {
        List<Boolean> refused = answers.refused(history.stream().map(kept -> GivenDocument.of(kept.document())).toList());
        return IntStream.range(0, history.size()).mapToObj(i -> marked(history.get(i), refused.get(i))).toList();
    }

    private static KeptRevision marked(KeptRevision kept, boolean refused) {
        return new KeptRevision(kept.number(), kept.kind(), kept.name(), kept.saved(), kept.stamp(), kept.document(), refused);
    }

    /**
     * What the answer to a change tells beside where it is kept.
     *
     * @param kept   the document as it is kept
     * @param also   what of its job sheet the caller wants with it
     * @param merged whether others' changes stand in it too, so that the caller should get it
     */
    record Receipt(List<Finding> findings, GivenDocument kept, With also, boolean merged) {
        Receipt(List<Finding> findings, GivenDocument kept) {
            this(findings, kept, With.NOTHING, false);
        }
    }

    /** Checks and keeps a garden's new text; 200 with a receipt, or the refusal that fits. */
    Response save(String id, long expected, String text, ObjectNode tree, With also) {
        GivenDocument document = GivenDocument.of(text, tree, id);
        QueryParameters.checkBed(also.ask(), document);
        List<Finding> findings = checked(document);
        return answer(store().save(id, expected, Documents.name(tree), text), expected, new Receipt(findings, document, also, false));
    }

    /** 200 with a receipt, or the refusal that fits. */
    Response answer(Change change, long expected, Receipt receipt) {
        if (change instanceof Change.Made made) {
            metrics.saves.increment();
            return receipt(Response.ok(), made.stored(), receipt);
        }
        if (change instanceof Change.Stale stale) throw stale(stale.current(), expected);
        if (change instanceof Change.Deleted gone) throw deleted(gone.current());
        if (change instanceof Change.NoSuchGarden none) throw noGarden(none.id());
        if (change instanceof Change.NoSuchRevision none) throw noRevision(none.id(), none.number(), none.newest());
        throw new AssertionError(change);
    }

    /** 201 with a receipt for a garden that is new. */
    Response created(Stored stored, Receipt receipt) {
        return receipt(Response.status(201).header(HttpHeaders.LOCATION, "/api/gardens/" + stored.id()), stored, receipt);
    }

    /** One page of a list, with the address of the next where there is one. */
    static Response.ResponseBuilder page(Listing listing) {
        Response.ResponseBuilder response = Response.ok(listing.json());
        return listing.link().isEmpty() ? response : response.header(HttpHeaders.LINK, listing.link().get());
    }

    /** The revision of a garden that a parameter names, or the newest where it is not given; 404 where there is none of it. */
    Stored revision(Stored newest, String name, String number) {
        OptionalInt wanted = QueryParameters.number(name, number, 1, Integer.MAX_VALUE);
        return wanted.isEmpty() ? newest : store().revision(newest.id(), wanted.getAsInt())
                .orElseThrow(() -> noRevision(newest.id(), wanted.getAsInt(), newest.revision()));
    }

    /** What a change left behind, with its entity tag. */
    private Response receipt(Response.ResponseBuilder response, Stored stored, Receipt receipt) {
        Optional<String> sheet = also(receipt);
        Map<String, Object> told = Json.object("id", stored.id(), "name", stored.name(), "revision", stored.revision(), "saved", stored.saved(), "merged", receipt.merged() ? true : null);
        Problem.addSnags(told, receipt.findings(), receipt.kept().words());
        sheet.ifPresent(text -> told.put(receipt.also().called(), new Json.Raw(text)));
        if (receipt.merged() && !receipt.also().equals(With.NOTHING)) told.put("document", new Json.Raw(stored.document()));
        return response.header(HttpHeaders.ETAG, Tags.of(stored)).type(MediaType.APPLICATION_JSON).entity(Json.text(told)).build();
    }

    /** Empty where it cannot be had now, or is too long to stand within a receipt: the change is kept all the same. */
    private Optional<String> also(Receipt receipt) {
        if (receipt.also().equals(With.NOTHING)) return Optional.empty();
        try {
            QueryParameters.checkBed(receipt.also().ask(), receipt.kept());
            Answer made = receipt.also().called().equals("order") ? answers.order(receipt.kept(), receipt.also().ask()) : answers.jobSheet(receipt.kept(), receipt.also().ask());
            return Optional.of(made).filter(Answer::isInMemory).map(sheet -> new String(sheet.bytes(), StandardCharsets.UTF_8));
        } catch (Busy | Refused | ProblemException later) {
            return Optional.empty();
        }
    }

    /** 412 with the current revision and, where the older one is known, what changed since. */
    ProblemException stale(Stored current, long expected) {
        metrics.stale.increment();
        Map<String, Object> more = new HashMap<>();
        more.put("revision", current.revision());
        String since = store().revision(current.id(), expected)
                .map(old -> {
                    List<String> changed =
                            Documents.changed(Documents.object(old.document()), Documents.object(current.document()));
                    more.put("yours", expected);
                    more.put("changed", changed);
                    return "you changed revision " + expected + ", and since then "
                            + (changed.isEmpty() ? "it was saved again" : String.join(", ", changed) + " changed");
                })
                .orElse("If-Match names no revision of it");
        return new ProblemException(412, "the garden is at revision " + current.revision() + ": " + since
                + "; nothing was overwritten, get it and make your change again", more);
    }

    /** 409 with both sides of everything that both changed. */
    ProblemException clash(Stored current, long expected, Merge.Clash clash) {
        metrics.stale.increment();
        List<Map<String, Object>> sides = clash.sides().stream()
                .map(side -> Json.object("where", side.where(), "mine", side.mine().map(Shelf::raw), "theirs", side.theirs().map(Shelf::raw)))
                .toList();
        String places = clash.sides().stream().map(Merge.Side::where).collect(Collectors.joining(", "));
        return new ProblemException(409, "somebody else changed the same since revision " + expected + ": " + places
                + "; nothing was overwritten, choose and send it with the new ETag",
                Map.of("revision", current.revision(), "yours", expected, "clashes", sides));
    }

    private static Json.Raw raw(JsonNode value) {
        return new Json.Raw(value.toString());
    }

    /** The document of a stored garden, or 304 where the caller has it. */
    static Response document(Stored stored, String ifNoneMatch) {
        return (Tags.has(ifNoneMatch, Tags.of(stored)) ? Response.notModified() : Response.ok(stored.document()))
                .header(HttpHeaders.ETAG, Tags.of(stored))
                .build();
    }

    static ProblemException noGarden(String id) {
        return new ProblemException(404, id.matches("[a-z0-9-]{1,40}") ? "there is no garden " + id : "there is no such garden");
    }

    static ProblemException noRevision(String id, long number, long newest) {
        return new ProblemException(
                404,
                "garden " + id + " has no revision " + number + ": it has 1 to " + newest
                        + (number <= newest ? ", less those that were thinned out" : ""));
    }

    private static ProblemException deleted(Stored stored) {
        return new ProblemException(410, "garden " + stored.id() + " was deleted; any revision of it can be restored",
                Map.of("revision", stored.revision()));
    }
}
