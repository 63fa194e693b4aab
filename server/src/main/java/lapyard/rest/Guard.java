package lapyard.rest;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.answers.Answer;
import lapyard.store.GardenStore;
import lapyard.store.Share;
import lapyard.store.StoreFault;
import org.glassfish.grizzly.http.HttpRequestPacket;
import org.glassfish.grizzly.http.Method;

/**
 * Turns away what must not reach a resource: other sites' pages acting through a visitor's browser (by a Host that
 * is not ours, as after DNS rebinding, or by an Origin that is not ours), callers without a token or with one that
 * does not go so far, and bodies that say they are over the limit.
 */
record Guard(Binding binding, Supplier<GardenStore> store, Attempts attempts) {
    /** What every share token starts with, so that only those cost a look into the store. */
    static final String SHARE = "share-";

    private static final String VERDICT = "lapyard.verdict";
    private static final Set<Method> SAFE = Set.of(Method.GET, Method.HEAD, Method.OPTIONS);
    private static final Set<String> ELSEWHERE = Set.of("cross-site", "same-site");
    /** Made from a body, nothing is kept: reading, though by POST. */
    private static final Pattern ONLY_REASONS = Pattern.compile("/api/(job-sheet(/[^/]+)?|site-plan|merchant-list|site-file|try-out|solve/[a-z-]+|solves/[a-z0-9]+)");
    private static final Pattern OF_GARDEN = Pattern.compile("/api/gardens/([a-z0-9-]{1,40})(/.*)?");
    /** What one garden's sharer does not get to see: older texts, and who else has a share. */
    private static final Pattern NOT_SHARED = Pattern.compile("/(revisions|difference|variation|file|shares|copy).*");

    /** Either who asks, or the problem that the request is answered with. */
    record Verdict(Optional<Problem> refusal, String who, Optional<String> garden, Optional<String> share) {
        static Verdict no(Problem problem) {
            return new Verdict(Optional.of(problem), "refused", Optional.empty(), Optional.empty());
        }

        static Verdict yes(String who) {
            return new Verdict(Optional.empty(), who, Optional.empty(), Optional.empty());
        }
    }

    /** Judged once for a request, from its header, before its body. */
    Verdict verdict(HttpRequestPacket request) {
        if (request.getAttribute(VERDICT) instanceof Verdict known) return known;
        Verdict verdict = judged(request, request.getRequestURI());
        request.setAttribute(VERDICT, verdict);
        return verdict;
    }

    private Verdict judged(HttpRequestPacket request, String path) {
        Optional<String> written = HeaderRules.broken(request);
        if (written.isPresent()) return Verdict.no(Problem.of(400, written.get()));
        String host = Optional.ofNullable(request.getHeader("Host")).orElse("").toLowerCase(Locale.ROOT);
        if (binding.keys().isEmpty() && !ours(nameOf(host)))
            return Verdict.no(Problem.of(421, "this server answers to localhost and its own address only: use one of them"));
        if (!SAFE.contains(request.getMethod()) && fromElsewhere(request, host))
            return Verdict.no(Problem.of(403, "another site's page may not change anything here: use this server's own page"));
        if (path.startsWith("/api") && fromElsewhere(request, host))
            return Verdict.no(Problem.of(403, "another site's page may not ask for anything here: use this server's own page"));
        Verdict caller = needsToken(path) ? caller(request, path) : Verdict.yes("anyone");
        if (caller.refusal().isEmpty() && hasEncodedBody(request))
            return Verdict.no(Problem.of(415, "the Content-Encoding says that the body is compressed: send it as it is, without that header"));
        if (caller.refusal().isEmpty() && request.getContentLength() > BodyReader.limit(path))
            return Verdict.no(BodyReader.tooLarge(BodyReader.limit(path)).problem());
        return caller;
    }

    /** Whether what is sent there is only worked on, and nothing is kept. */
    static boolean onlyReasons(String path) {
        return ONLY_REASONS.matcher(path).matches();
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

    private static boolean hasEncodedBody(HttpRequestPacket request) {
        String encoding = request.getHeader("Content-Encoding");
        return encoding != null && !encoding.strip().equalsIgnoreCase("identity");
    }

    private static boolean fromElsewhere(HttpRequestPacket request, String host) {
        String site = request.getHeader("Sec-Fetch-Site");
        if (site != null && ELSEWHERE.contains(site)) return true;
        String origin = request.getHeader("Origin");
        if (origin == null) return false;
        String lower = origin.toLowerCase(Locale.ROOT);
        return !lower.equals("http://" + host) && !lower.equals("https://" + host);
    }

    private boolean needsToken(String path) {
        return !binding.keys().isEmpty()
                && (path.startsWith("/api") || path.startsWith("/metrics") || isOddlyWritten(path));
    }

    /** An address that could be read for another: nothing of ours needs one. */
    private static boolean isOddlyWritten(String text) {
        return text.contains("%") || text.contains("//") || text.contains("/.") || text.contains(";");
    }

    private Verdict caller(HttpRequestPacket request, String path) {
        String header = request.getHeader("Authorization");
        if (header == null || !header.regionMatches(true, 0, "Bearer ", 0, 7))
            return Verdict.no(Problem.of(401, "send a token as Authorization: Bearer TOKEN"));
        String from = binding.addressOf(request);
        long wait = attempts.waitSeconds(from);
        if (wait > 0) return Verdict.no(Problem.later(429, "too many wrong tokens came from your address: wait " + wait + " s, then send the right one", wait));
        String offered = header.substring(7).strip();
        boolean reads = SAFE.contains(request.getMethod());
        if (Keys.any(binding.keys().editors(), offered)) return Verdict.yes("editor");
        if (Keys.any(binding.keys().readers(), offered))
            return reads || onlyReasons(path)
                    ? Verdict.yes("reader")
                    : Verdict.no(Problem.of(403, "this token reads and changes nothing: use an editor's"));
        try {
            Optional<Share> share = offered.startsWith(SHARE) ? byToken(offered) : Optional.empty();
            if (share.isPresent()) return ofShare(share.get(), request, path, reads);
        } catch (StoreFault fault) {
            return Verdict.no(Problems.ofFault(fault));
        }
        attempts.wrong(from);
        return Verdict.no(Problem.of(401, "this server does not know that token: ask who runs it for one"));
    }

    /** The store finds it by its hash: how long that takes says nothing of the token. */
    private Optional<Share> byToken(String offered) {
        return store.get().shares().byHash(Answer.hash(offered.getBytes(StandardCharsets.UTF_8)));
    }

    private static Verdict ofShare(Share share, HttpRequestPacket request, String path, boolean reads) {
        String garden = share.garden();
        Verdict yes = new Verdict(Optional.empty(), "share", Optional.of(garden), Optional.of(share.id()));
        if (reads && List.of("/api/gardens", "/api/samples").contains(path)) return yes;
        Matcher address = OF_GARDEN.matcher(path);
        boolean own = address.matches() && address.group(1).equals(garden);
        String query = Optional.ofNullable(request.getQueryString()).orElse("");
        boolean older = query.contains("revision") || query.contains("%") || isOddlyWritten(path);
        String part = own && address.group(2) != null ? address.group(2) : "";
        if (reads && own && !older && !NOT_SHARED.matcher(part).matches()) return yes;
        return Verdict.no(Problem.of(403, "this token reads one garden as it stands, and nothing else: use a reader's or an editor's"));
    }
}
