package lapyard.plan;

import java.util.List;
import lapyard.words.Wording;

/** Findings as tests read them: in millimetres. */
public final class Told {
    private Told() {}

    /** A finding in words of the test's own. */
    public static Finding saying(Finding.Weight weight, Place place, String text) {
        return Finding.of(FindingKind.REQUEST_REFUSED, place).weighing(weight).with("text", Fact.name(text));
    }

    public static String text(Finding finding) {
        return Wording.METRIC.text(finding);
    }

    public static List<String> ways(Finding finding) {
        return Wording.METRIC.ways(finding);
    }
}
