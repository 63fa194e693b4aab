package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Pack;
import lapyard.catalogue.Roll;
import lapyard.catalogue.StockLength;
import lapyard.catalogue.Supplier;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;

/**
 * What the garden would cost from each merchant alone, line by line and in whole with delivery, beside the slip, which is the
 * cheapest split over all of them. Boards are cut anew for each merchant's lengths.
 *
 * @param merchants who price anything that the garden needs, in the order of the catalogue
 * @param lines     in the order of the slip
 * @param proven    whether no other split costs less: the choice is proved, and so is every cutting and roll plan in it, and no
 *                  merchant was passed over for boards that walls could be joined for
 */
public record MerchantOffers(Slip best, List<Merchant> merchants, List<Line> lines, boolean proven) {
    public MerchantOffers {
        merchants = List.copyOf(merchants);
        lines = List.copyOf(lines);
    }

    /**
     * One merchant alone.
     *
     * @param total   goods and delivery of all that this merchant prices
     * @param missing labels of the lines that this merchant has no price for
     * @param leavesOut whether some pieces are longer or wider than anything this merchant sells, so that the total is without them
     */
    public record Merchant(Supplier supplier, BigDecimal goods, BigDecimal charge, BigDecimal total, List<String> missing, boolean leavesOut) {
        public Merchant {
            missing = List.copyOf(missing);
        }

        /** Whether the total is for the whole garden. */
        public boolean whole() {
            return missing.isEmpty() && !leavesOut;
        }
    }

    /**
     * @param costs  by supplier id; no entry where a merchant has no price
     * @param chosen ids of those who bring it in the best split
     */
    public record Line(String item, String label, double need, String unit, Map<String, BigDecimal> costs, Set<String> chosen, Optional<BigDecimal> cost) {}

    public static MerchantOffers of(JobSheet sheet) {
        Garden garden = sheet.garden();
        Catalogue catalogue = garden.goods().catalogue();
        Map<String, Map<String, BigDecimal>> costs = new LinkedHashMap<>();
        List<Merchant> merchants = new ArrayList<>();
        SearchMemory memory = new SearchMemory(Job.ONE_GARDEN_BYTES);
        boolean proven = sheet.slip().proven() && planned(sheet.cutting(), sheet.strips(), sheet.rolls())
                && sheet.snags().stream().noneMatch(one -> one.kind() == FindingKind.SELLER_SHORT);
        Set<String> selling = selling(catalogue);
        for (Supplier supplier : Stream.concat(catalogue.suppliers().stream(), Stream.of(Supplier.ONLY)).filter(one -> selling.contains(one.id())).toList()) {
            Costing alone = Costing.of(
                    garden.withCatalogue(catalogue.soldBy(supplier.id())), SearchOptions.pooledOnly(garden.goods().search(), memory));
            Slip slip = alone.slip();
            Map<String, BigDecimal> own = new LinkedHashMap<>();
            List<String> missing = new ArrayList<>();
            for (SlipLine line : slip.lines()) {
                if (line.cost().isEmpty()) missing.add(line.label());
                else if (!line.packs().isEmpty()) own.put(line.item(), line.cost().get());
            }
            if (own.isEmpty()) continue;
            proven &= planned(alone.cutting(), alone.strips(), alone.rolls().materials(slip));
            Optional<Slip.Order> order = slip.orders().stream().filter(one -> one.supplier().id().equals(supplier.id())).findFirst();
            BigDecimal charge = order.map(Slip.Order::charge).orElse(slip.total().subtract(slip.goods()));
            costs.put(supplier.id(), own);
            merchants.add(new Merchant(supplier, slip.goods(), charge, slip.total(), missing, alone.leftOut()));
        }
        List<Line> lines = new ArrayList<>();
        for (SlipLine line : sheet.slip().lines()) {
            if (line.packs().isEmpty() && line.cost().isPresent()) continue;
            Map<String, BigDecimal> each = new LinkedHashMap<>();
            costs.forEach((supplier, own) -> Optional.ofNullable(own.get(line.item())).ifPresent(cost -> each.put(supplier, cost)));
            Set<String> chosen = new LinkedHashSet<>();
            line.packs().forEach(pack -> chosen.add(pack.supplier()));
            lines.add(new Line(line.item(), line.label(), line.need(), line.unit(), each, chosen, line.cost()));
        }
        return new MerchantOffers(sheet.slip(), merchants, lines, proven);
    }

    private static Set<String> selling(Catalogue catalogue) {
        Set<String> selling = new LinkedHashSet<>();
        catalogue.sections().forEach(section -> section.stock().stream().filter(one -> one.price().isPresent()).map(StockLength::supplier).forEach(selling::add));
        catalogue.rolls().stream().filter(one -> one.pricePerMetre().isPresent()).map(Roll::supplier).forEach(selling::add);
        catalogue.packs().forEach(goods -> goods.packs().stream().filter(one -> one.price().isPresent()).map(Pack::supplier).forEach(selling::add));
        return selling;
    }

    private static boolean planned(List<JobSheet.SectionCutting> timber, List<JobSheet.SectionCutting> strips, List<JobSheet.MaterialRolls> rolls) {
        return Stream.concat(timber.stream(), strips.stream()).allMatch(JobSheet.SectionCutting::proven) && rolls.stream().allMatch(one -> one.result().proven());
    }
}
