package lapyard.rest;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.UnaryOperator;
import lapyard.answers.Answer;
import lapyard.answers.GivenDocument;
import lapyard.history.Merge;
import lapyard.plan.Finding;
import lapyard.rest.MergeLines.Asking;
import lapyard.rest.QueryParameters.With;
import lapyard.store.Change;
import lapyard.store.Stored;

/** One garden's document. */
@Path("api/gardens/{id}")
public final class GardenResource {
    static final String MERGE_PATCH = "application/merge-patch+json";

    private final Shelf shelf;
    private final StandingAnswers standing;
    private final MergeLines<Sent, Put> lines = new MergeLines<>();

    GardenResource(Shelf shelf, StandingAnswers standing) {
        this.shelf = shelf;
        this.standing = standing;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response get(
            @PathParam("id") String id, @HeaderParam(HttpHeaders.IF_NONE_MATCH) String have, @Context UriInfo uri) {
        OptionalLong moment = shelf.store().moment();
        Stored stored = shelf.standing(id);
        standing.keep(uri.getRequestUri(), moment, stored, "document " + id + " " + stored.revision(),
                Answer.of(stored.document()), MediaType.APPLICATION_JSON, Tags.of(stored), Optional.empty());
        return Shelf.document(stored, have);
    }

    /**
     * @param with  {@code job-sheet} or {@code order} where the receipt shall hold that too, so that nobody asks again for it
     * @param parts of the job sheet
     * @param bed   alone of its beds
     * @param look  {@code first} where a first look at that is enough
     */
    @PUT
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response put(
            @PathParam("id") String id,
            @QueryParam("merge") String merge,
            @QueryParam("with") String with,
            @QueryParam("parts") String parts,
            @QueryParam("bed") String bed,
            @QueryParam("look") String look,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            Body body) {
        return change(id, merge, QueryParameters.with(with, QueryParameters.sheet(parts, bed, look)), ifMatch, body.text(), true);
    }

    @PATCH
    @Consumes(MERGE_PATCH)
    @Produces(MediaType.APPLICATION_JSON)
    public Response patch(
            @PathParam("id") String id,
            @QueryParam("merge") String merge,
            @QueryParam("with") String with,
            @QueryParam("parts") String parts,
            @QueryParam("bed") String bed,
            @QueryParam("look") String look,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            Body body) {
        return change(id, merge, QueryParameters.with(with, QueryParameters.sheet(parts, bed, look)), ifMatch, body.text(), false);
    }

    /**
     * A stale change is told so before anything is said about its contents.
     *
     * @param whole whether the text is the whole document, and no patch
     */
    private Response change(String id, String merge, With also, String ifMatch, String text, boolean whole) {
        boolean merging = QueryParameters.flag("merge", merge);
        Stored current = shelf.standing(id);
        long expected = Tags.expected(ifMatch, current);
        boolean again = whole && current.document().equals(text);
        if (!merging && current.revision() != expected && !again) throw shelf.stale(current, expected);
        ObjectNode mine = Documents.object(text);
        UnaryOperator<ObjectNode> to = base -> whole ? mine : (ObjectNode) Documents.merged(base, mine);
        if (merging) return inLine(id, new Sent(expected, whole ? Optional.of(text) : Optional.empty(), to, also));
        if (whole) return shelf.save(id, expected, text, mine, also);
        ObjectNode before = Documents.object(current.document());
        ObjectNode after = to.apply(before);
        return shelf.save(id, expected, after.equals(before) ? current.document() : Documents.text(after), after, also);
    }

    /**
     * A change that a caller sent, to be put together with those of others.
     *
     * @param expected the revision that it was made from
     * @param text     the whole document as it was given, where it was
     * @param to       what it makes of that revision
     * @param also     what the caller wants with the receipt
     */
    private record Sent(long expected, Optional<String> text, UnaryOperator<ObjectNode> to, With also) {}

    /** What came of it; {@code merged} where changes of others are in the document too. */
    private record Put(Change change, List<Finding> findings, GivenDocument document, boolean merged) {}

    private Response inLine(String id, Sent change) {
        Put put = lines.serve(id, change, batch -> together(id, batch));
        return shelf.answer(put.change(), change.expected(), new Shelf.Receipt(put.findings(), put.document(), change.also(), put.merged()));
    }

    /**
     * Puts these changes and what stands together, checks and keeps them as one revision; where another server was quicker,
     * again. A change that clashes with one before it in the batch is passed over.
     */
    private void together(String id, List<Asking<Sent, Put>> batch) {
        Stored current = shelf.standing(id);
        while (true) {
            Sum sum = sum(id, current, batch);
            if (sum.in().isEmpty()) return;
            Sent first = sum.in().get(0).what();
            boolean others = sum.in().size() > 1 || first.expected() != current.revision();
            boolean own = !others && first.text().isPresent();
            String text = own ? first.text().get() : sum.changes() ? Documents.text(sum.document()) : current.document();
            GivenDocument document = GivenDocument.of(text, sum.document(), id);
            List<Finding> findings = shelf.checked(document);
            Change made = shelf.store().save(id, current.revision(), Documents.name(sum.document()), text);
            if (made instanceof Change.Stale stale) {
                current = stale.current();
                continue;
            }
            sum.in().forEach(asking -> asking.answer(new Put(made, findings, document, others)));
            return;
        }
    }

    /** What stands and the changes {@code in} it put together; {@code changes} is whether it is another document. */
    private record Sum(ObjectNode document, boolean changes, List<Asking<Sent, Put>> in) {}

    /** Refuses who is stale, asks for a bed that is not in what was sent, or clashes while nobody is in it yet. */
    private Sum sum(String id, Stored current, List<Asking<Sent, Put>> batch) {
        ObjectNode stands = Documents.object(current.document());
        Map<Long, ObjectNode> bases = new HashMap<>(Map.of(current.revision(), stands));
        ObjectNode sum = stands;
        List<Asking<Sent, Put>> in = new ArrayList<>();
        for (Asking<Sent, Put> asking : batch) {
            Sent sent = asking.what();
            Optional<ObjectNode> base = base(bases, id, sent.expected());
            if (base.isEmpty()) {
                asking.refuse(shelf.stale(current, sent.expected()));
                continue;
            }
            ObjectNode mine = sent.to().apply(base.get());
            Optional<ProblemException> noBed = QueryParameters.noBed(sent.also().ask(), GivenDocument.of("", mine));
            if (noBed.isPresent()) {
                asking.refuse(noBed.get());
                continue;
            }
            boolean fresh = in.isEmpty() && current.revision() == sent.expected();
            Merge merge = fresh ? new Merge.Both(mine) : Merge.of(base.get(), mine, sum);
            if (merge instanceof Merge.Both both) {
                sum = both.document();
                in.add(asking);
            } else if (in.isEmpty()) {
                asking.refuse(shelf.clash(current, sent.expected(), (Merge.Clash) merge));
            }
        }
        return new Sum(sum, !sum.equals(stands), in);
    }

    /** The revision of that number, read once for all who changed it. */
    private Optional<ObjectNode> base(Map<Long, ObjectNode> known, String id, long number) {
        if (!known.containsKey(number)) shelf.store().revision(id, number).ifPresent(found -> known.put(number, Documents.object(found.document())));
        return Optional.ofNullable(known.get(number));
    }

    /** Off the list of those at work, without a new revision; it still answers. */
    @PUT
    @Path("archived")
    public Response archive(@PathParam("id") String id) {
        return archived(id, true);
    }

    @DELETE
    @Path("archived")
    public Response bringOut(@PathParam("id") String id) {
        return archived(id, false);
    }

    private Response archived(String id, boolean away) {
        shelf.standing(id);
        shelf.store().archive(id, away);
        return Response.noContent().build();
    }

    @DELETE
    @Produces(MediaType.APPLICATION_JSON)
    public Response delete(@PathParam("id") String id, @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch) {
        long expected = Tags.expected(ifMatch, shelf.standing(id));
        return shelf.answer(shelf.store().delete(id, expected), expected, new Shelf.Receipt(List.of(), GivenDocument.of("")));
    }
}
