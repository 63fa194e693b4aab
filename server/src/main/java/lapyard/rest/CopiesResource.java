package lapyard.rest;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.OptionalInt;
import lapyard.answers.GivenDocument;
import lapyard.plan.Finding;
import lapyard.store.NewGarden;
import lapyard.store.Stored;

/** A garden once more: as a copy beside it, or as a file with its whole history. */
@Path("api/gardens/{id}")
public final class CopiesResource {
    private final Shelf shelf;

    CopiesResource(Shelf shelf) {
        this.shelf = shelf;
    }

    /** A new garden with the text of one revision, of the newest unless it is named. */
    @POST
    @Path("copy")
    @Produces(MediaType.APPLICATION_JSON)
    public Response copy(@PathParam("id") String id, @QueryParam("revision") String revision) {
        OptionalInt wanted = QueryParameters.number("revision", revision, 1, Integer.MAX_VALUE);
        Stored newest = shelf.everKept(id);
        Stored from = wanted.isEmpty()
                ? shelf.standing(id)
                : shelf.store()
                        .revision(id, wanted.getAsInt())
                        .orElseThrow(() -> Shelf.noRevision(id, wanted.getAsInt(), newest.revision()));
        ObjectNode document = Documents.object(from.document());
        document.put("name", "Copy of " + Documents.name(from.document()));
        String text = Documents.text(document);
        GivenDocument given = GivenDocument.of(text, document);
        List<Finding> findings = shelf.checked(given);
        Stored made = shelf.created(new NewGarden(Ids.next(), Documents.name(document), text));
        shelf.store().photos().add(made.id(), shelf.store().photos().of(id));
        return shelf.created(made, Shelf.Receipt.of(findings, given));
    }

    @GET
    @Path("file")
    @Produces(MediaType.APPLICATION_JSON)
    public Response out(@PathParam("id") String id) {
        Stored stored = shelf.everKept(id);
        return Response.ok(GardenFile.text(stored.name(), shelf.store().everything(id), shelf.store().photos().of(id)))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"" + id + "-r" + stored.revision() + ".garden.json\"")
                .build();
    }
}
