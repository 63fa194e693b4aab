package lapyard.plan;

import java.util.List;
import java.util.Map;
import lapyard.catalogue.Catalogue;

/**
 * The whole garden, every default filled in, checked so far that it can be drawn.
 *
 * @param imperial  whether prints show feet, inches and sixteenths
 * @param accepted  findings accepted by name: where + text to the reason
 * @param defaulted JSON pointers of the values that came from the defaults and not from the document
 * @param asking    what a search may change
 */
public record Garden(
        String name,
        boolean imperial,
        Ground ground,
        List<Bed> beds,
        List<GardenPath> paths,
        Goods goods,
        People people,
        Terms terms,
        Map<String, String> accepted,
        List<String> defaulted,
        Asking asking) {
    public Garden {
        beds = List.copyOf(beds);
        paths = List.copyOf(paths);
        accepted = Map.copyOf(accepted);
        defaulted = List.copyOf(defaulted);
    }

    /** Sizes that may give, and what the yard is to be laid out for. */
    public record Asking(Giving giving, LayoutWishes wishes) {
        public static final Asking NOTHING = new Asking(Giving.NONE, LayoutWishes.NONE);
    }

    /**
     * The goods: what can be bought, what is on hand and how it is cut.
     *
     * @param rack       boards on hand
     * @param slatBoards slat boards on hand, in the order they were given
     * @param search     how long the cheapest plans are looked for
     */
    public record Goods(Catalogue catalogue, List<RackBoard> rack, List<SlatBoards> slatBoards, Saw saw, SearchLength search) {
        public Goods {
            rack = List.copyOf(rack);
            slatBoards = List.copyOf(slatBoards);
        }
    }

    /**
     * The people: who builds, when, and what is done already.
     *
     * @param liftLimitKg that one person lifts
     * @param tally       what was done, cut and bought so far
     * @param handOver    what goes with the garden to whoever tends it
     */
    public record People(Crew crew, double liftLimitKg, Tally tally, HandOver handOver) {
        public static final People USUAL = new People(Crew.USUAL, 25, Tally.NONE, HandOver.NONE);
    }

    /**
     * What the garden is priced, delivered and checked by.
     *
     * @param currency ISO 4217 code
     * @param wayIn    how goods come in from the road
     * @param quote    what a builder offers besides the goods
     * @param loads    what the check of the standing beds reckons with
     * @param state    how far the job has come
     */
    public record Terms(String currency, WayIn wayIn, QuoteTerms quote, StandingRules loads, GardenState state) {
    }

    /** The same garden with other beds. */
    public Garden withBeds(List<Bed> others) {
        return new Garden(name, imperial, ground, others, paths, goods, people, terms, accepted, defaulted, asking);
    }

    /** The same garden with other paths. */
    public Garden withPaths(List<GardenPath> others) {
        return new Garden(name, imperial, ground, beds, others, goods, people, terms, accepted, defaulted, asking);
    }

    /** The same garden, bought from another catalogue. */
    public Garden withCatalogue(Catalogue other) {
        Goods sold = new Goods(other, goods.rack(), goods.slatBoards(), goods.saw(), goods.search());
        List<Bed> built = beds.stream()
                .map(bed -> other.section(bed.section().id()).map(section -> bed.withWalls(bed.walls().of(section))).orElse(bed))
                .toList();
        return new Garden(name, imperial, ground, built, paths, sold, people, terms, accepted, defaulted, asking);
    }

    /** The same garden with another tally. */
    public Garden withTally(Tally other) {
        People same = new People(people.crew(), people.liftLimitKg(), other, people.handOver());
        return new Garden(name, imperial, ground, beds, paths, goods, same, terms, accepted, defaulted, asking);
    }

    /** The same garden on other ground. */
    public Garden withGround(Ground other) {
        return new Garden(name, imperial, other, beds, paths, goods, people, terms, accepted, defaulted, asking);
    }

    /** Whether the document says where north lies; if not, the ground's angle is a guess. */
    public boolean northKnown() {
        return !defaulted.contains("/ground/north");
    }
}
