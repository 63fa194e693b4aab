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
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.UnaryOperator;
import lapyard.history.Merge;
import lapyard.plan.Finding;
import lapyard.store.Change;
import lapyard.store.Stored;

/** One garden's document. */
@Path("api/gardens/{id}")
public final class GardenResource {
    static final String MERGE_PATCH = "application/merge-patch+json";

    private final Shelf shelf;
    private final Ready ready;

    GardenResource(Shelf shelf, Ready ready) {
        this.shelf = shelf;
        this.ready = ready;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response get(
            @PathParam("id") String id, @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have, @Context UriInfo uri) {
        OptionalLong moment = shelf.store().moment();
        Stored stored = shelf.standing(id);
        if (uri.getRequestUri().getRawQuery() == null) {
            ready.keep(uri.getRequestUri().getRawPath(), new Ready.Answer(
                    id, stored.revision(), moment, stored.document().getBytes(StandardCharsets.UTF_8), MediaType.APPLICATION_JSON,
                    Tags.of(stored), Optional.empty()));
        }
        return Shelf.document(stored, have);
    }

    @PUT
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response put(
            @PathParam("id") String id,
            @QueryParam("merge") String merge,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            Body body) {
        boolean merging = Asked.flag("merge", merge);
        Stored current = shelf.standing(id);
        long expected = Tags.expected(ifMatch, current);
        ObjectNode mine = Documents.object(body.text());
        return merging ? saveOrMerge(current, expected, body.text(), base -> mine) : save(current, expected, body.text());
    }

    @PATCH
    @Consumes(MERGE_PATCH)
    @Produces(MediaType.APPLICATION_JSON)
    public Response patch(
            @PathParam("id") String id,
            @QueryParam("merge") String merge,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            Body body) {
        boolean merging = Asked.flag("merge", merge);
        Stored current = shelf.standing(id);
        long expected = Tags.expected(ifMatch, current);
        if (current.revision() != expected && !merging) throw shelf.stale(current, expected);
        ObjectNode patch = Documents.object(body.text());
        ObjectNode before = Documents.object(current.document());
        ObjectNode after = (ObjectNode) Documents.merged(before, patch);
        String text = after.equals(before) ? current.document() : Documents.text(after);
        return merging
                ? saveOrMerge(current, expected, text, base -> (ObjectNode) Documents.merged(base, patch))
                : save(current, expected, text);
    }

    /** @param change what the caller did to the revision that it was made from */
    private Response saveOrMerge(Stored current, long expected, String text, UnaryOperator<ObjectNode> change) {
        if (current.revision() != expected) return merged(current, expected, change);
        List<Finding> findings = shelf.checked(text);
        Change made = shelf.store().save(current.id(), expected, Documents.name(text), text);
        return made instanceof Change.Stale stale
                ? merged(stale.current(), expected, change)
                : shelf.answer(made, expected, findings);
    }

    /** Puts the caller's change and those made since together; where somebody is quicker once more, again. */
    private Response merged(Stored newest, long expected, UnaryOperator<ObjectNode> change) {
        Stored current = newest;
        ObjectNode base = Documents.object(shelf.store()
                .revision(current.id(), expected)
                .orElseThrow(() -> shelf.stale(newest, expected))
                .document());
        ObjectNode mine = change.apply(base);
        while (true) {
            Merge merge = Merge.of(base, mine, Documents.object(current.document()));
            if (merge instanceof Merge.Clash clash) throw shelf.clash(current, expected, clash);
            String text = Documents.text(((Merge.Both) merge).document());
            List<Finding> findings = shelf.checked(text);
            Change made = shelf.store().save(current.id(), current.revision(), Documents.name(text), text);
            if (made instanceof Change.Stale stale) current = stale.current();
            else return shelf.answer(made, expected, findings, true);
        }
    }

    private Response save(Stored current, long expected, String text) {
        // a stale change is told so before anything is said about its contents
        if (current.revision() != expected && !current.document().equals(text)) throw shelf.stale(current, expected);
        List<Finding> findings = shelf.checked(text);
        Change change = shelf.store().save(current.id(), expected, Documents.name(text), text);
        return shelf.answer(change, expected, findings);
    }

    @DELETE
    @Produces(MediaType.APPLICATION_JSON)
    public Response delete(@PathParam("id") String id, @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch) {
        long expected = Tags.expected(ifMatch, shelf.standing(id));
        return shelf.answer(shelf.store().delete(id, expected), expected, List.of());
    }
}
