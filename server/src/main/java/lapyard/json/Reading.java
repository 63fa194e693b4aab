package lapyard.json;

import java.util.List;
import lapyard.plan.Finding;
import lapyard.plan.Garden;

/** What came of reading a garden document. */
public sealed interface Reading {
    /** Every default filled in; {@code findings} hold no STOP. */
    record Read(Garden garden, List<Finding> findings) implements Reading {
        public Read {
            findings = List.copyOf(findings);
        }
    }

    /** Cannot be stored or drawn; at least one finding is a STOP. */
    record Refused(List<Finding> findings) implements Reading {
        public Refused {
            findings = List.copyOf(findings);
        }
    }

    List<Finding> findings();
}
