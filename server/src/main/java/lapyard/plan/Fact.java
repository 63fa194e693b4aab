package lapyard.plan;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;
import lapyard.geometry.Measure;
import lapyard.plan.Finding.Amount;

/** One figure or name that a finding speaks of, with its unit in its type. The package {@code words} writes it out. */
public sealed interface Fact {
    /** The number with its unit; 0 with an empty unit if the fact is not a number. */
    default Amount amount() {
        if (this instanceof Length length) return new Amount(round(length.mm, 1), "mm");
        if (this instanceof Screw screw) return new Amount(round(screw.mm, 1), "mm");
        if (this instanceof Measured measured) return new Amount(round(measured.value, measured.decimals), measured.measure.code());
        if (this instanceof Money money) return new Amount(money.amountOf.doubleValue(), money.currency);
        if (this instanceof PersonHours work) return new Amount(round(work.hours, 1), "person-hours");
        if (this instanceof Count count) return new Amount(count.count, count.noun);
        if (this instanceof Percent percent) return new Amount(round(percent.share * 100, 1), "percent");
        if (this instanceof Angle angle) return new Amount(round(angle.degrees, 1), "degrees");
        return this instanceof Plain plain ? new Amount(plain.value, plain.unit) : new Amount(0, "");
    }

    /** A length, in mm. */
    record Length(double mm) implements Fact {}

    /** The length of a screw, in mm. */
    record Screw(double mm) implements Fact {}

    /** Two or three lengths, in mm, as in 3960 x 2460. */
    record Size(List<Double> mm) implements Fact {
        public Size {
            mm = List.copyOf(mm);
        }
    }

    /** Lengths along one line, in mm. */
    record Lengths(List<Double> mm) implements Fact {
        public Lengths {
            mm = List.copyOf(mm);
        }
    }

    /** A place in the yard, in mm from its origin. */
    record Spot(double xMm, double yMm) implements Fact {}

    /** An area, a volume, a mass, a force, a pressure on the ground: in the unit of its measure, {@code decimals} as JSON shows it. */
    record Measured(double value, Measure measure, int decimals) implements Fact {}

    /** @param currency ISO 4217 code */
    record Money(BigDecimal amountOf, String currency) implements Fact {}

    record PersonHours(double hours) implements Fact {}

    /** A count of things. {@code noun} is their name in the plural, as in {@code walls}. */
    record Count(long count, String noun) implements Fact {}

    /** A share, 1 being all of it. */
    record Percent(double share) implements Fact {}

    record Angle(double degrees) implements Fact {}

    /** A slope, given as the run for a rise of 1; infinite where it is level. */
    record Slope(double run) implements Fact {}

    record Day(LocalDate date) implements Fact {}

    /** A name or code that stands in the garden or the catalogue, or a word of the document. */
    record Name(String name) implements Fact {}

    /** A section of timber by its code. */
    record Section(String id) implements Fact {}

    /** Names in their order. */
    record Names(List<String> names) implements Fact {
        public Names {
            names = List.copyOf(names);
        }
    }

    /** Words of which one is to be chosen. */
    record Choice(List<String> words) implements Fact {
        public Choice {
            words = List.copyOf(words);
        }
    }

    /** A number in any other unit, which is written after it. */
    record Plain(double value, String unit) implements Fact {}

    static Fact mm(double mm) {
        return new Length(mm);
    }

    static Fact size(double... mm) {
        return new Size(java.util.Arrays.stream(mm).boxed().toList());
    }

    static Fact spot(double xMm, double yMm) {
        return new Spot(xMm, yMm);
    }

    static Fact m2(double m2) {
        return new Measured(m2, Measure.SQUARE_METRES, 4);
    }

    static Fact m3(double m3) {
        return new Measured(m3, Measure.CUBIC_METRES, 3);
    }

    static Fact kg(double kg) {
        return new Measured(kg, Measure.KG, 1);
    }

    static Fact kn(double kn) {
        return new Measured(kn, Measure.KILONEWTONS, 2);
    }

    /** On the ground or on an area, in kN/m2. */
    static Fact kpa(double knM2) {
        return new Measured(knM2, Measure.PRESSURE, 1);
    }

    static Fact money(BigDecimal amount, String currency) {
        return new Money(amount, currency);
    }

    static Fact count(long count, String noun) {
        return new Count(count, noun);
    }

    static Fact share(double share) {
        return new Percent(share);
    }

    static Fact name(String name) {
        return new Name(name);
    }

    static Fact names(List<String> names) {
        return new Names(names);
    }

    private static double round(double value, int decimals) {
        return Double.isFinite(value) ? BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).doubleValue() : 0;
    }
}
