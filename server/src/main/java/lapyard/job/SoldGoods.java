package lapyard.job;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.cutting.CuttingResult;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.order.Wanted;
import lapyard.plan.Finding;
import org.joda.money.CurrencyUnit;

/** Goods that several may sell, each kind worked out for each who sells it until the slip names one. */
abstract class SoldGoods<T extends SoldGoods.Sold> {
    /** One kind of goods from one seller. */
    interface Sold {
        String item();

        List<String> sellers();

        List<Finding> findings();

        /** Kinds of pieces that this seller cannot serve. */
        int unplaced();

        SlipLine line(CurrencyUnit currency, boolean imperial);
    }

    /** A section of timber. */
    interface SoldBoards extends Sold {
        Section section();

        CuttingResult pooled();

        SawWork saw();

        /** What the beds take where each is bought for by itself and no board has a price; empty where it was not asked. */
        Optional<Integer> boardsAlone();

        @Override
        default List<String> sellers() {
            return section().suppliers();
        }

        @Override
        default int unplaced() {
            return pooled().unplaced().size();
        }
    }

    /** Each kind from each seller, those who cannot serve every piece among them. */
    final List<List<T>> kinds = new ArrayList<>();
    /** What the catalogue does not have. */
    final List<SlipLine> unknown = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    /** Those who serve as many pieces as any, by the kinds of pieces that they leave out. */
    static <S> List<S> serving(List<S> sellers, ToIntFunction<S> unplaced) {
        int fewest = sellers.stream().mapToInt(unplaced).min().orElse(0);
        return sellers.stream().filter(one -> unplaced.applyAsInt(one) == fewest).toList();
    }

    final void note(List<Finding> some) {
        findings.addAll(some);
    }

    final void unknown(SlipLine line, Finding why) {
        unknown.add(line);
        findings.add(why);
    }

    /** Puts what the slip chose into {@code chosen}, each kind from the seller whom it names, and nothing else that was offered. */
    final <G extends SoldGoods<T>> G chosen(Slip slip, G chosen) {
        chosen.unknown.addAll(unknown);
        chosen.note(findings);
        for (List<T> ways : ways()) {
            chosen.kinds.add(List.of(ways.stream().filter(one -> slip.brings(one.item(), one.sellers())).findFirst().orElse(ways.get(0))));
        }
        return chosen;
    }

    /** How each section of timber is cut, with what the beds would take one by one. */
    static List<SectionCutting> cuttings(SoldGoods<? extends SoldBoards> goods, Slip slip) {
        List<SectionCutting> cuttings = new ArrayList<>();
        Set<String> told = new HashSet<>();
        for (SoldBoards cut : goods.taken()) {
            Optional<JobSheet.Way> bedByBed = BuyersApart.boards(slip, cut.item(), told.add(cut.item()), cut.boardsAlone());
            cuttings.add(new SectionCutting(cut.section().id(), cut.pooled(), cut.saw().beside(bedByBed)));
        }
        return cuttings;
    }

    private List<List<T>> ways() {
        return kinds.stream().map(sellers -> serving(sellers, Sold::unplaced)).toList();
    }

    /** Each kind from the seller whom the slip named; before that from the first. */
    final List<T> taken() {
        return ways().stream().map(ways -> ways.get(0)).toList();
    }

    final List<Wanted> lines(CurrencyUnit currency, boolean imperial) {
        Map<String, List<List<T>>> byItem = new LinkedHashMap<>();
        for (List<T> ways : ways()) byItem.computeIfAbsent(ways.get(0).item(), item -> new ArrayList<>()).add(ways);
        return Stream.concat(unknown.stream().map(Wanted::only), byItem.values().stream().flatMap(kinds -> together(kinds, currency, imperial).stream())).toList();
    }

    /** Kinds of one name are one line, all of it from one seller, where somebody can serve them all. */
    private List<Wanted> together(List<List<T>> kinds, CurrencyUnit currency, boolean imperial) {
        List<SlipLine> whole = kinds.size() == 1 ? List.of() : kinds.get(0).stream()
                .map(one -> kinds.stream().flatMap(ways -> ways.stream().filter(other -> other.sellers().equals(one.sellers())).limit(1)).toList())
                .filter(all -> all.size() == kinds.size())
                .map(all -> all.stream().map(each -> each.line(currency, imperial)).reduce(SlipLine::with).orElseThrow()).toList();
        return whole.isEmpty() ? kinds.stream().map(ways -> new Wanted(ways.stream().map(one -> one.line(currency, imperial)).toList())).toList() : List.of(new Wanted(whole));
    }

    final List<Finding> findings() {
        return Stream.concat(findings.stream(), taken().stream().flatMap(one -> one.findings().stream())).toList();
    }

    /** Whether some pieces cannot be had. */
    final boolean leftOut() {
        return taken().stream().anyMatch(one -> one.unplaced() > 0);
    }
}
