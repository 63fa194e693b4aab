package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import lapyard.store.KeptRevision;
import lapyard.store.Photos;
import lapyard.store.Revision;

/**
 * One garden with its whole history as a file: {@code {"lapyard":"garden","format":1,"name":...,"revisions":[...],"photos":[...]}},
 * photos in base64.
 * Each revision's document stands as the text it was given.
 */
public final class GardenFile {
    static final int MOST_REVISIONS = 20_000;
    private static final Set<String> KINDS = Set.of("created", "saved", "restored", "deleted");

    private GardenFile() {}

    public static String text(String name, List<KeptRevision> history, List<Photos.Kept> photos) {
        return Json.text(Json.object("lapyard", "garden", "format", 1, "name", name, "revisions", history.stream().map(GardenFile::row).toList(),
                "photos", photos.isEmpty() ? null : photos.stream().map(photo -> Base64.getEncoder().encodeToString(photo.bytes())).toList()));
    }

    private static Object row(KeptRevision kept) {
        return Json.object("number", kept.number(), "kind", kept.kind().name().toLowerCase(Locale.ROOT), "saved", kept.saved(), "stamp", kept.stamp(), "document", kept.document());
    }

    /** @throws ProblemException 400 that names the revision and what is wrong with it */
    static List<KeptRevision> read(String text) {
        ObjectNode file = Documents.object(text);
        if (!file.path("lapyard").asText().equals("garden") || file.path("format").asInt() != 1)
            throw new ProblemException(400, "this is no garden file: it starts with \"lapyard\":\"garden\",\"format\":1");
        JsonNode revisions = file.path("revisions");
        if (!revisions.isArray() || revisions.isEmpty() || revisions.size() > MOST_REVISIONS)
            throw new ProblemException(400, "a garden file holds 1 to " + MOST_REVISIONS + " revisions");
        List<KeptRevision> history = new ArrayList<>();
        long last = 0;
        for (JsonNode each : revisions) {
            KeptRevision kept = kept(each, history.size() + 1);
            if (kept.number() <= last) throw bad(history.size() + 1, "its number should be above " + last);
            last = kept.number();
            history.add(kept);
        }
        return history;
    }

    /** The longest that is read, bytes; a server with little memory takes less. */
    public static final int MOST_BYTES = 32 << 20;

    /** The newest document of a garden's file and all its photos. */
    public record Newest(String document, List<Photos.Kept> photos) {}

    /** @throws IllegalArgumentException that names the revision or photo and what is wrong with it */
    public static Newest newest(String text) {
        try {
            List<KeptRevision> history = read(text);
            return new Newest(history.get(history.size() - 1).document(), photos(text));
        } catch (ProblemException bad) {
            throw new IllegalArgumentException(bad.problem().detail(), bad);
        }
    }

    /** The photos of such a file; each is looked at as one that is sent. @throws ProblemException that names the photo */
    static List<Photos.Kept> photos(String text) {
        List<Photos.Kept> photos = new ArrayList<>();
        for (JsonNode one : Documents.object(text).path("photos")) photos.add(PhotosResource.kept(one.asText(""), "photo " + (photos.size() + 1) + " of the file"));
        if (!Photos.fit(photos.stream().map(one -> (long) one.bytes().length).toList())) throw PhotosResource.tooMany();
        return photos;
    }

    private static KeptRevision kept(JsonNode each, int place) {
        JsonNode number = each.path("number");
        if (!number.isIntegralNumber() || !number.canConvertToInt() || number.asInt() < 1)
            throw bad(place, "its number should be a whole number from 1");
        String kind = each.path("kind").asText("saved");
        if (!KINDS.contains(kind)) throw bad(place, "its kind should be created, saved, restored or deleted");
        if (!each.path("document").isTextual()) throw bad(place, "its document should be the garden as text");
        String document = each.path("document").asText();
        try {
            Documents.object(document);
        } catch (ProblemException unreadable) {
            throw bad(place, unreadable.problem().detail());
        }
        Optional<String> stamp = Optional.of(each.path("stamp").asText("")).filter(name -> !name.isBlank());
        return new KeptRevision(
                number.asInt(),
                Revision.Kind.valueOf(kind.toUpperCase(Locale.ROOT)),
                Documents.name(document),
                saved(each, place),
                stamp,
                document,
                false);
    }

    private static Instant saved(JsonNode each, int place) {
        try {
            Instant saved = Instant.parse(each.path("saved").asText());
            if (saved.isAfter(Instant.EPOCH) && saved.isBefore(Instant.parse("3000-01-01T00:00:00Z"))) return saved;
            throw bad(place, "its saved should lie between 1970 and 3000");
        } catch (DateTimeException unreadable) {
            throw bad(place, "its saved should be a time such as 2026-05-02T10:00:00Z");
        }
    }

    private static ProblemException bad(int place, String what) {
        return new ProblemException(400, "revision " + place + " of the file: " + what);
    }
}
