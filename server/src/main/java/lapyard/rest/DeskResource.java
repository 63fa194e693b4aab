package lapyard.rest;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.stream.Stream;
import lapyard.answers.Answer;
import lapyard.answers.AnswerService;
import lapyard.answers.GivenDocument;
import lapyard.diagrams.PlanLayer;
import lapyard.drawing.Paper;
import lapyard.drawing.PdfPage;
import lapyard.json.GardenReader;
import lapyard.json.JobSheetPart;
import lapyard.json.MerchantList;
import lapyard.json.SheetAsk;
import lapyard.prints.Prints;

/** What is made from a body alone; nothing is kept. */
@Path("/")
@Produces(MediaType.APPLICATION_JSON)
public record DeskResource(AnswerService answers, Solves solves) {
    private static final int USUAL_SECONDS = 10;
    private static final int MOST_SECONDS = 60;

    @POST
    @Path("api/job-sheet")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response jobSheet(@QueryParam("parts") String parts, @QueryParam("bed") String bed, @QueryParam("look") String look, Body body) {
        SheetAsk ask = QueryParameters.sheet(parts, bed, look);
        GivenDocument document = Documents.given(body.text());
        QueryParameters.checkBed(ask, document);
        return Response.ok(SheetsResource.body(answers.jobSheet(document, ask))).build();
    }

    /** A part of a garden's job sheet that is worked out only when asked for; nothing is kept. */
    @POST
    @Path("api/job-sheet/{part}")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response part(@PathParam("part") String part, Body body) {
        JobSheetPart asked = QueryParameters.part(part);
        return Response.ok(SheetsResource.body(answers.part(Documents.given(body.text()), asked))).build();
    }

    /** The first page of a PDF as a picture for under the yard; nothing is kept. */
    @POST
    @Path("api/site-plan")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces("image/png")
    public Response sitePlan(Body body) {
        String pdf = Documents.object(body.text()).path("pdf").textValue();
        byte[] bytes = Documents.base64(pdf == null ? "" : pdf);
        if (bytes.length == 0) throw new ProblemException(400, "pdf should hold the file in base64: send {\"pdf\": \"...\"}");
        if (bytes.length > PdfPage.MOST_BYTES)
            throw new ProblemException(413, "the PDF is over " + PdfPage.MOST_BYTES + " bytes: save the page with the plan as a PDF of its own");
        return Response.ok(answers.pdfPage(bytes)).build();
    }

    /** A garden beside a copy of it with changes; nothing is kept. */
    @POST
    @Path("api/try-out")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response tryOut(Body body) {
        Documents.object(body.text());
        return Response.ok(answers.tryOut(body.text())).build();
    }

    /** With {@code Prefer: respond-async} (RFC 7240) it answers at once with the address where the solve is told of. */
    @POST
    @Path("api/solve/{kind: cutting|rolls|staging|garden|sizes|lay-out}")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response solve(
            @PathParam("kind") String kind,
            @QueryParam("seconds") String seconds,
            @HeaderParam("Prefer") String prefer,
            Body body) {
        double limit = QueryParameters.number("seconds", seconds, 1, MOST_SECONDS).orElse(USUAL_SECONDS);
        Documents.object(body.text());
        if (prefer != null && prefer.contains("respond-async")) {
            Solves.Solve solve = solves.begin(kind, body.text(), limit);
            return Response.accepted(solve.json())
                    .header(HttpHeaders.LOCATION, "/api/solves/" + solve.id)
                    .build();
        }
        return Response.ok(answers.solve(kind, body.text(), limit)).build();
    }

    @GET
    @Path("api/solves/{id}")
    public Response solve(@PathParam("id") String id) {
        return Response.ok(found(id).json()).build();
    }

    /** Stops it; what it has found so far stays to be read. */
    @DELETE
    @Path("api/solves/{id}")
    public Response stop(@PathParam("id") String id) {
        Solves.Solve solve = found(id);
        solve.stop();
        return Response.accepted(solve.json()).build();
    }

    private Solves.Solve found(String id) {
        return solves.find(id).orElseThrow(() -> new ProblemException(404, "there is no such solve any more: start it again"));
    }

    /** What a file of a site holds, and the garden with what is taken of it; nothing is kept. */
    @POST
    @Path("api/site-file")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response siteFile(Body body) {
        Documents.object(body.text());
        return Response.ok(answers.siteFile(body.text())).build();
    }

    /** How a merchant's list is understood; nothing is kept. */
    @POST
    @Path("api/merchant-list")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response merchantList(Body body) {
        Documents.object(body.text());
        return Response.ok(answers.merchantList(body.text())).build();
    }

    /** What stands where a garden's catalogue says nothing; its prices are examples of ours. */
    @GET
    @Path("api/example-catalogue")
    public Response exampleCatalogue(@HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        return SheetsResource.answer(Answer.of(MerchantList.examples()), MediaType.APPLICATION_JSON, have).build();
    }

    /** Which kinds of sheets there are, on which papers, and which layers a plan has. */
    @GET
    @Path("api/sheets")
    public Response sheets(@HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        String text = Json.text(Json.object(
                "sheets", Prints.titles().entrySet().stream().map(kind -> Json.object("name", kind.getKey(), "title", kind.getValue())).toList(),
                "papers", Stream.of(Paper.values()).map(Paper::label).toList(),
                "layers", Stream.of(PlanLayer.values()).map(layer -> Json.object("name", layer.label(), "usual", PlanLayer.USUAL.contains(layer))).toList()));
        return SheetsResource.answer(Answer.of(text), MediaType.APPLICATION_JSON, have).build();
    }

    @GET
    @Path("schema/garden.json")
    @Produces(MediaType.WILDCARD)
    public Response schema(@HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        return SheetsResource.answer(Answer.of(GardenReader.schema()), "application/schema+json", have).build();
    }
}
