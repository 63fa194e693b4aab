package lapyard.prints;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.diagrams.LoadInSheets;
import lapyard.diagrams.QuoteSheets;
import lapyard.diagrams.SlipSheets;
import lapyard.diagrams.TwoOptions;
import lapyard.drawing.Page;
import lapyard.geometry.Measure;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.order.Savings;
import lapyard.order.Variation;
import lapyard.plan.Bed;
import lapyard.plan.BedNames;
import lapyard.plan.FindingKind;
import lapyard.weekends.Weekends;

/** The sheets for buying, selling, and for the day the goods come. */
public final class OrderPrint {
    private OrderPrint() {}

    static List<Page> slip(JobSheet sheet, PrintAsk ask) {
        return SlipSheets.pages(sheet.slip(), sheet.garden().goods().catalogue().examplePrices(), today(ask), ask.bench(sheet));
    }

    static List<Page> loadIn(JobSheet sheet, PrintAsk ask) {
        return LoadInSheets.pages(sheet.garden(), sheet.works(), PlanPrint.covers(sheet), Loads.of(sheet), ask.bench(sheet));
    }

    static List<Page> quote(JobSheet sheet, PrintAsk ask) {
        if (!sheet.garden().terms().quote().given()) {
            throw CannotPrint.of(FindingKind.QUOTE_NONE);
        }
        return QuoteSheets.pages(
                sheet.quote(), sheet.garden().terms().quote(), sheet.quote().shares(Savings.shares(sheet.slip())),
                sheet.garden().goods().catalogue().examplePrices(), Warned.all(sheet), today(ask), ask.bench(sheet));
    }

    /** What a change does to the order; the price to the client stands on it where both have a quote. */
    public static List<Page> variation(JobSheet before, JobSheet after, Variation variation, String from, String to, PrintAsk ask) {
        boolean quoted = before.garden().terms().quote().given() && after.garden().terms().quote().given();
        List<Page> pages = new ArrayList<>(options(before, after, variation, from, to, quoted, ask));
        pages.addAll(QuoteSheets.variation(
                changes(before, after), variation, from, to,
                quoted ? Optional.of(before.quote().price()) : Optional.empty(),
                quoted ? Optional.of(after.quote().price()) : Optional.empty(),
                ask.bench(after)));
        return pages;
    }

    /** Both plans side by side with what is built and what it costs: the price to the client, or goods and delivery without a quote. */
    private static List<Page> options(JobSheet first, JobSheet second, Variation variation, String from, String to, boolean quoted, PrintAsk ask) {
        boolean imperial = second.garden().imperial();
        BigDecimal one = quoted ? first.quote().price() : variation.before();
        BigDecimal other = quoted ? second.quote().price() : variation.after();
        String code = variation.currency() + " ";
        String atLeast = variation.atLeast() ? "at least " : "";
        boolean tax = second.garden().terms().quote().taxPercent().isPresent();
        List<TwoOptions.Row> rows = List.of(
                new TwoOptions.Row("beds", beds(first), beds(second)),
                new TwoOptions.Row("planted ground", planted(first, imperial), planted(second, imperial)),
                new TwoOptions.Row("weekends of work", weekends(first), weekends(second)),
                new TwoOptions.Row(quoted ? tax ? "price, before tax" : "price" : "goods and delivery", atLeast + code + one.toPlainString(),
                        atLeast + code + other.toPlainString() + " (" + (other.compareTo(one) > 0 ? "+" : "") + other.subtract(one).toPlainString() + ")"));
        return TwoOptions.pages(option(first, from), option(second, to), rows, ask.bench(second), ask.paper().isEmpty());
    }

    private static TwoOptions.Option option(JobSheet sheet, String name) {
        return new TwoOptions.Option(
                name, sheet.garden(), sheet.works(), PlanPrint.covers(sheet));
    }

    private static String beds(JobSheet sheet) {
        return sheet.beds().size() + ": " + BedNames.compact(sheet.beds().stream().map(bed -> bed.work().bed().id()).toList());
    }

    private static String planted(JobSheet sheet, boolean imperial) {
        return Measure.SQUARE_METRES.written(sheet.areasM2().values().stream().mapToDouble(Double::doubleValue).sum(), 1, imperial);
    }

    private static String weekends(JobSheet sheet) {
        return String.valueOf(sheet.weekends().days().stream().filter(day -> !day.parts().isEmpty()).mapToInt(Weekends.Day::weekend).distinct().count());
    }

    /** Beds and paths that are new, gone or not as they were; where one only stands elsewhere, so. */
    private static List<String> changes(JobSheet before, JobSheet after) {
        Map<String, Bed> was = new LinkedHashMap<>();
        before.beds().forEach(bed -> was.put(bed.work().bed().id(), bed.work().bed()));
        List<String> added = new ArrayList<>();
        List<String> changed = new ArrayList<>();
        List<String> moved = new ArrayList<>();
        for (JobSheet.BedSheet bed : after.beds()) {
            Bed is = bed.work().bed();
            Bed old = was.remove(is.id());
            if (old == null) added.add(is.id());
            else if (!is.equals(old)) (is.outline().equals(old.outline()) && is.equals(old.withSiting(is.siting())) ? moved : changed).add(is.id());
        }
        List<String> words = new ArrayList<>();
        if (!changed.isEmpty()) words.add("Changed: " + BedNames.where(changed) + ".");
        if (!added.isEmpty()) words.add("New: " + BedNames.where(added) + ".");
        if (!was.isEmpty()) words.add("Gone: " + BedNames.where(List.copyOf(was.keySet())) + ".");
        if (!moved.isEmpty()) words.add("Moved: " + BedNames.where(moved) + ".");
        if (words.isEmpty()) words.add("No bed changes.");
        return words;
    }

    /** The day of the print, or that of the revision, which stands last in its words; empty where neither is told. */
    private static String today(PrintAsk ask) {
        if (!ask.stamp().date().isEmpty()) return ask.stamp().date();
        String revision = ask.stamp().revision();
        String last = revision.substring(Math.max(0, revision.length() - 10));
        return last.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}") ? last : "";
    }
}
