package lapyard.rest;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import lapyard.plan.Finding;
import lapyard.store.Kept;

/** A garden's file comes in, under a new id; what it may weigh is more than other bodies. */
@Path("api/gardens/file")
public final class BringInResource {
    private final Shelf shelf;

    BringInResource(Shelf shelf) {
        this.shelf = shelf;
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response in(LongBody body) {
        List<Kept> history = GardenFile.read(body.text());
        List<Finding> findings = shelf.checked(history.get(history.size() - 1).document());
        List<Kept> marked = history.stream().map(this::marked).toList();
        return CopiesResource.created(shelf.store().bringIn(Ids.next(), marked), findings);
    }

    /** An older revision that holds a STOP comes in to be read, with a mark that it cannot be restored. */
    private Kept marked(Kept kept) {
        return new Kept(kept.number(), kept.kind(), kept.name(), kept.saved(), kept.stamp(), kept.document(), shelf.isRefused(kept.document()));
    }
}
