package lapyard.json;

import java.math.BigDecimal;
import java.util.List;
import lapyard.cutting.Batches;
import lapyard.job.JobSheet.SawWork;
import lapyard.json.Wire.Exact;
import lapyard.json.Wire.To;

/** What the forms of a section's sawing work out: batches board by board, and boards on hand. */
final class SawWorkJson {
    private SawWorkJson() {}

    private record Stage(int stage, int boards, int pieces, int trims, int cuts, int handlings, @To(1) double minutes,
            BoardByBoard boardByBoard, List<Batches.Setting> settings) {}

    private record BoardByBoard(int settings, int handlings, @To(1) double minutes) {}

    /** A board on hand, what it is worth kept and how many of it the plan opens. */
    private record OnHand(String stock, double lengthMm, int available, long opened, @Exact BigDecimal salvage) {}

    static List<?> onHand(SawWork work) {
        return work.problem().stock().stream()
                .filter(stock -> stock.available().isPresent())
                .map(stock -> new OnHand(stock.id(), stock.lengthMm(), stock.available().orElse(0),
                        work.boards().stream().filter(board -> board.stock().equals(stock.id())).count(), stock.salvage()))
                .toList();
    }

    static List<?> stages(Batches batches) {
        Batches.Rates rates = batches.rates();
        return batches.stages().stream()
                .map(stage -> new Stage(
                        stage.stage(), stage.boards(), stage.pieces(), stage.trims(), stage.cuts(), stage.handlings(),
                        stage.minutes(rates),
                        new BoardByBoard(stage.settingsBoardByBoard(), stage.boards(), stage.minutesBoardByBoard(rates)),
                        stage.settings()))
                .toList();
    }
}
