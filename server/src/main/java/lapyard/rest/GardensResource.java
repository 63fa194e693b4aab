package lapyard.rest;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Optional;
import lapyard.answers.GivenDocument;
import lapyard.plan.Finding;
import lapyard.plan.GardenState;
import lapyard.store.GardenList;
import lapyard.store.GardenStore;
import lapyard.rest.QueryParameters.With;
import lapyard.store.KeptRevision;
import lapyard.store.Photos;
import lapyard.store.Stored;

/** The list of gardens, and a new one. */
@Path("api/gardens")
@Produces(MediaType.APPLICATION_JSON)
public record GardensResource(Shelf shelf) {
    private static final int LONGEST_PAGE = 200;

    @GET
    public Response list(
            @QueryParam("limit") String limit,
            @QueryParam("after") String after,
            @QueryParam("deleted") String deleted,
            @QueryParam("archived") String archived,
            @QueryParam("state") String state,
            @QueryParam("find") String find,
            @QueryParam("order") String order) {
        GardenList.Ask ask = ask(limit, after, deleted, archived, state, find, order);
        return Shelf.page(Requester.onlyGarden().map(this::only).orElseGet(() -> Listing.of(shelf.store(), ask))).build();
    }

    private static GardenList.Ask ask(
            String limit, String after, String deleted, String archived, String state, String find, String order) {
        boolean ofDeleted = QueryParameters.flag("deleted", deleted);
        boolean ofArchived = QueryParameters.flag("archived", archived);
        if (ofDeleted && ofArchived) throw new ProblemException(400, "deleted and archived are two lists: ask for one of them");
        if (find != null && find.length() > GardenStore.NAME_CHARACTERS)
            throw new ProblemException(400, "find should be at most " + GardenStore.NAME_CHARACTERS + " characters");
        try {
            return new GardenList.Ask(
                    QueryParameters.number("limit", limit, 1, LONGEST_PAGE).orElse(Listing.PAGE),
                    QueryParameters.word("after", after, 60),
                    ofDeleted ? GardenList.Place.DELETED : ofArchived ? GardenList.Place.ARCHIVED : GardenList.Place.STANDING,
                    QueryParameters.choice("state", state, GardenState.values()),
                    find == null || find.isBlank() ? List.of() : List.of(find.strip().split("\\s+")),
                    QueryParameters.choice("order", order, GardenList.Order.values()).orElse(GardenList.Order.NAME));
        } catch (IllegalArgumentException refused) {
            throw new ProblemException(400, refused.getMessage());
        }
    }

    /** What the holder of a share has for a list. */
    private Listing only(String id) {
        List<GardenList.Row> rows = shelf.store().row(id).stream().toList();
        return Listing.of(new GardenList(rows, rows.size(), Optional.empty()), Optional.empty());
    }

    /** @param with as with a save */
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    public Response create(@QueryParam("with") String with, @QueryParam("parts") String parts, @QueryParam("bed") String bed, @QueryParam("look") String look, Body body) {
        With also = QueryParameters.with(with, QueryParameters.sheet(parts, bed, look));
        ObjectNode tree = Documents.object(body.text());
        return shelf.create(body.text(), tree, also, made -> {});
    }

    /** A garden's file comes in, under a new id; what it may weigh is more than other bodies. */
    @Path("api/gardens/file")
    public record OfFile(Shelf shelf) {
        @POST
        @Consumes(MediaType.APPLICATION_JSON)
        @Produces(MediaType.APPLICATION_JSON)
        public Response in(Body body) {
            List<KeptRevision> history = GardenFile.read(body.text());
            GivenDocument newest = GivenDocument.of(history.get(history.size() - 1).document());
            List<Finding> findings = shelf.checked(newest);
            List<Photos.Kept> photos = GardenFile.photos(body.text());
            Stored made = shelf.store().bringIn(Ids.next(), shelf.marked(history));
            shelf.store().photos().add(made.id(), photos);
            return shelf.created(made, new Shelf.Receipt(findings, newest));
        }
    }
}
