package lapyard.plan;

import java.util.List;
import java.util.stream.Collectors;
import lapyard.words.Wording;

/** Findings as tests read them: in millimetres. */
public final class Told {
    private Told() {}

    /** A finding that quotes a text of the test's own: {@code Unknown field "text".} */
    public static Finding saying(Finding.Weight weight, Place place, String text) {
        return Finding.of(FindingKind.FIELD_UNKNOWN, place).weighing(weight).with("name", Fact.name(text));
    }

    /** What a refusal says, with its place and its ways out. */
    public static String refusal(Exception thrown) {
        List<Finding> findings = CannotAnswer.findings((IllegalArgumentException) thrown);
        return findings.stream().map(one -> one.place().words() + ": " + Wording.METRIC.paragraph(one)).collect(Collectors.joining(" "));
    }

    public static String text(Finding finding) {
        return Wording.METRIC.text(finding);
    }

    public static List<String> ways(Finding finding) {
        return Wording.METRIC.ways(finding);
    }
}
