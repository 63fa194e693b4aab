package lapyard.rest;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.OptionalInt;
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
        OptionalInt first = QueryParameters.number("from", from, 1, Integer.MAX_VALUE);
        OptionalInt second = QueryParameters.number("to", to, 1, Integer.MAX_VALUE);
        if (first.isEmpty()) throw new ProblemException(400, "say from which revision: from=1, and to=2 or nothing for the newest");
        Stored newest = shelf.everKept(id);
        Stored before = revision(newest, first.getAsInt());
        Stored after = second.isEmpty() ? newest : revision(newest, second.getAsInt());
        List<Difference.Line> lines =
                Difference.between(Documents.object(before.document()), Documents.object(after.document()), Wording.IMPERIAL::length);
        return Response.ok(Json.text(json -> {
                    json.writeStartObject();
                    json.writeStringField("id", id);
                    json.writeNumberField("from", before.revision());
                    json.writeNumberField("to", after.revision());
                    json.writeArrayFieldStart("lines");
                    for (Difference.Line line : lines) {
                        json.writeStartObject();
                        json.writeStringField("where", line.where());
                        json.writeStringField("text", line.text());
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                    json.writeEndObject();
                }))
                .build();
    }

    private Stored revision(Stored newest, int number) {
        return shelf.store()
                .revision(newest.id(), number)
                .orElseThrow(() -> Shelf.noRevision(newest.id(), number, newest.revision()));
    }
}
