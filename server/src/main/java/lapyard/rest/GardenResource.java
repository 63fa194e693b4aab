package lapyard.rest;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import lapyard.answers.Answer;
import lapyard.answers.GivenDocument;
import lapyard.history.Merge;
import lapyard.plan.Finding;
import lapyard.store.Change;
import lapyard.store.Stored;

/** One garden's document. */
@Path("api/gardens/{id}")
public final class GardenResource {
    static final String MERGE_PATCH = "application/merge-patch+json";

    private static final int LINES = 64;

    private final Shelf shelf;
    private final StandingAnswers standing;
    private final ReentrantLock[] lines = Stream.generate(() -> new ReentrantLock(true)).limit(LINES).toArray(ReentrantLock[]::new);

    GardenResource(Shelf shelf, StandingAnswers standing) {
        this.shelf = shelf;
        this.standing = standing;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response get(
            @PathParam("id") String id, @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have, @Context UriInfo uri) {
        OptionalLong moment = shelf.store().moment();
        Stored stored = shelf.standing(id);
        standing.keep(uri.getRequestUri(), moment, stored, "document " + id + " " + stored.revision(),
                Answer.of(stored.document()), MediaType.APPLICATION_JSON, Tags.of(stored), Optional.empty());
        return Shelf.document(stored, have);
    }

    /** @param with {@code job-sheet} where the receipt shall hold that too, so that nobody asks again for it */
    @PUT
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response put(
            @PathParam("id") String id,
            @QueryParam("merge") String merge,
            @QueryParam("with") String with,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            Body body) {
        boolean merging = Asked.flag("merge", merge);
        boolean withSheet = Asked.withJobSheet(with);
        Stored current = shelf.standing(id);
        long expected = Tags.expected(ifMatch, current);
        if (!merging && isStale(current, expected, body.text())) throw shelf.stale(current, expected);
        ObjectNode mine = Documents.object(body.text());
        return merging
                ? inLine(id, expected, withSheet, new Sent(Optional.of(body.text()), base -> mine))
                : save(current, expected, body.text(), mine, withSheet);
    }

    @PATCH
    @Consumes(MERGE_PATCH)
    @Produces(MediaType.APPLICATION_JSON)
    public Response patch(
            @PathParam("id") String id,
            @QueryParam("merge") String merge,
            @QueryParam("with") String with,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            Body body) {
        boolean merging = Asked.flag("merge", merge);
        boolean withSheet = Asked.withJobSheet(with);
        Stored current = shelf.standing(id);
        long expected = Tags.expected(ifMatch, current);
        if (current.revision() != expected && !merging) throw shelf.stale(current, expected);
        ObjectNode patch = Documents.object(body.text());
        if (merging) return inLine(id, expected, withSheet, new Sent(Optional.empty(), base -> (ObjectNode) Documents.merged(base, patch)));
        ObjectNode before = Documents.object(current.document());
        ObjectNode after = (ObjectNode) Documents.merged(before, patch);
        String text = after.equals(before) ? current.document() : Documents.text(after);
        return save(current, expected, text, after, withSheet);
    }

    /** A stale change is told so before anything is said about its contents. */
    private static boolean isStale(Stored current, long expected, String text) {
        return current.revision() != expected && !current.document().equals(text);
    }

    private Response save(Stored current, long expected, String text, ObjectNode tree, boolean withSheet) {
        GivenDocument document = GivenDocument.of(text, tree, current.id());
        List<Finding> findings = shelf.checked(document);
        Change made = shelf.store().save(current.id(), expected, Documents.name(tree), text);
        return shelf.answer(made, expected, Shelf.Receipt.of(findings, document, withSheet, false));
    }

    /**
     * A change that a caller sent.
     *
     * @param text the whole document as it was given, where it was
     * @param to   what it makes of the revision that it was made from
     */
    private record Sent(Optional<String> text, UnaryOperator<ObjectNode> to) {}

    /**
     * Those who merge into one garden go one after the other, as they came: none has to try again because others were
     * quicker.
     */
    private Response inLine(String id, long expected, boolean withSheet, Sent change) {
        ReentrantLock line = lines[Math.floorMod(id.hashCode(), LINES)];
        line.lock();
        try {
            return merged(shelf.standing(id), expected, withSheet, change);
        } finally {
            line.unlock();
        }
    }

    /** Puts the caller's change and those made since together; where another server was quicker, again. */
    private Response merged(Stored newest, long expected, boolean withSheet, Sent change) {
        Stored current = newest;
        ObjectNode base = Documents.object(shelf.store()
                .revision(current.id(), expected)
                .orElseThrow(() -> shelf.stale(newest, expected))
                .document());
        ObjectNode mine = change.to().apply(base);
        while (true) {
            boolean others = current.revision() != expected;
            ObjectNode both = others ? both(base, mine, current, expected) : mine;
            Optional<String> kept = others ? Optional.empty() : change.text().or(() -> Optional.of(newest.document()).filter(text -> both.equals(base)));
            String text = kept.orElseGet(() -> Documents.text(both));
            GivenDocument document = GivenDocument.of(text, both, current.id());
            List<Finding> findings = shelf.checked(document);
            Change made = shelf.store().save(current.id(), current.revision(), Documents.name(both), text);
            if (made instanceof Change.Stale stale) current = stale.current();
            else return shelf.answer(made, expected, Shelf.Receipt.of(findings, document, withSheet, others));
        }
    }

    private ObjectNode both(ObjectNode base, ObjectNode mine, Stored current, long expected) {
        Merge merge = Merge.of(base, mine, Documents.object(current.document()));
        if (merge instanceof Merge.Clash clash) throw shelf.clash(current, expected, clash);
        return (ObjectNode) ((Merge.Both) merge).document();
    }

    @DELETE
    @Produces(MediaType.APPLICATION_JSON)
    public Response delete(@PathParam("id") String id, @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch) {
        long expected = Tags.expected(ifMatch, shelf.standing(id));
        return shelf.answer(shelf.store().delete(id, expected), expected, Shelf.Receipt.of(List.of()));
    }
}
