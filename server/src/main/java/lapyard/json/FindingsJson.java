package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.json.Wire.IfGiven;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.Place;
import lapyard.words.Wording;

/** Findings as every answer shows them, worded for a person and with their kind and figures for a program. */
public final class FindingsJson {
    private FindingsJson() {}

    /**
     * The ways out as data: {@code acts} has one entry for each of {@code ways} with its kind and figures, lengths in mm, and
     * {@code at} names the bed, wall, path or weekend that they change; a merged finding has those of its worst, and {@code list}
     * has the single ones behind it.
     */
    private record Shown(String kind, String concern, String weight, String where, String place, String text, Optional<Finding.Amount> amount,
            List<String> ways, @IfGiven Optional<Map<String, String>> at, @IfGiven List<Act> acts,
            @IfGiven List<Single> list) {}

    private record Single(String where, String place, String text, @IfGiven List<String> ways,
            @IfGiven Optional<Map<String, String>> at, @IfGiven List<Act> acts) {}

    private record Act(String way, List<Object> values) {}

    public static ArrayNode of(List<Finding> findings, Wording words) {
        return (ArrayNode) Wire.tree(findings, words);
    }

    static Record shown(Finding finding, Wording words) {
        Finding acting = finding.alike().isEmpty() ? finding : finding.alike().get(0);
        return new Shown(
                finding.kind().code, finding.kind().concern.name(), finding.weight().name(), finding.where(), words.place(finding.place()),
                words.text(finding), finding.amount(), words.ways(finding), at(acting), acts(acting),
                finding.alike().stream()
                        .map(one -> new Single(one.where(), words.place(one.place()), words.text(one), words.ways(one), at(one), acts(one)))
                        .toList());
    }

    /** Empty where there is no way out. */
    private static Optional<Map<String, String>> at(Finding finding) {
        if (finding.ways().isEmpty()) return Optional.empty();
        Map<String, String> at = new LinkedHashMap<>();
        for (Place.What what : List.of(Place.What.BED, Place.What.WALL, Place.What.PATH, Place.What.WEEKEND)) {
            finding.place().ids(what).stream().findFirst().ifPresent(id -> at.put(what.one, id));
        }
        return Optional.of(at);
    }

    private static List<Act> acts(Finding finding) {
        return finding.ways().stream().map(way -> new Act(way.kind().code(), way.values().stream().map(FindingsJson::value).toList())).toList();
    }

    private static Object value(Fact fact) {
        if (fact instanceof Fact.Name name) return name.name();
        if (fact instanceof Fact.Section section) return section.id();
        if (fact instanceof Fact.Names names) return names.names();
        if (fact instanceof Fact.Choice choice) return choice.words();
        if (fact instanceof Fact.Lengths lengths) return lengths.mm().stream().map(mm -> Wire.number(mm, 1)).toList();
        if (fact instanceof Fact.Spot spot) return List.of(Wire.number(spot.xMm(), 1), Wire.number(spot.yMm(), 1));
        return fact instanceof Fact.Day day ? day.date() : Wire.number(fact.amount().value(), 6);
    }
}
