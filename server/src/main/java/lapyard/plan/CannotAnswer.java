package lapyard.plan;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import lapyard.working.BrokenRule;

/** What was asked for cannot be answered as it is: the findings say what to put right. */
public class CannotAnswer extends IllegalArgumentException {
    /** Larger numbers are shown in powers of ten. */
    private static final double LARGE = 1e12;

    private final transient List<Finding> findings;

    public CannotAnswer(Finding finding) {
        this(List.of(finding));
    }

    /** @param findings one or more, the first to be told where there is room for one */
    public CannotAnswer(List<Finding> findings) {
        this.findings = List.copyOf(findings);
    }

    /** For a log: whoever catches it tells the findings. */
    @Override
    public String getMessage() {
        return findings.stream().map(one -> one.kind().code + " at " + one.where() + " " + one.facts()).collect(Collectors.joining("; "));
    }

    public List<Finding> findings() {
        return findings;
    }

    /**
     * What is wrong, of this exception and of a {@link BrokenRule} alike.
     *
     * @throws IllegalArgumentException the one given, where it is neither: a fault of the program
     */
    public static List<Finding> findings(IllegalArgumentException thrown) {
        if (thrown instanceof CannotAnswer known) return known.findings;
        if (thrown instanceof BrokenRule broken) return List.of(finding(broken));
        throw thrown;
    }

    private static Finding finding(BrokenRule broken) {
        FindingKind kind = FindingKind.valueOf(broken.rule().name());
        Finding finding = Finding.of(kind, Place.field(broken.where()));
        for (Map.Entry<String, Object> figure : broken.figures().entrySet()) finding = finding.with(figure.getKey(), fact(figure.getValue()));
        Map<String, Fact> facts = finding.facts();
        return switch (broken.rule()) {
            case FIELD_LOW, FIELD_HIGH -> finding.way(WayKind.GIVE_BETWEEN, facts.get("least"), facts.get("most"));
            case FIELD_FINE -> finding.way(WayKind.ROUND_TO, facts.get("step"));
            case FIELD_TWICE -> finding.way(WayKind.ANOTHER_CODE);
            case FIELD_MANY -> finding.way(WayKind.SPLIT_PROBLEM);
            case FIELD_NO_SUCH -> facts.get("there") instanceof Fact.Names names && !names.names().isEmpty()
                    ? finding.way(WayKind.USE_WORD, new Fact.Choice(names.names())) : finding;
            default -> finding.ways(kind.ways.stream().map(WayOut::of).toList());
        };
    }

    private static Fact fact(Object figure) {
        if (figure instanceof List<?> names) return Fact.names(names.stream().map(String::valueOf).toList());
        if (!(figure instanceof BrokenRule.Amount amount)) return Fact.name(String.valueOf(figure));
        double value = amount.value();
        String unit = amount.unit();
        if (!Double.isFinite(value) || Math.abs(value) >= LARGE) return Fact.name((String.format(Locale.ROOT, "%.3g", value) + " " + unit).strip());
        if (unit.equals("mm") && BigDecimal.valueOf(value).scale() <= 1) return Fact.mm(value);
        if (!unit.isEmpty() && !unit.equals("mm") && !unit.equals("s") && value == Math.rint(value) && value > 0) return Fact.count(Math.round(value), unit);
        return new Fact.Plain(value, unit);
    }
}
