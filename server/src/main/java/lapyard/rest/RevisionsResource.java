package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
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
import lapyard.history.Difference;
import lapyard.json.GardenReader;
import lapyard.plan.Finding;
import lapyard.rest.QueryParameters.With;
import lapyard.store.Revision;
import lapyard.store.Stored;
import lapyard.words.Wording;

/** A garden's history, which is there for deleted gardens too: its revisions, what changed between two of them, copies and the file of all. */
@Path("api/gardens/{id}")
@Produces(MediaType.APPLICATION_JSON)
public record RevisionsResource(Shelf shelf) {
    private static final int PAGE = 100;
    private static final int LONGEST_PAGE = 1000;

    @GET
    @Path("revisions")
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
        return Shelf.page(Listing.of(next, "id", id, "revision", stored.revision(), "deleted", stored.deleted(), "revisions", history.stream().map(RevisionsResource::row).toList()))
                .header(HttpHeaders.ETAG, Tags.of(stored))
                .build();
    }

    private static Object row(Revision revision) {
        return Json.object("number", revision.number(), "kind", revision.kind().name().toLowerCase(Locale.ROOT), "restored", revision.restored().isPresent() ? revision.restored().getAsLong() : null,
                "name", revision.name(), "saved", revision.saved(), "stamp", revision.stamp(), "printed", revision.printed() ? true : null, "refused", revision.refused() ? true : null);
    }

    @GET
    @Path("revisions/{number}")
    public Response get(
            @PathParam("id") String id,
            @PathParam("number") String number,
            @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        return Shelf.document(revision(id, number), have);
    }

    @POST
    @Path("revisions/{number}/restore")
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
        return shelf.answer(shelf.store().restore(id, expected, old.revision()), expected, new Shelf.Receipt(findings, document));
    }

    /** A name for one revision; a stamped one is never thinned out. */
    @PUT
    @Path("revisions/{number}/stamp")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response stamp(@PathParam("id") String id, @PathParam("number") String number, Body body) {
        Stored stored = revision(id, number);
        JsonNode stamp = Documents.object(body.text()).path("stamp");
        if (!stamp.isTextual() || stamp.asText().isBlank())
            throw new ProblemException(400, "stamp should be a text, such as {\"stamp\":\"for the saw\"}");
        shelf.store().stamp(id, stored.revision(), stamp.asText());
        return Response.noContent().build();
    }

    @DELETE
    @Path("revisions/{number}/stamp")
    public Response unstamp(@PathParam("id") String id, @PathParam("number") String number) {
        shelf.store().stamp(id, revision(id, number).revision(), "");
        return Response.noContent().build();
    }

    private Stored revision(String id, String number) {
        return shelf.revision(shelf.everKept(id), "the revision", number);
    }

    @GET
    @Path("difference")
    public Response difference(
            @PathParam("id") String id, @QueryParam("from") String from, @QueryParam("to") String to) {
        if (from == null) throw new ProblemException(400, "say from which revision: from=1, and to=2 or nothing for the newest");
        Stored newest = shelf.everKept(id);
        Stored before = shelf.revision(newest, "from", from);
        Stored after = shelf.revision(newest, "to", to);
        List<Difference.Line> lines =
                Difference.between(Documents.object(before.document()), Documents.object(after.document()), GardenReader::isLength, Wording.IMPERIAL::length);
        return Response.ok(Json.text(Json.object("id", id, "from", before.revision(), "to", after.revision(),
                "lines", lines.stream().map(line -> Json.object("where", line.where(), "text", line.text())).toList()))).build();
    }

    /** A new garden with the text of one revision, of the newest unless it is named: another job, in which nothing has happened yet, unless it takes along what is done. */
    @POST
    @Path("copy")
    public Response copy(@PathParam("id") String id, @QueryParam("revision") String revision, @QueryParam("done") String done) {
        boolean all = QueryParameters.flag("done", done);
        Stored from = shelf.revision(revision == null ? shelf.standing(id) : shelf.everKept(id), "revision", revision);
        ObjectNode document = Documents.object(from.document());
        document.put("name", "Copy of " + Documents.name(from.document()));
        if (!all) document.remove(List.of("tally", "handOver", "state"));
        return shelf.create(Documents.text(document), document, With.NOTHING, made -> {
            if (all) shelf.store().photos().add(made.id(), shelf.store().photos().of(id));
        });
    }

    @GET
    @Path("file")
    public Response out(@PathParam("id") String id) {
        Stored stored = shelf.everKept(id);
        return Response.ok(GardenFile.text(stored.name(), shelf.store().everything(id), shelf.store().photos().of(id)))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"" + id + "-r" + stored.revision() + ".garden.json\"")
                .build();
    }
}
