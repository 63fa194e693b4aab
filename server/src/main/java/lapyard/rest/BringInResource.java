package lapyard.rest;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import lapyard.answers.GivenDocument;
import lapyard.plan.Finding;
import lapyard.store.KeptRevision;
import lapyard.store.Photos;
import lapyard.store.Stored;

/** A garden's file comes in, under a new id; what it may weigh is more than other bodies. */
@Path("api/gardens/file")
public record BringInResource(Shelf shelf) {
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
