package lapyard.ground;

import lapyard.plan.Finding;
import lapyard.words.Wording;

/** A finding as it is read aloud: the fact, then its ways out. */
final class Spoken {
    private Spoken() {}

    static String of(Finding finding) {
        return Wording.METRIC.paragraph(finding);
    }
}
