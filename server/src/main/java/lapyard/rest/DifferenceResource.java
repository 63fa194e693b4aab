package lapyard.rest;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import lapyard.history.Difference;
import lapyard.store.Stored;
import lapyard.words.Wording;

/** What changed between two revisions, in the garden's own words. */
@Path("api/gardens/{id}/difference")
public final class DifferenceResource {
    private final Shelf shelf;

    DifferenceResource(Shelf shelf) {
        this.shelf = shelf;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response get(
            @PathParam("id") String id, @QueryParam("from") String from, @QueryParam("to") String to) {
        if (from == null) throw new ProblemException(400, "say from which revision: from=1, and to=2 or nothing for the newest");
        Stored newest = shelf.everKept(id);
        Stored before = shelf.revision(newest, "from", from);
        Stored after = shelf.revision(newest, "to", to);
        List<Difference.Line> lines =
                Difference.between(Documents.object(before.document()), Documents.object(after.document()), Wording.IMPERIAL::length);
        return Response.ok(Json.text(Json.object("id", id, "from", before.revision(), "to", after.revision(),
                "lines", lines.stream().map(line -> Json.object("where", line.where(), "text", line.text())).toList()))).build();
    }
}
