package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Replan;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.order.SlipLine;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Tally;
import lapyard.weekends.Weekends;

/**
 * What is left of the timber of one section once the tally is believed: cut pieces stay cut, boards that are there are
 * used up, what they cannot give is bought.
 *
 * @param buy      boards to buy beside what is there, by stock length
 * @param lacking  pieces that what is there cannot give
 * @param extra    what {@code buy} costs; empty where it has no price
 */
public record Rest(
        String section,
        int cut,
        int wanted,
        double neededMm,
        double thereMm,
        int fit,
        Map<String, Integer> buy,
        List<CuttingResult.Unplaced> lacking,
        Optional<BigDecimal> extra,
        CuttingResult plan) {
    public Rest {
        buy = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(buy));
        lacking = List.copyOf(lacking);
    }

    /** The rest of every section of which the tally names boards, and what the tally says that cannot be true. */
    public record All(List<Rest> sections, List<Finding> findings) {
        public All {
            sections = List.copyOf(sections);
            findings = List.copyOf(findings);
        }
    }

    public static All of(JobSheet sheet) {
        Tally tally = sheet.garden().people().tally();
        List<Rest> sections = new ArrayList<>();
        List<Finding> findings = new ArrayList<>(unknown(sheet));
        for (SectionCutting cutting : sheet.cutting()) {
            List<Tally.Board> boards = tally.boards().stream().filter(board -> board.section().equals(cutting.section())).toList();
            if (!boards.isEmpty()) section(cutting, boards, sections, findings);
        }
        return new All(sections, findings);
    }

    private static void section(SectionCutting cutting, List<Tally.Board> boards, List<Rest> sections, List<Finding> findings) {
        Map<String, String> demandOf = Resawn.demands(cutting.saw());
        Map<String, String> cutFrom = new HashMap<>();
        boolean known = true;
        for (Tally.Board board : boards) {
            for (String mark : board.cut()) {
                String other = cutFrom.putIfAbsent(mark, board.name());
                if (other != null) {
                    findings.add(Finding.stop("tally, board " + board.name(), mark + " was cut twice, from " + other + " and from here",
                            new Amount(1, "pieces"), "call one of the two spoiled", "take it off one of the boards"));
                    known = false;
                }
            }
            List<String> all = new ArrayList<>(board.cut());
            all.addAll(board.spoiled());
            for (String mark : all) {
                if (!demandOf.containsKey(mark)) {
                    findings.add(Finding.snag("tally, board " + board.name(), mark + " is cut and no longer in the plan", new Amount(1, "pieces"),
                            "keep the bed as it was cut", "call the piece spoiled or rack it as an offcut"));
                }
            }
        }
        if (!known) return;
        Replan replan = Replan.of(cutting.saw().problem(), Resawn.sawn(boards, demandOf), CuttingSolver.QUICK);
        if (replan instanceof Replan.Refused refused) {
            for (Replan.Stop stop : refused.stops()) {
                findings.add(Finding.stop("tally, " + stop.where(), stop.text(), null, stop.ways().toArray(String[]::new)));
            }
            return;
        }
        Replan.Planned planned = (Replan.Planned) replan;
        boolean priced = cutting.saw().ways().get(0).cost().isPresent();
        sections.add(new Rest(cutting.section(), planned.cut(), planned.wanted(), planned.neededMm(), planned.thereMm(), planned.fit(),
                planned.buy(), planned.lacking(), priced ? Optional.of(planned.result().paid()) : Optional.empty(), planned.result()));
        if (!planned.buy().isEmpty()) {
            List<String> buy = new ArrayList<>();
            planned.buy().forEach((stock, count) -> buy.add(count + " of " + stock));
            int lacking = planned.wanted() - planned.fit();
            findings.add(Finding.note("tally, timber " + cutting.section(),
                    planned.fit() + " of " + planned.wanted() + " pieces fit what is there, " + lacking + " do not: buy " + String.join(", ", buy)
                            + (priced ? " (" + planned.result().paid().toPlainString() + ")" : ""),
                    new Amount(lacking, "pieces"), "buy " + String.join(", ", buy), "shorten what does not fit"));
        }
    }

    /** Tasks that the tally calls done and the plan does not know: a bed that was built and then changed or dropped. */
    private static List<Finding> unknown(JobSheet sheet) {
        Map<String, Weekends.Task> tasks = sheet.weekends().byId();
        List<Finding> findings = new ArrayList<>();
        for (Tally.Done done : sheet.garden().people().tally().done()) {
            if (!tasks.containsKey(done.task())) {
                findings.add(Finding.snag("tally, " + done.task(), "is done and no longer in the plan", null,
                        "keep what it belongs to", "take it out of the tally"));
                continue;
            }
            tasks.get(done.task()).work().after().stream()
                    .filter(earlier -> tasks.containsKey(earlier.task()) && !tasks.get(earlier.task()).done())
                    .forEach(earlier -> findings.add(Finding.snag("tally, " + done.task(),
                            "is done before " + earlier.task() + ", which it waits for: " + earlier.why(), null,
                            "tick " + earlier.task() + " too if it is done", "look whether it is hidden now")));
        }
        bought(sheet, findings);
        return findings;
    }

    /** What is paid for and not in the order any more never goes without a word. */
    private static void bought(JobSheet sheet, List<Finding> findings) {
        for (Tally.Bought bought : sheet.garden().people().tally().bought()) {
            long planned = sheet.slip().lines().stream()
                    .filter(line -> line.item().equals(bought.item()))
                    .flatMap(line -> line.packs().stream())
                    .filter(pack -> pack.pack().equals(bought.pack()))
                    .mapToLong(SlipLine.PackCount::count)
                    .sum();
            if (planned < bought.count()) {
                long over = bought.count() - planned;
                findings.add(Finding.of(FindingKind.TALLY_BOUGHT_MORE, Place.of(What.TALLY).then(What.FIELD, bought.item()))
                        .with("pack", Fact.name(bought.pack())).with("item", Fact.name(bought.item()))
                        .with("bought", Fact.count(bought.count(), "packs")).with("planned", Fact.count(planned, "packs"))
                        .by(Fact.count(over, "packs"))
                        .way(WayKind.KEEP_ITS_BED).way(WayKind.TAKE_BACK));
            }
        }
    }
}
