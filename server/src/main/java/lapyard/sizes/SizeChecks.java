package lapyard.sizes;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapyard.geometry.OutlineCheck;
import lapyard.ground.AccessSheet;
import lapyard.ground.Clashes;
import lapyard.job.JobSheet;
import lapyard.plan.Bed;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Finding;
import lapyard.plan.Garden;

/** Whether a garden of other sizes passes what the garden as it stands passes. */
final class SizeChecks {
    private static final double HAIR = 1e-6;

    private final Map<String, Integer> snags;
    private final Map<String, Double> missing;

    SizeChecks(JobSheet now) {
        snags = snags(now);
        missing = missing(now);
    }

    /** What can be said before anything is worked out: outlines that no bed can have, a drawing that would be refused. */
    static boolean drawable(Garden changed) {
        for (Bed bed : changed.beds()) {
            if (!OutlineCheck.faults(bed.outline(), OutlineCheck.Rules.bed(bed.section().thicknessMm())).isEmpty()) return false;
        }
        return Clashes.stops(changed).isEmpty();
    }

    /** No place has more snags than it had, no room is shorter of its standard, nothing is left out. */
    boolean passes(JobSheet changed) {
        Map<String, Integer> is = snags(changed);
        Map<String, Double> lacks = missing(changed);
        return !changed.leftOut()
                && is.entrySet().stream().allMatch(one -> one.getValue() <= snags.getOrDefault(one.getKey(), 0))
                && lacks.entrySet().stream().allMatch(one -> one.getValue() <= missing.getOrDefault(one.getKey(), 0.0) + HAIR);
    }

    private static Map<String, Integer> snags(JobSheet sheet) {
        Map<String, Integer> counts = new HashMap<>();
        for (Finding finding : sheet.snags()) {
            if (finding.weight() != Weight.NOTE) counts.merge(finding.where(), 1, Integer::sum);
        }
        return counts;
    }

    private static Map<String, Double> missing(JobSheet sheet) {
        Map<String, Double> missing = new HashMap<>();
        List<AccessSheet.Row> rows = sheet.ground().access().rows();
        for (AccessSheet.Row row : rows) missing.merge(row.where() + " " + row.what(), row.missing(), Double::sum);
        return missing;
    }
}
