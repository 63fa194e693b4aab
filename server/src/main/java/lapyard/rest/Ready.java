package lapyard.rest;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.Supplier;
import lapyard.store.GardenStore;
import lapyard.store.StoreFault;
import lapyard.store.Stored;
import org.glassfish.grizzly.http.Method;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;

/**
 * Answers that were given already, handed out again before the resources are asked: a garden's document, its job sheet
 * and its drawings as they are asked for without conditions of their own. Each is of one revision. While the store says
 * that nothing was written since, it stands; else, and always where servers share a database, the store is asked for the
 * newest revision first. The least lately used are dropped.
 */
final class Ready {
    private static final long LIMIT_BYTES = 12L << 20;

    private final Supplier<GardenStore> store;
    private final LongAdder hits;
    private final LinkedHashMap<String, Answer> answers = new LinkedHashMap<>(16, 0.75f, true);
    private long bytes;

    /** @param hits counts job sheets and drawings that were found ready */
    Ready(Supplier<GardenStore> store, LongAdder hits) {
        this.store = store;
        this.hits = hits;
    }

    /**
     * @param moment      of the store from before the garden was looked up; empty where it tells none
     * @param tag         the entity tag, in quotes
     * @param disposition empty where there is no such header
     */
    record Answer(String garden, long revision, OptionalLong moment, byte[] bytes, String type, String tag, Optional<String> disposition) {
        Answer at(OptionalLong other) {
            return new Answer(garden, revision, other, bytes, type, tag, disposition);
        }
    }

    /** Remembers an answer for its address, which has no query. */
    void keep(String path, Answer answer) {
        if (answer.bytes().length > LIMIT_BYTES / 8) return;
        synchronized (answers) {
            Answer before = answers.put(path, answer);
            bytes += answer.bytes().length - (before == null ? 0 : before.bytes().length);
            var eldest = answers.entrySet().iterator();
            while (bytes > LIMIT_BYTES) {
                Map.Entry<String, Answer> oldest = eldest.next();
                bytes -= oldest.getValue().bytes().length;
                eldest.remove();
            }
        }
    }

    private void drop(String path) {
        synchronized (answers) {
            Answer gone = answers.remove(path);
            if (gone != null) bytes -= gone.bytes().length;
        }
    }

    /** @return whether it answered; where not, nothing was touched */
    boolean serve(String path, Request request, Response response) throws IOException {
        boolean head = request.getMethod().equals(Method.HEAD);
        if (!head && !request.getMethod().equals(Method.GET) || request.getQueryString() != null) return false;
        Answer answer;
        synchronized (answers) {
            answer = answers.get(path);
        }
        if (answer == null || !takes(request.getHeader("Accept"), answer.type()) || !stands(path, answer)) return false;
        if (!path.endsWith("/" + answer.garden())) hits.increment();
        response.setHeader("ETag", answer.tag());
        answer.disposition().ifPresent(how -> response.setHeader("Content-Disposition", how));
        if (Tags.has(request.getHeader("If-None-Match"), answer.tag())) {
            response.setStatus(304);
            return true;
        }
        response.setContentType(answer.type());
        response.setContentLength(answer.bytes().length);
        if (!head) response.getOutputStream().write(answer.bytes());
        return true;
    }

    /** Whatever is asked for with more thought than this is left to the resources. */
    private static boolean takes(String accept, String type) {
        return accept == null || accept.equals("*/*") || accept.equals(type);
    }

    private boolean stands(String path, Answer answer) {
        try {
            OptionalLong now = store.get().moment();
            if (now.isPresent() && now.equals(answer.moment())) return true;
            Optional<Stored> newest = store.get().find(answer.garden());
            if (newest.isEmpty() || newest.get().deleted() || newest.get().revision() != answer.revision()) {
                drop(path);
                return false;
            }
            if (now.isPresent()) keep(path, answer.at(now));
            return true;
        } catch (StoreFault away) {
            return false; // the resource says so in its own way
        }
    }
}
