package lapyard.prints;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lapyard.diagrams.BenchTable.Column;
import lapyard.diagrams.ListSheets;
import lapyard.diagrams.SlipSheets;
import lapyard.drawing.Page;
import lapyard.geometry.Measure;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.job.JobSheet.Way;
import lapyard.job.JobSheet;
import lapyard.job.Payments;
import lapyard.job.SawAdvice;
import lapyard.order.Savings;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.plan.FindingKind;
import org.joda.money.CurrencyUnit;

/**
 * For whoever buys: the sum of the order and each bed's part of it, and what may be weighed before boards are bought. That is searched
 * for, so it stands beside the set and not in it.
 */
final class OfficePrint {
    private static final String CAUTION = "What is offered here is not in the plan: a shorter piece makes a smaller bed.";
    private static final String MONEY_CAUTION = "Amounts are those of the price lists; what a merchant agreed to in writing stands above them.";

    private OfficePrint() {}

    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        List<SawAdvice> advice = SawAdvice.of(sheet);
        boolean imperial = sheet.garden().imperial();
        ListSheets sheets = ask.list(sheet, CAUTION, "Office", "");
        if (!sheet.slip().orders().isEmpty()) {
            sum(sheet.slip(), sheets);
            shares(sheet, sheets);
        }
        if (BenchPrint.sawn(sheet).anyMatch(one -> !one.saw().boards().isEmpty()))
            sheets.section("Office: boards", "what to weigh before they are bought", 1);
        BenchPrint.sawn(sheet).forEach(cutting -> {
            boolean strips = cutting.saw().ripping().isPresent();
            Optional<SawAdvice> own = advice.stream().filter(one -> !strips && one.section().equals(cutting.section())).findFirst();
            boards(sheets, cutting, own, sheet.slip().currency(), imperial);
        });
        return sheets.pages("No boards are bought for this garden.");
    }

    /** The sum, and what buying as one saves. */
    private static void sum(Slip slip, ListSheets sheets) {
        String code = slip.currency().getCode();
        List<List<String>> orders = new ArrayList<>();
        for (Slip.Order order : slip.orders()) orders.add(order(order.supplier().name(), order.goods(), order.charge(), order.atLeast(), order.total()));
        orders.add(order("All", slip.goods(), slip.total().subtract(slip.goods()), slip.atLeast(), slip.total()));
        List<List<String>> savings = new ArrayList<>();
        for (Savings.Saving saving : Savings.of(slip))
            savings.add(List.of(saving.label(), saving.bedByBed().toPlainString(), saving.pooled().toPlainString(), saving.saved().toPlainString()));
        savings.add(List.of("All", "", "", Savings.total(slip).map(BigDecimal::toPlainString).orElse("none is proved")));
        sheets.section("Office: the sum, and what is saved", slip.proven()
                        ? "no other choice of suppliers and packs costs less" : "none can cost under " + slip.lowerBound().toPlainString(), 1)
                .table("Suppliers, in " + code, List.of(new Column("supplier", 0.4, true), new Column("goods", 0.2, false), new Column("delivery", 0.2, false),
                        new Column("total", 0.2, true)), orders)
                .table("Bought as one against bed by bed, largest saving first, in " + code, List.of(new Column("line", 0.46, true),
                        new Column("bed by bed", 0.18, false), new Column("as one", 0.18, false), new Column("saved", 0.18, true)), savings, 2);
    }

    private static List<String> order(String name, BigDecimal goods, BigDecimal delivery, boolean atLeast, BigDecimal total) {
        return List.of(name, goods.toPlainString(), delivery.toPlainString(), (atLeast ? "at least " : "") + total.toPlainString());
    }

    /** What each bed costs. */
    private static void shares(JobSheet sheet, ListSheets sheets) {
        Slip slip = sheet.slip();
        List<Savings.Share> shares = Savings.shares(slip);
        if (shares.isEmpty()) return;
        Map<String, String> labels = slip.lines().stream().collect(Collectors.toMap(SlipLine::item, SlipLine::label, (one, same) -> one));
        List<List<String>> rows = new ArrayList<>();
        for (Savings.Share share : shares) {
            double area = Measure.SQUARE_METRES.in(sheet.areasM2().getOrDefault(share.owner(), 0.0), sheet.garden().imperial());
            String perArea = area <= 0 ? "" : share.cost().divide(BigDecimal.valueOf(area), slip.currency().getDecimalPlaces(), RoundingMode.HALF_UP).toPlainString();
            String largest = share.lines().entrySet().stream()
                    .sorted(Map.Entry.<String, BigDecimal>comparingByValue().reversed())
                    .limit(4)
                    .map(line -> labels.getOrDefault(line.getKey(), line.getKey()) + " " + line.getValue().toPlainString())
                    .collect(Collectors.joining("; "));
            rows.add(List.of(share.owner(), share.cost().toPlainString(), perArea, largest));
        }
        rows.add(List.of("All", shares.stream().map(Savings.Share::cost).reduce(BigDecimal.ZERO, BigDecimal::add).toPlainString(), "", ""));
        sheets.section("Office: what each bed costs", "a line that several share is split by what each uses of it, delivery by the goods", 1)
                .table("Beds and paths, in " + slip.currency().getCode(), List.of(new Column("for", 0.22, true), new Column("cost", 0.13, true),
                        new Column("a " + Measure.SQUARE_METRES.unit(sheet.garden().imperial()) + " inside", 0.13, false), new Column("largest lines", 0.52, false)), rows);
    }

    /** Boards of one section, or strips ripped from one: bought together or apart, and lengths that would save money if they were shorter. */
    private static void boards(ListSheets sheets, SectionCutting cutting, Optional<SawAdvice> advice, CurrencyUnit currency, boolean imperial) {
        if (cutting.saw().boards().isEmpty()) return;
        String name = BenchPrint.named(cutting, imperial);
        List<Way> ways = new ArrayList<>(cutting.saw().ways());
        advice.ifPresent(one -> ways.add(1, one.weekendByWeekend()));
        advice.filter(one -> one.pooledOnce().boards() != ways.get(0).boards()
                        || !one.pooledOnce().cost().equals(ways.get(0).cost()))
                .ifPresent(one -> ways.add(0, one.pooledOnce()));
        sheets.table(name + ": bought together or apart", List.of(new Column("way", 0.5, false), new Column("boards", 0.15, true), new Column("cost", 0.35, true)),
                ways.stream().map(way -> List.of(words(way), String.valueOf(way.boards()), BenchPrint.money(way.cost(), currency))).toList());
        String some = advice.filter(one -> one.changesTried() < one.changesThere()).map(one -> "; " + one.changesTried() + " of " + one.changesThere() + " changes tried").orElse("");
        sheets.table(name + ": near misses, offered and not applied" + some, List.of(new Column("change of a bed", 0.38, true),
                new Column("it would save in timber", 0.26, true), new Column("pieces", 0.36, false)), advice.stream().flatMap(one -> one.nearMisses().stream())
                .map(miss -> List.of(miss.sizes().words(miss.shorterMm(), imperial), saved(miss, currency), ListSheets.some(miss.marks()))).toList());
    }

    private static String words(Way way) {
        return switch (way.way()) {
            case POOLED -> "all beds together, offcuts carried from stage to stage: this plan";
            case POOLED_ONCE -> "all beds together on one day, no offcut trimmed again";
            case WEEKEND_BY_WEEKEND -> "each stage for itself, no offcut carried over";
            case BED_BY_BED -> "each bed for itself";
        };
    }

    private static String saved(SawAdvice.NearMiss miss, CurrencyUnit currency) {
        String saved = miss.saved().filter(money -> money.signum() > 0).isPresent()
                ? BenchPrint.money(miss.saved(), currency)
                : Measure.counted(miss.boardsSaved(), "board");
        return miss.sure() ? "at least " + saved : saved + ", found by search";
    }

    /** What must be paid when, and what was bought against the plan. */
    static List<Page> payments(JobSheet sheet, PrintAsk ask) {
        Payments payments = Payments.of(sheet);
        if (payments.dues().isEmpty()) throw CannotPrint.of(FindingKind.ORDER_EMPTY);
        ListSheets sheets = ask.list(sheet, MONEY_CAUTION, "Money: what to pay when", "").words(List.of(total(payments)), 4.4, true)
                .table("To pay, in " + payments.currency().getCode(), List.of(new Column("when", 0.2, true), new Column("to", 0.26, true), new Column("for", 0.26, false),
                                new Column("amount", 0.14, true), new Column("sum so far", 0.14, false)),
                        payments.dues().stream()
                                .map(due -> List.of(when(due), due.supplier().name(), due.what().words, due.amount().toPlainString(), due.sum().toPlainString()))
                                .toList());
        return bought(sheets.section("Money: goods", ""), payments).pages();
    }

    static String total(Payments payments) {
        return "To pay " + (payments.atLeast() ? "at least " : "") + payments.currency().getCode() + " " + payments.total().toPlainString() + ": "
                + (payments.paid().signum() == 0 ? "" : "bought for " + payments.paid().toPlainString() + ", ") + "goods still to buy for " + payments.open().toPlainString() + ", delivery " + payments.delivery().toPlainString() + ".";
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
                        line.bought().isEmpty() ? "" : (line.atLeast() && line.paid().isPresent() ? "at least " : "") + SlipSheets.cost(line.paid()) + (line.told() || line.paid().isEmpty() ? "" : ", as listed"),
                        line.bought().isEmpty() ? "" : line.over().map(over -> (over.signum() > 0 ? "+" : "") + over.toPlainString()).orElse("")))
                .toList());
    }
}
