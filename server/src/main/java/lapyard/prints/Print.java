package lapyard.prints;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.BiPredicate;
import lapyard.drawing.Page;
import lapyard.job.JobSheet;

/**
 * A kind of sheet.
 *
 * @param name  as in file names and addresses: small letters and hyphens
 * @param title as in the contents of the set
 * @param inSet whether it is carried outside with the others in a garden; else it is printed where it is asked for
 * @param pages one or more; throws {@link CannotPrint} where the garden has not what they show
 */
public record Print(String name, String title, BiPredicate<JobSheet, PrintAsk> inSet, BiFunction<JobSheet, PrintAsk, List<Page>> pages) {
    Print(String name, String title, BiFunction<JobSheet, PrintAsk, List<Page>> pages) {
        this(name, title, (sheet, ask) -> true, pages);
    }
}
