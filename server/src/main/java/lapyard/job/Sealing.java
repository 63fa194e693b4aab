package lapyard.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapyard.construction.BedWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.Treatment;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;

/** Whether the ends that the saw opens in treated timber are sealed again: rot starts there. */
final class Sealing {
    private Sealing() {}

    /** @param cutting of the walls' timber, which tells what treated boards on hand go into which bed */
    static List<Finding> findings(Garden garden, List<BedWork> works, List<SectionCutting> cutting) {
        Map<String, Set<String>> onHand = Stands.boardsOnHand(garden, works, cutting);
        List<String> open = new ArrayList<>();
        double areaM2 = 0;
        for (BedWork work : works) {
            String id = work.bed().id();
            if (!work.bed().making().seal().wanted() && treated(garden, work, onHand.getOrDefault(id, Set.of()))) {
                open.add(id);
                areaM2 += Quantity.sum(work.quantities(), QuantityKind.ENDS_AREA) + Quantity.sum(work.quantities(), QuantityKind.NOTCHES_AREA);
            }
        }
        if (open.isEmpty()) return List.of();
        double shown = Math.round(areaM2 * 100) / 100.0;
        return List.of(Finding.of(FindingKind.CUTS_UNSEALED, Place.beds(open).then(What.FIELD, "cut ends")).by(Fact.m2(shown))
                .way(WayKind.CHOOSE_SEAL).way(WayKind.ACCEPT_DURABLE));
    }

    private static boolean treated(Garden garden, BedWork work, Set<String> boards) {
        return work.bed().section().treated()
                || garden.goods().rack().stream().anyMatch(board -> board.treatment() == Treatment.GARDEN && boards.contains(board.id()));
    }
}
