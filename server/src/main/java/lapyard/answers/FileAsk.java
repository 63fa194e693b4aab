package lapyard.answers;

import java.time.Instant;
import java.util.Optional;

/**
 * Asks for a file of a garden that is no sheet.
 *
 * @param name     {@code slip.csv}, {@code weekends.csv}, {@code weekends.ics}, {@code care.ics}, {@code garden.xlsx}, {@code plan.dxf}, or
 *     one of {@link lapyard.prints.BuyingTables} as CSV or workbook, such as {@code offers.csv}
 * @param supplier whose part of the slip alone is wanted; empty for the whole
 * @param garden   its id, kept in the own names of a calendar's events
 * @param made     when the document was kept; where it names no first day of work, work begins on the next after that
 * @param revision grows with each change
 */
public record FileAsk(String name, Optional<String> supplier, String garden, Instant made, int revision) {
    /** What is no calendar is the same for whichever garden and revision. */
    public static FileAsk of(String name, Optional<String> supplier) {
        return new FileAsk(name, supplier, "", Instant.EPOCH, 1);
    }
}
