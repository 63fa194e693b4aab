package lapyard.prints;

import java.util.List;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayOut;

/** This garden has not what a kind of sheet shows; the finding says what is missing and how to give it. */
public final class CannotPrint extends CannotAnswer {
    CannotPrint(List<Finding> findings) {
        super(findings);
    }

    /** With every way out of its kind, as none of them needs a figure. */
    static CannotPrint of(FindingKind kind) {
        return of(Finding.of(kind, Place.field("sheets")));
    }

    static CannotPrint of(Finding finding) {
        return new CannotPrint(List.of(finding.ways(finding.kind().ways.stream().map(WayOut::of).toList())));
    }
}
