package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Goods;
import lapyard.catalogue.PackGoods;
import lapyard.construction.BedWork;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet.PathSheet;
import lapyard.order.Ordering;
import lapyard.order.SlipLine;
import lapyard.order.Wanted;
import lapyard.plan.Bed;
import lapyard.plan.Fill;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Screws;
import lapyard.plan.Ties;
import lapyard.working.Quantity;
import lapyard.working.QuantityKey;
import lapyard.working.QuantityKind;
import org.joda.money.CurrencyUnit;

/** The needs of goods in packs: each quantity goes to the goods that serve it, bed by bed and path by path. */
final class PackNeeds {
    private static final int MOST_WITH_DEARER = 40;

    private record Need(String unit, List<SlipLine.Use> each) {}

    private final Map<String, Need> needs = new LinkedHashMap<>();

    private PackNeeds() {}

    /** @param amounts of each bed, as {@code works} has them */
    static PackNeeds of(List<BedWork> works, List<List<Quantity>> amounts, List<PathSheet> paths) {
        PackNeeds all = new PackNeeds();
        for (int i = 0; i < works.size(); i++) {
            Bed bed = works.get(i).bed();
            all.take("bed " + bed.id(), items(bed), toBuy(amounts.get(i)));
        }
        for (PathSheet sheet : paths) all.take("path " + sheet.path().id(), items(sheet.path()), sheet.quantities());
        return all;
    }

    /** Where slat boards are on hand, only what is missing of them is bought. */
    static List<Quantity> toBuy(List<Quantity> quantities) {
        if (quantities.stream().noneMatch(quantity -> quantity.is(QuantityKind.SLATS_BOUGHT))) return quantities;
        return quantities.stream()
                .filter(quantity -> !quantity.is(QuantityKind.SLATS))
                .map(quantity -> quantity.is(QuantityKind.SLATS_BOUGHT)
                        ? new Quantity(QuantityKind.SLATS, quantity.value(), quantity.unit(), quantity.working())
                        : quantity)
                .toList();
    }

    /** The goods that each of a bed's quantities asks for. */
    static Map<QuantityKey, String> items(Bed bed) {
        Map<QuantityKey, String> items = new LinkedHashMap<>();
        items.put(QuantityKind.SCREWS.alone(), screws(bed));
        items.put(QuantityKind.BRACKETS.alone(), Goods.BRACKETS.item());
        items.put(QuantityKind.BRACKET_FIXINGS.alone(), fixings(bed));
        items.put(QuantityKind.COURSE_TIES.alone(), courseTies(bed));
        items.put(QuantityKind.COURSE_TIE_FIXINGS.alone(), fixings(bed));
        items.put(QuantityKind.CROSS_TIES.alone(), Goods.CROSS_TIES.item());
        items.put(QuantityKind.POSTS.alone(), Goods.POSTS.item());
        items.put(QuantityKind.JOINT_PLATES.alone(), Goods.JOINT_PLATES.item());
        items.put(QuantityKind.JOINT_SCREWS.alone(), Goods.JOINT_SCREWS.item());
        items.put(QuantityKind.STAPLES.alone(), Goods.STAPLES.item());
        items.put(QuantityKind.SLATS.alone(), Goods.SLATS.item());
        items.put(QuantityKind.FINISH_LITRES.alone(), Goods.FINISH.item());
        items.put(QuantityKind.SEAL_LITRES.alone(), bed.making().seal().item());
        items.put(QuantityKind.MULCH.alone(), Goods.MULCH.item());
        items.put(QuantityKind.CONCRETE.alone(), Goods.CONCRETE.item());
        items.put(QuantityKind.SUB_BASE.alone(), Goods.SUB_BASE.item());
        for (Fill.Layer layer : bed.planting().fill().layers()) items.put(QuantityKind.MATERIAL.of(layer.item()), layer.item());
        return items;
    }

    static Map<QuantityKey, String> items(GardenPath path) {
        Map<QuantityKey, String> items = new LinkedHashMap<>();
        for (GardenPath.Layer layer : path.layers()) items.put(QuantityKind.MATERIAL.of(layer.item()), layer.item());
        if (!path.edging().isEmpty()) {
            items.put(QuantityKind.EDGING_LENGTH.alone(), path.edging());
            items.put(QuantityKind.EDGING_PEGS.alone(), Goods.EDGING_PEGS.item());
        }
        return items;
    }

    static double amount(List<Quantity> quantities, QuantityKey key) {
        return quantities.stream().filter(quantity -> quantity.key().equals(key)).mapToDouble(Quantity::value).sum();
    }

    /** Screws of another length than the usual are other goods. */
    private static String screws(Bed bed) {
        return bed.making().screws().lengthMm() == Screws.PLAIN_MM ? Goods.SCREWS.item() : Goods.SCREWS.item(Lengths.text(bed.making().screws().lengthMm()));
    }

    private static String courseTies(Bed bed) {
        double height = bed.section().heightMm();
        return bed.making().ties().strapped(height) ? Goods.COURSE_TIES.item() : Goods.COURSE_SCREWS.item(Lengths.text(Ties.courseScrewMm(height)));
    }

    private static String fixings(Bed bed) {
        return bed.making().ties().fixingLengthMm() == Ties.USUAL.fixingLengthMm() ? Goods.FIXINGS.item() : Goods.FIXINGS.item(Lengths.text(bed.making().ties().fixingLengthMm()));
    }

    private void take(String owner, Map<QuantityKey, String> items, List<Quantity> quantities) {
        Map<String, Double> own = new LinkedHashMap<>();
        Map<String, String> units = new LinkedHashMap<>();
        for (Quantity quantity : quantities) {
            String item = items.get(quantity.key());
            if (item != null && quantity.value() > 0) {
                own.merge(item, quantity.value(), Double::sum);
                units.put(item, quantity.unit());
            }
        }
        own.forEach((item, amount) ->
                needs.computeIfAbsent(item, i -> new Need(units.get(i), new ArrayList<>())).each().add(new SlipLine.Use(owner, amount)));
    }

    /**
     * What each bed and path would buy by itself. Where they are many, dearer mixes that lift an order over a limit of free
     * delivery are not looked at, and what they could save is not proved.
     *
     * @param ways for each bed that can be built in several ways, the amounts of each, by item
     * @param open owners who could build in further ways, so that nothing is proved of what holds it together
     */
    void apart(Catalogue catalogue, BigDecimal reach, Map<String, List<Map<String, Double>>> ways, Set<String> open, BuyersApart buyers,
            CurrencyUnit currency) {
        Map<String, Map<String, Double>> byOwner = new LinkedHashMap<>();
        needs.forEach((item, need) -> need.each().forEach(
                use -> byOwner.computeIfAbsent(use.owner(), o -> new LinkedHashMap<>()).put(item, use.amount())));
        boolean few = byOwner.size() <= MOST_WITH_DEARER;
        Map<Use, Optional<Bought>> known = new HashMap<>();
        byOwner.forEach((owner, chosen) -> {
            List<Map<String, Double>> each = ways.getOrDefault(owner, List.of(chosen));
            for (int i = 0; i < each.size(); i++) {
                int way = i;
                each.get(way).forEach((item, amount) -> {
                    known.computeIfAbsent(new Use(item, amount), use -> catalogue.packs(item)
                            .flatMap(goods -> Bought.of(goods, amount, few ? reach : BigDecimal.ZERO, currency))).ifPresent(bought -> {
                        buyers.wanted(owner, way, bought.wanted());
                        buyers.unproved(owner, way,
                                open.contains(owner) && holdsTogether(item) ? bought.cheapest() : bought.cheapest().subtract(bought.least()));
                    });
                });
                if (!few) buyers.unproved(owner, way, reach);
            }
        });
    }

    private record Use(String item, double amount) {}

    /**
     * So much of some goods, bought by whoever needs it.
     *
     * @param cheapest way to buy it
     * @param least    proved
     */
    private record Bought(Wanted wanted, BigDecimal cheapest, BigDecimal least) {
        /** Empty where it has no price. */
        static Optional<Bought> of(PackGoods goods, double amount, BigDecimal reach, CurrencyUnit currency) {
            Wanted wanted = Ordering.packWays(goods, List.of(new SlipLine.Use("", amount)), reach, currency);
            return wanted.ways().stream().flatMap(one -> one.cost().stream()).min(BigDecimal::compareTo).map(cheapest ->
                    new Bought(wanted, cheapest, Ordering.leastCost(goods, amount, currency).orElseThrow()));
        }
    }

    /** Whether other joints or another cut of the liner could take less of it. */
    private static boolean holdsTogether(String item) {
        return Set.of("seam.plates", "seam.screws", "cross.ties", "posts", "staples").contains(item) || item.startsWith("fixings");
    }

    /** What so much of it costs at least; 0 where it has no price. */
    static BigDecimal leastCost(Garden garden, String item, double amount) {
        return garden.goods().catalogue().packs(item)
                .flatMap(goods -> Ordering.leastCost(goods, amount, CurrencyUnit.of(garden.terms().currency())))
                .orElse(BigDecimal.ZERO);
    }

    /** What a bed asks of each of the goods. */
    static Map<String, Double> amounts(Bed bed, List<Quantity> quantities) {
        PackNeeds one = new PackNeeds();
        one.take("", items(bed), toBuy(quantities));
        Map<String, Double> amounts = new LinkedHashMap<>();
        one.needs.forEach((item, need) -> amounts.put(item, need.each().get(0).amount()));
        return amounts;
    }

    /** @param reach what all delivery charges that can fall away come to */
    List<Wanted> lines(Catalogue catalogue, BigDecimal reach, CurrencyUnit currency, boolean imperial) {
        List<Wanted> lines = new ArrayList<>();
        needs.forEach((item, need) -> lines.add(catalogue
                .packs(item)
                .map(goods -> Ordering.packWays(goods, need.each(), reach, currency))
                .orElseGet(() -> Wanted.only(Ordering.unpriced(
                                item, Goods.label(item, imperial), need.each().stream().mapToDouble(SlipLine.Use::amount).sum(), need.unit())
                        .usedBy(need.each())))));
        return lines;
    }
}
