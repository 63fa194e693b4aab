package lapyard.prints;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import lapyard.diagrams.MoneySheets;
import lapyard.drawing.Page;
import lapyard.job.JobSheet;
import lapyard.job.Payments;

/** What must be paid when, and what was bought against the plan. */
final class MoneyPrint {
    private MoneyPrint() {}

    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        Payments payments = Payments.of(sheet);
        if (payments.dues().isEmpty()) throw new CannotPrint("nothing is to be paid: add a bed, and prices where there are none");
        return MoneySheets.pages(
                sheet.garden().name(), sheet.garden().imperial(), payments.currency().getCode(), total(payments),
                payments.dues().stream()
                        .map(due -> List.of(when(due), due.supplier().name(), due.what().words(), due.amount().toPlainString(), due.sum().toPlainString()))
                        .toList(),
                bought(payments), ask.bench(sheet.garden().imperial()));
    }

    static String total(Payments payments) {
        return "To pay " + (payments.atLeast() ? "at least " : "") + payments.total().toPlainString() + ", bought for " + payments.paid().toPlainString()
                + ", goods for " + payments.open().toPlainString() + " still to buy.";
    }

    /** A date, or a day counted from the first day of work. */
    static String when(Payments.Due due) {
        if (due.date().isPresent()) return due.date().get().toString();
        if (due.day().isEmpty()) return "now";
        int day = due.day().getAsInt();
        return day < 0 ? -day + (day == -1 ? " day" : " days") + " before work begins" : "day " + (day + 1);
    }

    /** One row a line: goods, planned packs and cost, bought packs and what was paid, over the plan. */
    static List<List<String>> bought(Payments payments) {
        return payments.bought().stream()
                .map(line -> List.of(line.label(), line.packs().isEmpty() ? "not planned" : line.packs(), plain(line.planned()), line.bought(),
                        line.bought().isEmpty() ? "" : plain(line.paid()) + (line.told() || line.paid().isEmpty() ? "" : ", as listed"),
                        line.bought().isEmpty() ? "" : line.over().map(over -> (over.signum() > 0 ? "+" : "") + over.toPlainString()).orElse("")))
                .toList();
    }

    private static String plain(Optional<BigDecimal> amount) {
        return amount.map(BigDecimal::toPlainString).orElse("no price");
    }
}
