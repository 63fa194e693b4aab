package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingResult.BoardLine;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Replan;
import lapyard.cutting.SawBoard;
import lapyard.cutting.Sawn;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Tally;

/**
 * A section's boards once the saw or the buying went another way than planned: a piece was spoiled, a length was lost, a piece came out
 * of another board, more boards of a length are bought than the cheapest plan takes. What was cut stays where it is, the rest has a new plan; a board keeps its number.
 *
 * @param result all boards, those told of in the tally first, pieces under their marks; a board that is there and not
 *     wanted any more is a line without pieces
 * @param boards those from which something was or will be cut
 * @param goneMm length of the boards that are bought that is spoiled, lost or sawn for what is not wanted
 */
record Resawn(CuttingResult result, List<SawBoard> boards, double goneMm) {
    private static final Pattern NUMBERED = Pattern.compile("#(\\d{1,6})");

    Resawn {
        boards = List.copyOf(boards);
    }

    /** The tally's boards of a section as the replanning is told of them; of marks that are not wanted any more the length alone. */
    static List<Sawn> sawn(List<Tally.Board> boards, Map<String, String> demandOf, Map<String, Double> wantedMm) {
        return boards.stream()
                .map(board -> new Sawn(board.name(), board.stock(), board.opened(), board.good(wantedMm).stream().map(demandOf::get).toList(),
                        board.wrong(wantedMm).stream().map(demandOf::get).toList(), board.lostMm(), board.leftMm(), board.goneMm(wantedMm)))
                .toList();
    }

    /** How long each mark is wanted, mm. */
    static Map<String, Double> wantedMm(SawWork saw) {
        Map<String, Double> wanted = new HashMap<>();
        saw.problem().pieces().forEach(piece -> saw.marks().get(piece.id()).forEach(mark -> wanted.put(mark, piece.lengthMm())));
        return wanted;
    }

    /** The demand that each mark is one of. */
    static Map<String, String> demands(SawWork saw) {
        Map<String, String> demandOf = new HashMap<>();
        saw.marks().forEach((demand, marks) -> marks.forEach(mark -> demandOf.put(mark, demand)));
        return demandOf;
    }

    /**
     * What a day at the saw that is ticked has left to saw, by its stage: where a piece that it sawed is spoiled, or wanted otherwise now, that piece and what
     * has come to its stage since. Sections of which the tally names no board are taken as sawn.
     */
    static Map<Integer, Set<String>> anew(Tally tally, List<SectionCutting> timber) {
        Map<Integer, Set<String>> uncut = new HashMap<>();
        Set<Integer> again = new HashSet<>();
        for (SectionCutting cutting : timber) {
            Map<String, Double> wantedMm = wantedMm(cutting.saw());
            List<Tally.Board> told = tally.boards(cutting.section());
            if (told.isEmpty()) continue;
            Set<String> good = told.stream().flatMap(board -> board.good(wantedMm).stream()).collect(Collectors.toSet());
            Set<String> sawn = told.stream().flatMap(board -> Stream.concat(board.cut().stream(), board.spoiled().stream())).collect(Collectors.toSet());
            cutting.saw().boards().stream().flatMap(board -> board.cuts().stream()).filter(cut -> !good.contains(cut.mark())).forEach(cut -> {
                uncut.computeIfAbsent(cut.stage(), stage -> new HashSet<>()).add(cut.mark());
                if (sawn.contains(cut.mark()) && tally.doneOn().containsKey("saw." + cut.stage())) again.add(cut.stage());
            });
        }
        uncut.keySet().retainAll(again);
        return uncut;
    }

    /** The names of the boards at which the saw has been. */
    static Set<String> opened(Tally tally, SectionCutting cutting) {
        return tally.boards(cutting.section()).stream().filter(Tally.Board::opened).map(Tally.Board::name).collect(Collectors.toSet());
    }

    /**
     * @param planned the plan as it was made before anything was cut
     * @return empty where all that was cut was cut as planned, or where what was told cannot be true
     */
    static Optional<Resawn> of(SawWork planned, CuttingResult pooled, Tally tally, String section, ToIntFunction<String> weekendOf) {
        Map<String, Double> wantedMm = wantedMm(planned);
        List<Tally.Board> told = tally.boardsThere(section, wantedMm.size());
        Map<String, Integer> beyond = tally.countsThere(section);
        told.forEach(board -> beyond.merge(board.stock(), -1, Integer::sum));
        beyond.keySet().removeIf(id -> beyond.get(id) == 0 || planned.problem().stock().stream().noneMatch(stock -> stock.id().equals(id) && stock.available().isEmpty()));
        if (beyond.isEmpty() && asPlanned(planned, told, wantedMm)) return Optional.empty();
        Replan replan = Replan.of(planned.problem(), sawn(told, demands(planned), wantedMm), CuttingSolver.QUICK);
        if (!(replan instanceof Replan.Planned rest)) return Optional.empty();
        return Optional.of(new Laying(planned, told, wantedMm, rest, weekendOf).laid(pooled, beyond));
    }

    private static boolean asPlanned(SawWork planned, List<Tally.Board> told, Map<String, Double> wantedMm) {
        Map<String, SawBoard> byName = new HashMap<>();
        planned.boards().forEach(board -> byName.put(Sawn.name(board), board));
        for (CuttingProblem.Stock stock : planned.problem().stock()) {
            boolean more = told.stream().filter(board -> board.stock().equals(stock.id())).count() > planned.boards().stream().filter(board -> board.stock().equals(stock.id())).count();
            if (more && stock.available().isEmpty()) return false;
        }
        return told.stream().allMatch(board -> {
            SawBoard known = byName.get(board.name());
            if (!board.spoiled().isEmpty() || !board.goneMm(wantedMm).isEmpty() || board.lostMm() > 0 || board.leftMm().isPresent()) return false;
            if (board.cut().isEmpty()) return true;
            return known != null
                    && known.stock().equals(board.stock())
                    && known.cuts().stream().map(SawBoard.Cut::mark).toList().containsAll(board.cut());
        });
    }

    /** Puts the new plan on the boards. */
    private static final class Laying {
        private final CuttingProblem problem;
        private final Map<String, CuttingProblem.Stock> stock = new HashMap<>();
        private final Map<String, Double> plannedFrom = new HashMap<>();
        private final Map<String, String> plannedOn = new HashMap<>();
        private final Map<String, Deque<String>> left = new LinkedHashMap<>();
        private final List<Tally.Board> told;
        private final Map<String, Double> wantedMm;
        private final Replan.Planned rest;
        private final ToIntFunction<String> weekendOf;
        private final List<SawBoard> boards = new ArrayList<>();
        private final List<BoardLine> lines = new ArrayList<>();
        private BigDecimal cost = BigDecimal.ZERO;
        private BigDecimal salvage = BigDecimal.ZERO;
        private double goneMm;

        Laying(SawWork planned, List<Tally.Board> told, Map<String, Double> wantedMm, Replan.Planned rest, ToIntFunction<String> weekendOf) {
            this.problem = planned.problem();
            this.told = told;
            this.wantedMm = wantedMm;
            this.rest = rest;
            this.weekendOf = weekendOf;
            problem.stock().forEach(board -> stock.put(board.id(), board));
            planned.boards().forEach(board -> board.cuts().forEach(cut -> {
                plannedFrom.put(cut.mark(), cut.fromMm());
                plannedOn.put(cut.mark(), Sawn.name(board));
            }));
            Set<String> done = told.stream().flatMap(board -> board.good(wantedMm).stream()).collect(Collectors.toSet());
            planned.marks().forEach((demand, marks) ->
                    left.put(demand, new ArrayDeque<>(marks.stream().filter(mark -> !done.contains(mark)).toList())));
        }

        /** @param beyond boards of each stock that are bought and of no use */
        Resawn laid(CuttingResult pooled, Map<String, Integer> beyond) {
            Map<String, BoardLine> onOwn = new HashMap<>();
            List<BoardLine> others = new ArrayList<>();
            Set<String> names = told.stream().map(Tally.Board::name).collect(Collectors.toSet());
            for (BoardLine line : rest.result().plan()) {
                if (names.contains(line.stock())) onOwn.put(line.stock(), line);
                else for (int i = 0; i < line.count(); i++) others.add(line);
            }
            Map<String, List<String>> marks = new HashMap<>();
            onOwn.forEach((name, line) -> marks.put(name, line.pieces().stream().map(demand -> keeping(name, demand)).collect(Collectors.toCollection(ArrayList::new))));
            int next = 1 + told.stream().mapToInt(board -> number(board.name())).max().orElse(0);
            for (Tally.Board board : told) {
                BoardLine line = onOwn.get(board.name());
                List<String> own = marks.getOrDefault(board.name(), new ArrayList<>());
                own.replaceAll(mark -> mark.startsWith(OPEN) ? take(mark.substring(OPEN.length())) : mark);
                int number = number(board.name());
                onTold(board, number > 0 ? number : next++, line, own);
            }
            for (BoardLine line : others) bought(line, next++);
            beyond.forEach((id, count) -> {
                cost = cost.add(stock.get(id).price().multiply(BigDecimal.valueOf(count)));
                lines.add(new BoardLine(id, count, List.of(), List.of(), Math.max(0, stock.get(id).lengthMm() - problem.endTrimMm())));
            });
            boards.sort(Comparator.comparingInt(SawBoard::number));
            BigDecimal less = rest.result().cost().subtract(rest.result().lowerBound());
            List<CuttingResult.Unplaced> unplaced = rest.result().unplaced().stream()
                    .map(piece -> new CuttingResult.Unplaced(take(piece.id()), piece.lengthMm(), piece.count(), piece.why(), piece.scarce()))
                    .toList();
            return new Resawn(
                    new CuttingResult(pooled.name(), cost, salvage, lines.stream().mapToInt(BoardLine::count).sum(), cost.subtract(less), less.signum() == 0,
                            pooled.seconds(), lines, unplaced, rest.result().shortage()),
                    boards, goneMm);
        }

        private static final String OPEN = "\u0000";

        /** The mark that was planned on this very board, else a place for any. */
        private String keeping(String board, String demand) {
            Deque<String> free = left.get(demand);
            Optional<String> own = free.stream().filter(mark -> board.equals(plannedOn.get(mark))).findFirst();
            own.ifPresent(free::remove);
            return own.orElse(OPEN + demand);
        }

        private String take(String demand) {
            Deque<String> free = left.get(demand);
            return free.size() > 1 ? free.poll() : free.peek();
        }

        private static int number(String name) {
            Matcher numbered = NUMBERED.matcher(name);
            return numbered.matches() ? Integer.parseInt(numbered.group(1)) : 0;
        }

        /** What was cut, the lengths that are gone, then what is still to come. */
        private void onTold(Tally.Board board, int number, BoardLine line, List<String> marks) {
            CuttingProblem.Stock was = stock.get(board.stock());
            double trim = was.sawnEnd() ? 0 : problem.endTrimMm();
            double at = trim;
            List<SawBoard.Cut> cuts = new ArrayList<>();
            List<String> done = board.good(wantedMm).stream()
                    .sorted(Comparator.comparingDouble(mark -> plannedFrom.getOrDefault(mark, Double.MAX_VALUE)))
                    .toList();
            for (String mark : done) {
                double length = wantedMm.get(mark);
                cuts.add(new SawBoard.Cut(mark, length, weekendOf.applyAsInt(mark), at, at + length));
                at += length + problem.kerfMm();
            }
            double goodMm = at;
            for (String mark : board.wrong(wantedMm)) at += wantedMm.get(mark) + problem.kerfMm();
            for (double gone : board.goneMm(wantedMm)) at += gone + problem.kerfMm();
            at = board.leftMm().isPresent() ? was.lengthMm() - board.leftMm().getAsDouble() : at + board.lostMm();
            if (was.available().isEmpty()) goneMm += Math.max(0, Math.min(at, was.lengthMm()) - goodMm);
            double restMm = Math.max(0, was.lengthMm() - at);
            if (line != null) {
                SawBoard more = laid(line, marks);
                double shift = board.opened() ? at : 0;
                more.cuts().forEach(cut -> cuts.add(new SawBoard.Cut(cut.mark(), cut.lengthMm(), cut.stage(), cut.fromMm() + shift, cut.toMm() + shift)));
                restMm = more.restMm();
            } else if (!board.opened()) {
                restMm = was.lengthMm();
            }
            boolean used = board.opened() || line != null;
            add(number, was, cuts, trim, restMm, used);
        }

        private void bought(BoardLine line, int number) {
            List<String> marks = line.pieces().stream().map(this::take).toList();
            SawBoard board = laid(line, marks);
            add(number, stock.get(line.stock()), board.cuts(), board.trimMm(), board.restMm(), true);
        }

        private SawBoard laid(BoardLine line, List<String> marks) {
            BoardLine renamed = new BoardLine(line.stock(), 1, marks, line.lengthsMm(), line.leftMm());
            return SawBoard.of(rest.rest(), List.of(renamed), weekendOf).get(0);
        }

        private void add(int number, CuttingProblem.Stock was, List<SawBoard.Cut> cuts, double trimMm, double restMm, boolean used) {
            if (!cuts.isEmpty()) boards.add(new SawBoard(number, was.id(), was.lengthMm(), trimMm, cuts, restMm));
            boolean onHand = was.available().isPresent();
            if (onHand && !used) return;
            cost = cost.add(was.price()).add(onHand ? was.salvage() : BigDecimal.ZERO);
            if (onHand) salvage = salvage.add(was.salvage());
            lines.add(new BoardLine(was.id(), 1, cuts.stream().map(SawBoard.Cut::mark).toList(),
                    cuts.stream().map(SawBoard.Cut::lengthMm).toList(), Math.max(0, restMm - problem.endTrimMm())));
        }
    }
}
