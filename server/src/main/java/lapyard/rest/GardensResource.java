package lapyard.rest;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Optional;
import lapyard.answers.GivenDocument;
import lapyard.plan.Finding;
import lapyard.store.GardenList;
import lapyard.store.NewGarden;
import lapyard.store.Stored;

/** The list of gardens, and a new one. */
@Path("api/gardens")
public final class GardensResource {
    private static final int PAGE = 50;
    private static final int LONGEST_PAGE = 200;

    private final Shelf shelf;

    GardensResource(Shelf shelf) {
        this.shelf = shelf;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response list(
            @QueryParam("limit") String limit,
            @QueryParam("after") String after,
            @QueryParam("deleted") String deleted) {
        int rows = QueryParameters.number("limit", limit, 1, LONGEST_PAGE).orElse(PAGE);
        boolean ofDeleted = QueryParameters.flag("deleted", deleted);
        Optional<String> behind = QueryParameters.word("after", after);
        GardenList list = Requester.onlyGarden()
                .map(this::only)
                .orElseGet(() -> shelf.store().list(rows, behind, ofDeleted));
        Optional<String> next = list.next()
                .map(id -> "/api/gardens?after=" + id + "&limit=" + rows + (ofDeleted ? "&deleted=true" : ""));
        Response.ResponseBuilder response = Response.ok(Json.text(json -> {
            json.writeStartObject();
            json.writeArrayFieldStart("gardens");
            for (GardenList.Row row : list.rows()) {
                json.writeStartObject();
                json.writeStringField("id", row.id());
                json.writeStringField("name", row.name());
                json.writeNumberField("revision", row.revision());
                json.writeStringField("changed", row.changed().toString());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeNumberField("total", list.total());
            if (next.isPresent()) json.writeStringField("next", next.get());
            json.writeEndObject();
        }));
        next.ifPresent(address -> response.header(HttpHeaders.LINK, "<" + address + ">; rel=\"next\""));
        return response.build();
    }

    /** What the holder of a share has for a list. */
    private GardenList only(String id) {
        List<GardenList.Row> rows = shelf.store()
                .find(id)
                .filter(stored -> !stored.deleted())
                .map(stored -> new GardenList.Row(id, stored.name(), stored.revision(), stored.saved()))
                .stream()
                .toList();
        return new GardenList(rows, rows.size(), Optional.empty());
    }

    /** @param with as with a save */
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response create(@QueryParam("with") String with, Body body) {
        boolean withSheet = QueryParameters.withJobSheet(with);
        ObjectNode tree = Documents.object(body.text());
        GivenDocument document = GivenDocument.of(body.text(), tree);
        List<Finding> findings = shelf.checked(document);
        Stored stored = shelf.created(new NewGarden(Ids.next(), Documents.name(tree), body.text()));
        return shelf.created(stored, Shelf.Receipt.of(findings, document, withSheet, false));
    }
}
