package lapyard.words;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lapyard.catalogue.TradeName;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayOut;

/** Findings as sentences, with lengths in millimetres or in feet and inches. */
public final class Wording {
    public static final Wording METRIC = new Wording(false);
    public static final Wording IMPERIAL = new Wording(true);

    /** Stands once where findings stand of which one rests on the estimate of strength. */
    private static final String CAUTION = "Strength and bearing figures are estimates, not a design: have a qualified person decide.";

    private final FactWords facts;

    private Wording(boolean imperial) {
        this.facts = new FactWords(imperial);
    }

    public static Wording of(boolean imperial) {
        return imperial ? IMPERIAL : METRIC;
    }

    public boolean imperial() {
        return facts.imperial();
    }

    /** What is wrong, without the ways out: one or two full sentences. */
    public String text(Finding finding) {
        String code = finding.kind().code;
        boolean many = !finding.alike().isEmpty();
        String said = Template.of(many ? code + ".many" : code).fill(name -> value(finding, name), name -> count(finding, name));
        return sentence(said) + finding.accepted().map(reason -> " Accepted: " + sentence(reason)).orElse("");
    }

    /** The ways out, each as a thing to do that begins with a capital and ends without a stop. */
    public List<String> ways(Finding finding) {
        return finding.ways().stream().map(this::way).toList();
    }

    private String way(WayOut way) {
        return capital(Template.of("way." + way.kind().code()).fill(
                name -> indexed(way, name).map(facts::text), name -> indexed(way, name).map(FactWords::number)));
    }

    private static Optional<Fact> indexed(WayOut way, String name) {
        int at = Integer.parseInt(name) - 1;
        return at < way.values().size() ? Optional.of(way.values().get(at)) : Optional.empty();
    }

    /** What is wrong and the ways out in one paragraph. */
    public String paragraph(Finding finding) {
        List<String> ways = ways(finding);
        if (ways.isEmpty()) return text(finding);
        StringBuilder out = new StringBuilder(text(finding)).append(' ').append(ways.get(0));
        for (int i = 1; i < ways.size(); i++) out.append(i == ways.size() - 1 ? ", or " : ", ").append(small(ways.get(i)));
        return sentence(out.toString());
    }

    /** A weight as people read it. */
    public static String weight(Weight weight) {
        return switch (weight) {
            case STOP -> "must be solved";
            case SNAG -> "look at this";
            case NOTE -> "for information";
        };
    }

    /** The caution that belongs beside these findings, where one is due. */
    public static Optional<String> caution(List<Finding> findings) {
        return findings.stream().anyMatch(one -> one.kind().estimate) ? Optional.of(CAUTION) : Optional.empty();
    }

    /** A length with its unit: {@code 2400 mm}, {@code 7' 10 1/2"}. */
    public String length(double mm) {
        return facts.text(Fact.mm(mm));
    }

    /** Where a finding stands, the part before the whole, timber by its name. */
    public String place(Place place) {
        return named(place).words();
    }

    private Place named(Place place) {
        return new Place(place.parts().stream().map(part -> part.what() != What.TIMBER && part.what() != What.BEARERS ? part
                : new Place.Part(part.what(), part.ids().stream().map(id -> TradeName.section(id, imperial())).toList())).toList());
    }

    private Optional<String> value(Finding finding, String name) {
        if (name.endsWith("#")) return Optional.ofNullable(finding.facts().get(name.substring(0, name.length() - 1))).map(facts::bare);
        Fact fact = finding.facts().get(name);
        if (fact != null) return Optional.of(facts.text(fact));
        if (name.equals("n")) return Optional.of(String.valueOf(finding.alike().size()));
        if (name.equals("worst")) return finding.alike().isEmpty() ? Optional.empty() : Optional.of(place(finding.alike().get(0).place()));
        if (name.startsWith("worst-")) {
            return finding.alike().isEmpty() ? Optional.empty() : part(named(finding.alike().get(0).place()), name.substring("worst-".length()));
        }
        return name.equals("place") ? Optional.of(place(finding.place())) : part(named(finding.place()), name);
    }

    private static Optional<Double> count(Finding finding, String name) {
        if (name.equals("n")) return Optional.of((double) finding.alike().size());
        Fact fact = finding.facts().get(name);
        return fact == null ? of(name).map(what -> (double) finding.place().ids(what).size()) : Optional.of(FactWords.number(fact));
    }

    private static Optional<String> part(Place place, String name) {
        return of(name).filter(what -> !place.ids(what).isEmpty()).map(what -> new Place.Part(what, place.ids(what)).brief());
    }

    private static Optional<What> of(String name) {
        for (What what : What.values()) if (what.one.equals(name.replace('-', ' '))) return Optional.of(what);
        return Optional.empty();
    }

    private static String sentence(String text) {
        String begun = capital(text.strip());
        return begun.isEmpty() || ".!?".indexOf(begun.charAt(begun.length() - 1)) >= 0 ? begun : begun + ".";
    }

    public static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private static String small(String text) {
        boolean word = text.length() > 1 && Character.isUpperCase(text.charAt(0)) && Character.isLowerCase(text.charAt(1));
        return word || text.startsWith("A ") ? text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1) : text;
    }
}
