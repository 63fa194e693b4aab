package lapyard.prints;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lapyard.catalogue.PackCode;
import lapyard.diagrams.BenchTable.Column;
import lapyard.diagrams.SlipSheets;
import lapyard.drawing.Page;
import lapyard.geometry.Length;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet;
import lapyard.job.MerchantOffers;
import lapyard.job.PriceRequest;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;

/** The request that goes to merchants, and their offers side by side. */
final class MerchantPrint {
    /** More columns leave no room for their figures. */
    private static final int MOST_MERCHANTS = 6;

    /** What a merchant fills in besides the prices. */
    private static final List<String> ASKED = List.of("Merchant", "Prices hold until", "With tax of, %", "Delivery charge", "Free over", "Days from order", "Payment");

    private MerchantPrint() {}

    static List<Page> request(JobSheet sheet, PrintAsk ask) {
        PriceRequest request = PriceRequest.of(sheet);
        if (request.rows().isEmpty()) throw CannotPrint.of(FindingKind.ORDER_EMPTY);
        boolean imperial = sheet.garden().imperial();
        String builder = sheet.garden().terms().quote().builder();
        List<String> words = new ArrayList<>();
        if (!builder.isBlank()) words.add("From " + builder + ".");
        words.add("Please price what is listed, each size by itself, and say what you would offer in its place."
                + " A count is what our plan takes today; sizes without a count may take its place at another price.");
        request.answerBy().ifPresent(day -> words.add("Please answer before " + day + ": the first order goes out then."));
        List<List<String>> sizes = new ArrayList<>();
        String before = "";
        for (PriceRequest.Row row : request.rows()) {
            String goods = row.label().equals(before) ? "" : row.label() + ", needs " + SlipSheets.need(row.need(), row.needUnit(), imperial);
            before = row.label();
            sizes.add(List.of(goods, size(row.size(), imperial), row.count() == 0 ? "" : Lengths.text(BuyingTables.count(row, imperial)), BuyingTables.each(row, imperial), BuyingTables.needed(row), ""));
        }
        return ask.list(sheet, SlipSheets.CAUTION, "Request for prices", "what, how much and by when").words(words, 3.6, false).toFillIn(ASKED)
                .table("To price, in " + sheet.slip().currency().getCode(), List.of(new Column("goods", 0.3, true), new Column("size", 0.26, true), new Column("count", 0.1, true),
                        new Column("price is for", 0.1, false), new Column("needed by", 0.12, false), new Column("price", 0.12, false)), sizes)
                .pages();
    }

    private static String size(PriceRequest.Size size, boolean imperial) {
        if (size.lengthMm().isPresent()) return "board of " + Length.withUnit(size.lengthMm().getAsDouble(), imperial);
        if (size.widthMm().isPresent()) return "roll " + Length.withUnit(size.widthMm().getAsDouble(), imperial) + " wide";
        return size.pack().isEmpty() ? "as you sell it" : PackCode.words(size.pack(), imperial);
    }

    private static CannotPrint offers(FindingKind kind, MerchantOffers offers) {
        return CannotPrint.of(Finding.of(kind, Place.field("offers")).with("merchants", Fact.count(offers.merchants().size(), "merchants"))
                .with("most", Fact.count(MOST_MERCHANTS, "merchants")));
    }

    static List<Page> offers(JobSheet sheet, PrintAsk ask) {
        MerchantOffers offers = MerchantOffers.of(sheet);
        if (offers.merchants().size() < 2) throw offers(FindingKind.OFFERS_FEW, offers);
        if (offers.merchants().size() > MOST_MERCHANTS) throw offers(FindingKind.OFFERS_MANY, offers);
        List<List<String>> rows = new ArrayList<>();
        for (MerchantOffers.Line line : offers.lines()) {
            rows.add(row(offers, line.label(), one -> Optional.ofNullable(line.costs().get(one.supplier().id())), line.cost(), BuyingTables.from(offers, line)));
        }
        BigDecimal delivery = offers.best().total().subtract(offers.best().goods());
        rows.add(row(offers, "Goods", one -> Optional.of(one.goods()), Optional.of(offers.best().goods()), ""));
        rows.add(row(offers, "Delivery", one -> Optional.of(one.charge()), Optional.of(delivery), ""));
        rows.add(row(offers, "Total", one -> Optional.of(one.total()), Optional.of(offers.best().total()), ""));
        List<String> words = new ArrayList<>();
        words.add(offers.proven() ? "No other split of the lines over these merchants costs less than the best split." : "The best split is the best that was found.");
        offers.merchants().stream().filter(one -> !one.whole()).forEach(one -> words.add(one.supplier().name() + " does not price all of it"
                + (one.missing().isEmpty() ? "" : ": " + String.join(", ", one.missing())) + (one.leavesOut() ? ". Some pieces fit nothing that " + one.supplier().name() + " sells" : "") + "."));
        List<Column> columns = new ArrayList<>(List.of(new Column("goods", 0.26, true)));
        offers.merchants().forEach(one -> columns.add(new Column(one.supplier().name(), 0.46 / offers.merchants().size(), false)));
        columns.add(new Column("best split", 0.12, true));
        columns.add(new Column("from", 0.16, false));
        return ask.list(sheet, SlipSheets.CAUTION, "Offers side by side", "what the whole garden would cost from each alone, and from the best of them together").words(words, 3.6, false)
                .table("In " + offers.best().currency().getCode(), columns, rows)
                .pages();
    }

    private static List<String> row(MerchantOffers offers, String what, Function<MerchantOffers.Merchant, Optional<BigDecimal>> cost, Optional<BigDecimal> best, String from) {
        List<String> row = new ArrayList<>(List.of(what));
        offers.merchants().forEach(one -> row.add(SlipSheets.cost(cost.apply(one))));
        row.add(SlipSheets.cost(best));
        row.add(from);
        return row;
    }
}
