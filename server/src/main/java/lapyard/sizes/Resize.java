package lapyard.sizes;

import java.util.List;

/** One side longer by {@code byMm}, shorter where that is below 0. */
public record Resize(Side side, double byMm) {
    static double sumMm(List<Resize> changes) {
        return changes.stream().mapToDouble(change -> Math.abs(change.byMm())).sum();
    }
}
