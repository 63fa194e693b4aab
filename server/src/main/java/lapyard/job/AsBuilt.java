package lapyard.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import lapyard.plan.Garden;
import lapyard.plan.Tally;
import lapyard.weekends.Weekends;

/**
 * What was really done against what was planned. The plan is that of the garden as it is drawn, before anything was cut,
 * bought or spoiled; how the drawing itself changed is told by a variation between revisions.
 *
 * @param beds   in the order of the document
 * @param timber by section
 * @param money  what was bought and paid against the plan
 */
public record AsBuilt(List<Bed> beds, List<Timber> timber, Payments money, int tasksDone, int tasks) {
    public AsBuilt {
        beds = List.copyOf(beds);
        timber = List.copyOf(timber);
    }

    /** @param last day of the plan on which the last of its tasks was done; empty where none is */
    public record Bed(String id, int tasksDone, int tasks, OptionalInt last) {}

    /**
     * @param pieces  to cut, as planned
     * @param boards  to take, as planned, those on hand among them
     * @param opened  boards at which the saw has been
     * @param lostMm  length of opened boards that could not be used, pieces that were spoiled left out
     */
    public record Timber(String section, int pieces, int cut, int spoiled, int boards, int opened, double lostMm) {}

    public static AsBuilt of(JobSheet sheet) {
        Garden garden = sheet.garden();
        Tally tally = garden.people().tally();
        JobSheet planned = tally.isEmpty() ? sheet : Job.prepare(garden.withTally(Tally.NONE));
        Map<String, Integer> doneOn = tally.doneOn();
        List<Bed> beds = new ArrayList<>();
        List<Weekends.Task> all = planned.weekends().tasks();
        for (lapyard.plan.Bed bed : garden.beds()) {
            List<String> tasks = all.stream().map(Weekends.Task::work).filter(work -> work.bed().equals(bed.id())).map(work -> work.id()).toList();
            beds.add(new Bed(bed.id(), (int) tasks.stream().filter(doneOn::containsKey).count(), tasks.size(), tasks.stream().filter(doneOn::containsKey).mapToInt(doneOn::get).max()));
        }
        List<Timber> timber = new ArrayList<>();
        for (JobSheet.SectionCutting cutting : planned.cutting()) {
            List<Tally.Board> boards = tally.boards(cutting.section());
            Map<String, Double> wantedMm = Resawn.wantedMm(cutting.saw());
            timber.add(new Timber(
                    cutting.section(), cutting.saw().boards().stream().mapToInt(board -> board.cuts().size()).sum(), boards.stream().mapToInt(board -> board.good(wantedMm).size()).sum(),
                    boards.stream().mapToInt(board -> board.spoiled().size()).sum(), cutting.saw().boards().size(), (int) boards.stream().filter(Tally.Board::opened).count(),
                    boards.stream().mapToDouble(Tally.Board::lostMm).sum()));
        }
        return new AsBuilt(beds, timber, Payments.of(planned, tally), (int) all.stream().filter(task -> doneOn.containsKey(task.work().id())).count(), all.size());
    }
}
