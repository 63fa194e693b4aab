package lapyard.answers;

import java.util.List;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
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

    /** What was asked for makes no sense, for a reason in words of its own. */
    Refused(String where, String why, WayKind... ways) {
        this(List.of(about(where, why, ways)));
    }

    static Finding about(String where, String why, WayKind... ways) {
        Finding finding = Finding.of(FindingKind.REQUEST_REFUSED, Place.field(where)).with("text", Fact.name(why));
        for (WayKind way : ways) finding = finding.way(way);
        return finding;
    }

    public List<Finding> findings() {
        return findings;
    }

    public Wording words() {
        return words;
    }
}
