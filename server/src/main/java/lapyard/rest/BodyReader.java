package lapyard.rest;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.MessageBodyReader;
import java.io.IOException;
import java.io.InputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.util.Locale;
import lapyard.json.DocumentText;

/** Reads a body up to the limit as UTF-8; a byte order mark is taken off. */
@Consumes("*/*")
final class BodyReader implements MessageBodyReader<Body> {
    /** The longest body that is read, bytes. */
    static final int LIMIT = 5 * 1024 * 1024;

    /** The longest garden file that is read, bytes: what the heap has room for. */
    static final int LONG_LIMIT = (int) Math.min(GardenFile.MOST_BYTES, Runtime.getRuntime().maxMemory() / 32);

    static final String LONG_PATH = "/api/gardens/file";

    @Context
    private UriInfo uri;

    @Override
    public boolean isReadable(Class<?> type, Type generic, Annotation[] annotations, MediaType media) {
        return type == Body.class;
    }

    @Override
    public Body readFrom(
            Class<Body> type,
            Type generic,
            Annotation[] annotations,
            MediaType media,
            MultivaluedMap<String, String> headers,
            InputStream stream) {
        // what has no Content-Type gets here too
        if (!media.getSubtype().endsWith("json"))
            throw new ProblemException(415, "the body has no Content-Type: send application/json");
        String charset = media.getParameters().getOrDefault("charset", "utf-8").toLowerCase(Locale.ROOT);
        if (!charset.equals("utf-8") && !charset.equals("us-ascii"))
            throw new ProblemException(415, "the Content-Type says that the body is in " + charset.replaceAll("[^a-z0-9._-]", "?") + ": send UTF-8");
        int limit = limit("/" + uri.getPath());
        byte[] bytes = read(stream, limit);
        if (bytes.length > limit) throw tooLarge(limit);
        return new Body(Documents.readable(() -> DocumentText.utf8(bytes)));
    }

    /** The longest body that this address takes, bytes. */
    static int limit(String path) {
        return path.equals(LONG_PATH) ? LONG_LIMIT : LIMIT;
    }

    private static byte[] read(InputStream stream, int limit) {
        try {
            return stream.readNBytes(limit + 1);
        } catch (IOException brokenOff) {
            throw new ProblemException(408, "the body did not arrive in full: send it again");
        }
    }

    static ProblemException tooLarge(int limit) {
        return new ProblemException(413, "the body is over " + (limit >> 20) + " MB (" + limit + " bytes): send less");
    }
}
