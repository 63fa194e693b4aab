package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.SectionGoods;
import lapyard.catalogue.Supplier;
import lapyard.construction.Nest;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Replan;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.Tally;
import lapyard.plan.WayKind;
import lapyard.weekends.GardenTask;
import lapyard.weekends.Step;
import lapyard.weekends.Weekends;

/**
 * The new cutting plan of one section after work has begun, as the tally reports it: cut pieces stay cut, boards on hand
 * are used first, and what they cannot give is bought.
 *
 * @param planned with the boards to buy in addition, and the pieces that the boards on hand cannot give
 * @param extra    cost of what is bought in addition; empty if it has no price
 */
public record SectionReplan(String section, Replan.Planned planned, Optional<BigDecimal> extra) {
    /** The rest of every section of which the tally names boards, and what the tally says that cannot be true. */
    public record All(List<SectionReplan> sections, List<Finding> findings) {
        public All {
            sections = List.copyOf(sections);
            findings = List.copyOf(findings);
        }
    }

    public static All of(JobSheet sheet) {
        Tally tally = sheet.garden().people().tally();
        List<SectionReplan> sections = new ArrayList<>();
        Map<String, List<CuttingProblem.Stock>> notSold = notSold(sheet);
        List<Finding> findings = new ArrayList<>(unknown(sheet));
        findings.addAll(uncut(sheet));
        bought(sheet, notSold, findings);
        for (SectionCutting cutting : sheet.cutting()) {
            if (!tally.boards(cutting.section()).isEmpty()) section(cutting, tally.boardsThere(cutting.section(), cutting.saw().marks().values().stream().mapToInt(List::size).sum()), sheet.garden().imperial(), sections, findings);
            notSold.getOrDefault(cutting.section(), List.of()).forEach(stock -> findings.add(notSold(cutting.section(), stock)));
        }
        return new All(sections, findings);
    }

    /** Boards of the tally of lengths that are not sold, by their section. */
    private static Map<String, List<CuttingProblem.Stock>> notSold(JobSheet sheet) {
        Map<String, List<CuttingProblem.Stock>> notSold = new HashMap<>();
        for (SectionCutting cutting : sheet.cutting()) {
            List<String> sold = cutting.saw().problem().stock().stream().filter(stock -> stock.available().isEmpty()).map(CuttingProblem.Stock::id).toList();
            sheet.garden().goods().catalogue().section(cutting.section())
                    .ifPresent(section -> notSold.put(section.id(), RackRuns.notSold(sheet.garden(), section, sold)));
        }
        return notSold;
    }

    private static void section(SectionCutting cutting, List<Tally.Board> boards, boolean imperial, List<SectionReplan> sections, List<Finding> findings) {
        Map<String, String> demandOf = Resawn.demands(cutting.saw());
        Map<String, Double> wantedMm = Resawn.wantedMm(cutting.saw());
        if (!cutOnce(boards, wantedMm, findings)) return;
        Replan replan = Replan.of(cutting.saw().problem(), Resawn.sawn(boards, demandOf, wantedMm), CuttingSolver.QUICK);
        if (replan instanceof Replan.Refused refused) {
            for (Replan.Stop stop : refused.stops()) findings.add(TallyFault.of(marked(stop, boards)));
            return;
        }
        Replan.Planned planned = (Replan.Planned) replan;
        boolean priced = cutting.saw().ways().get(0).cost().isPresent();
        sections.add(new SectionReplan(cutting.section(), planned, priced ? Optional.of(planned.result().paid()) : Optional.empty()));
        if (!planned.buy().isEmpty()) findings.add(lacking(cutting.section(), planned, imperial));
    }

    /** With the marks of the pieces that were cut from a board that is not opened, which the saw's plan calls otherwise. */
    private static Replan.Stop marked(Replan.Stop stop, List<Tally.Board> boards) {
        if (stop.wrong() != Replan.Wrong.NOT_OPENED) return stop;
        List<String> marks = boards.stream().filter(board -> board.name().equals(stop.of()))
                .flatMap(board -> Stream.concat(board.cut().stream(), board.spoiled().stream())).toList();
        return new Replan.Stop(stop.wrong(), stop.of(), String.join(", ", marks), marks.size(), stop.most());
    }

    /** Whether no piece was cut from two boards; what the plan does not know, or wants otherwise, is told, too. */
    private static boolean cutOnce(List<Tally.Board> boards, Map<String, Double> wantedMm, List<Finding> findings) {
        Map<String, String> cutFrom = new HashMap<>();
        boolean once = true;
        for (Tally.Board board : boards) {
            Place place = Place.of(What.TALLY).then(What.BOARD, board.name());
            List<String> good = board.good(wantedMm);
            board.cut().stream().filter(mark -> wantedMm.containsKey(mark) && !good.contains(mark))
                    .forEach(mark -> findings.add(cutOtherwise(place, mark, board.sawnMm().get(mark), wantedMm.get(mark))));
            for (String mark : good) {
                String other = cutFrom.putIfAbsent(mark, board.name());
                if (other != null) {
                    findings.add(Finding.of(FindingKind.TALLY_CUT_TWICE, place)
                            .with("piece", Fact.name(mark)).with("other", Fact.name(other)).by(Fact.count(1, "pieces"))
                            .way(WayKind.CALL_SPOILED).way(WayKind.TAKE_OFF_BOARD));
                    once = false;
                }
            }
            Stream.concat(board.cut().stream(), board.spoiled().stream()).filter(mark -> !wantedMm.containsKey(mark))
                    .forEach(mark -> findings.add(Finding.of(FindingKind.TALLY_CUT_UNKNOWN, place)
                            .with("piece", Fact.name(mark)).by(Fact.count(1, "pieces")).way(WayKind.KEEP_AS_CUT).way(WayKind.RACK_AS_OFFCUT)));
        }
        return once;
    }

    private static Finding notSold(String section, CuttingProblem.Stock stock) {
        Fact count = Fact.count(stock.available().orElse(0), "boards");
        return Finding.of(FindingKind.TALLY_STOCK_GONE, Place.of(What.TALLY).then(What.TIMBER, section)).with("length", Fact.mm(stock.lengthMm()))
                .with("there", count).by(count).way(WayKind.LIST_AGAIN);
    }

    private static Finding cutOtherwise(Place board, String mark, double sawnMm, double wantedMm) {
        return Finding.of(FindingKind.TALLY_CUT_OTHER, board).with("piece", Fact.name(mark)).with("sawn", Fact.mm(sawnMm)).with("wanted", Fact.mm(wantedMm))
                .by(Fact.mm(Math.abs(sawnMm - wantedMm))).way(WayKind.KEEP_AS_CUT).way(WayKind.RACK_AS_OFFCUT);
    }

    private static Finding lacking(String section, Replan.Planned planned, boolean imperial) {
        List<String> buy = new ArrayList<>();
        planned.buy().forEach((stock, count) -> buy.add(count + " x " + PackCode.words(PackCode.board(stock), imperial)));
        return Finding.of(FindingKind.TALLY_SHORT, Place.of(What.TALLY).then(What.TIMBER, section))
                .with("fit", Fact.count(planned.fit(), "pieces")).with("wanted", Fact.count(planned.wanted(), "pieces"))
                .by(Fact.count(planned.wanted() - planned.fit(), "pieces"))
                .way(WayKind.BUY_BOARDS, Fact.names(buy)).way(WayKind.SHORTEN_THOSE);
    }

    /**
     * Timber that is handled is sawn: pieces of tasks that the tally calls done, and does not call cut itself. Each piece is told of once.
     */
    private static List<Finding> uncut(JobSheet sheet) {
        Tally tally = sheet.garden().people().tally();
        Set<String> sawn = tally.boards().stream().flatMap(board -> board.cut().stream()).flatMap(cut -> Nest.marks(cut).stream()).collect(Collectors.toCollection(HashSet::new));
        Map<String, Weekends.Task> tasks = sheet.weekends().byId();
        List<Finding> findings = new ArrayList<>();
        for (Tally.Done done : tally.done()) {
            if (!tasks.containsKey(done.task()) || !tasks.get(done.task()).done()) continue;
            List<String> uncut = handled(sheet, tasks.get(done.task()).work()).filter(sawn::add).toList();
            if (uncut.isEmpty()) continue;
            Fact count = Fact.count(uncut.size(), "pieces");
            findings.add(Finding.of(FindingKind.TALLY_DONE_UNCUT, Place.of(What.TALLY).then(What.TASK, done.task())).with("task", Fact.name(sheet.weekends().words(done.task())))
                    .with("pieces", count).with("piece", Fact.name(uncut.get(0))).by(count).way(WayKind.CALL_CUT, count).way(WayKind.TAKE_OFF_TALLY));
        }
        return findings;
    }

    /** Marks of the pieces that a task handles; of a day at the saw those of its stage. */
    private static Stream<String> handled(JobSheet sheet, GardenTask task) {
        if (task.step() != Step.SAW) return task.marks().stream();
        return sheet.cutting().stream().flatMap(cutting -> cutting.saw().boards().stream()).flatMap(board -> board.cuts().stream())
                .filter(cut -> cut.stage() == task.number()).flatMap(cut -> Nest.marks(cut.mark()).stream());
    }

    /** Tasks that the tally calls done and the plan does not know: a bed that was built and then changed or dropped. */
    private static List<Finding> unknown(JobSheet sheet) {
        Map<String, Weekends.Task> tasks = sheet.weekends().byId();
        List<Finding> findings = new ArrayList<>();
        Set<String> ticked = sheet.garden().people().tally().doneOn().keySet();
        for (Tally.Done done : sheet.garden().people().tally().done()) {
            if (!tasks.containsKey(done.task())) {
                findings.add(Finding.of(FindingKind.TALLY_DONE_UNKNOWN, Place.of(What.TALLY).then(What.TASK, done.task()))
                        .with("task", Fact.name(sheet.weekends().words(done.task()))).way(WayKind.BED_BACK).way(WayKind.TAKE_OFF_TALLY));
                continue;
            }
            tasks.get(done.task()).work().after().stream()
                    .filter(earlier -> tasks.containsKey(earlier.task()) && !ticked.contains(earlier.task()))
                    .forEach(earlier -> findings.add(Finding.of(FindingKind.TALLY_DONE_EARLY, Place.of(What.TALLY).then(What.TASK, done.task()))
                            .with("task", Fact.name(sheet.weekends().words(done.task()))).with("earlier", Fact.name(sheet.weekends().words(earlier.task()))).with("why", Fact.name(earlier.why()))
                            .way(WayKind.TICK_TOO, Fact.name(earlier.task()), Fact.name(sheet.weekends().words(earlier.task()))).way(WayKind.LOOK_HIDDEN)));
        }
        return findings;
    }

    private record Ordered(String item, String pack, String supplier) {
        boolean is(Tally.Bought bought, boolean theirs) {
            return item.equals(bought.item()) && pack.equals(bought.pack()) && (!theirs || bought.supplier().isEmpty() || bought.supplier().equals(supplier));
        }
    }

    /** Finds goods that are paid for but no longer in the order, or there to be bought from somebody else. */
    private static void bought(JobSheet sheet, Map<String, List<CuttingProblem.Stock>> notSold, List<Finding> findings) {
        List<Tally.Bought> bought = sheet.garden().people().tally().bought().stream().filter(one -> !isOnHand(one, notSold)).toList();
        Map<Ordered, Long> open = new LinkedHashMap<>();
        sheet.slip().lines().forEach(line -> line.packs().forEach(pack -> open.merge(new Ordered(line.item(), pack.pack(), pack.supplier()), pack.count(), Long::sum)));
        List<Long> theirs = bought.stream().map(one -> taken(one, one.count(), true, open)).toList();
        for (int i = 0; i < theirs.size(); i++) {
            Tally.Bought one = bought.get(i);
            long others = taken(one, one.count() - theirs.get(i), false, open);
            long over = one.count() - theirs.get(i) - others;
            Place place = Place.of(What.TALLY).then(What.FIELD, one.item());
            Fact pack = Fact.name(PackCode.words(one.pack(), sheet.garden().imperial()));
            if (others > 0) {
                String seller = sheet.garden().goods().catalogue().suppliers().stream().filter(known -> known.id().equals(one.supplier())).findFirst().map(Supplier::name).orElse(one.supplier());
                findings.add(Finding.of(FindingKind.TALLY_BOUGHT_ELSEWHERE, place).with("pack", pack).with("item", Fact.name(one.item()))
                        .with("bought", Fact.count(others, "packs")).with("seller", Fact.name(seller))
                        .by(Fact.count(others, "packs")).way(WayKind.OFF_THE_ORDER, Fact.count(others, "packs")));
            }
            if (over > 0) {
                findings.add(Finding.of(FindingKind.TALLY_BOUGHT_MORE, place).with("pack", pack).with("item", Fact.name(one.item()))
                        .with("bought", Fact.count(one.count(), "packs")).with("planned", Fact.count(one.count() - over, "packs"))
                        .by(Fact.count(over, "packs"))
                        .way(WayKind.KEEP_ITS_BED).way(WayKind.TAKE_BACK));
            }
        }
    }

    private static boolean isOnHand(Tally.Bought bought, Map<String, List<CuttingProblem.Stock>> notSold) {
        return notSold.entrySet().stream().anyMatch(section -> bought.item().equals(SectionGoods.TIMBER.item(section.getKey()))
                && section.getValue().stream().anyMatch(stock -> bought.pack().equals(PackCode.board(stock.id()))));
    }

    /** How many of these packs the order asks for, of who sold them or of anybody; they are no longer open then. */
    private static long taken(Tally.Bought bought, long most, boolean theirs, Map<Ordered, Long> open) {
        long left = most;
        for (Map.Entry<Ordered, Long> one : open.entrySet()) {
            long here = one.getKey().is(bought, theirs) ? Math.min(left, one.getValue()) : 0;
            one.setValue(one.getValue() - here);
            left -= here;
        }
        return most - left;
    }
}
