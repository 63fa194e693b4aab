package lapyard.rest;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Supplier;
import org.glassfish.grizzly.http.server.HttpHandler;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;
import org.glassfish.grizzly.nio.NIOConnection;

/** Where every request comes in: guarded, counted, given the headers that go on everything, then passed on. */
final class Front extends HttpHandler {
    private static final String POLICY =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none';"
                    + " frame-ancestors 'self'";

    private final Guard guard;
    private final Supplier<PageFiles> page;
    private final Supplier<HttpHandler> api;
    private final Live live;
    private final StandingAnswers standing;
    private final Metrics metrics;
    private final Binding binding;
    private final AccessLog log;

    Front(
            Binding binding,
            Guard guard,
            Supplier<PageFiles> page,
            Supplier<HttpHandler> api,
            Live live,
            StandingAnswers standing,
            Metrics metrics,
            AccessLog log) {
        this.binding = binding;
        this.log = log;
        this.guard = guard;
        this.page = page;
        this.api = api;
        this.live = live;
        this.standing = standing;
        this.metrics = metrics;
    }

    @Override
    public void service(Request request, Response response) throws Exception {
        if (request.getContext().getConnection() instanceof NIOConnection line
                && line.getAsyncWriteQueue().spaceInBytes() > 0) {
            line.closeSilently(); // it sends requests and does not take the answers to those before
            return;
        }
        long from = System.nanoTime();
        String id = Ids.next();
        String path = request.getRequestURI();
        String method = request.getMethod().getMethodString();
        metrics.began();
        Guard.Verdict verdict = guard.verdict(request, path);
        Asking.begin(new Asking(id, verdict.who(), verdict.garden()));
        try {
            everyHeader(response);
            response.setHeader("X-Request-Id", id);
            answer(path, verdict.refusal(), request, response);
        } finally {
            Asking.end();
            long took = System.nanoTime() - from;
            metrics.ended(known(method), response.getStatus(), took);
            log.line(id, binding.addressOf(request), verdict.who(), method, path, response.getStatus(), took / 1_000_000);
        }
    }

    private void answer(String path, Optional<Problem> refusal, Request request, Response response) throws Exception {
        if (refusal.isPresent()) {
            if (refusal.get().status() == 401) response.setHeader("WWW-Authenticate", "Bearer realm=\"lapyard\"");
            send(response, refusal.get());
        } else if (!path.startsWith("/api/") && page.get().has(path)) {
            page.get().serve(path, request, response);
        } else if (Live.has(path)) {
            live.serve(path, request, response);
        } else if (!standing.serve(path, request, response)) {
            askApi(request, response);
        }
    }

    private void askApi(Request request, Response response) throws Exception {
        try {
            api.get().service(request, response);
        } catch (IllegalArgumentException unreadable) {
            if (!(unreadable.getCause() instanceof URISyntaxException)) throw unreadable;
            send(response, Problem.of(400, "the address is not written as addresses are"));
        }
    }

    private static void everyHeader(Response response) {
        response.setHeader("Date", HttpDate.now());
        response.setHeader("X-Content-Type-Options", "nosniff");
        response.setHeader("Referrer-Policy", "same-origin");
        response.setHeader("Cross-Origin-Resource-Policy", "same-origin");
        response.setHeader("Cross-Origin-Opener-Policy", "same-origin");
        response.setHeader("Content-Security-Policy", POLICY);
        response.setHeader("Cache-Control", "no-cache");
        response.setHeader("Vary", "Accept-Encoding");
    }

    /** Methods that anybody could make up share one name in the counters. */
    private static String known(String method) {
        return switch (method) {
            case "GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS" -> method;
            default -> "other";
        };
    }

    static void send(Response response, Problem problem) throws IOException {
        byte[] body = problem.json().getBytes(StandardCharsets.UTF_8);
        response.setStatus(problem.status(), Problem.title(problem.status()));
        response.setContentType(Problem.TYPE);
        problem.retryAfter().ifPresent(seconds -> response.setHeader("Retry-After", seconds.toString()));
        response.setContentLength(body.length);
        response.getOutputStream().write(body);
    }
}
