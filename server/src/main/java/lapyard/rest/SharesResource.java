package lapyard.rest;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
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
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import lapyard.answers.Answer;
import lapyard.store.Share;

/** Tokens that read one garden. Each is told once, when it is made; the store has only its hash. */
@Path("api/gardens/{id}/shares")
public final class SharesResource {
    static final int MOST_SHARES = 100;

    private final Shelf shelf;
    private final Live live;

    SharesResource(Shelf shelf, Live live) {
        this.shelf = shelf;
        this.live = live;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response list(@PathParam("id") String id) {
        shelf.everKept(id);
        List<Share> shares = shelf.store().shares().of(id);
        return Response.ok(Json.text(json -> {
                    json.writeStartObject();
                    json.writeArrayFieldStart("shares");
                    for (Share share : shares) {
                        json.writeStartObject();
                        write(json, share);
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                    json.writeEndObject();
                }))
                .build();
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response add(@PathParam("id") String id, Body body) {
        shelf.standing(id);
        JsonNode label = Documents.object(body.text()).path("label");
        if (!label.isTextual() || label.asText().isBlank())
            throw new Refusal(400, "label should say who gets it, such as {\"label\":\"neighbour\"}");
        if (shelf.store().shares().of(id).size() >= MOST_SHARES)
            throw new Refusal(409, "this garden has " + MOST_SHARES + " shares: take one back first");
        String token = Guard.SHARE + Ids.secret();
        String hash = Answer.hash(token.getBytes(StandardCharsets.UTF_8));
        Share share = shelf.store().shares().add(Ids.next(), id, hash, label.asText().strip());
        return Response.status(201)
                .header(HttpHeaders.LOCATION, "/api/gardens/" + id + "/shares/" + share.id())
                .entity(Json.text(json -> {
                    json.writeStartObject();
                    write(json, share);
                    json.writeStringField("token", token);
                    json.writeEndObject();
                }))
                .build();
    }

    @DELETE
    @Path("{share}")
    public Response remove(@PathParam("id") String id, @PathParam("share") String share) {
        if (!shelf.store().shares().remove(id, share)) throw new Refusal(404, "the garden has no such share");
        live.shareEnded(id);
        return Response.noContent().build();
    }

    private static void write(JsonGenerator json, Share share) throws IOException {
        json.writeStringField("id", share.id());
        json.writeStringField("label", share.label());
        json.writeStringField("made", share.made().toString());
    }
}
