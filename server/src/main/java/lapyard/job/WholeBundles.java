package lapyard.job;

import java.math.BigDecimal;
import java.util.function.Function;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;
import lapyard.cutting.CuttingResult;

/**
 * Boards that come in whole bundles, or from a least count on. The cutting counts single boards; a length of which some would lie unused is left
 * out where all then costs less.
 */
final class WholeBundles {
    private WholeBundles() {}

    /**
     * @param plan the best plan with the lengths of a section; asked for the section itself first
     * @return bounded by that of all lengths
     */
    static Nesting.Plan cheapest(Section section, Function<Section, Nesting.Plan> plan) {
        Nesting.Plan best = plan.apply(section);
        BigDecimal bound = best.result().lowerBound();
        Section sold = section;
        for (boolean changed = section.priced(); changed; ) {
            changed = false;
            for (StockLength length : sold.stock()) {
                Section without = sold.sold(sold.stock().stream().filter(other -> other != length).toList());
                // of lengths without a price alone each board counts 1, which is no money
                if (unused(length, best.result()) == 0 || !without.priced()) continue;
                Nesting.Plan other = plan.apply(without);
                if (other.result().left() > best.result().left() || cost(section, other).compareTo(cost(section, best)) >= 0) continue;
                best = other;
                sold = without;
                changed = true;
                break;
            }
        }
        return new Nesting.Plan(best.asked(), best.result().bounded(bound));
    }

    /** Of the boards that are cut and of those that lie unused. */
    static BigDecimal cost(Section section, Nesting.Plan plan) {
        return plan.result().cost().add(over(section, plan.result()));
    }

    /** What whole bundles and least counts cost over the boards that are cut. */
    static BigDecimal over(Section section, CuttingResult result) {
        return section.stock().stream()
                .map(length -> length.price().orElse(BigDecimal.ZERO).multiply(BigDecimal.valueOf(unused(length, result))))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static int unused(StockLength length, CuttingResult result) {
        int cut = result.plan().stream().filter(line -> line.stock().equals(PooledTimber.stockId(length))).mapToInt(CuttingResult.BoardLine::count).sum();
        return length.bought(cut) - cut;
    }
}
