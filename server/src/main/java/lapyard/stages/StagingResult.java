package lapyard.stages;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Collections;

/**
 * When each task begins and ends.
 *
 * @param starts     clock unit in which each task begins, tasks in the order in which they were given
 * @param ends       clock unit at which each has ended
 * @param makespan   clock unit at which the last has ended
 * @param lowerBound proved: no schedule ends earlier
 * @param late       clock units by which due tasks end late, together
 * @param seconds    of this problem alone
 */
public record StagingResult(
        String name,
        Map<String, Integer> starts,
        Map<String, Integer> ends,
        int makespan,
        int lowerBound,
        long late,
        double seconds) {
    public StagingResult {
        starts = Collections.unmodifiableMap(new LinkedHashMap<>(starts));
        ends = Collections.unmodifiableMap(new LinkedHashMap<>(ends));
    }

    /** Whether nothing can end earlier. */
    public boolean proven() {
        return makespan == lowerBound;
    }
}
