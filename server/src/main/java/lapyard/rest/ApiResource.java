package lapyard.rest;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import lapyard.answers.Answer;
import lapyard.json.DocumentText;

/** The description of this interface, for programs as OpenAPI 3.1 and for people as a page made from it; the gardens that come with the program. */
@Path("/")
public record ApiResource(Samples samples) {
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
        return DocumentText.ours("/lapyard/rest/openapi.json");
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
}
