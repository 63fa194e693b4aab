package lapyard.rest;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which sheets for the bench are asked for, and how.
 *
 * @param sheets       {@link #SAW_DAY} or {@link #ROLLS}
 * @param format       {@code pdf} for all sheets or {@code svg} for one
 * @param page         the sheet where one is asked for, from 1
 * @param paper        a paper's name, not checked yet; empty for A4, or Letter for a garden in feet and inches
 * @param longestMm    the longest part that can be carried in; empty where the merchant is asked for no cuts
 * @param revisionText what the heading says of the revision
 * @param stale        why these sheets are not to be worked by; empty where they are
 */
public record BenchAsk(
        String sheets,
        String format,
        int page,
        Optional<String> paper,
        boolean mono,
        OptionalInt longestMm,
        OptionalInt minutesACut,
        OptionalInt minutesASetting,
        String revisionText,
        Optional<String> stale) {
    public static final String SAW_DAY = "saw-day";
    public static final String ROLLS = "rolls";
}
