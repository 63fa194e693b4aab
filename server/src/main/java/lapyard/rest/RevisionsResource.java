package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lapyard.answers.GivenDocument;
import lapyard.plan.Finding;
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
        int rows = QueryParameters.number("limit", limit, 1, LONGEST_PAGE).orElse(PAGE);
        int below = QueryParameters.number("before", before, 1, Integer.MAX_VALUE).orElse(Integer.MAX_VALUE);
        Stored stored = shelf.everKept(id);
        List<Revision> history = shelf.store().history(id, rows, below);
        long last = history.isEmpty() ? 1 : history.get(history.size() - 1).number();
        Optional<String> next = last == 1
                ? Optional.empty()
                : Optional.of("/api/gardens/" + id + "/revisions?before=" + last + "&limit=" + rows);
        return Shelf.page(next, "id", id, "revision", stored.revision(), "deleted", stored.deleted(), "revisions", history.stream().map(RevisionsResource::row).toList())
                .header(HttpHeaders.ETAG, Tags.of(stored))
                .build();
    }

    private static Object row(Revision revision) {
        return Json.object("number", revision.number(), "kind", revision.kind().name().toLowerCase(Locale.ROOT), "restored", revision.restored().isPresent() ? revision.restored().getAsLong() : null,
                "name", revision.name(), "saved", revision.saved(), "stamp", revision.stamp(), "printed", revision.printed() ? true : null, "refused", revision.refused() ? true : null);
    }

    @GET
    @Path("{number}")
    @Produces(MediaType.APPLICATION_JSON)
    public Response get(
            @PathParam("id") String id,
            @PathParam("number") String number,
            @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
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
        Stored current = shelf.everKept(id);
        long expected = Tags.expected(ifMatch, current);
        if (current.revision() != expected) throw shelf.stale(current, expected);
        GivenDocument document = GivenDocument.of(old.document(), id);
        List<Finding> findings = shelf.checked(document);
        return shelf.answer(shelf.store().restore(id, expected, old.revision()), expected, Shelf.Receipt.of(findings, document));
    }

    /** A name for one revision; a stamped one is never thinned out. */
    @PUT
    @Path("{number}/stamp")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response stamp(@PathParam("id") String id, @PathParam("number") String number, Body body) {
        Stored stored = revision(id, number);
        JsonNode stamp = Documents.object(body.text()).path("stamp");
        if (!stamp.isTextual() || stamp.asText().isBlank())
            throw new ProblemException(400, "stamp should be a text, such as {\"stamp\":\"for the saw\"}");
        shelf.store().stamp(id, stored.revision(), stamp.asText());
        return Response.noContent().build();
    }

    @DELETE
    @Path("{number}/stamp")
    public Response unstamp(@PathParam("id") String id, @PathParam("number") String number) {
        shelf.store().stamp(id, revision(id, number).revision(), "");
        return Response.noContent().build();
    }

    private Stored revision(String id, String number) {
        return shelf.revision(shelf.everKept(id), "the revision", number);
    }
}
