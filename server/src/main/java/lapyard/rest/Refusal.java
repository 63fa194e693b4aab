package lapyard.rest;

import jakarta.ws.rs.WebApplicationException;
import java.util.List;
import lapyard.plan.Finding;
import lapyard.words.Wording;

/** Ends a request with a problem. */
final class Refusal extends WebApplicationException {
    private final transient Problem problem;

    Refusal(Problem problem) {
        super(problem.detail(), problem.status());
        this.problem = problem;
    }

    Refusal(int status, String detail) {
        this(Problem.of(status, detail));
    }

    Refusal(List<Finding> stops, Wording words) {
        this(Problem.of(422, "it cannot be kept or drawn as it is: put right what snags name", stops, words));
    }

    Problem problem() {
        return problem;
    }
}
