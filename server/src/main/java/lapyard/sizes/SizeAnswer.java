package lapyard.sizes;

import java.math.BigDecimal;
import java.util.List;
import lapyard.job.JobSheet;

/**
 * A garden of other sizes, worked out whole.
 *
 * @param changes few before many; none for the garden as it stands
 * @param mm      sum of the changes
 * @param total   of the order
 * @param saved   against the garden as it stands
 * @param boards  of wall timber fewer; below 0 for more
 * @param sheet   of the garden with these sizes
 */
public record SizeAnswer(List<Resize> changes, double mm, BigDecimal total, BigDecimal saved, int boards, JobSheet sheet) {
    public SizeAnswer {
        changes = List.copyOf(changes);
    }
}
