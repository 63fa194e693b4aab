package lapyard.order;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.working.BrokenRule;

/**
 * What a change to the garden changes in the order, line by line.
 *
 * @param lines      that differ: changed and new ones in the order of the later slip, then those that are gone
 * @param before     total, delivery included
 * @param difference after less before
 * @param atLeast    whether a price is missing on either side, so that the difference is of what is priced
 */
public record Variation(String currency, List<Line> lines, BigDecimal before, BigDecimal after, BigDecimal difference, boolean atLeast) {
    public Variation {
        lines = List.copyOf(lines);
    }

    /**
     * @param packsBefore what was to be bought, empty where the line is new; {@code costBefore} empty too where unpriced
     */
    public record Line(
            String item,
            String label,
            String unit,
            double needBefore,
            double needAfter,
            String packsBefore,
            String packsAfter,
            Optional<BigDecimal> costBefore,
            Optional<BigDecimal> costAfter,
            BigDecimal difference) {}

    /**
     * @param imperial measures in which the packs are written
     * @throws IllegalArgumentException where the two are in different currencies
     */
    public static Variation between(Slip before, Slip after, boolean imperial) {
        if (!before.currency().equals(after.currency())) {
            throw BrokenRule.of(BrokenRule.Rule.CURRENCIES_DIFFER, "order").with("first", before.currency().getCode()).with("second", after.currency().getCode());
        }
        Map<String, SlipLine> old = new LinkedHashMap<>();
        before.lines().forEach(line -> old.put(line.item(), line));
        List<Line> lines = new ArrayList<>();
        for (SlipLine now : after.lines()) add(lines, Optional.ofNullable(old.remove(now.item())), Optional.of(now), imperial);
        old.values().forEach(gone -> add(lines, Optional.of(gone), Optional.empty(), imperial));
        BigDecimal was = before.total().subtract(before.goods());
        BigDecimal is = after.total().subtract(after.goods());
        if (was.compareTo(is) != 0) {
            lines.add(new Line("delivery", "Delivery", "", 0, 0, "", "", Optional.of(was), Optional.of(is), is.subtract(was)));
        }
        return new Variation(
                after.currency().getCode(), lines, before.total(), after.total(), after.total().subtract(before.total()),
                before.atLeast() || after.atLeast());
    }

    private static void add(List<Line> lines, Optional<SlipLine> before, Optional<SlipLine> after, boolean imperial) {
        Optional<BigDecimal> was = before.flatMap(SlipLine::cost);
        Optional<BigDecimal> is = after.flatMap(SlipLine::cost);
        String packsBefore = before.map(line -> packs(line, imperial)).orElse("");
        String packsAfter = after.map(line -> packs(line, imperial)).orElse("");
        double needBefore = before.map(SlipLine::need).orElse(0.0);
        double needAfter = after.map(SlipLine::need).orElse(0.0);
        if (was.equals(is) && packsBefore.equals(packsAfter) && Math.abs(needBefore - needAfter) < 5e-7) return;
        SlipLine shown = after.or(() -> before).orElseThrow();
        lines.add(new Line(
                shown.item(), shown.label(), shown.unit(), needBefore, needAfter, packsBefore, packsAfter, was, is,
                is.orElse(BigDecimal.ZERO).subtract(was.orElse(BigDecimal.ZERO))));
    }

    private static String packs(SlipLine line, boolean imperial) {
        List<String> packs = new ArrayList<>();
        line.packs().forEach(pack -> packs.add(pack.count() + " x " + pack.words(imperial) + (pack.supplier().isEmpty() ? "" : " from " + pack.supplier())));
        return String.join(" + ", packs);
    }
}
