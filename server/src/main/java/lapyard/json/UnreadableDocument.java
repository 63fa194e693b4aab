package lapyard.json;

import lapyard.plan.Finding;

/** The text is no JSON document at all; the finding says where and what to do. */
public final class UnreadableDocument extends Exception {
    private final transient Finding finding;

    UnreadableDocument(Finding finding) {
        super(finding.kind().code + " " + finding.facts());
        this.finding = finding;
    }

    public Finding finding() {
        return finding;
    }
}
