package lapyard.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.catalogue.Section;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingResult.Unplaced;
import lapyard.cutting.Shortage;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;

/** Whether the boards on hand of a section are enough. */
final class BoardsOnHand {
    /** A way out names at most two kinds of boards: each a count and a length. */
    private static final int MOST_FACTS = 4;

    private BoardsOnHand() {}

    /** Pieces that are left over when they are used up, and boards that would hold those, the cheapest first. */
    static Optional<Finding> runOut(Section section, CuttingResult pooled) {
        List<Unplaced> left = pooled.unplaced().stream().filter(Unplaced::scarce).toList();
        if (left.isEmpty()) return Optional.empty();
        Finding finding = Finding.of(pooled.unplacedProven() ? FindingKind.BOARDS_RUN_OUT : FindingKind.BOARDS_RUN_OUT_PERHAPS,
                        Place.of(What.TIMBER, section.id()))
                .with("section", Fact.name(section.id()))
                .with("longest", Fact.mm(left.stream().mapToDouble(Unplaced::lengthMm).max().orElseThrow()))
                .by(Fact.count(left.stream().mapToInt(Unplaced::count).sum(), "pieces"));
        for (Shortage.Way way : pooled.shortage().ways()) {
            List<Fact> boards = new ArrayList<>();
            way.boards().stream().filter(more -> !more.stock().isEmpty()).forEach(more -> {
                boards.add(Fact.count(more.count(), "boards"));
                boards.add(Fact.mm(more.leastMm()));
            });
            if (!boards.isEmpty() && boards.size() <= MOST_FACTS) {
                finding = finding.way(boards.size() == 2 ? WayKind.GET_BOARDS : WayKind.GET_BOARDS_AND, boards.toArray(Fact[]::new));
            }
        }
        return Optional.of(finding.way(WayKind.LONGER_STOCK).way(WayKind.JOIN_OR_SHORTEN));
    }
}
