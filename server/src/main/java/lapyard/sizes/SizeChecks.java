package lapyard.sizes;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import lapyard.geometry.OutlineCheck;
import lapyard.ground.AccessSheet;
import lapyard.job.JobSheet;
import lapyard.plan.Bed;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Finding;
import lapyard.plan.Garden;

/** Whether a garden of other sizes passes what the garden as it stands passes. */
final class SizeChecks {
    /** Reach is searched for to a part of a millimetre, and people measure to one. */
    private static final double REACH_MM = 1;

    private static final double HAIR = 1e-6;

    private final Map<String, Integer> snags;
    private final Map<String, Double> missing;

    SizeChecks(JobSheet now) {
        snags = snags(now);
        missing = missing(now);
    }

    /**
     * Places that can be named before anything is worked out: outlines that no bed can have. What else would keep a garden from being
     * stored (the yard, its levels, its paths) is as it was.
     */
    static Set<String> undrawable(Garden changed) {
        Set<String> places = new LinkedHashSet<>();
        for (Bed bed : changed.beds()) {
            if (!OutlineCheck.faults(bed.outline(), OutlineCheck.Rules.bed(bed.section().thicknessMm())).isEmpty()) places.add("bed " + bed.id());
        }
        return places;
    }

    /** Places that have more snags than they had, or whose room is shorter of its standard; none where it passes. */
    Set<String> failing(JobSheet changed) {
        Set<String> places = new LinkedHashSet<>();
        snags(changed).forEach((where, count) -> {
            if (count > snags.getOrDefault(where, 0)) places.add(where);
        });
        missing(changed).forEach((row, missing) -> {
            double stray = row.endsWith("\nreach") ? REACH_MM : HAIR;
            if (missing > this.missing.getOrDefault(row, 0.0) + stray) places.add(row.substring(0, row.indexOf('\n')));
        });
        if (changed.leftOut() && places.isEmpty()) places.add("order");
        return places;
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
        for (AccessSheet.Row row : sheet.ground().access().rows()) {
            missing.merge(row.where() + "\n" + row.what(), row.missing(), Double::sum);
        }
        return missing;
    }
}
