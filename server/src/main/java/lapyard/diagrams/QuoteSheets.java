package lapyard.diagrams;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.order.Quote;
import lapyard.order.Variation;
import lapyard.plan.QuoteTerms;

/** What a client is offered, and what a change does to it. No cost and no margin stands on these sheets. */
public final class QuoteSheets {
    private QuoteSheets() {}

    private static final String CAUTION =
            "Not designed here: walls that hold back ground, beds on decks. Ground that turns out otherwise is a variation. Local codes go first.";

    public static List<Page> pages(String garden, boolean imperial, Quote quote, QuoteTerms terms, int beds, List<String> warnings, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        String code = quote.currency().getCode();
        Flow flow = new Flow(
                sheet, terms.number().isEmpty() ? "Quote" : "Quote " + terms.number(), terms.client().isEmpty() ? "" : "for " + terms.client());
        BenchTable table = new BenchTable(
                sheet, beds + (beds == 1 ? " bed, in " : " beds, in ") + code, new Column("what", 0.75, false), new Column("price", 0.25, true));
        for (Quote.Line line : quote.lines()) {
            table.row(line.what(), line.priced() ? line.price().toPlainString() : "not priced yet");
        }
        table.row("All", (quote.atLeast() ? "at least " : "") + quote.price().toPlainString());
        table.on(flow);
        List<String> words = new ArrayList<>();
        words.add((quote.atLeast() ? "At least " : "") + code + " " + quote.price().toPlainString() + ", tax as told by the suppliers is in it."
                + (terms.validUntil().isEmpty() ? "" : " The offer holds until " + terms.validUntil() + "."));
        flow.words(words, 4.6, true);
        new WarningFrame(sheet, warnings).on(flow);
        if (!terms.exclusions().isEmpty()) {
            flow.words(List.of("Not in the price:"), 4, true);
            flow.words(terms.exclusions().stream().map(one -> "- " + one).toList(), 3.8, false);
        }
        flow.words(List.of("Changes are priced as a variation against this revision before they are built."), 3.8, false);
        return sheet.pages(flow.drafts());
    }

    /**
     * @param from   as it shall be read, {@code revision 3, 2026-05-02}
     * @param before what the earlier state is sold for, empty where the garden has no quote
     */
    public static List<Page> variation(
            String garden, boolean imperial, Variation variation, String from, String to, Optional<BigDecimal> before,
            Optional<BigDecimal> after, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        Flow flow = new Flow(sheet, "Variation", "from " + from + " to " + to);
        BenchTable table = new BenchTable(sheet, "What changes, in " + variation.currency(),
                new Column("line", 0.22, true), new Column("before", 0.26, false), new Column("after", 0.26, false),
                new Column("was", 0.09, false), new Column("is", 0.09, false), new Column("more", 0.08, true));
        for (Variation.Line line : variation.lines()) {
            table.row(line.label(), line.packsBefore(), line.packsAfter(), cost(line.costBefore(), line.packsBefore()),
                    cost(line.costAfter(), line.packsAfter()), signed(line.difference()));
        }
        if (table.isEmpty()) {
            flow.words(List.of("Nothing in the order changes."), 4.6, true);
        } else {
            table.on(flow);
        }
        List<String> words = new ArrayList<>();
        words.add("Goods and delivery: " + variation.before().toPlainString() + " before, " + variation.after().toPlainString() + " after, "
                + signed(variation.difference()) + " " + variation.currency()
                + (variation.atLeast() ? ", of what is priced." : "."));
        if (before.isPresent() && after.isPresent()) {
            words.add("Price to the client: " + before.get().toPlainString() + " before, " + after.get().toPlainString() + " after, "
                    + signed(after.get().subtract(before.get())) + " " + variation.currency() + ".");
        }
        flow.words(words, 4.6, true);
        return sheet.pages(flow.drafts());
    }

    private static String cost(Optional<BigDecimal> cost, String packs) {
        return cost.map(BigDecimal::toPlainString).orElse(packs.isEmpty() ? "" : "no price");
    }

    private static String signed(BigDecimal amount) {
        return (amount.signum() > 0 ? "+" : "") + amount.toPlainString();
    }
}
