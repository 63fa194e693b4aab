package lapyard.rest;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.glassfish.grizzly.http.Method;
import org.glassfish.grizzly.http.server.Request;

/**
 * Turns away what must not reach a resource: other sites' pages acting through a visitor's browser (by a Host that
 * is not ours, as after DNS rebinding, or by an Origin that is not ours), callers without the token, and bodies
 * that say they are over the limit.
 */
final class Guard {
    private static final Set<Method> SAFE = Set.of(Method.GET, Method.HEAD, Method.OPTIONS);
    private static final Set<String> ELSEWHERE = Set.of("cross-site", "same-site");

    private final Binding binding;

    Guard(Binding binding) {
        this.binding = binding;
    }

    /** Empty where the request may pass. */
    Optional<Problem> refusal(Request request, String path) {
        String host = Optional.ofNullable(request.getHeader("Host")).orElse("").toLowerCase(Locale.ROOT);
        if (binding.token().isEmpty() && !ours(nameOf(host)))
            return Optional.of(Problem.of(421, "this server answers to localhost and its own address only"));
        if (!SAFE.contains(request.getMethod()) && fromElsewhere(request, host))
            return Optional.of(Problem.of(403, "another site's page may not change anything here"));
        if (needsToken(path) && !hasToken(request))
            return Optional.of(Problem.of(401, "send the server's token as Authorization: Bearer TOKEN"));
        if (request.getContentLengthLong() > BodyReader.LIMIT)
            return Optional.of(BodyReader.tooLarge().problem());
        return Optional.empty();
    }

    private boolean ours(String name) {
        return name.equals("localhost")
                || name.equals("[::1]")
                || name.matches("127\\.[0-9]{1,3}\\.[0-9]{1,3}\\.[0-9]{1,3}")
                || name.equals(binding.host().toLowerCase(Locale.ROOT));
    }

    /** A Host header without its port. */
    private static String nameOf(String host) {
        int colon = host.lastIndexOf(':');
        return colon > host.lastIndexOf(']') ? host.substring(0, colon) : host;
    }

    private static boolean fromElsewhere(Request request, String host) {
        String site = request.getHeader("Sec-Fetch-Site");
        if (site != null && ELSEWHERE.contains(site)) return true;
        String origin = request.getHeader("Origin");
        if (origin == null) return false;
        String lower = origin.toLowerCase(Locale.ROOT);
        return !lower.equals("http://" + host) && !lower.equals("https://" + host);
    }

    private boolean needsToken(String path) {
        return binding.token().isPresent() && (path.startsWith("/api") || path.startsWith("/metrics"));
    }

    private boolean hasToken(Request request) {
        String header = request.getHeader("Authorization");
        return header != null
                && header.regionMatches(true, 0, "Bearer ", 0, 7)
                && binding.token().orElseThrow().matches(header.substring(7).strip());
    }
}
