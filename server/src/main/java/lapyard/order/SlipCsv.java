package lapyard.order;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.geometry.Measure;
import lapyard.working.Csv;
import org.apache.commons.csv.CSVPrinter;

/** The slip as RFC 4180 text; a cell never starts a formula. */
public final class SlipCsv {
    private static final String[] WHOLE = {
        "supplier", "item", "label", "need", "unit", "packs", "left over", "cost", "bed by bed", "saved"
    };
    private static final String[] ONE_ORDER = {"item", "label", "pack", "count", "price", "cost"};

    private SlipCsv() {}

    /**
     * A header, the lines of one supplier after the other, after each the delivery where there is a charge, and a last
     * row with the total, its currency as the unit and "at least" where so. Bed by bed stands for its deliveries too, and what is
     * not proved of it is taken off. What is needed, bed by bed and saved stands
     * with the first part of a line that several suppliers share. Rows end in CR LF. Amounts are plain numbers; text
     * that would start a formula begins with an apostrophe.
     */
    public static String write(Slip slip, boolean imperial) {
        Map<String, BigDecimal> apart = new LinkedHashMap<>(slip.apart().map(Apart::charges).orElse(Map.of()));
        return Csv.text(rows -> {
            Set<SlipLine> told = new HashSet<>();
            for (Slip.Order order : slip.orders()) {
                String supplier = order.supplier().id();
                for (Slip.Part part : order.lines()) part(rows, supplier, part, told.add(part.line()), imperial);
                Optional<BigDecimal> charges = Optional.ofNullable(apart.remove(supplier));
                if (order.charge().signum() > 0 || charges.isPresent()) {
                    delivery(rows, supplier, order.charge(), slip.apart().map(all -> charges.orElse(BigDecimal.ZERO.setScale(order.charge().scale()))));
                }
            }
            for (Map.Entry<String, BigDecimal> more : apart.entrySet()) {
                delivery(rows, more.getKey(), BigDecimal.ZERO.setScale(more.getValue().scale()), Optional.of(more.getValue()));
            }
            total(rows, slip);
        }, WHOLE);
    }

    private static void part(CSVPrinter rows, String supplier, Slip.Part part, boolean first, boolean imperial) throws IOException {
        SlipLine line = part.line();
        String packs = part.packs().stream().map(pack -> pack.count() + " x " + pack.words(imperial)).collect(Collectors.joining(" + "));
        rows.printRecord(
                Csv.safe(supplier), Csv.safe(line.item()), Csv.safe(line.label()), first ? amount(line.need(), line, imperial) : "",
                Csv.safe(Measure.unit(line.unit(), imperial)), Csv.safe(packs),
                first && !line.packs().isEmpty() ? amount(line.leftOver(), line, imperial) : "", plain(part.cost()),
                first ? plain(line.bedByBed()) : "", first ? plain(line.saved()) : "");
    }

    private static void total(CSVPrinter rows, Slip slip) throws IOException {
        BigDecimal alone = slip.lines().stream().map(line -> line.bedByBed().orElse(BigDecimal.ZERO)).reduce(BigDecimal.ZERO, BigDecimal::add)
                .add(slip.apart().map(apart -> apart.delivery().subtract(apart.unproved())).orElse(BigDecimal.ZERO));
        String unproved = slip.apart().map(Apart::unproved).filter(some -> some.signum() != 0).map(some -> some.negate().toPlainString()).orElse("");
        if (!unproved.isEmpty()) rows.printRecord("", "not proved", "", "", "", "", "", "", unproved, unproved);
        rows.printRecord("", "total", slip.atLeast() ? "at least" : "", "", slip.currency().getCode(), "", "", slip.total().toPlainString(),
                Ordering.rounded(alone, slip.currency()).toPlainString(), plain(Savings.total(slip)));
    }

    private static void delivery(CSVPrinter rows, String supplier, BigDecimal charge, Optional<BigDecimal> alone) throws IOException {
        rows.printRecord(Csv.safe(supplier), "delivery", "", "", "", "", "", charge.toPlainString(), plain(alone), plain(alone.map(all -> all.subtract(charge))));
    }

    /** What one supplier is asked for, one row a pack; a line without packs or price stays in place. */
    public static String write(Slip.Order order, String currency, boolean imperial) {
        return Csv.text(rows -> {
            for (Slip.Part part : order.lines()) {
                SlipLine line = part.line();
                if (part.packs().isEmpty()) rows.printRecord(Csv.safe(line.item()), Csv.safe(line.label()), "", "", "", plain(part.cost()));
                for (Slip.Costed one : part.costed()) {
                    rows.printRecord(Csv.safe(line.item()), Csv.safe(line.label()), Csv.safe(one.pack().words(imperial)), one.pack().count(),
                            plain(one.pack().price()), plain(one.cost()));
                }
            }
            if (order.charge().signum() > 0) rows.printRecord("delivery", "", "", "", "", order.charge().toPlainString());
            rows.printRecord("total", order.atLeast() ? "at least" : "", currency, "", "", order.total().toPlainString());
        }, ONE_ORDER);
    }

    private static String plain(Optional<BigDecimal> amount) {
        return amount.map(BigDecimal::toPlainString).orElse("");
    }

    private static String amount(double value, SlipLine line, boolean imperial) {
        return Measure.plain(Measure.in(value, line.unit(), imperial), Ordering.NEED_DECIMALS);
    }
}
