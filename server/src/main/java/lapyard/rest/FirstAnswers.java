package lapyard.rest;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Supplier;
import lapyard.store.GardenStore;
import lapyard.store.StoreFault;
import org.glassfish.grizzly.http.Method;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;

/**
 * The list as the page first asks for it, and whether the store is well, answered as soon as the store is open: the resource
 * library is made ready only then, which takes longer than all else of the start. Whatever else is asked waits for it.
 */
record FirstAnswers(Supplier<GardenStore> store) {
    /** @return whether it answered; where not, nothing was touched */
    boolean serve(String path, Request request, Response response) throws IOException {
        boolean list = path.equals("/api/gardens");
        if (!list && !path.equals("/health") || !request.getMethod().equals(Method.GET) || request.getQueryString() != null) return false;
        if (list && Requester.onlyGarden().isPresent() || !takes(request.getHeader("Accept"), "application/json")) return false;
        Listing answer;
        try {
            answer = list ? Listing.of(store.get(), Listing.FIRST) : new Listing(ApiResource.health(store.get()), Optional.empty());
        } catch (StoreFault fault) {
            return false; // the resource says so in its own way
        }
        byte[] body = answer.json().getBytes(StandardCharsets.UTF_8);
        answer.link().ifPresent(link -> response.setHeader("Link", link));
        response.setContentType("application/json");
        response.setContentLength(body.length);
        response.getOutputStream().write(body);
        return true;
    }

    /** Whatever is asked for with more thought than this is left to the resources. */
    static boolean takes(String accept, String type) {
        return accept == null || accept.equals("*/*") || accept.equals(type);
    }
}
