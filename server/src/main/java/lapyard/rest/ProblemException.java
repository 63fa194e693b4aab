package lapyard.rest;

import jakarta.ws.rs.WebApplicationException;
import java.util.List;
import lapyard.plan.Finding;
import lapyard.words.Wording;

/** Ends a request with an RFC 9457 problem. */
final class ProblemException extends WebApplicationException {
    private final transient Problem problem;

    ProblemException(Problem problem) {
        super(problem.detail(), problem.status());
        this.problem = problem;
    }

    ProblemException(int status, String detail) {
        this(Problem.of(status, detail));
    }

    ProblemException(List<Finding> stops, Wording words) {
        this(Problem.of(422, "the garden cannot be saved or drawn as it is: solve the findings under snags", stops, words));
    }

    Problem problem() {
        return problem;
    }
}
