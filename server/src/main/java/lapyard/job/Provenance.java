package lapyard.job;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.construction.BedWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Garden;
import lapyard.plan.RackBoard;

/**
 * Where a board on hand comes from, where it may go and where it went.
 *
 * @param allowed {@code anywhere}, {@code not food} or {@code nowhere planted}
 * @param why     it may not go everywhere; empty where it may
 * @param beds    ids of the beds whose pieces are cut from it
 */
public record Provenance(RackBoard board, String allowed, String why, List<String> beds) {
    public Provenance {
        beds = List.copyOf(beds);
    }

    static List<Provenance> of(Garden garden, List<BedWork> works, List<SectionCutting> cutting) {
        Map<String, Set<String>> boards = Stands.boardsOnHand(garden, works, cutting);
        List<Provenance> all = new ArrayList<>();
        for (RackBoard board : garden.goods().rack()) {
            Set<String> beds = new LinkedHashSet<>();
            boards.forEach((bed, own) -> {
                if (own.contains(board.id())) beds.add(bed);
            });
            Optional<String> food = board.barredFromFood();
            all.add(new Provenance(
                    board,
                    board.barredEverywhere().isPresent() ? "nowhere planted" : food.isPresent() ? "not food" : "anywhere",
                    food.orElse(""),
                    List.copyOf(beds)));
        }
        return all;
    }
}
