package lapyard.job;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.Supplier;
import lapyard.order.Ordering;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.plan.Tally;
import org.joda.money.CurrencyUnit;

/**
 * Money over time: what must be paid when, and what was bought against what was planned. Together the payments are what was paid
 * for goods, what those still to buy cost and the delivery, to the last decimal: the slip's total, where what is bought was paid as now listed.
 *
 * @param dues    by day, those without one first
 * @param bought  one a line of the slip, then what was bought without standing on it
 * @param total   of all payments
 * @param atLeast whether something has no price, so that more is to be paid
 * @param paid    for what was bought
 * @param open    what the packs that are not bought yet cost, delivery left out
 * @param delivery of all orders
 */
public record Payments(
        CurrencyUnit currency, List<Due> dues, List<BoughtLine> bought, BigDecimal total, boolean atLeast, BigDecimal paid, BigDecimal open, BigDecimal delivery) {
    private static final BigDecimal HUNDRED = new BigDecimal(100);

    public Payments {
        dues = List.copyOf(dues);
        bought = List.copyOf(bought);
    }

    /** For what a payment is. */
    public enum What {
        DEPOSIT("deposit with the order"),
        REST("rest after the delivery"),
        ALL("goods and delivery");

        public final String words;

        What(String words) {
            this.words = words;
        }
    }

    /**
     * @param day  of the plan, below 0 before the first day of work; empty where all of it is used already
     * @param date of that day; empty where the garden names no first day of work
     * @param sum  of this payment and all before it
     */
    public record Due(OptionalInt day, Optional<LocalDate> date, Supplier supplier, What what, BigDecimal amount, BigDecimal sum) {}

    /**
     * @param planned cost on the slip; empty where a price is missing or it does not stand there
     * @param packs   what the slip says, in words
     * @param bought  what the tally says, in words; empty for nothing
     * @param paid    as tallied, else at the price of the pack; empty where neither is known of anything or nothing was bought
     * @param atLeast whether neither is known of something that was bought, so that more was paid
     * @param told    whether all that was paid was tallied
     * @param open    cost of what is still to buy; empty where a price is missing
     */
    public record BoughtLine(String item, String label, Optional<BigDecimal> planned, String packs, String bought, Optional<BigDecimal> paid, boolean atLeast,
            boolean told, Optional<BigDecimal> open) {
        /** Paid less the planned cost of what was bought; empty where one of them is not known. */
        public Optional<BigDecimal> over() {
            return paid.filter(sum -> !atLeast).flatMap(sum -> planned.flatMap(plan -> open.map(rest -> sum.add(rest).subtract(plan))));
        }
    }

    public static Payments of(JobSheet sheet) {
        return of(sheet, sheet.garden().people().tally());
    }

    /** The payments of a plan, and what this tally has as bought against it. */
    static Payments of(JobSheet sheet, Tally tally) {
        Slip slip = sheet.slip();
        List<BoughtLine> bought = bought(sheet, tally);
        List<Due> dues = dues(sheet, beyondList(sheet, tally, bought));
        return new Payments(slip.currency(), dues, bought, dues.isEmpty() ? BigDecimal.ZERO : dues.get(dues.size() - 1).sum(), slip.atLeast() || bought.stream().anyMatch(BoughtLine::atLeast),
                sum(bought.stream().map(BoughtLine::paid).toList()), sum(bought.stream().map(BoughtLine::open).toList()), slip.total().subtract(slip.goods()));
    }

    private static BigDecimal sum(List<Optional<BigDecimal>> amounts) {
        return amounts.stream().flatMap(Optional::stream).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** What goods cost beyond the slip, as they were bought at other prices or without being on it, by the supplier's id; below 0 for less. */
    private static Map<String, BigDecimal> beyondList(JobSheet sheet, Tally tally, List<BoughtLine> lines) {
        Map<String, BigDecimal> beyond = new LinkedHashMap<>();
        for (BoughtLine line : lines) {
            BigDecimal more = sum(List.of(line.paid(), line.open())).subtract(line.planned().orElse(BigDecimal.ZERO));
            if (more.signum() != 0) beyond.merge(seller(sheet, tally, line.item()), more, BigDecimal::add);
        }
        return beyond;
    }

    /** Of those from whom the slip buys an item the one who sold it, else the first; who sold it where it is not on the slip; empty for the one merchant. */
    private static String seller(JobSheet sheet, Tally tally, String item) {
        List<String> sold = tally.bought().stream().filter(one -> one.item().equals(item)).map(Tally.Bought::supplier).toList();
        List<String> sells = sheet.slip().lines().stream().filter(line -> line.item().equals(item)).flatMap(line -> line.packs().stream()).map(SlipLine.PackCount::supplier).toList();
        return Stream.of(sells.stream().filter(sold::contains), sells.stream(), sold.stream()).flatMap(ids -> ids).findFirst().orElse("");
    }

    private static Supplier supplier(JobSheet sheet, String id) {
        return sheet.garden().goods().catalogue().suppliers().stream().filter(one -> one.id().equals(id)).findFirst().orElse(Supplier.ONLY);
    }

    /**
     * An order is paid where its first goods are needed: what is brought later comes on the same bill.
     *
     * @param beyond added to what the supplier of this id is paid
     */
    private static List<Due> dues(JobSheet sheet, Map<String, BigDecimal> beyond) {
        Map<String, BigDecimal> without = new LinkedHashMap<>(beyond);
        Map<String, Buying.Row> first = Buying.first(Buying.of(sheet).rows(), Buying.Row::orderDay);
        List<Due> dues = new ArrayList<>();
        Optional<LocalDate> start = sheet.garden().people().crew().dates().start();
        for (Slip.Order order : sheet.slip().orders()) {
            BigDecimal more = without.remove(order.supplier().id());
            BigDecimal total = more == null ? order.total() : order.total().add(more);
            if (total.signum() == 0) continue;
            List<Buying.Row> rows = order.lines().stream().map(part -> first.get(part.line().item())).filter(row -> row != null).toList();
            OptionalInt ordered = rows.stream().mapToInt(Buying.Row::orderDay).min();
            OptionalInt there = rows.stream().mapToInt(Buying.Row::needDay).min();
            OptionalInt due = there.isPresent() ? OptionalInt.of(there.getAsInt() + order.supplier().payDays()) : there;
            // of a line that several sell the difference is in one order, which may come out below 0
            BigDecimal deposit = Ordering.rounded(total.max(BigDecimal.ZERO).multiply(order.supplier().depositPercent()).divide(HUNDRED, 6, RoundingMode.HALF_UP), sheet.slip().currency());
            BigDecimal rest = total.subtract(deposit);
            if (deposit.signum() > 0) dues.add(due(order.supplier(), What.DEPOSIT, deposit, ordered, start));
            if (rest.signum() != 0) dues.add(due(order.supplier(), deposit.signum() > 0 ? What.REST : What.ALL, rest, due, start));
        }
        without.forEach((id, paid) -> dues.add(due(supplier(sheet, id), What.ALL, paid, OptionalInt.empty(), start)));
        dues.sort(Comparator.comparingInt(one -> one.day().orElse(Integer.MIN_VALUE)));
        List<Due> summed = new ArrayList<>();
        BigDecimal sum = BigDecimal.ZERO;
        for (Due one : dues) {
            sum = sum.add(one.amount());
            summed.add(new Due(one.day(), one.date(), one.supplier(), one.what(), one.amount(), sum));
        }
        return summed;
    }

    private static Due due(Supplier supplier, What what, BigDecimal amount, OptionalInt day, Optional<LocalDate> start) {
        return new Due(day, day.isPresent() ? start.map(date -> date.plusDays(day.getAsInt())) : Optional.empty(), supplier, what, amount, BigDecimal.ZERO);
    }

    private static List<BoughtLine> bought(JobSheet sheet, Tally tally) {
        Map<String, List<Tally.Bought>> tallied = new LinkedHashMap<>();
        tally.bought().forEach(one -> tallied.computeIfAbsent(one.item(), item -> new ArrayList<>()).add(one));
        List<BoughtLine> lines = new ArrayList<>();
        for (SlipLine line : sheet.slip().lines()) {
            if (line.packs().isEmpty() && line.cost().isPresent()) continue;
            lines.add(line(line.item(), line.label(), line.cost(), line.packs(), tallied.getOrDefault(line.item(), List.of()), sheet));
            tallied.remove(line.item());
        }
        tallied.forEach((item, own) -> lines.add(line(item, item, Optional.empty(), List.of(), own, sheet)));
        return lines;
    }

    private static BoughtLine line(String item, String label, Optional<BigDecimal> planned, List<SlipLine.PackCount> packs, List<Tally.Bought> bought, JobSheet sheet) {
        BigDecimal paid = BigDecimal.ZERO;
        int known = 0;
        for (Tally.Bought one : bought) {
            Optional<BigDecimal> cost = one.paid().or(() -> packs.stream().filter(pack -> pack.pack().equals(one.pack()))
                    .min(Comparator.comparing(pack -> !pack.supplier().equals(one.supplier())))
                    .flatMap(SlipLine.PackCount::price).map(price -> price.multiply(BigDecimal.valueOf(one.count()))));
            if (cost.isPresent()) known++;
            paid = paid.add(cost.orElse(BigDecimal.ZERO));
        }
        long[] rest = rest(packs, bought);
        BigDecimal open = BigDecimal.ZERO;
        boolean priced = true;
        for (int i = 0; i < rest.length; i++) {
            priced &= packs.get(i).price().isPresent() || rest[i] == 0;
            open = open.add(packs.get(i).price().orElse(BigDecimal.ZERO).multiply(BigDecimal.valueOf(rest[i])));
        }
        boolean all = Arrays.stream(rest).allMatch(left -> left == 0);
        // a line's cost is rounded once for all of it
        Optional<BigDecimal> left = bought.isEmpty() ? planned : priced ? Optional.of(all ? BigDecimal.ZERO : Ordering.rounded(open, sheet.slip().currency())) : Optional.empty();
        return new BoughtLine(item, label, planned, String.join(" + ", packs.stream().map(pack -> pack.count() + " x " + pack.words(sheet.garden().imperial())).toList()),
                String.join(" + ", bought.stream().map(one -> one.count() + " x " + PackCode.words(one.pack(), sheet.garden().imperial())).toList()), known > 0 ? Optional.of(Ordering.rounded(paid, sheet.slip().currency())) : Optional.empty(),
                known < bought.size(), bought.stream().allMatch(one -> one.paid().isPresent()), left);
    }

    /** How many of each pack are still to buy: what was bought is taken off those of who sold it, what is more off those of others. */
    private static long[] rest(List<SlipLine.PackCount> packs, List<Tally.Bought> bought) {
        long[] rest = packs.stream().mapToLong(SlipLine.PackCount::count).toArray();
        long[] have = bought.stream().mapToLong(Tally.Bought::count).toArray();
        for (boolean own : new boolean[] {true, false}) {
            for (int b = 0; b < have.length; b++) {
                Tally.Bought one = bought.get(b);
                for (int i = 0; i < rest.length; i++) {
                    if (!packs.get(i).pack().equals(one.pack()) || own && !packs.get(i).supplier().equals(one.supplier())) continue;
                    long taken = Math.min(rest[i], have[b]);
                    rest[i] -= taken;
                    have[b] -= taken;
                }
            }
        }
        return rest;
    }
}
