package lapyard.geometry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * Every amount that a person reads, in metric units or in those that go with feet and inches. Lengths of pieces are {@link
 * Length}'s. Documents, answers and workings hold metric numbers; this is the one place where they are turned.
 *
 * @see "NIST Special Publication 811 (2008), appendix B: 1 lb = 0.453 592 37 kg, 1 yd = 0.9144 m, 1 US gal = 3.785 411 784 l, 1 lbf =
 *     4.448 221 615 260 5 N, all exact; 1 psf = 1 lbf/ft2 = 47.880 26 Pa and 1 lb/ft3 = 16.018 46 kg/m3 follow"
 */
public enum Measure {
    KG("kg", "lb", 0.45359237, 0),
    TONNES("t", "lb", 0.00045359237, 0),
    METRES("m", "ft", 0.3048, 1),
    SQUARE_METRES("m2", "sq ft", 0.09290304, 1),
    CUBIC_METRES("m3", "cu yd", 0.764554857984, 2),
    LITRES("l", "gal", 3.785411784, 2),
    KILONEWTONS("kN", "lbf", 0.0044482216152605, 0),
    PRESSURE("kN/m2", "psf", 0.0044482216152605 / 0.09290304, 0),
    FORCE_A_METRE("kN/m", "lbf/ft", 0.0044482216152605 / 0.3048, 0),
    DENSITY("kg/m3", "lb/cu ft", 0.45359237 / 0.028316846592, 1);

    private final String unit;
    private final String imperialUnit;
    private final double inMetric;
    private final int mostDecimals;

    Measure(String unit, String imperialUnit, double inMetric, int mostDecimals) {
        this.unit = unit;
        this.imperialUnit = imperialUnit;
        this.inMetric = inMetric;
        this.mostDecimals = mostDecimals;
    }

    /** As documents and answers write the metric unit: {@code m2}. */
    public String code() {
        return unit;
    }

    /** As a person reads it: {@code m²}. */
    public String unit(boolean imperial) {
        return imperial ? imperialUnit : sign(unit);
    }

    /** A metric unit with raised figures: {@code m²}, {@code kg/m³}. Documents, answers and tables write {@code m2}. */
    public static String sign(String unit) {
        return unit.replaceAll("(?<=m)2\\b", "²").replaceAll("(?<=m)3\\b", "³");
    }

    /** The amount in the garden's own unit, not rounded. */
    public double in(double value, boolean imperial) {
        return imperial ? value / inMetric : value;
    }

    /** @param decimals of the metric number; of the other one at most as many as its unit is read with */
    public String written(double value, int decimals, boolean imperial) {
        return number(value, decimals, imperial) + " " + unit(imperial);
    }

    /** As {@link #written}, for a column whose head has the unit. */
    public String number(double value, int decimals, boolean imperial) {
        return rounded(value, decimals, imperial).toPlainString();
    }

    /** As {@link #written}, without zeros at the end: {@code 25 kg}, {@code 45.1 kg}. */
    public String plain(double value, int decimals, boolean imperial) {
        return rounded(value, decimals, imperial).stripTrailingZeros().toPlainString() + " " + unit(imperial);
    }

    /** A bare number, half up, without zeros at the end: {@code 25}, {@code 45.1}. */
    public static String plain(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString();
    }

    private BigDecimal rounded(double value, int decimals, boolean imperial) {
        return BigDecimal.valueOf(in(value, imperial)).setScale(imperial ? Math.min(decimals, mostDecimals) : decimals, RoundingMode.HALF_UP);
    }

    /** The measure that has this metric unit; empty for counts. */
    public static Optional<Measure> of(String unit) {
        for (Measure measure : values()) {
            if (measure.unit.equals(unit)) return Optional.of(measure);
        }
        return Optional.empty();
    }

    /** An amount in a unit of the job sheet; counts and units of no measure stay as they are. */
    public static String of(double value, String unit, int decimals, boolean imperial) {
        if (unit.equals("mm")) return Length.withUnit(value, imperial);
        return of(unit).map(measure -> measure.written(value, decimals, imperial))
                .orElseGet(() -> (BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString() + " " + sign(unit)).strip());
    }

    /** "1 board", "3 boards"; for nouns that take an s. */
    public static String counted(long count, String one) {
        return count + " " + one + (count == 1 ? "" : "s");
    }

    /** The garden's own unit for one of the job sheet, as tables write it: {@code m2}. */
    public static String unit(String unit, boolean imperial) {
        return of(unit).filter(measure -> imperial).map(measure -> measure.imperialUnit).orElse(unit);
    }

    /** The number that goes with {@link #unit(String, boolean)}. */
    public static double in(double value, String unit, boolean imperial) {
        return of(unit).map(measure -> measure.in(value, imperial)).orElse(value);
    }
}
