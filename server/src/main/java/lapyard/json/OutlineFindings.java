package lapyard.json;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import lapyard.geometry.Outline;
import lapyard.geometry.OutlineCheck;
import lapyard.geometry.OutlineCheck.Rules;
import lapyard.geometry.OutlineFault;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Garden;
import lapyard.plan.Ground;

/** Outlines that cannot be built or drawn, as STOPs. */
final class OutlineFindings {
    private record Drawn(Outline outline, double thicknessMm) {}

    private OutlineFindings() {}

    static List<Finding> of(Garden garden) {
        List<Finding> found = new ArrayList<>();
        Map<Drawn, List<OutlineFault>> known = new HashMap<>();
        for (Bed bed : garden.beds()) {
            double thickness = bed.section().thicknessMm();
            List<OutlineFault> faults = known.computeIfAbsent(
                    new Drawn(bed.outline(), thickness), drawn -> OutlineCheck.faults(drawn.outline(), Rules.bed(thickness)));
            add(found, faults, "bed " + bed.id(), side -> "wall " + Bed.wallLetter(side));
        }
        garden.ground().outline().forEach(yard -> any(found, yard, "ground, outline"));
        int number = 1;
        for (Ground.Surface surface : garden.ground().surfaces()) {
            any(found, surface.outline(), "ground, surface " + number++);
        }
        for (Ground.KeepClear one : garden.ground().keepClear()) {
            if (one.shape().size() > 2) {
                any(found, new Outline(one.shape()), "ground, keep-clear " + one.kind());
            }
        }
        return found;
    }

    private static void any(List<Finding> found, Outline outline, String where) {
        add(found, OutlineCheck.faults(outline, Rules.ANY), where, side -> "side " + (side + 1));
    }

    private static void add(List<Finding> found, List<OutlineFault> faults, String where, IntFunction<String> sideName) {
        for (OutlineFault fault : faults) {
            String place = fault.sides().size() == 1 ? where + ", " + sideName.apply(fault.sides().get(0)) : where;
            found.add(Finding.stop(place, fault.text(sideName), new Amount(fault.amount(), fault.unit()), fault.way(sideName)));
        }
    }
}
