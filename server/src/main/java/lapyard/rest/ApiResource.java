package lapyard.rest;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.function.Supplier;
import lapyard.answers.Answer;
import lapyard.answers.AnswerService;
import lapyard.store.GardenStore;
import lapyard.working.OwnFile;

/**
 * What the server tells of itself: this interface, for programs as OpenAPI 3.1 and for people as a page made from it; the gardens that
 * come with the program; for whoever watches it, whether it is well and what it has done.
 */
@Path("/")
public record ApiResource(Samples samples, Supplier<GardenStore> store, AnswerService answers, Metrics metrics, Live live) {
    @GET
    @Path("openapi.json")
    public Response description(@HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        return SheetsResource.answer(Answer.of(text()), MediaType.APPLICATION_JSON, have).build();
    }

    @GET
    @Path("openapi.html")
    public Response page(@HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        return SheetsResource.answer(Answer.of(ApiPage.of(text())), "text/html; charset=utf-8", have).build();
    }

    static String text() {
        return OwnFile.text("lapyard/rest/openapi.json");
    }

    @GET
    @Path("api/samples")
    @Produces(MediaType.APPLICATION_JSON)
    public Response list() {
        return Response.ok(Json.text(samples.all().stream().map(sample -> Json.object("id", sample.id(), "name", sample.name())).toList())).build();
    }

    @GET
    @Path("api/samples/{id}")
    @Produces(MediaType.APPLICATION_JSON)
    public Response get(@PathParam("id") String id) {
        return Response.ok(samples.find(id)
                        .orElseThrow(() -> new ProblemException(404, "there is no such sample: /api/samples lists them"))
                        .document())
                .build();
    }

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
