package lapyard.prints;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.diagrams.LoadInSheets;
import lapyard.diagrams.QuoteSheets;
import lapyard.diagrams.SlipSheets;
import lapyard.drawing.Page;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.job.Quoting;
import lapyard.order.Variation;

/** The sheets for buying, selling, and for the day the goods come. */
public final class OrderPrint {
    private OrderPrint() {}

    static List<Page> slip(JobSheet sheet, PrintAsk ask) {
        return SlipSheets.pages(
                sheet.garden().name(), sheet.garden().imperial(), sheet.slip(), sheet.garden().goods().catalogue().examplePrices(), today(ask),
                ask.bench(sheet.garden().imperial()));
    }

    /** Inside the walls, by {@code bed M}. */
    static Map<String, Double> areasM2(JobSheet sheet) {
        Map<String, Double> areasM2 = new HashMap<>();
        sheet.beds().forEach(bed -> areasM2.put("bed " + bed.work().bed().id(), bed.work().frame().inner().areaMm2() / 1e6));
        return areasM2;
    }

    static List<Page> loadIn(JobSheet sheet, PrintAsk ask) {
        return LoadInSheets.pages(sheet.garden().name(), sheet.garden().imperial(), Loads.of(sheet), ask.bench(sheet.garden().imperial()));
    }

    static List<Page> quote(JobSheet sheet, PrintAsk ask) {
        if (!sheet.garden().terms().quote().given()) {
            throw new CannotPrint("the garden has no quote: give it labour, margin and terms under quote");
        }
        return QuoteSheets.pages(
                sheet.garden().name(), sheet.garden().imperial(), Quoting.of(sheet), sheet.garden().terms().quote(), Quoting.shares(sheet),
                sheet.garden().goods().catalogue().examplePrices(), Warned.all(sheet), today(ask), ask.bench(sheet.garden().imperial()));
    }

    /** What a change does to the order; the price to the client stands on it where both have a quote. */
    public static List<Page> variation(JobSheet before, JobSheet after, Variation variation, String from, String to, PrintAsk ask) {
        boolean quoted = before.garden().terms().quote().given() && after.garden().terms().quote().given();
        return QuoteSheets.variation(
                after.garden().name(), after.garden().imperial(), variation, from, to,
                quoted ? Optional.of(Quoting.of(before).price()) : Optional.empty(),
                quoted ? Optional.of(Quoting.of(after).price()) : Optional.empty(),
                ask.bench(after.garden().imperial()));
    }

    /** The day of the print, or that of the revision, which stands last in its words; empty where neither is told. */
    private static String today(PrintAsk ask) {
        if (!ask.date().isEmpty()) {
            return ask.date();
        }
        String revision = ask.revision();
        String last = revision.substring(Math.max(0, revision.length() - 10));
        return last.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}") ? last : "";
    }
}
