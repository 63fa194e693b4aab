package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import lapyard.answers.Answer;
import lapyard.store.Share;

/** Tokens that read one garden. Each is told once, when it is made; the store has only its hash. */
@Path("api/gardens/{id}/shares")
@Produces(MediaType.APPLICATION_JSON)
public record SharesResource(Shelf shelf, Live live) {
    static final int MOST_SHARES = 100;
    /** A share ends after so many days unless another end was asked for: longer than a garden is built, shorter than it is forgotten. */
    static final int DAYS = 90;
    static final int MOST_DAYS = 3660;

    @GET
    public Response list(@PathParam("id") String id) {
        shelf.everKept(id);
        return Response.ok(Json.text(Json.object("shares", shelf.store().shares().of(id).stream().map(share -> told(share, null)).toList()))).build();
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    public Response add(@PathParam("id") String id, Body body) {
        shelf.standing(id);
        ObjectNode sent = Documents.object(body.text());
        JsonNode label = sent.path("label");
        if (!label.isTextual() || label.asText().isBlank())
            throw new ProblemException(400, "label should say who gets it, such as {\"label\":\"neighbour\"}");
        Optional<Instant> ends = ends(sent.get("ends"));
        if (shelf.store().shares().of(id).size() >= MOST_SHARES)
            throw new ProblemException(409, "this garden has " + MOST_SHARES + " shares: take one back first");
        String token = Guard.SHARE + Ids.secret();
        String hash = Answer.hash(token.getBytes(StandardCharsets.UTF_8));
        Share share = shelf.store().shares().add(Ids.next(), id, hash, label.asText().strip(), ends);
        return Response.status(201)
                .header(HttpHeaders.LOCATION, "/api/gardens/" + id + "/shares/" + share.id())
                .entity(Json.text(told(share, token)))
                .build();
    }

    /** Nothing said: {@value #DAYS} days; null: no end. */
    private Optional<Instant> ends(JsonNode sent) {
        Instant now = shelf.store().shares().now();
        if (sent == null) return Optional.of(now.plus(DAYS, ChronoUnit.DAYS));
        if (sent.isNull()) return Optional.empty();
        Optional<Instant> ends = time(sent.asText()).filter(time -> time.isAfter(now) && time.isBefore(now.plus(MOST_DAYS, ChronoUnit.DAYS)));
        if (ends.isPresent()) return ends;
        throw new ProblemException(400, "ends should be a time within the next " + MOST_DAYS + " days, such as \""
                + now.plus(DAYS, ChronoUnit.DAYS).truncatedTo(ChronoUnit.SECONDS) + "\", or null for a share without an end");
    }

    private static Optional<Instant> time(String text) {
        try {
            return Optional.of(OffsetDateTime.parse(text).toInstant());
        } catch (DateTimeParseException noTime) {
            return Optional.empty();
        }
    }

    @DELETE
    @Path("{share}")
    public Response remove(@PathParam("id") String id, @PathParam("share") String share) {
        if (!shelf.store().shares().remove(id, share)) throw new ProblemException(404, "the garden has no such share");
        live.shareEnded(id);
        return Response.noContent().build();
    }

    /** @param token null where it is not told any more */
    private static Object told(Share share, String token) {
        return Json.object("id", share.id(), "label", share.label(), "made", share.made(), "ends", share.ends(), "token", token);
    }
}
