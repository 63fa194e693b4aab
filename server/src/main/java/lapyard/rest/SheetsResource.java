package lapyard.rest;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import lapyard.answers.Answer;
import lapyard.answers.AnswerService;
import lapyard.answers.FileAsk;
import lapyard.answers.GivenDocument;
import lapyard.diagrams.Stamp;
import lapyard.json.JobSheetPart;
import lapyard.json.SheetAsk;
import lapyard.prints.BuyingTables;
import lapyard.prints.PhotosAtHand;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;
import lapyard.store.Photos;
import lapyard.store.Stored;
import lapyard.working.Look;

/** What is made from one garden's current revision. */
@Path("api/gardens/{id}")
public record SheetsResource(Shelf shelf, AnswerService answers, StandingAnswers standing) {
    private static final Map<String, String> TYPES = Map.of("csv", "text/csv; charset=utf-8", "ics", "text/calendar; charset=utf-8", "dxf", "image/vnd.dxf",
            "xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");
    private static final Map<String, String> DRAWN =
            Map.of("svg", "image/svg+xml", "pdf", "application/pdf", "png", "image/png");
    private static final int SMALLEST_SCALE = 5000;
    private static final int MOST_PAGES = 100_000;
    /** How a page asks (RFC 7240) for sheets that nobody may ever look at. */
    private static final String AHEAD = "ahead";

    @GET
    @Path("job-sheet")
    @Produces(MediaType.APPLICATION_JSON)
    public Response jobSheet(
            @PathParam("id") String id,
            @QueryParam("parts") String parts,
            @QueryParam("bed") String bed,
            @QueryParam("look") String look,
            @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have,
            @Context UriInfo uri) {
        OptionalLong moment = shelf.store().moment();
        Stored stored = shelf.standing(id);
        SheetAsk ask = QueryParameters.sheet(parts, bed, look);
        GivenDocument document = given(stored);
        QueryParameters.checkBed(ask, document);
        Answer output = answers.jobSheet(document, ask);
        if (ask.look() == Look.WHOLE) standing.keep(uri.getRequestUri(), moment, stored, answers.jobSheetKey(document, ask), output, MediaType.APPLICATION_JSON,
                Tags.quoted(output.tag()), Optional.empty());
        return answer(output, MediaType.APPLICATION_JSON, have).build();
    }

    @GET
    @Path("job-sheet/{part}")
    @Produces(MediaType.APPLICATION_JSON)
    public Response part(
            @PathParam("id") String id,
            @PathParam("part") String part,
            @QueryParam("look") String look,
            @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        Stored stored = shelf.standing(id);
        JobSheetPart asked = QueryParameters.part(part);
        Look looked = QueryParameters.look(look);
        Answer output = asked == JobSheetPart.ORDER ? answers.order(given(stored), SheetAsk.WHOLE.at(looked)) : answers.part(given(stored), asked);
        return answer(output, MediaType.APPLICATION_JSON, have).build();
    }

    /** Sheets of one kind, or the set of all: all pages as PDF or one as SVG or PNG; those of an older revision are stamped stale. */
    @GET
    @Path("{sheets: [a-z-]+}.{format: pdf|svg|png}")
    public Response print(
            @PathParam("id") String id,
            @PathParam("sheets") String sheets,
            @PathParam("format") String format,
            @QueryParam("page") String page,
            @QueryParam("paper") String paper,
            @QueryParam("scale") String scale,
            @QueryParam("layers") String layers,
            @QueryParam("split") String split,
            @QueryParam("mono") String mono,
            @QueryParam("longest") String longest,
            @QueryParam("cut") String minutesACut,
            @QueryParam("setting") String minutesASetting,
            @QueryParam("labels") String labels,
            @QueryParam("revision") String revision,
            @HeaderParam("Prefer") String prefer,
            @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have,
            @Context UriInfo uri) {
        OptionalLong moment = shelf.store().moment();
        Stored newest = shelf.standing(id);
        if (!Prints.known(sheets)) throw new ProblemException(404, "there are no sheets " + sheets);
        Stored stored = shelf.revision(newest, "revision", revision);
        int number = QueryParameters.number("page", page, 1, MOST_PAGES).orElse(1);
        PrintAsk ask = new PrintAsk(
                QueryParameters.word("paper", paper),
                QueryParameters.flag("mono", mono),
                new PrintAsk.OfPlan(
                        QueryParameters.number("scale", scale, 1, SMALLEST_SCALE), QueryParameters.words("layers", layers), QueryParameters.flag("split", split)),
                new PrintAsk.OfSaw(
                        decimal(QueryParameters.number("longest", longest, 1, PrintAsk.LONGEST_MM)),
                        decimal(QueryParameters.number("cut", minutesACut, 0, PrintAsk.DAY_MINUTES)),
                        decimal(QueryParameters.number("setting", minutesASetting, 0, PrintAsk.DAY_MINUTES))),
                QueryParameters.word("labels", labels),
                new Stamp(spoken(stored), "", stale(stored, newest)),
                photos(id, sheets));
        String name = file(stored, sheets + (format.equals("pdf") || number == 1 && sheets.equals("plan") ? "" : "-" + number) + "." + format);
        String how = "inline; filename=\"" + name + "\"";
        GivenDocument document = given(stored);
        Answer output = answers.print(document, sheets, format, number, ask);
        boolean pdf = format.equals("pdf");
        if (pdf && !AHEAD.equals(prefer)) shelf.printed(stored); // each time: it is not kept for its address
        if (!pdf && !Prints.showPhotos(sheets)) standing.keep(uri.getRequestUri(), moment, stored, answers.printKey(document, sheets, format, number, ask), output, DRAWN.get(format),
                Tags.quoted(output.tag()), Optional.of(how));
        return answer(output, DRAWN.get(format), have).header(HttpHeaders.CONTENT_DISPOSITION, how).build();
    }

    /** They come and go without a revision, so what shows them is not kept for its address either. */
    private PhotosAtHand photos(String id, String sheets) {
        if (!Prints.showPhotos(sheets)) return PhotosAtHand.NONE;
        Photos photos = shelf.store().photos();
        return new PhotosAtHand(photos.list(id).stream().map(Photos.Head::id).collect(Collectors.toSet()), photo -> photos.find(id, photo).map(Photos.Kept::bytes));
    }

    private static GivenDocument given(Stored stored) {
        return GivenDocument.of(stored.document(), stored.id());
    }

    /** What the change from one revision to another does to the order. */
    @GET
    @Path("variation")
    @Produces(MediaType.APPLICATION_JSON)
    public Response variation(
            @PathParam("id") String id,
            @QueryParam("from") String from,
            @QueryParam("to") String to,
            @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        Stored before = shelf.revision(shelf.standing(id), "from", from);
        Stored after = shelf.revision(shelf.standing(id), "to", to);
        return answer(answers.variation(given(before), given(after)), MediaType.APPLICATION_JSON, have).build();
    }

    @GET
    @Path("variation.pdf")
    public Response variationSheet(
            @PathParam("id") String id,
            @QueryParam("from") String from,
            @QueryParam("to") String to,
            @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        Stored before = shelf.revision(shelf.standing(id), "from", from);
        Stored after = shelf.revision(shelf.standing(id), "to", to);
        Answer output = answers.variationSheet(given(before), given(after), spoken(before), spoken(after));
        return answer(output, DRAWN.get("pdf"), have)
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"" + file(after, "variation-from-r" + before.revision() + ".pdf") + "\"")
                .build();
    }

    private static Optional<String> stale(Stored stored, Stored newest) {
        return stored.revision() == newest.revision() ? Optional.empty() : Optional.of(
                "made from revision " + stored.revision() + "; the garden is at revision " + newest.revision() + ". Print again before you cut.");
    }

    private static String spoken(Stored stored) {
        return "revision " + stored.revision() + ", " + LocalDate.ofInstant(stored.saved(), ZoneOffset.UTC);
    }

    @GET
    @Path("slip.csv")
    public Response slip(
            @PathParam("id") String id,
            @QueryParam("supplier") String supplier,
            @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        Optional<String> one = QueryParameters.code("supplier", supplier);
        Stored stored = shelf.standing(id);
        String name = one.map(of -> "slip-" + of.replaceAll("[^A-Za-z0-9._-]", "_") + ".csv").orElse("slip.csv");
        return download(stored, name, FileAsk.of("slip.csv", one), have);
    }

    /** One table, to be sent or reckoned on with. */
    @GET
    @Path("tables/{table: [a-z-]+}.{format: csv|xlsx}")
    public Response table(
            @PathParam("id") String id, @PathParam("table") String table, @PathParam("format") String format, @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        Stored stored = shelf.standing(id);
        if (!BuyingTables.known(table)) throw new ProblemException(404, "there is no table " + table);
        return download(stored, table + "." + format, FileAsk.of(table + "." + format, Optional.empty()), have);
    }

    /**
     * The slip, the cut list, the bed register and the weekends as a workbook; the plan on layers in true size; the goods of
     * each weekend; days of work and, once the beds stand, of care as calendars.
     */
    @GET
    @Path("{file: garden\\.xlsx|plan\\.dxf|weekends\\.csv|weekends\\.ics|care\\.ics}")
    public Response file(@PathParam("id") String id, @PathParam("file") String file, @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have) {
        Stored stored = shelf.standing(id);
        return download(stored, file, file.endsWith(".ics")
                ? new FileAsk(file, Optional.empty(), stored.id(), stored.saved(), Math.toIntExact(stored.revision()))
                : FileAsk.of(file, Optional.empty()), have);
    }

    private static OptionalDouble decimal(OptionalInt number) {
        return number.isPresent() ? OptionalDouble.of(number.getAsInt()) : OptionalDouble.empty();
    }

    private Response download(Stored stored, String name, FileAsk ask, String have) {
        String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
        return answer(answers.file(given(stored), ask), type, have).header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + file(stored, name) + "\"").build();
    }

    private static String file(Stored stored, String ending) {
        return stored.id() + "-r" + stored.revision() + "-" + ending;
    }

    static Object body(Answer output) {
        return output.isInMemory() ? output.bytes() : (StreamingOutput) output::writeTo;
    }

    static Response.ResponseBuilder answer(Answer output, String type, String have) {
        String tag = Tags.quoted(output.tag());
        return (Tags.has(have, tag) ? Response.notModified() : Response.ok(body(output), type)).header(HttpHeaders.ETAG, tag);
    }
}
