package lapyard.rest;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import lapyard.plan.Finding;
import lapyard.store.GardenList;
import lapyard.store.NewGarden;
import lapyard.store.Stored;

/** The list of gardens, and a new one. */
@Path("api/gardens")
public final class GardensResource {
    private static final int PAGE = 50;
    private static final int LONGEST_PAGE = 200;
    private static final String ID_SIGNS = "abcdefghijkmnpqrstuvwxyz23456789"; // none that is read for another
    private static final int ID_LENGTH = 12;

    private final Shelf shelf;
    private final SecureRandom random = new SecureRandom();

    GardensResource(Shelf shelf) {
        this.shelf = shelf;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response list(
            @QueryParam("limit") String limit,
            @QueryParam("after") String after,
            @QueryParam("deleted") String deleted) {
        int rows = Asked.number("limit", limit, 1, LONGEST_PAGE).orElse(PAGE);
        boolean ofDeleted = Asked.flag("deleted", deleted);
        GardenList list = shelf.store().list(rows, Asked.word("after", after), ofDeleted);
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

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response create(Body body) {
        Documents.object(body.text());
        List<Finding> findings = shelf.checked(body.text());
        Stored stored = shelf.created(new NewGarden(newId(), Documents.name(body.text()), body.text()));
        return Shelf.receipt(
                Response.status(201).header(HttpHeaders.LOCATION, "/api/gardens/" + stored.id()), stored, findings);
    }

    /** 60 bits: two gardens never meet by chance. */
    private String newId() {
        StringBuilder id = new StringBuilder();
        while (id.length() < ID_LENGTH) id.append(ID_SIGNS.charAt(random.nextInt(ID_SIGNS.length())));
        return id.toString();
    }
}
