package lapyard.rest;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Locale;
import lapyard.store.Revision;
import lapyard.store.Stored;

/** A garden's history; it is there for deleted gardens too. */
@Path("api/gardens/{id}/revisions")
public final class RevisionsResource {
    private static final int PAGE = 100;
    private static final int LONGEST_PAGE = 1000;

    private final Shelf shelf;

    RevisionsResource(Shelf shelf) {
        this.shelf = shelf;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response history(
            @PathParam("id") String id, @QueryParam("limit") String limit, @QueryParam("before") String before) {
        int rows = Asked.number("limit", limit, 1, LONGEST_PAGE).orElse(PAGE);
        int below = Asked.number("before", before, 1, Integer.MAX_VALUE).orElse(Integer.MAX_VALUE);
        Stored stored = shelf.everKept(id);
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("id", id).put("revision", stored.revision()).put("deleted", stored.deleted());
        ArrayNode revisions = answer.putArray("revisions");
        List<Revision> history = shelf.store().history(id, rows, below);
        for (Revision revision : history) {
            ObjectNode line = revisions
                    .addObject()
                    .put("number", revision.number())
                    .put("kind", revision.kind().name().toLowerCase(Locale.ROOT))
                    .put("name", revision.name())
                    .put("saved", revision.saved().toString());
            revision.restored().ifPresent(number -> line.put("restored", number));
        }
        Response.ResponseBuilder response = Response.ok().header(HttpHeaders.ETAG, Tags.of(stored));
        if (!history.isEmpty() && history.get(history.size() - 1).number() > 1) {
            String next = "/api/gardens/" + id + "/revisions?before="
                    + history.get(history.size() - 1).number() + "&limit=" + rows;
            answer.put("next", next);
            response.header(HttpHeaders.LINK, "<" + next + ">; rel=\"next\"");
        }
        return response.entity(answer.toString()).build();
    }

    @GET
    @Path("{number}")
    @Produces(MediaType.APPLICATION_JSON)
    public Response get(@PathParam("id") String id, @PathParam("number") String number, @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        return Shelf.document(revision(id, number), have);
    }

    @POST
    @Path("{number}/restore")
    @Produces(MediaType.APPLICATION_JSON)
    public Response restore(
            @PathParam("id") String id,
            @PathParam("number") String number,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch) {
        Stored old = revision(id, number);
        long expected = Tags.expected(ifMatch, shelf.everKept(id));
        return shelf.answer(
                shelf.store().restore(id, expected, old.revision()), expected, shelf.checked(old.document()));
    }

    private Stored revision(String id, String number) {
        Stored current = shelf.everKept(id);
        int wanted = Asked.number("the revision", number, 1, Integer.MAX_VALUE).getAsInt();
        return shelf.store()
                .revision(id, wanted)
                .orElseThrow(() -> Shelf.noRevision(id, wanted, current.revision()));
    }
}
