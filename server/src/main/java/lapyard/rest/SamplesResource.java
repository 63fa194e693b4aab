package lapyard.rest;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;

/** The gardens that come with the program, to look at or to start from. */
@Path("api/samples")
public final class SamplesResource {
    private final Samples samples;

    SamplesResource(Samples samples) {
        this.samples = samples;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response list() {
        return Response.ok(Json.text(samples.all().stream().map(sample -> Json.object("id", sample.id(), "name", sample.name())).toList())).build();
    }

    @GET
    @Path("{id}")
    @Produces(MediaType.APPLICATION_JSON)
    public Response get(@PathParam("id") String id) {
        return Response.ok(samples.find(id)
                        .orElseThrow(() -> new ProblemException(404, "there is no such sample: /api/samples lists them"))
                        .document())
                .build();
    }
}
