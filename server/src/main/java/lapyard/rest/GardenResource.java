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
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import lapyard.plan.Finding;
import lapyard.store.Change;
import lapyard.store.Stored;

/** One garden's document. */
@Path("api/gardens/{id}")
public final class GardenResource {
    static final String MERGE_PATCH = "application/merge-patch+json";

    private final Shelf shelf;

    GardenResource(Shelf shelf) {
        this.shelf = shelf;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response get(@PathParam("id") String id, @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        return Shelf.document(shelf.standing(id), have);
    }

    @PUT
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response put(@PathParam("id") String id, @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch, Body body) {
        Stored current = shelf.standing(id);
        long expected = Tags.expected(ifMatch, current);
        Documents.object(body.text());
        return save(current, expected, body.text());
    }

    @PATCH
    @Consumes(MERGE_PATCH)
    @Produces(MediaType.APPLICATION_JSON)
    public Response patch(@PathParam("id") String id, @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch, Body body) {
        Stored current = shelf.standing(id);
        long expected = Tags.expected(ifMatch, current);
        if (current.revision() != expected) throw shelf.stale(current, expected);
        ObjectNode patch = Documents.object(body.text());
        ObjectNode before = Documents.object(current.document());
        ObjectNode after = (ObjectNode) Documents.merged(before, patch);
        return save(current, expected, after.equals(before) ? current.document() : after.toString());
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
