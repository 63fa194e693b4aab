package lapyard.prints;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.catalogue.TradeName;
import lapyard.diagrams.OfficeSheets;
import lapyard.drawing.Page;
import lapyard.geometry.Measure;
import lapyard.job.JobSheet;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.job.JobSheet.Way;
import lapyard.job.SawAdvice;
import org.joda.money.CurrencyUnit;

/** What a person may weigh before boards are bought. It is searched for, so it stands beside the set and not in it. */
final class OfficePrint {
    private OfficePrint() {}

    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        List<SawAdvice> advice = SawAdvice.of(sheet);
        CurrencyUnit currency = CurrencyUnit.of(sheet.garden().terms().currency());
        List<OfficeSheets.Boards> boards = new ArrayList<>();
        for (SectionCutting cutting : sheet.cutting()) {
            Optional<SawAdvice> own = advice.stream().filter(one -> one.section().equals(cutting.section())).findFirst();
            if (!cutting.saw().boards().isEmpty()) boards.add(boards("Timber " + TradeName.section(cutting.section(), sheet.garden().imperial()), cutting, own, currency));
        }
        for (SectionCutting strips : sheet.strips()) {
            if (!strips.saw().boards().isEmpty()) {
                boards.add(boards("Strips ripped from " + TradeName.section(strips.section(), sheet.garden().imperial()), strips, Optional.empty(), currency));
            }
        }
        return OfficeSheets.pages(
                sheet.garden().name(), sheet.garden().imperial(), sheet.slip(), sheet.areasM2(), boards, ask.bench(sheet.garden().imperial()));
    }

    private static OfficeSheets.Boards boards(String name, SectionCutting cutting, Optional<SawAdvice> advice, CurrencyUnit currency) {
        List<Way> ways = new ArrayList<>(cutting.saw().ways());
        advice.ifPresent(one -> ways.add(1, one.weekendByWeekend()));
        advice.filter(one -> one.pooledOnce().boards() != ways.get(0).boards()
                        || !one.pooledOnce().cost().equals(ways.get(0).cost()))
                .ifPresent(one -> ways.add(0, one.pooledOnce()));
        return new OfficeSheets.Boards(
                name,
                ways.stream().map(way -> new OfficeSheets.Way(words(way), way.boards(), BenchPrint.money(way.cost(), currency))).toList(),
                advice.stream()
                        .flatMap(one -> one.nearMisses().stream())
                        .map(miss -> new OfficeSheets.NearMiss(
                                miss.sizes()::words, miss.shorterMm(), saved(miss, currency), miss.marks()))
                        .toList());
    }

    private static String words(Way way) {
        return switch (way.way()) {
            case POOLED -> "all beds together, offcuts carried from stage to stage: this plan";
            case POOLED_ONCE -> "all beds together on one day, no offcut trimmed again";
            case WEEKEND_BY_WEEKEND -> "each stage for itself, no offcut carried over";
            case BED_BY_BED -> "each bed for itself";
        };
    }

    private static String saved(SawAdvice.NearMiss miss, CurrencyUnit currency) {
        String saved = miss.saved().filter(money -> money.signum() > 0).isPresent()
                ? BenchPrint.money(miss.saved(), currency)
                : Measure.counted(miss.boardsSaved(), "board");
        return miss.sure() ? "at least " + saved : saved + ", found by search";
    }
}
