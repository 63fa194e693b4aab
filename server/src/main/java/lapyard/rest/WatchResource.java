package lapyard.rest;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.function.Supplier;
import lapyard.answers.AnswerService;
import lapyard.store.GardenStore;

/** For whoever watches the server. */
@Path("/")
public record WatchResource(Supplier<GardenStore> store, AnswerService answers, Metrics metrics, Live live) {
    /** Asks the store whether it could read and write now: 503 as a problem where it does not answer. */
    @GET
    @Path("health")
    @Produces(MediaType.APPLICATION_JSON)
    public Response health() {
        store.get().probe();
        String kind = store.get().kind();
        return Response.ok("{\"status\":\"ok\",\"store\":\"ok\",\"database\":\"" + kind + "\"}")
                .build();
    }

    @GET
    @Path("metrics")
    public Response figures() {
        return Response.ok(metrics.text(answers.figures(), live), "text/plain; version=0.0.4; charset=utf-8")
                .build();
    }
}
