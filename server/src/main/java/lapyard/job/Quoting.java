package lapyard.job;

import lapyard.order.Quote;
import lapyard.plan.QuoteTerms;

/** A job sheet at the builder's terms. */
public final class Quoting {
    private Quoting() {}

    public static Quote of(JobSheet sheet) {
        QuoteTerms terms = sheet.garden().terms().quote();
        return Quote.of(
                sheet.slip(),
                terms.labour().stream().map(work -> new Quote.Work(work.what(), work.hours(), work.rate())).toList(),
                terms.marginPercent());
    }
}
