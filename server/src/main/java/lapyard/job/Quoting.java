package lapyard.job;

import java.math.BigDecimal;
import java.util.Map;
import lapyard.order.Quote;
import lapyard.order.Savings;
import lapyard.plan.QuoteTerms;

/** A job sheet at the builder's terms. */
public final class Quoting {
    private Quoting() {}

    /** What each bed and path has in the price; together they are the price. */
    public static Map<String, BigDecimal> shares(JobSheet sheet) {
        return of(sheet).shares(Savings.shares(sheet.slip()));
    }

    public static Quote of(JobSheet sheet) {
        QuoteTerms terms = sheet.garden().terms().quote();
        return Quote.of(
                sheet.slip(),
                terms.labour().stream().map(work -> new Quote.Work(work.what(), work.hours(), work.rate())).toList(),
                terms.marginPercent());
    }
}
