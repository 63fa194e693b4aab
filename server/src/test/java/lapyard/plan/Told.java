package lapyard.plan;

import java.util.List;
import lapyard.words.Wording;

/** Findings as tests read them: in millimetres. */
public final class Told {
    private Told() {}

    public static String text(Finding finding) {
        return finding.kind() == FindingKind.SAID && finding.accepted().isEmpty()
                ? ((Fact.Name) finding.facts().get("text")).name() : Wording.METRIC.text(finding);
    }

    public static List<String> ways(Finding finding) {
        return finding.kind() == FindingKind.SAID
                ? finding.ways().stream().map(way -> ((Fact.Name) way.values().get(0)).name()).toList() : Wording.METRIC.ways(finding);
    }
}
