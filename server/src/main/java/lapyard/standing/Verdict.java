package lapyard.standing;

import java.util.List;

/**
 * One plain answer about a bed.
 *
 * @param about   what was looked at: {@code walls}, {@code walls blocked}, {@code seams}, {@code corners},
 *     {@code slats}, {@code bearers}, {@code ground}
 * @param size    how bad, to compare beds: the larger the worse
 * @param text    the number first
 * @param ways    out of it; none where it holds
 */
public record Verdict(String about, Outcome outcome, double size, String text, List<String> ways) {
    public Verdict {
        ways = List.copyOf(ways);
    }

    /** {@code WEAK} may break; {@code BOWS} holds but gives more than it may, or only while it drains. */
    public enum Outcome {
        HOLDS,
        BOWS,
        WEAK
    }
}
