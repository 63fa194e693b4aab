package lapyard.order;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Supplier;
import lapyard.order.SlipLine.PackCount;
import lapyard.order.SlipLine.Use;
import lapyard.working.Working;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

/** Needs become lines, lines become one slip. */
public final class Ordering {
    /** Amounts in these units are measured; any other unit is the plain word of a counted thing. */
    private static final Set<String> MEASURED = Set.of("m", "m2", "m3", "kg", "t", "l", "mm");

    /** Decimals of a need; anything smaller is a rounding error of binary fractions. */
    public static final int NEED_DECIMALS = 6;

    private Ordering() {}

    /**
     * The ways to cover a need that the choice of suppliers picks from: the cheapest mix from every set of those who sell
     * the goods, and from each of them alone the dearer mixes that may lift an order over its limit of free delivery. Ties go to
     * the least left over, then the fewest packs, then what the catalogue names first. Packs without a price are passed
     * over while others have one; where none has, the line says how many of the pack that leaves least over, unpriced.
     *
     * @param uses  one a bed or path, in the goods' unit, without spare
     * @param reach what all charges that can fall away come to; 0 where none can
     */
    public static Wanted packWays(PackGoods goods, List<Use> uses, BigDecimal reach, CurrencyUnit currency) {
        List<Double> needs = uses.stream().map(Use::amount).toList();
        List<Pack> priced = goods.packs().stream().filter(pack -> pack.price().isPresent()).toList();
        List<String> sellers = priced.stream().map(Pack::supplier).distinct().toList();
        if (sellers.isEmpty() || sellers.size() == 1 && reach.signum() == 0) return Wanted.only(line(goods, needs, currency).usedBy(uses));
        Map<List<PackCount>, SlipLine> ways = new LinkedHashMap<>();
        for (int set = (1 << sellers.size()) - 1; set > 0; set--) {
            int chosen = set;
            PackGoods some = goods.only(goods.packs().stream()
                    .filter(pack -> sellers.contains(pack.supplier()) && (chosen >> sellers.indexOf(pack.supplier()) & 1) == 1)
                    .toList());
            SlipLine way = line(some, needs, currency).usedBy(uses);
            ways.putIfAbsent(way.packs(), way);
        }
        if (reach.signum() > 0) {
            SlipLine cheapest = ways.values().stream().min(Comparator.comparing(way -> way.cost().orElseThrow())).orElseThrow();
            BigDecimal limit = cheapest.cost().orElseThrow().add(reach);
            for (String seller : sellers) {
                List<Pack> own = priced.stream().filter(pack -> pack.supplier().equals(seller)).toList();
                dearer(goods, own, uses, cheapest, limit, currency).forEach(way -> ways.putIfAbsent(way.packs(), way));
            }
        }
        return new Wanted(List.copyOf(ways.values()));
    }

    /**
     * The least cost of packs that cover the need, over all suppliers.
     *
     * @param need in the goods' unit, without spare
     * @return proved, rounded as a line of the order is; empty where no pack has a price
     */
    public static Optional<BigDecimal> leastCost(PackGoods goods, double need, CurrencyUnit currency) {
        List<Pack> priced = goods.packs().stream().filter(pack -> pack.price().isPresent()).toList();
        if (priced.isEmpty()) return Optional.empty();
        BigDecimal covered = withSpare(goods, BigDecimal.valueOf(need));
        Lots lots = new Lots(priced);
        PackMix.Mix mix = lots.covering(covered);
        if (mix.proved()) return Optional.of(rounded(lots.cost(mix), currency));
        BigDecimal cheapest = priced.stream()
                .map(pack -> pack.price().orElseThrow().divide(PackMix.contentOf(pack), MathContext.DECIMAL64))
                .min(Comparator.naturalOrder())
                .orElseThrow();
        return Optional.of(rounded(covered.multiply(cheapest), currency));
    }

    private static List<SlipLine> dearer(
            PackGoods goods, List<Pack> packs, List<Use> uses, SlipLine cheapest, BigDecimal limit, CurrencyUnit currency) {
        BigDecimal bare = BigDecimal.ZERO;
        for (Use use : uses) bare = bare.add(BigDecimal.valueOf(use.amount()));
        BigDecimal need = withSpare(goods, bare);
        List<SlipLine> ways = new ArrayList<>();
        for (List<BigInteger> mix : DearerMixes.of(packs, need, limit)) {
            List<PackCount> bought = counts(packs, mix);
            BigDecimal cost = BigDecimal.ZERO;
            for (PackCount pack : bought) cost = cost.add(pack.cost().orElseThrow());
            BigDecimal rounded = rounded(cost, currency);
            String formula = needFormula(goods) + "; chosen with the delivery charges: "
                    + bought.stream().map(Ordering::inWords).collect(Collectors.joining(" + ")) + " = "
                    + rounded.toPlainString() + " " + currency.getCode() + ", where "
                    + cheapest.cost().orElseThrow().toPlainString() + " is the least for this line alone";
            ways.add(line(goods, bare, need, bought, held(packs, mix), Optional.of(rounded), cheapest.bedByBed(), formula).usedBy(uses));
        }
        return ways;
    }

    private static SlipLine line(PackGoods goods, List<Double> needs, CurrencyUnit currency) {
        BigDecimal bare = BigDecimal.ZERO;
        for (double need : needs) bare = bare.add(BigDecimal.valueOf(need));
        BigDecimal need = withSpare(goods, bare);
        List<Pack> priced = goods.packs().stream().filter(pack -> pack.price().isPresent()).toList();
        if (goods.packs().isEmpty()) return unpriced(goods.item(), goods.label(), need.doubleValue(), goods.unit());
        return priced.isEmpty() ? countedOnly(goods, bare, need) : cheapest(goods, priced, needs, bare, need, currency);
    }

    /** A need for which the catalogue has nothing: kept in place, without a price. */
    public static SlipLine unpriced(String item, String label, double need, String unit) {
        Working working = Working.of(
                "no packs of " + item + " in the catalogue, so no price; the total is \"at least\"",
                Working.COMMON_PRACTICE,
                Working.Input.of("need", need, unit));
        return new SlipLine(item, label, need, unit, List.of(), 0, Optional.empty(), Optional.empty(), working, List.of());
    }

    /**
     * The cheapest choice of ways and suppliers, delivery included, as one slip with one order a supplier.
     *
     * @param buyers    who would buy bed by bed; empty where that is not asked
     * @param suppliers empty where one merchant sells everything
     */
    public static Slip slip(CurrencyUnit currency, List<Wanted> wanted, List<Apart.Buyer> buyers, List<Supplier> suppliers) {
        Optional<Apart> byBed = buyers.isEmpty() ? Optional.empty() : Optional.of(Apart.of(buyers, suppliers, currency));
        SupplierChoice.Chosen chosen = SupplierChoice.of(wanted, suppliers, currency.getDecimalPlaces(), SupplierChoice.MOST_STEPS);
        Map<String, BigDecimal> apart = new HashMap<>();
        Set<String> buying = buyers.stream().map(Apart.Buyer::owner).collect(Collectors.toSet());
        // a buyer who is built in another way by itself may want none of it
        wanted.forEach(one -> one.ways().forEach(way -> way.bedByBed().ifPresent(cost -> apart.merge(way.item(),
                way.uses().stream().anyMatch(use -> buying.contains(use.owner())) ? BigDecimal.ZERO.setScale(cost.scale()) : cost, BigDecimal::min))));
        byBed.ifPresent(all -> all.goods().forEach((item, cost) -> apart.put(item, rounded(cost, currency))));
        Set<String> told = new HashSet<>();
        // who buys bed by bed may buy where it is cheapest for that
        List<SlipLine> sorted = chosen.lines().stream()
                .map(line -> line.cost().isEmpty() || !apart.containsKey(line.item()) ? line
                        // of lines of one name the first has it all
                        : line.boughtApart(told.add(line.item()) || byBed.isEmpty() ? apart.get(line.item()) : BigDecimal.ZERO.setScale(line.cost().orElseThrow().scale())))
                .sorted(Slip.LARGEST_SAVING_FIRST)
                .toList();
        List<Slip.Order> orders = new ArrayList<>();
        List<Supplier> all = new ArrayList<>(suppliers);
        all.add(Supplier.ONLY);
        for (Supplier supplier : all) order(supplier, sorted, currency).ifPresent(orders::add);
        BigDecimal goods = BigDecimal.ZERO;
        BigDecimal total = BigDecimal.ZERO;
        for (Slip.Order order : orders) {
            goods = goods.add(order.goods());
            total = total.add(order.total());
        }
        return new Slip(
                currency, rounded(goods, currency), rounded(total, currency), sorted.stream().anyMatch(line -> line.cost().isEmpty()), sorted, orders,
                rounded(chosen.lowerBound(), currency), chosen.proven(), byBed);
    }

    private static Optional<Slip.Order> order(Supplier supplier, List<SlipLine> lines, CurrencyUnit currency) {
        List<Slip.Part> parts = new ArrayList<>();
        BigDecimal goods = BigDecimal.ZERO;
        boolean atLeast = false;
        for (SlipLine line : lines) {
            List<PackCount> own = line.packs().stream().filter(pack -> pack.supplier().equals(supplier.id())).toList();
            Optional<BigDecimal> cost = Optional.ofNullable(line.parts().get(supplier.id()));
            boolean unsold = line.packs().isEmpty() && supplier.id().isEmpty();
            if (own.isEmpty() && cost.isEmpty() && !unsold) continue;
            parts.add(new Slip.Part(line, own, cost));
            goods = goods.add(cost.orElse(BigDecimal.ZERO));
            atLeast |= cost.isEmpty();
        }
        if (parts.isEmpty()) return Optional.empty();
        BigDecimal charge = rounded(supplier.chargeOn(goods), currency);
        BigDecimal sum = rounded(goods, currency);
        BigDecimal tax = supplier.taxIn(sum.add(charge), currency.getDecimalPlaces());
        return Optional.of(new Slip.Order(supplier, parts, sum, charge, tax, atLeast));
    }

    /** Half up to the decimals of the currency: 2 for GBP, 0 for JPY, 3 for KWD. */
    public static BigDecimal rounded(BigDecimal amount, CurrencyUnit currency) {
        return BigMoney.of(currency, amount).toMoney(RoundingMode.HALF_UP).getAmount();
    }

    private static SlipLine cheapest(
            PackGoods goods,
            List<Pack> priced,
            List<Double> needs,
            BigDecimal bare,
            BigDecimal need,
            CurrencyUnit currency) {
        Lots packMix = new Lots(priced);
        PackMix.Mix mix = packMix.covering(need);
        BigDecimal alone = BigDecimal.ZERO;
        Map<Double, PackMix.Mix> known = new HashMap<>();
        for (double one : needs) {
            PackMix.Mix own = known.computeIfAbsent(one, same -> packMix.covering(withSpare(goods, BigDecimal.valueOf(same))));
            alone = alone.add(packMix.cost(own));
        }
        List<PackCount> bought = counts(priced, mix.counts());
        BigDecimal cost = rounded(packMix.cost(mix), currency);
        BigDecimal bedByBed = rounded(alone, currency);
        return line(goods, bare, need, bought, held(priced, mix.counts()), Optional.of(cost), Optional.of(bedByBed),
                cheapestFormula(goods, bought, cost, mix.proved(), currency));
    }

    private static String cheapestFormula(PackGoods goods, List<PackCount> bought, BigDecimal cost, boolean proved, CurrencyUnit currency) {
        StringBuilder formula = new StringBuilder(needFormula(goods))
                .append("; cheapest mix of packs that covers it: ")
                .append(bought.isEmpty() ? "none" : bought.stream().map(Ordering::inWords).collect(Collectors.joining(" + ")))
                .append(" = ")
                .append(cost.toPlainString())
                .append(' ')
                .append(currency.getCode())
                .append("; rounded half up to ")
                .append(currency.getDecimalPlaces())
                .append(" decimals");
        String missing = goods.packs().stream()
                .filter(pack -> pack.price().isEmpty())
                .map(Pack::name)
                .collect(Collectors.joining(", "));
        if (!missing.isEmpty()) formula.append("; no price, so passed over: ").append(missing);
        if (!proved) formula.append("; pack sizes without a common measure: best mix found, a cheaper one is not ruled out");
        return formula.toString();
    }

    /** No pack has a price: the one kind that leaves least over, then takes fewest packs. */
    private static SlipLine countedOnly(PackGoods goods, BigDecimal bare, BigDecimal need) {
        Pack fitting = goods.packs().stream()
                .min(Comparator.comparing(
                                (Pack pack) -> PackMix.contentOf(pack).multiply(new BigDecimal(toCover(need, pack))))
                        .thenComparing(pack -> toCover(need, pack)))
                .orElseThrow();
        List<Pack> only = List.of(fitting);
        List<BigInteger> count = List.of(toCover(need, fitting));
        String formula = needFormula(goods) + "; no pack has a price, so the pack that leaves least over: "
                + toCover(need, fitting) + " x " + fitting.name() + "; the total is \"at least\"";
        return line(
                goods,
                bare,
                need,
                counts(only, count),
                held(only, count),
                Optional.empty(),
                Optional.empty(),
                formula);
    }

    private static BigInteger toCover(BigDecimal need, Pack pack) {
        if (need.signum() == 0) return BigInteger.ZERO;
        BigDecimal bundle = BigDecimal.valueOf(pack.bundle());
        BigInteger bundles = need.divide(PackMix.contentOf(pack).multiply(bundle), 0, RoundingMode.CEILING).toBigInteger();
        return bundles.multiply(bundle.toBigInteger()).max(BigInteger.valueOf(pack.leastBundled()));
    }

    private static SlipLine line(
            PackGoods goods,
            BigDecimal bare,
            BigDecimal need,
            List<PackCount> bought,
            BigDecimal held,
            Optional<BigDecimal> cost,
            Optional<BigDecimal> bedByBed,
            String formula) {
        List<Working.Input> inputs = new ArrayList<>();
        inputs.add(Working.Input.of("sum of needs", bare.doubleValue(), goods.unit()));
        if (goods.loosening() != 1) inputs.add(Working.Input.of("loose over compacted", goods.loosening(), ""));
        inputs.add(Working.Input.of("spare", goods.spare(), ""));
        for (Pack pack : goods.packs()) inputs.add(Working.Input.of(pack.name(), pack.content(), goods.unit()));
        return new SlipLine(goods.item(), goods.label(), need.doubleValue(), goods.unit(), bought, held.subtract(need).doubleValue(), cost, bedByBed, new Working(inputs, formula, Working.COMMON_PRACTICE), List.of());
    }

    private static String needFormula(PackGoods goods) {
        return "need = sum of needs x " + (goods.loosening() == 1 ? "" : "loose over compacted x ") + "(1 + spare)" + (counted(goods) ? ", up to a whole number" : "");
    }

    private static String inWords(PackCount bought) {
        return bought.count() + " x " + bought.pack()
                + bought.price().map(price -> " at " + price.toPlainString()).orElse("");
    }

    private static List<PackCount> counts(List<Pack> packs, List<BigInteger> counts) {
        List<PackCount> bought = new ArrayList<>();
        for (int i = 0; i < packs.size(); i++) {
            BigInteger count = counts.get(i);
            if (count.signum() > 0) {
                Pack pack = packs.get(i);
                bought.add(new PackCount(pack.name(), count.longValueExact(), pack.price(), pack.supplier()));
            }
        }
        return bought;
    }

    private static BigDecimal held(List<Pack> packs, List<BigInteger> counts) {
        BigDecimal sum = BigDecimal.ZERO;
        for (int i = 0; i < packs.size(); i++) sum = sum.add(PackMix.contentOf(packs.get(i)).multiply(new BigDecimal(counts.get(i))));
        return sum;
    }

    private static BigDecimal withSpare(PackGoods goods, BigDecimal bare) {
        BigDecimal need = bare.multiply(BigDecimal.valueOf(goods.loosening())).multiply(BigDecimal.ONE.add(BigDecimal.valueOf(goods.spare())))
                .setScale(NEED_DECIMALS, RoundingMode.HALF_UP);
        return counted(goods) ? need.setScale(0, RoundingMode.CEILING) : need;
    }

    private static boolean counted(PackGoods goods) {
        return !MEASURED.contains(goods.unit());
    }
}
