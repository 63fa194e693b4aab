package lapyard.order;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import lapyard.working.Working;

/**
 * One line of the order.
 *
 * @param item     the catalogue's name, {@code timber 100x200}, {@code liner}, {@code soil.topsoil}
 * @param label    in words
 * @param need     what the garden needs, spare included, in {@code unit}
 * @param packs    what to buy for it
 * @param leftOver bought less needed, in {@code unit}
 * @param cost     of the packs, rounded to the currency; empty where a price is missing
 * @param bedByBed what it would cost to buy for each bed alone; empty where a price is missing
 * @param working  how need became packs
 */
public record SlipLine(
        String item,
        String label,
        double need,
        String unit,
        List<PackCount> packs,
        double leftOver,
        Optional<BigDecimal> cost,
        Optional<BigDecimal> bedByBed,
        Working working) {
    public SlipLine {
        packs = List.copyOf(packs);
    }

    /** What pooling saves on this line; empty where a price is missing. */
    public Optional<BigDecimal> saved() {
        return cost.flatMap(pooled -> bedByBed.map(alone -> alone.subtract(pooled)));
    }

    /** {@code price} is of one pack. */
    public record PackCount(String pack, long count, Optional<BigDecimal> price) {}
}
