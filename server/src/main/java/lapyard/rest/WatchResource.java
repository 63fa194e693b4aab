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
        return Response.ok(health(store.get())).build();
    }

    static String health(GardenStore store) {
        store.probe();
        return "{\"status\":\"ok\",\"store\":\"ok\",\"database\":\"" + store.kind() + "\"}";
    }

    @GET
    @Path("metrics")
    public Response figures() {
        return Response.ok(metrics.text(answers.figures(), live), "text/plain; version=0.0.4; charset=utf-8")
                .build();
    }
}
