package lapyard.rest;

import jakarta.ws.rs.WebApplicationException;
import java.util.List;
import java.util.Map;
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

    ProblemException(int status, String detail, Map<String, Object> more) {
        this(new Problem(status, detail, more));
    }

    /** Says the one thing that is wrong, or that there are several. */
    ProblemException(List<Finding> stops, Wording words) {
        this(new Problem(422, stops.size() == 1 ? words.place(stops.get(0).place()) + ": " + words.paragraph(stops.get(0)) : stops.size() + " things are wrong. Correct each that \"snags\" lists.", Map.of(), stops, words));
    }

    Problem problem() {
        return problem;
    }
}
