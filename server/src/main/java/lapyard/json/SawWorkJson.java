package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import lapyard.construction.Nest;
import lapyard.cutting.Batches;
import lapyard.cutting.Ledger;
import lapyard.cutting.SawBoard;
import lapyard.job.JobSheet.Ripping;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet.Way;
import lapyard.job.SawAdvice;
import lapyard.json.Wire.Exact;
import lapyard.json.Wire.IfGiven;
import lapyard.json.Wire.To;

/** What stands beside a section's cutting result: boards, batches, ledger and ways to buy. */
record SawWorkJson(List<SawBoard> boards, BatchesShape batches, Ledger ledger, List<Way> ways, List<Nest> nests,
        @IfGiven Optional<Ripping> ripping, List<OnHand> onHand) {
    record BatchesShape(@To(1) double minutesACut, @To(1) double minutesASetting, @To(1) double minutes, List<Stage> stages) {}

    record Stage(int stage, int boards, int pieces, int trims, int cuts, int handlings, @To(1) double minutes,
            BoardByBoard boardByBoard, List<Batches.Setting> settings) {}

    record BoardByBoard(int settings, int handlings, @To(1) double minutes) {}

    /** A board on hand, what it is worth kept and how many of it the plan opens. */
    record OnHand(String stock, double lengthMm, int available, long opened, @Exact BigDecimal salvage) {}

    private record Advice(String section, Way pooledOnce, Way weekendByWeekend, int changesTried, int changesThere,
            List<NearMiss> nearMisses) {}

    private record NearMiss(List<String> beds, List<String> walls, boolean narrower, boolean shallower, int shorter, String text, boolean sure, Optional<BigDecimal> saved, int boardsSaved,
            List<String> pieces) {}

    static SawWorkJson of(SawWork work) {
        return new SawWorkJson(
                work.boards(), batches(work.batches()), work.ledger(), work.ways(),
                work.nests(),
                work.ripping(),
                work.problem().stock().stream()
                        .filter(stock -> stock.available().isPresent())
                        .map(stock -> new OnHand(stock.id(), stock.lengthMm(), stock.available().orElse(0),
                                work.boards().stream().filter(board -> board.stock().equals(stock.id())).count(), stock.salvage()))
                        .toList());
    }

    static ArrayNode advice(List<SawAdvice> all, boolean imperial) {
        return Wire.list(all.stream()
                .map(advice -> new Advice(advice.section(), advice.pooledOnce(), advice.weekendByWeekend(), advice.changesTried(),
                        advice.changesThere(), advice.nearMisses().stream()
                                .map(miss -> new NearMiss(miss.sizes().beds(), miss.sizes().walls(), miss.sizes().narrower(),
                                        miss.sizes().shallower(), miss.shorterMm(), miss.sizes().words(miss.shorterMm(), imperial), miss.sure(), miss.saved(),
                                        miss.boardsSaved(), miss.marks()))
                                .toList()))
                .toList());
    }

    static BatchesShape batches(Batches batches) {
        Batches.Rates rates = batches.rates();
        return new BatchesShape(
                rates.minutesACut(), rates.minutesASetting(), batches.minutes(),
                batches.stages().stream()
                        .map(stage -> new Stage(
                                stage.stage(), stage.boards(), stage.pieces(), stage.trims(), stage.cuts(), stage.handlings(),
                                stage.minutes(rates),
                                new BoardByBoard(stage.settingsBoardByBoard(), stage.boards(), stage.minutesBoardByBoard(rates)),
                                stage.settings()))
                        .toList());
    }
}
