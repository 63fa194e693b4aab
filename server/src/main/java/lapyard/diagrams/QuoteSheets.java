package lapyard.diagrams;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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

    /**
     * @param shares   what each bed has in the price
     * @param examples whether the goods have our prices and not a merchant's
     * @param date     of the quote, may be empty
     */
    public static List<Page> pages(
            Quote quote, QuoteTerms terms, Map<String, BigDecimal> shares, boolean examples,
            List<String> warnings, String date, BenchOptions options) {
        return BenchSheet.pages(CAUTION, options, terms.number().isEmpty() ? "Quote" : "Quote " + terms.number(), "", "", flow -> {
            BenchSheet sheet = flow.sheet;
            String code = quote.currency().getCode();
            String atLeast = quote.atLeast() ? "at least " : "";
            flow.words(List.of("From: " + open(terms.builder()), "For: " + open(terms.client()), "Date: " + open(date) + "."
                    + (terms.validUntil().isEmpty() ? "" : " The offer holds until " + terms.validUntil() + ".")), 4, false);
            BigDecimal due = prices(sheet, flow, quote, terms);
            flow.words(List.of("To pay: " + atLeast + code + " " + due.toPlainString() + "."), 5.4, true);
            if (examples) flow.words(List.of("Goods have example prices, not a merchant's: do not sign before they are replaced."), 4, true);
            if (shares.size() > 1) shares(flow, terms, shares);
            WarningFrame.of(sheet, warnings).on(flow);
            exclusions(flow, terms);
            flow.words(List.of("Changes are priced as a variation against this revision before they are built."), 3.8, false);
            flow.words(List.of("Accepted:"), 4, true);
            flow.block(ListSheets.toFillIn(flow, List.of("name", "date", "signature")));
        });
    }

    /** What each line costs, and tax. @return what is to be paid */
    private static BigDecimal prices(BenchSheet sheet, Flow flow, Quote quote, QuoteTerms terms) {
        String atLeast = quote.atLeast() ? "at least " : "";
        BenchTable table = new BenchTable(sheet, "Price, in " + quote.currency().getCode(), new Column("what", 0.75, false), new Column("price", 0.25, true));
        List<String> free = new ArrayList<>();
        for (Quote.Line line : quote.lines()) {
            if (line.priced() && line.price().signum() == 0) free.add(line.what());
            else table.row(line.what(), line.priced() ? line.price().toPlainString() : "not priced yet");
        }
        if (!free.isEmpty()) table.row(String.join(", ", free), "no charge");
        table.row("All" + (terms.taxPercent().isEmpty() ? "; no tax is added" : ", before tax"), atLeast + quote.price().toPlainString());
        BigDecimal due = quote.price();
        if (terms.taxPercent().isPresent()) {
            BigDecimal tax = quote.price().multiply(terms.taxPercent().get()).divide(BigDecimal.valueOf(100), quote.currency().getDecimalPlaces(), RoundingMode.HALF_UP);
            due = due.add(tax);
            table.row("Tax, " + terms.taxPercent().get().stripTrailingZeros().toPlainString() + " %", atLeast + tax.toPlainString());
        }
        table.on(flow);
        return due;
    }

    private static void shares(Flow flow, QuoteTerms terms, Map<String, BigDecimal> shares) {
        BenchTable beds = new BenchTable(flow.sheet, "What each has in it" + (terms.taxPercent().isEmpty() ? "" : ", before tax") + "; work and delivery go with the goods",
                new Column("for", 0.75, false), new Column("price", 0.25, true));
        shares.forEach((owner, price) -> beds.row(owner, price.toPlainString()));
        beds.on(flow);
    }

    private static void exclusions(Flow flow, QuoteTerms terms) {
        List<String> without = terms.exclusions().isEmpty() ? List.of("whatever is not listed above") : terms.exclusions();
        flow.words(List.of("Not in the price:"), 4, true);
        flow.words(without.stream().map(one -> "- " + one).toList(), 3.8, false);
    }

    /** What a person fills in by hand where the garden does not know it. */
    private static String open(String words) {
        return words.isBlank() ? "........................................" : words;
    }

    /**
     * @param changes what changed in the garden, a sentence each
     * @param from   as it shall be read, {@code revision 3, 2026-05-02}
     * @param before what the earlier state is sold for, empty where the garden has no quote
     */
    public static List<Page> variation(
            List<String> changes, Variation variation, String from, String to, Optional<BigDecimal> before,
            Optional<BigDecimal> after, BenchOptions options) {
        return BenchSheet.pages(CAUTION, options, "Variation", "from " + from + " to " + to, "", flow -> {
            if (!changes.isEmpty()) flow.words(changes, 4.6, true);
            BenchTable table = new BenchTable(flow.sheet, "What changes, in " + variation.currency(),
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
        });
    }

    private static String cost(Optional<BigDecimal> cost, String packs) {
        return cost.map(BigDecimal::toPlainString).orElse(packs.isEmpty() ? "" : "no price");
    }

    private static String signed(BigDecimal amount) {
        return (amount.signum() > 0 ? "+" : "") + amount.toPlainString();
    }
}
