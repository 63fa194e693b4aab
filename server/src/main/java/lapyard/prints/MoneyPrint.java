package lapyard.prints;

import java.util.List;
import lapyard.diagrams.BenchTable.Column;
import lapyard.diagrams.ListSheets;
import lapyard.diagrams.SlipSheets;
import lapyard.drawing.Page;
import lapyard.job.JobSheet;
import lapyard.job.Payments;
import lapyard.plan.FindingKind;

/** What must be paid when, and what was bought against the plan. */
final class MoneyPrint {
    private static final String CAUTION = "Amounts are those of the price lists; what a merchant agreed to in writing stands above them.";

    private MoneyPrint() {}

    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        Payments payments = Payments.of(sheet);
        if (payments.dues().isEmpty()) throw CannotPrint.of(FindingKind.ORDER_EMPTY);
        ListSheets sheets = ask.list(sheet, CAUTION, "Money: what to pay when", "").words(List.of(total(payments)), 4.4, true)
                .table("To pay, in " + payments.currency().getCode(), List.of(new Column("when", 0.2, true), new Column("to", 0.26, true), new Column("for", 0.26, false),
                                new Column("amount", 0.14, true), new Column("sum so far", 0.14, false)),
                        payments.dues().stream()
                                .map(due -> List.of(when(due), due.supplier().name(), due.what().words, due.amount().toPlainString(), due.sum().toPlainString()))
                                .toList());
        return bought(sheets.section("Money: bought against planned", ""), payments).pages();
    }

    static String total(Payments payments) {
        return "To pay " + (payments.atLeast() ? "at least " : "") + payments.total().toPlainString() + ": bought for " + payments.paid().toPlainString()
                + ", goods still to buy for " + payments.open().toPlainString() + ", delivery " + payments.delivery().toPlainString() + ".";
    }

    /** A date, or a day counted from the first day of work. */
    static String when(Payments.Due due) {
        if (due.date().isPresent()) return due.date().get().toString();
        if (due.day().isEmpty()) return "now";
        int day = due.day().getAsInt();
        return day < 0 ? -day + (day == -1 ? " day" : " days") + " before work begins" : "day " + (day + 1);
    }

    /** One row a line: goods, planned packs and cost, bought packs and what was paid, over the plan. */
    static ListSheets bought(ListSheets sheets, Payments payments) {
        return sheets.table("Bought against planned, in " + payments.currency().getCode(), List.of(new Column("goods", 0.25, true), new Column("planned", 0.24, false),
                new Column("cost", 0.09, false), new Column("bought", 0.22, false), new Column("paid", 0.12, true), new Column("over", 0.08, true)), payments.bought().stream()
                .map(line -> List.of(line.label(), line.packs().isEmpty() ? "not planned" : line.packs(), SlipSheets.cost(line.planned()), line.bought(),
                        line.bought().isEmpty() ? "" : SlipSheets.cost(line.paid()) + (line.told() || line.paid().isEmpty() ? "" : ", as listed"),
                        line.bought().isEmpty() ? "" : line.over().map(over -> (over.signum() > 0 ? "+" : "") + over.toPlainString()).orElse("")))
                .toList());
    }
}
