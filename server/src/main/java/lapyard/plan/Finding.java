package lapyard.plan;

import java.util.List;
import java.util.Optional;

/**
 * What the gardener can put right: where, what, by how much, and the ways out.
 *
 * @param where a bed, wall, path, board or line, as in {@code bed M, wall D}
 * @param text  short and spoken, the number first
 */
public record Finding(Weight weight, String where, String text, Optional<Amount> amount, List<String> ways) {
    public Finding {
        ways = List.copyOf(ways);
    }

    /** STOP cannot be stored or drawn; SNAG is stored and named; NOTE is information. */
    public enum Weight {
        STOP,
        SNAG,
        NOTE
    }

    public record Amount(double value, String unit) {}

    public static Finding stop(String where, String text, Amount amount, String... ways) {
        return new Finding(Weight.STOP, where, text, Optional.ofNullable(amount), List.of(ways));
    }

    public static Finding snag(String where, String text, Amount amount, String... ways) {
        return new Finding(Weight.SNAG, where, text, Optional.ofNullable(amount), List.of(ways));
    }

    public static Finding note(String where, String text, Amount amount, String... ways) {
        return new Finding(Weight.NOTE, where, text, Optional.ofNullable(amount), List.of(ways));
    }
}
