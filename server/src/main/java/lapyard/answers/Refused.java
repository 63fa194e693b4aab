package lapyard.answers;

import java.util.List;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.words.Wording;

/** A document or problem that cannot be worked out as it is, told in the measures of its garden. */
public final class Refused extends CannotAnswer {
    private final transient Wording words;

    public Refused(List<Finding> findings) {
        this(findings, Wording.METRIC);
    }

    /** @param words how the garden words its findings */
    public Refused(List<Finding> findings, Wording words) {
        super(findings);
        this.words = words;
    }

    /** @throws IllegalArgumentException the one given, where it tells of a fault of the program */
    static Refused of(IllegalArgumentException thrown, Wording words) {
        return new Refused(CannotAnswer.findings(thrown), words);
    }

    public Wording words() {
        return words;
    }
}
