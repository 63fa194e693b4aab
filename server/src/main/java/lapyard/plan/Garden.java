package lapyard.plan;

import java.util.List;
import java.util.Map;
import lapyard.catalogue.Catalogue;

/**
 * The whole garden, every default filled in, checked so far that it can be drawn.
 *
 * @param currency  ISO 4217 code
 * @param imperial  whether prints show feet, inches and sixteenths
 * @param crew      who builds and when
 * @param tally     what was done, cut and bought so far
 * @param wayIn     how goods come in from the road
 * @param quote     what a builder offers besides the goods
 * @param accepted  findings accepted by name: where + text to the reason
 * @param slatBoards slat boards on hand, in the order they were given
 * @param loads     what the check of the standing beds reckons with
 * @param search    how long the cheapest plans are looked for
 * @param defaulted JSON pointers of the values that came from the defaults and not from the document
 */
public record Garden(
        String name,
        String currency,
        boolean imperial,
        Ground ground,
        List<Bed> beds,
        List<GardenPath> paths,
        List<RackBoard> rack,
        Catalogue catalogue,
        Saw saw,
        double liftLimitKg,
        Crew crew,
        Tally tally,
        Map<String, String> accepted,
        List<String> defaulted,
        WayIn wayIn,
        QuoteTerms quote,
        StandingRules loads,
        List<SlatBoards> slatBoards,
        Search search) {
    public Garden {
        beds = List.copyOf(beds);
        paths = List.copyOf(paths);
        rack = List.copyOf(rack);
        slatBoards = List.copyOf(slatBoards);
        accepted = Map.copyOf(accepted);
        defaulted = List.copyOf(defaulted);
    }

    /** A garden of which nobody told who builds it and how goods come in, and that nobody quotes for, under the usual loads; nothing is done yet. */
    public Garden(
            String name,
            String currency,
            boolean imperial,
            Ground ground,
            List<Bed> beds,
            List<GardenPath> paths,
            List<RackBoard> rack,
            Catalogue catalogue,
            Saw saw,
            double liftLimitKg,
            Map<String, String> accepted,
            List<String> defaulted) {
        this(name, currency, imperial, ground, beds, paths, rack, catalogue, saw, liftLimitKg, Crew.USUAL, Tally.NONE, accepted, defaulted,
                WayIn.UNKNOWN, QuoteTerms.NONE, StandingRules.USUAL, List.of(), Search.SHORT);
    }

    /** The same garden with other beds. */
    public Garden withBeds(List<Bed> others) {
        return new Garden(name, currency, imperial, ground, others, paths, rack, catalogue, saw, liftLimitKg, crew, tally,
                accepted, defaulted, wayIn, quote, loads, slatBoards, search);
    }
}
