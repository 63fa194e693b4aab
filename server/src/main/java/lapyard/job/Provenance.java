package lapyard.job;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Section;
import lapyard.construction.BedWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.RackBoard;
import lapyard.plan.WayKind;

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

    /** Boards of a section that stay out of the cutting of its beds, each with the reason. */
    static List<Finding> barred(Garden garden, Section section, List<BedWork> beds) {
        Optional<String> food = beds.stream().filter(work -> work.bed().planting().food()).map(work -> work.bed().id()).findFirst();
        List<Finding> findings = new ArrayList<>();
        for (RackBoard board : garden.goods().rack()) {
            if (!board.section().equals(section.id())) continue;
            if (board.barredEverywhere().isPresent()) {
                findings.add(Finding.of(FindingKind.BOARD_BARRED, Place.of(What.BOARD, board.id()))
                        .with("why", Fact.name(board.barredEverywhere().get())).way(WayKind.LICENSED_TIP));
            } else if (food.isPresent() && board.barredFromFood().isPresent()) {
                String why = board.barredFromFood().get();
                findings.add(Finding.of(FindingKind.BOARD_NOT_FOOD, Place.of(What.BOARD, board.id()))
                        .with("why", Fact.name(board.coated() ? "coated" : why)).with("food", Fact.name(food.get()))
                        .way(board.coated() ? WayKind.USE_WHERE_NOT_PLANTED : board.origin().isEmpty() ? WayKind.NAME_ORIGIN : WayKind.NAME_BOARD_TREATMENT)
                        .way(WayKind.OTHER_SECTION_FOR_REST));
            }
        }
        return findings;
    }
}
