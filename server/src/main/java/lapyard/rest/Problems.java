package lapyard.rest;

import jakarta.ws.rs.NotAllowedException;
import jakarta.ws.rs.NotSupportedException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.ExceptionMapper;
import java.io.IOException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.lang.annotation.Annotation;
import java.util.Map;
import lapyard.answers.Busy;
import lapyard.answers.CallerLeft;
import lapyard.answers.Refused;
import lapyard.plan.CannotAnswer;
import lapyard.store.StoreFault;
import lapyard.words.Wording;
import lapyard.working.BrokenRule;

/** Turns what is thrown into a problem. What nobody foresaw is logged under an id, and the answer shows only that. */
final class Problems implements ExceptionMapper<Throwable>, ContainerResponseFilter {
    private static final Logger LOG = System.getLogger("lapyard.rest");

    private static final long RETRY_SECONDS = 5;
    static final String NOT_ALLOWED = "this address does not allow that method: use one that the header Allow names";

    @Context
    private UriInfo uri;

    @Override
    public Response toResponse(Throwable thrown) {
        if (!(thrown instanceof ProblemException) && thrown instanceof WebApplicationException web && web.getResponse().getStatus() < 500)
            return ofJersey(web);
        return response(of(thrown)).build();
    }

    /** Some refusals never reach a mapper, such as that of a header nobody can parse; they get a body here. */
    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        if (response.getStatus() < 400 || response.hasEntity()) return;
        Problem problem = Problem.of(response.getStatus(), "the request is not valid HTTP: send it again");
        response.setEntity(problem.json(), new Annotation[0], MediaType.valueOf(Problem.TYPE));
    }

    /** What is said of anything that was thrown. */
    static Problem of(Throwable thrown) {
        OutOfMemory.check(thrown);
        if (thrown instanceof ProblemException refusal) return refusal.problem();
        if (thrown instanceof Refused refused) return new ProblemException(refused.findings(), refused.words()).problem();
        if (thrown instanceof CannotAnswer || thrown instanceof BrokenRule)
            return new ProblemException(CannotAnswer.findings((IllegalArgumentException) thrown), Wording.METRIC).problem();
        if (thrown instanceof Busy busy) return Problem.later(503, busy.getMessage(), busy.retrySeconds());
        if (thrown instanceof StoreFault fault) return ofFault(fault);
        if (thrown instanceof CallerLeft) return Problem.of(400, "the connection was closed before all of it had come: send it again");
        return unforeseen(thrown);
    }

    private static Response.ResponseBuilder response(Problem problem) {
        Response.ResponseBuilder response =
                Response.status(problem.status()).type(Problem.TYPE).entity(problem.json());
        problem.retryAfter().ifPresent(seconds -> response.header(HttpHeaders.RETRY_AFTER, seconds));
        return response;
    }

    private Response ofJersey(WebApplicationException web) {
        Response given = web.getResponse();
        if (given.getStatus() < 400) return given;
        Response.ResponseBuilder answer = response(Problem.of(given.getStatus(), detail(web)));
        Object allow = given.getHeaders().getFirst(HttpHeaders.ALLOW);
        if (allow != null) answer.header(HttpHeaders.ALLOW, allow);
        return answer.build();
    }

    private String detail(WebApplicationException web) {
        return switch (web.getResponse().getStatus()) {
            case 404 -> "there is nothing at this address: /openapi.html lists those there are";
            case 405 ->
                web instanceof NotAllowedException
                        ? NOT_ALLOWED
                        : "this address does not allow that method";
            case 406 -> "this address cannot answer in the form that Accept asks for: send the request without Accept, or with */*";
            case 415 ->
                web instanceof NotSupportedException && uri.getPath().startsWith("api/")
                        ? "this address does not take a body of that Content-Type:"
                                + " send application/json, or application/merge-patch+json with PATCH"
                        : "this address does not take a body of that Content-Type";
            default -> "the request is not valid: send it as the API description has it";
        };
    }

    static Problem ofFault(StoreFault fault) {
        // foreseen, and said in one line: where in the program it showed helps nobody
        String id = id();
        LOG.log(Level.WARNING, "id " + id + ": " + fault.getMessage());
        String detail = fault.uncertain()
                ? "the database's answer was lost, so nobody knows whether the change was kept: send it again, a save that was kept is not kept twice"
                : fault.full() ? "the disk is full: nothing was changed; make room and send it again" : "the store cannot be used now: nothing was changed; try again";
        return new Problem(fault.full() && !fault.uncertain() ? 507 : 503, detail, Map.of("id", id, "retryAfter", RETRY_SECONDS));
    }

    static Problem unforeseen(Throwable thrown) {
        // files and databases have carriers of their own: what comes bare is the line to the caller, and nobody reads on
        if (thrown instanceof IOException) return Problem.of(400, "the connection was closed before all of it had come: send it again");
        String id = id();
        LOG.log(Level.ERROR, "id " + id, thrown);
        return new Problem(500, "this should not have happened; the server's log says more under the id", Map.of("id", id));
    }

    /** That of the request, so that its answer, the access log and this log go together. */
    private static String id() {
        return Requester.now().map(Requester::request).orElseGet(Ids::next);
    }
}
