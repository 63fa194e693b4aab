package lapyard.geometry;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Masses, areas, volumes and runs as a person reads them, in metric units or in those that go with feet and inches. Lengths of
 * pieces are {@link Length}'s.
 *
 * @see "NIST Special Publication 811 (2008), appendix B: 1 lb = 0.453 592 37 kg, 1 yd = 0.9144 m, 1 US gal = 3.785 411 784 l, exactly"
 */
public enum Measure {
    KG("kg", "lb", 0.45359237),
    TONNES("t", "lb", 0.00045359237),
    METRES("m", "ft", 0.3048),
    SQUARE_METRES("m2", "sq ft", 0.09290304),
    CUBIC_METRES("m3", "cu yd", 0.764554857984),
    LITRES("l", "gal", 3.785411784);

    private final String unit;
    private final String imperialUnit;
    private final double inMetric;

    Measure(String unit, String imperialUnit, double inMetric) {
        this.unit = unit;
        this.imperialUnit = imperialUnit;
        this.inMetric = inMetric;
    }

    public String unit(boolean imperial) {
        return imperial ? imperialUnit : unit;
    }

    /** @param decimals of the number, kept in either unit; pounds are whole */
    public String written(double value, int decimals, boolean imperial) {
        return number(value, decimals, imperial) + " " + unit(imperial);
    }

    /** As {@link #written}, for a column whose head has the unit. */
    public String number(double value, int decimals, boolean imperial) {
        boolean pounds = imperial && imperialUnit.equals("lb");
        return BigDecimal.valueOf(imperial ? value / inMetric : value).setScale(pounds ? 0 : decimals, RoundingMode.HALF_UP).toPlainString();
    }

    /** An amount in a unit of the job sheet; counts and units of no measure stay as they are. */
    public static String of(double value, String unit, int decimals, boolean imperial) {
        for (Measure measure : values()) if (measure.unit.equals(unit)) return measure.written(value, decimals, imperial);
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString() + " " + unit;
    }
}
