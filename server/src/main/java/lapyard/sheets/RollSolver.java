package lapyard.sheets;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import lapyard.working.Effort;
import lapyard.working.Progress;

/** The least money in roll goods. */
public final class RollSolver {
    /** For a slip that follows each change of the garden. A second is worth 150 000 steps, so steps without end are bounded by what their time is worth. */
    public static final Effort QUICK = Effort.ofSteps(3_000);

    /** For a layout that is rolled out and cut. */
    public static final Effort FULL = new Effort(300_000, Duration.ofSeconds(10));

    private RollSolver() {}

    /**
     * @return every piece that some roll can hold is laid exactly as often as asked; the others are in
     *         {@code unplaced} with what they are short by
     * @throws IllegalArgumentException for sizes, counts or prices that can never make sense, naming roll or piece
     */
    public static RollResult solve(RollProblem problem, Effort effort) {
        return solve(problem, effort, Progress.UNHEARD);
    }

    /** As {@link #solve(RollProblem, Effort)}, telling how far it is. */
    public static RollResult solve(RollProblem problem, Effort effort, Progress progress) {
        RollBudget work = new RollBudget(effort, progress);
        RollJob job = RollJob.of(problem);
        RollSearch.Answer answer = RollSearch.answer(job, work);
        return result(job, answer, work);
    }

    /** What all pieces that some roll can hold cost at least, without a search for a layout. */
    public static BigDecimal atLeast(RollProblem problem) {
        RollJob job = RollJob.of(problem);
        return job.money(RollBound.coins(job));
    }

    private static RollResult result(RollJob job, RollSearch.Answer answer, RollBudget work) {
        List<Deque<Placing>> waiting = new ArrayList<>();
        for (List<RollProblem.Piece> members : job.members) {
            Deque<Placing> queue = new ArrayDeque<>();
            for (RollProblem.Piece piece : members) queue.add(new Placing(piece, piece.count()));
            waiting.add(queue);
        }
        List<RollResult.RollLayout> rolls = new ArrayList<>();
        List<Layout.Run> runs = new ArrayList<>(answer.layout().runs);
        runs.sort(Comparator.comparingInt((Layout.Run r) -> r.roll().index()).thenComparingLong(r -> -r.used()));
        for (Layout.Run run : runs) {
            List<Block.Laid> laid = new ArrayList<>(run.laid());
            laid.sort(Comparator.comparingLong(Block.Laid::y).thenComparingLong(Block.Laid::x));
            List<RollResult.Placed> placed = new ArrayList<>();
            for (Block.Laid one : laid) placed.add(place(job, one, waiting.get(one.type())));
            rolls.add(new RollResult.RollLayout(
                    run.roll().id(),
                    mm(job, run.used()),
                    job.steps(run.roll(), run.used()) * run.roll().stepMicro() / 1000.0,
                    placed));
        }
        List<RollResult.Unplaced> unplaced = new ArrayList<>(job.unplaced);
        for (Deque<Placing> queue : waiting)
            for (Placing rest : queue) {
                RollProblem.Piece piece = rest.piece;
                unplaced.add(new RollResult.Unplaced(
                        piece.id(), piece.widthMm(), piece.heightMm(), rest.left, RollCheck.exhausted(job, rest.left)));
            }
        BigDecimal cost = job.money(answer.layout().coins);
        BigDecimal bound = job.money(Math.min(answer.boundCoins(), answer.layout().coins));
        return new RollResult(
                job.problem.name(), cost, bound, bound.compareTo(cost) == 0, work.seconds(), rolls, unplaced);
    }

    private static RollResult.Placed place(RollJob job, Block.Laid laid, Deque<Placing> waiting) {
        RollProblem.Piece piece = waiting.peek().piece;
        if (--waiting.peek().left == 0) waiting.remove();
        boolean turned = laid.width() * job.unitMicro != RollCheck.micro(piece.widthMm());
        return new RollResult.Placed(
                piece.id(),
                mm(job, laid.x()),
                mm(job, laid.y()),
                mm(job, laid.width()),
                mm(job, laid.height()),
                turned);
    }

    private static double mm(RollJob job, long units) {
        return units * job.unitMicro / 1000.0;
    }

    private static final class Placing {
        final RollProblem.Piece piece;
        int left;

        Placing(RollProblem.Piece piece, int left) {
            this.piece = piece;
            this.left = left;
        }
    }
}
