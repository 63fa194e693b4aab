package lapyard.working;

import java.util.List;

/**
 * One amount with its working.
 *
 * @param key   which one; its text is its fixed name in the job sheet
 * @param value in {@code unit}, not rounded except where the trade counts whole things
 * @param unit  {@code m}, {@code m2}, {@code m3}, {@code kg}, {@code l} or a counted thing's plain word such as {@code screws}
 */
public record Quantity(QuantityKey key, double value, String unit, Working working) {
    /** The only one of its kind. */
    public Quantity(QuantityKind kind, double value, String unit, Working working) {
        this(kind.alone(), value, unit, working);
    }

    /** The only one of its kind with its {@link Working#of}. */
    public static Quantity of(QuantityKind kind, double value, String unit, String formula, String source, Working.Input... inputs) {
        return of(kind.alone(), value, unit, formula, source, inputs);
    }

    public static Quantity of(QuantityKey key, double value, String unit, String formula, String source, Working.Input... inputs) {
        return new Quantity(key, value, unit, Working.of(formula, source, inputs));
    }

    public boolean is(QuantityKind kind) {
        return key.kind() == kind;
    }

    /** Sum of all of a kind, 0 where there is none. */
    public static double sum(List<Quantity> quantities, QuantityKind kind) {
        return quantities.stream().filter(quantity -> quantity.is(kind)).mapToDouble(Quantity::value).sum();
    }
}
