package lapyard.answers;

import java.util.List;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.words.Wording;

/** A document or problem that cannot be worked out as it is: the findings say what to put right. */
public final class Refused extends RuntimeException {
    private final List<Finding> findings;
    private final Wording words;

    public Refused(List<Finding> findings) {
        this(findings, Wording.METRIC);
    }

    /** @param words how the garden words its findings */
    public Refused(List<Finding> findings, Wording words) {
        super(findings.isEmpty() ? "refused" : findings.get(0).where() + ": " + words.text(findings.get(0)));
        this.findings = List.copyOf(findings);
        this.words = words;
    }

    /** @throws IllegalArgumentException the one given, where it tells of a fault of the program */
    static Refused of(IllegalArgumentException thrown, Wording words) {
        return new Refused(CannotAnswer.findings(thrown), words);
    }

    public List<Finding> findings() {
        return findings;
    }

    public Wording words() {
        return words;
    }
}
