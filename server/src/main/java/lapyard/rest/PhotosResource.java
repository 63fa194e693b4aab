package lapyard.rest;

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
import java.util.List;
import lapyard.answers.Answer;
import lapyard.drawing.Photo;
import lapyard.store.Photos;

/** Photos of a garden: the pictures alone, without place, time and maker. */
@Path("api/gardens/{id}/photos")
public record PhotosResource(Shelf shelf) {
    @GET
    @Produces(MediaType.APPLICATION_JSON)
    public Response list(@PathParam("id") String id) {
        shelf.everKept(id);
        return Response.ok(Json.text(Json.object("photos", shelf.store().photos().list(id).stream()
                .map(photo -> Json.object("id", photo.id(), "type", photo.type(), "bytes", photo.bytes(), "saved", photo.saved())).toList()))).build();
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    public Response add(@PathParam("id") String id, Body body) {
        shelf.standing(id);
        Photos.Kept photo = kept(Documents.object(body.text()).path("photo").asText(""), "photo");
        if (!shelf.store().photos().add(id, List.of(photo))) throw tooMany();
        return Response.status(201)
                .header(HttpHeaders.LOCATION, "/api/gardens/" + id + "/photos/" + photo.id())
                .entity(Json.text(Json.object("id", photo.id())))
                .build();
    }

    static ProblemException tooMany() {
        return new ProblemException(409, "a garden keeps " + Photos.MOST + " photos with " + Photos.MOST_BYTES + " bytes together: delete one first, or make them smaller");
    }

    /** @throws ProblemException 400 where it is no base64, 422 where it is no picture that is kept */
    static Photos.Kept kept(String base64, String field) {
        byte[] bytes = Documents.base64(base64);
        if (bytes.length == 0) throw new ProblemException(400, field + " should hold the picture in base64: send {\"photo\": \"...\"}");
        Photo photo = Photo.of(bytes);
        return new Photos.Kept(Answer.hash(photo.bytes()), photo.type(), java.time.Instant.EPOCH, photo.bytes());
    }

    @GET
    @Path("{photo: [0-9a-f]+}")
    @Produces({"image/jpeg", "image/png"})
    public Response photo(@PathParam("id") String id, @PathParam("photo") String photo) {
        shelf.everKept(id);
        Photos.Kept kept = shelf.store().photos().find(id, photo).orElseThrow(() -> none(photo));
        return Response.ok(kept.bytes(), kept.type()).header(HttpHeaders.CACHE_CONTROL, "private, max-age=31536000, immutable").build();
    }

    @DELETE
    @Path("{photo: [0-9a-f]+}")
    public Response remove(@PathParam("id") String id, @PathParam("photo") String photo) {
        shelf.everKept(id);
        if (!shelf.store().photos().remove(id, photo)) throw none(photo);
        return Response.noContent().build();
    }

    private static ProblemException none(String photo) {
        return new ProblemException(404, "the garden has no photo " + photo);
    }
}
