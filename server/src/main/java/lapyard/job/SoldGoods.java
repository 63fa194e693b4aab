package lapyard.job;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.cutting.CuttingResult;
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

    final void note(Finding finding) {
        findings.add(finding);
    }

    final void unknown(SlipLine line, Finding why) {
        unknown.add(line);
        findings.add(why);
    }

    /** Takes over what the slip chose of these, each kind from the seller whom it names, as {@code beside} makes it. */
    final void choose(SoldGoods<T> offered, Slip slip, UnaryOperator<T> beside) {
        unknown.addAll(offered.unknown);
        findings.addAll(offered.findings);
        for (List<T> ways : offered.ways()) {
            T named = ways.stream().filter(one -> slip.brings(one.item(), one.sellers())).findFirst().orElse(ways.get(0));
            kinds.add(List.of(beside.apply(named)));
        }
    }

    private List<List<T>> ways() {
        return kinds.stream().map(sellers -> serving(sellers, Sold::unplaced)).toList();
    }

    /** Each kind from the seller whom the slip named; before that from the first. */
    final List<T> taken() {
        return ways().stream().map(ways -> ways.get(0)).toList();
    }

    final List<Wanted> lines(CurrencyUnit currency, boolean imperial) {
        return Stream.concat(
                        unknown.stream().map(Wanted::only),
                        ways().stream().map(ways -> new Wanted(ways.stream().map(one -> one.line(currency, imperial)).toList())))
                .toList();
    }

    final List<Finding> findings() {
        return Stream.concat(findings.stream(), taken().stream().flatMap(one -> one.findings().stream())).toList();
    }

    /** Whether some pieces cannot be had. */
    final boolean leftOut() {
        return taken().stream().anyMatch(one -> one.unplaced() > 0);
    }
}
