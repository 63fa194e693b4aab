package lapyard.rest;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.glassfish.grizzly.http.server.HttpHandler;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;
import org.glassfish.grizzly.nio.NIOConnection;

/** Takes in every request: checks it, counts it, sets the headers that every answer has, and passes it on. */
record FrontHandler(
        Binding binding, Guard guard, Supplier<PageFiles> page, Resources resources, Live live, LongAnswers longAnswers,
        StandingAnswers standing, Metrics metrics, AccessLog log) {
    /** @param all makes them, where they are not made, and waits */
    record Resources(Supplier<HttpHandler> all, BooleanSupplier areMade) {}

    private static final String POLICY =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none';"
                    + " frame-ancestors 'self'";

    void service(Request request, Response response) throws Exception {
        if (request.getContext().getConnection() instanceof NIOConnection line
                && line.getAsyncWriteQueue().spaceInBytes() > 0) {
            line.terminateSilently(); // it sends requests and does not take the answers to those before
            return;
        }
        metrics.began();
        Guard.Verdict verdict = guard.verdict(request.getRequest());
        Exchange asked = new Exchange(request, new Requester(Ids.next(), verdict.who(), verdict.garden()), System.nanoTime());
        String path = request.getRequestURI();
        Requester.begin(asked.asking());
        try {
            everyHeader(path, response);
            response.setHeader("X-Request-Id", asked.asking().request());
            if (answered(path, verdict.refusal(), request, response)) ended(asked, response);
            else if (LongAnswers.has(request)) longAnswers.begin(asked.address(binding), request, response, () -> askApi(request, response), asked.asking(), () -> ended(asked, response));
            else {
                askApi(request, response);
                ended(asked, response);
            }
        } catch (Throwable thrown) {
            OutOfMemory.check(thrown);
            ended(asked, response);
            throw thrown;
        } finally {
            Requester.end();
        }
    }

    private record Exchange(Request request, Requester asking, long fromNanos) {
        String address(Binding binding) {
            return binding.addressOf(request.getRequest());
        }
    }

    /** The answer is written, or its line is gone. */
    private void ended(Exchange asked, Response response) {
        WholeBodies.free(asked.request().getRequest());
        long took = System.nanoTime() - asked.fromNanos();
        String method = asked.request().getMethod().getMethodString();
        metrics.ended(known(method), response.getStatus(), took);
        log.line(asked.asking().request(), asked.address(binding), asked.asking().who(), method, asked.request().getRequestURI(), response.getStatus(), took / 1_000_000);
    }

    /** @return false where the resources have to be asked */
    private boolean answered(String path, Optional<Problem> refusal, Request request, Response response) throws Exception {
        if (refusal.isPresent()) {
            if (refusal.get().status() == 401) response.setHeader("WWW-Authenticate", "Bearer realm=\"lapyard\"");
            send(response, refusal.get());
        } else if (WholeBodies.hadNoRoom(request.getRequest())) {
            send(response, Problem.later(503, "the memory for request bodies is full: nothing was changed, ask again", 10));
        } else if (!path.startsWith("/api/") && page.get().has(path)) {
            page.get().serve(path, request, response);
        } else if (Live.has(path)) {
            live.serve(path, guard.verdict(request.getRequest()).share(), request, response);
        } else {
            return standing.serve(path, request, response) || standing.serveFirst(path, request, response);
        }
        return true;
    }

    private void askApi(Request request, Response response) throws Exception {
        if (!resources.areMade().getAsBoolean() && standing.serveEarly(request, response)) {
            if (response.isSuspended()) response.resume();
            return;
        }
        try {
            resources.all().get().service(request, response);
        } catch (IllegalArgumentException unreadable) {
            if (!(unreadable.getCause() instanceof URISyntaxException)) throw unreadable;
            send(response, Problem.of(400, "the address holds a character that must be encoded: write it as %20 and the like"));
        }
    }

    private void everyHeader(String path, Response response) {
        if (binding.tls().isPresent()) response.setHeader("Strict-Transport-Security", "max-age=31536000");
        response.setHeader("Date", date(OffsetDateTime.now(ZoneOffset.UTC)));
        response.setHeader("X-Content-Type-Options", "nosniff");
        response.setHeader("Referrer-Policy", "same-origin");
        response.setHeader("Cross-Origin-Resource-Policy", "same-origin");
        response.setHeader("Cross-Origin-Opener-Policy", "same-origin");
        response.setHeader("Content-Security-Policy", POLICY);
        response.setHeader("Cache-Control", path.startsWith("/api") ? "private, no-cache" : "no-cache");
        response.setHeader("Vary", "Accept-Encoding");
    }

    /** The Date header of RFC 9110, section 5.6.7: its day has two digits, which the one of RFC 1123 may leave out. @param time in UTC */
    static String date(OffsetDateTime time) {
        String text = DateTimeFormatter.RFC_1123_DATE_TIME.format(time);
        return text.charAt(6) == ' ' ? text.substring(0, 5) + "0" + text.substring(5) : text;
    }

    /** Methods that anybody could make up share one name in the counters. */
    private static String known(String method) {
        return switch (method) {
            case "GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS" -> method;
            default -> "other";
        };
    }

    static void notAllowed(Response response, String allowed) throws IOException {
        response.setHeader("Allow", allowed);
        send(response, Problem.of(405, Problems.NOT_ALLOWED));
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
