package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.json.ShelfPiece;
import lapyard.plan.GardenState;
import lapyard.rest.QueryParameters.With;
import lapyard.store.ShelfItem;
import lapyard.store.ShelfItems;
import lapyard.store.Stored;

/** What one garden has of the shelf, and how it takes more. */
@Path("api/gardens/{id}/shelf")
@Produces(MediaType.APPLICATION_JSON)
public record GardenShelfResource(Shelf shelf) {
    private ShelfItems items() {
        return shelf.store().shelf();
    }

    /** Takes a piece into a garden: {@code {"piece", "revision", "copy", "anyway"}}, all but the first may be left out. */
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    public Response take(@PathParam("id") String id, @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch, Body body) {
        ObjectNode asked = Documents.object(body.text());
        Stored current = shelf.standing(id);
        long expected = Tags.expected(ifMatch, current);
        if (current.revision() != expected) throw shelf.stale(current, expected);
        ShelfItem item = ShelfResource.found(items(), asked.path("piece").asText(), asked.has("revision") ? asked.get("revision").asText() : null);
        ObjectNode before = Documents.object(current.document());
        GardenState state = GardenState.of(before.path("state").asText()).orElse(GardenState.PENCILLED);
        if (ShelfResource.keeps(ShelfResource.kind(item.kind()), state) && !asked.path("anyway").asBoolean())
            throw new ProblemException(409, "the garden is " + state.code() + " and keeps its prices: send \"anyway\": true, or set it back to pencilled");
        ObjectNode after = ShelfResource.taken(before, item, !asked.path("copy").asBoolean());
        return shelf.save(id, expected, Documents.text(after), after, With.NOTHING);
    }

    /** What a garden has of the shelf: whether it is as it was taken, and which revision is the newest. */
    @GET
    public Response uses(@PathParam("id") String id) {
        ObjectNode garden = Documents.object(shelf.standing(id).document());
        List<Map<String, Object>> pieces = new ArrayList<>();
        for (JsonNode mark : garden.path("shelf")) {
            String piece = mark.path("id").asText();
            long revision = mark.path("revision").asLong();
            Optional<ShelfItem> newest = items().find(piece).filter(item -> !item.deleted());
            Optional<Boolean> changed = items().revision(piece, revision)
                    .map(item -> !ShelfPiece.stands(garden, ShelfResource.kind(item.kind()), Documents.object(item.content())));
            pieces.add(Json.object("kind", mark.path("kind").asText(), "id", piece, "name", newest.map(ShelfItem::name).orElse(mark.path("name").asText()),
                    "revision", revision, "newest", newest.map(ShelfItem::revision), "changed", changed));
        }
        return Response.ok(Json.text(Json.object("pieces", pieces))).build();
    }
}
