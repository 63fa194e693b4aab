package lapyard.rest;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.function.Supplier;
import lapyard.store.GardenStore;

/** For whoever watches the server. */
@Path("/")
public final class WatchResource {
    private final Supplier<GardenStore> store;
    private final Outputs outputs;
    private final Metrics metrics;

    WatchResource(Supplier<GardenStore> store, Outputs outputs, Metrics metrics) {
        this.store = store;
        this.outputs = outputs;
        this.metrics = metrics;
    }

    /** Asks the store: 503 as a problem where it does not answer. */
    @GET
    @Path("health")
    @Produces(MediaType.APPLICATION_JSON)
    public Response health() {
        store.get().isNew();
        return Response.ok("{\"status\":\"ok\",\"store\":\"ok\"}").build();
    }

    @GET
    @Path("metrics")
    public Response metrics() {
        return Response.ok(metrics.text(outputs), "text/plain; version=0.0.4; charset=utf-8")
                .build();
    }
}
