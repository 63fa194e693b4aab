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
import lapyard.rest.QueryParameters.With;
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
        Stored from = shelf.revision(revision == null ? shelf.standing(id) : shelf.everKept(id), "revision", revision);
        ObjectNode document = Documents.object(from.document());
        document.put("name", "Copy of " + Documents.name(from.document()));
        return shelf.create(Documents.text(document), document, With.NOTHING, made -> shelf.store().photos().add(made.id(), shelf.store().photos().of(id)));
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
