package lapyard.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;

/** The findings of one garden as they are shown: alike ones merged, accepted ones lightened, the most important first. */
public final class FindingList {
    private static final Comparator<Finding> ORDER = Comparator.comparing((Finding one) -> one.weight() != Weight.STOP)
            .thenComparing(one -> one.accepted().isPresent())
            .thenComparing(one -> one.kind().concern)
            .thenComparing(Finding::weight)
            .thenComparing(Finding::kind);

    private FindingList() {}

    /**
     * @param accepted reasons by the place that was accepted, as its key or in words: that of a single finding, or of all that stand in one line
     * @return without doubles; danger before what stops work, before money, before comfort; accepted ones last
     */
    public static List<Finding> settled(List<Finding> found, Map<String, String> accepted) {
        Set<Finding> singles = new LinkedHashSet<>(found);
        Map<Finding, String> reasons = reasons(singles, accepted, new HashSet<>());
        return merged(singles.stream().map(one -> reasons.containsKey(one) ? one.accepted(reasons.get(one)) : one).toList())
                .stream().sorted(ORDER).toList();
    }

    /** One note of all places that are accepted and at which nothing is found. */
    public static List<Finding> acceptedNowhere(List<Finding> found, Map<String, String> accepted) {
        Set<String> places = new HashSet<>();
        reasons(new LinkedHashSet<>(found), accepted, places);
        List<String> nowhere = accepted.keySet().stream().filter(place -> !places.contains(place)).sorted().toList();
        return nowhere.isEmpty() ? List.of() : List.of(Finding.of(FindingKind.ACCEPTED_NOWHERE, Place.field("accepted"))
                .with("places", Fact.names(nowhere)).way(WayKind.PLACE_AS_LISTED).way(WayKind.TAKE_OUT));
    }

    /** @param places that could be accepted, filled in */
    private static Map<Finding, String> reasons(Set<Finding> singles, Map<String, String> accepted, Set<String> places) {
        Map<Finding, String> reasons = new HashMap<>();
        merged(singles).forEach(line -> accept(line, accepted, reasons, places));
        singles.forEach(one -> accept(one, accepted, reasons, places));
        merged(singles.stream().filter(one -> !reasons.containsKey(one)).toList()).forEach(line -> accept(line, accepted, reasons, places));
        return reasons;
    }

    private static void accept(Finding line, Map<String, String> accepted, Map<Finding, String> reasons, Set<String> places) {
        places.addAll(List.of(line.where(), line.place().words()));
        String reason = reason(line, accepted);
        if (reason != null) singles(List.of(line)).forEach(one -> reasons.put(one, reason));
    }

    private static String reason(Finding one, Map<String, String> accepted) {
        return one.weight() == Weight.SNAG ? accepted.getOrDefault(one.where(), accepted.get(one.place().words())) : null;
    }

    /** Those for which a document cannot be kept. */
    public static List<Finding> stops(List<Finding> found) {
        return found.stream().filter(one -> one.weight() == Weight.STOP).toList();
    }

    /** Every single finding, those behind merged ones in place of them. */
    public static List<Finding> singles(List<Finding> settled) {
        return settled.stream().flatMap(one -> one.alike().isEmpty() ? java.util.stream.Stream.of(one) : one.alike().stream()).toList();
    }

    /** One finding for all that are alike; the worst of them speaks. What stands alone or is merged already stays as it is. */
    public static List<Finding> merged(Iterable<Finding> found) {
        Map<Object, List<Finding>> groups = new LinkedHashMap<>();
        for (Finding one : found) {
            boolean merges = one.kind().merges && one.alike().isEmpty();
            groups.computeIfAbsent(merges ? List.of(one.kind(), one.weight(), one.accepted()) : new Object(), key -> new ArrayList<>()).add(one);
        }
        return groups.values().stream().map(FindingList::one).toList();
    }

    private static Finding one(List<Finding> alike) {
        if (alike.size() == 1) return alike.get(0);
        List<Finding> worstFirst = alike.stream().sorted(Comparator.comparingDouble(FindingList::size).reversed()).toList();
        return worstFirst.get(0).speakingFor(worstFirst, Place.ofAll(alike.stream().map(Finding::place).toList()));
    }

    private static double size(Finding one) {
        return one.amount().map(amount -> Math.abs(amount.value())).orElse(0.0);
    }
}
