package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.QuoteTerms;
import lapyard.plan.Rate;
import lapyard.plan.WayIn;
import lapyard.plan.WayKind;

/** The way goods come in, and the terms of a quote. */
final class TermsReader {

    private TermsReader() {}

    static WayIn wayIn(Cursor garden) {
        boolean given = garden.has("loadIn");
        return garden.read("loadIn", way -> {
            boolean through = way.has("passage");
            Cursor passage = way.object("passage");
            OptionalDouble width = through ? OptionalDouble.of(passage.neededLength("width")) : OptionalDouble.empty();
            OptionalDouble turn = passage.has("turn") ? OptionalDouble.of(passage.number("turn", 900)) : OptionalDouble.empty();
            passage.refuseUnknown();
            WayIn read = new WayIn(
                    given, way.readIfAny("vehicle", Suppliers::vehicle), width, turn,
                    way.has("dropSpot") ? Optional.of(way.point("dropSpot")) : Optional.empty(),
                    way.number("bag", WayIn.UNKNOWN.bagMm()),
                    way.number("barrow", WayIn.UNKNOWN.barrowLitres()));
            barrowMinutes(way);
            return read;
        });
    }

    /** An older place for the rate of a barrow, which the crew has; empty where it is not used. */
    static OptionalDouble barrowMinutes(Cursor loadIn) {
        return loadIn.has("barrowMinutes")
                ? OptionalDouble.of(loadIn.number("barrowMinutes", Rate.BARROW.usualMinutes))
                : OptionalDouble.empty();
    }

    static QuoteTerms quote(Cursor quote, boolean given) {
        List<QuoteTerms.Labour> labour = quote.each("labour", "labour", line ->
                new QuoteTerms.Labour(line.text("what"), line.number("hours", 0), line.price("rate").orElse(BigDecimal.ZERO)));
        BigDecimal margin = BigDecimal.ZERO;
        JsonNode asked = quote.raw("margin");
        if (asked.isNumber() && asked.decimalValue().compareTo(BigDecimal.valueOf(100)) >= 0) {
            quote.add(quote.fault(FindingKind.MARGIN_WHOLE, "margin").with("margin", Fact.share(asked.doubleValue() / 100)).way(WayKind.MARGIN_UNDER));
        } else {
            margin = BigDecimal.valueOf(quote.number("margin"));
        }
        List<String> exclusions = quote.words("exclusions", text -> text.length() <= 500,
                other -> quote.misshapen("exclusions", "texts of at most 500 characters", other, "[\"Watering\", \"Plants\"]"));
        Optional<BigDecimal> tax = quote.has("tax") ? Optional.of(BigDecimal.valueOf(quote.number("tax"))) : Optional.empty();
        return new QuoteTerms(
                given, quote.text("number"), quote.text("client"), quote.text("builder"), tax, labour, margin, exclusions,
                Suppliers.date(quote));
    }
}
