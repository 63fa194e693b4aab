package lapyard.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Something the gardener can put right, as data: what it is, where, its figures and the ways out. The package {@code words}
 * makes sentences of it.
 *
 * @param facts  the figures that its sentence names, by the names used there
 * @param by     the amount by which it fails, where there is one
 * @param alike  the single findings behind a merged one, worst first; empty for a single finding
 * @param accepted the reason for which the gardener lets it stand
 */
public record Finding(FindingKind kind, Weight weight, Place place, Map<String, Fact> facts, Optional<Fact> by, List<WayOut> ways,
        List<Finding> alike, Optional<String> accepted) {
    public Finding {
        facts = Collections.unmodifiableMap(new LinkedHashMap<>(facts));
        ways = List.copyOf(ways);
        alike = List.copyOf(alike);
        for (WayOut way : ways) assert kind.ways.contains(way.kind()) : kind + " does not name its way out " + way.kind();
    }

    /** STOP cannot be stored or drawn; SNAG is stored and named; NOTE is information. */
    public enum Weight {
        STOP,
        SNAG,
        NOTE
    }

    /** A number with its unit, as JSON shows it. */
    public record Amount(double value, String unit) {}

    /** A finding with the usual weight of its kind, still without figures and ways out. */
    public static Finding of(FindingKind kind, Place place) {
        return new Finding(kind, kind.weight, place, Map.of(), Optional.empty(), List.of(), List.of(), Optional.empty());
    }

    /** The same finding with one more figure. */
    public Finding with(String name, Fact fact) {
        Map<String, Fact> more = new LinkedHashMap<>(facts);
        more.put(name, fact);
        return new Finding(kind, weight, place, more, by, ways, alike, accepted);
    }

    /** The same finding with the amount by which it fails; sentences call it {@code by}. */
    public Finding by(Fact amount) {
        return new Finding(kind, weight, place, with("by", amount).facts, Optional.of(amount), ways, alike, accepted);
    }

    /** The same finding with one more way out, to be offered after those it has. */
    public Finding way(WayKind way, Fact... values) {
        return way(new WayOut(way, List.of(values)));
    }

    public Finding way(WayOut way) {
        List<WayOut> more = new ArrayList<>(ways);
        more.add(way);
        return new Finding(kind, weight, place, facts, by, more, alike, accepted);
    }

    public Finding ways(List<WayOut> all) {
        return new Finding(kind, weight, place, facts, by, all, alike, accepted);
    }

    public Finding weighing(Weight other) {
        return new Finding(kind, other, place, facts, by, ways, alike, accepted);
    }

    /** The same finding, accepted by the gardener and therefore no more than information. */
    Finding accepted(String reason) {
        return new Finding(kind, Weight.NOTE, place, facts, by, ways, alike, Optional.of(reason));
    }

    /** This finding as the one that speaks for these, which are all of its kind. */
    Finding speakingFor(List<Finding> all, Place where) {
        return new Finding(kind, weight, where, facts, by, ways, all, accepted);
    }

    /** Its place as documents name it under {@code accepted}: {@code bed M, wall D}. */
    public String where() {
        return place.key();
    }

    /** The amount by which it fails as a number with its unit. */
    public Optional<Amount> amount() {
        return by.map(Fact::amount);
    }
}
