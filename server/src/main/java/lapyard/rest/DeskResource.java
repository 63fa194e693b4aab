package lapyard.rest;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;

/** What is made from a body alone; nothing is kept. */
@Path("/")
public final class DeskResource {
    private final Desk desk;
    private final Outputs outputs;

    DeskResource(Desk desk, Outputs outputs) {
        this.desk = desk;
        this.outputs = outputs;
    }

    @POST
    @Path("api/job-sheet")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response jobSheet(Body body) {
        Documents.object(body.text());
        return Response.ok(outputs.jobSheet(body.text()).bytes()).build();
    }

    @POST
    @Path("api/solve/{kind: cutting|rolls}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response solve(@PathParam("kind") String kind, Body body) {
        Documents.object(body.text());
        return Response.ok(desk.solve(kind, body.text())).build();
    }

    /** How a merchant's list is understood; nothing is kept. */
    @POST
    @Path("api/merchant-list")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response merchantList(Body body) {
        Documents.object(body.text());
        return Response.ok(desk.merchantList(body.text())).build();
    }

    /** What stands where a garden's catalogue says nothing; its prices are examples of ours. */
    @GET
    @Path("api/example-catalogue")
    @Produces(MediaType.APPLICATION_JSON)
    public Response exampleCatalogue(@HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        return SheetsResource.answer(Output.of(desk.exampleCatalogue()), MediaType.APPLICATION_JSON, have).build();
    }

    @GET
    @Path("schema/garden.json")
    public Response schema(@HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        return SheetsResource.answer(Output.of(desk.schema()), "application/schema+json", have)
                .build();
    }
}
