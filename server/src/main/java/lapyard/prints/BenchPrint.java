package lapyard.prints;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.catalogue.TradeName;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.cutting.Batches;
import lapyard.cutting.SawBoard;
import lapyard.diagrams.CourseCard;
import lapyard.diagrams.FloorCards;
import lapyard.diagrams.LabelGrid;
import lapyard.diagrams.LabelSheets;
import lapyard.diagrams.RollSheets;
import lapyard.diagrams.SawDay;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.geometry.Length;
import lapyard.geometry.Measure;
import lapyard.job.JobSheet;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.order.Ordering;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import org.joda.money.CurrencyUnit;

/** The sheets for the bench, made of a job sheet. */
final class BenchPrint {
    private BenchPrint() {}

    static List<Page> sawDay(JobSheet sheet, PrintAsk ask) {
        return SawDay.pages(sheet.lifting(), sheet.works(), works(sheet, ask, ask.saw().longestMm()), ask.saw().longestMm(), ask.bench(sheet));
    }

    static List<Page> rolls(JobSheet sheet, PrintAsk ask) {
        return RollSheets.pages(materials(sheet), ask.bench(sheet));
    }

    /** Whether the rolls are not on the sheet of base and liner. */
    static boolean rollsApart(JobSheet sheet, PrintAsk ask) {
        return !FloorCards.holdsRolls(sheet.works(), materials(sheet), ask.bench(sheet));
    }

    /** Cards in the order of building: by stage, then as the garden has them. */
    static List<Page> courseCards(JobSheet sheet, PrintAsk ask) {
        Map<String, String> boards = new HashMap<>();
        for (int i = 0; i < sheet.cutting().size(); i++) {
            String series = series(i);
            sheet.cutting().get(i).saw().boards().forEach(
                    board -> board.cuts().forEach(cut -> Nest.marks(cut.mark()).forEach(mark -> boards.put(mark, series + board.number()))));
        }
        Map<String, List<Finding>> warned = sheet.warnings();
        List<CourseCard.Stack> stacks = inBuildingOrder(sheet)
                .map(bed -> new CourseCard.Stack(
                        bed.work(), bed.quantities(), boards, warned.getOrDefault(bed.work().bed().id(), List.of())))
                .toList();
        return CourseCard.pages(sheet.lifting(), stacks, ask.bench(sheet));
    }

    private static String ripped(String section, JobSheet.Ripping ripping, boolean imperial) {
        return "Rip first: " + Measure.counted(ripping.boards(), "board") + " of " + section + " along into strips "
                + Length.written(ripping.thicknessMm(), imperial) + " wide, " + ripping.stripsPerBoard() + " from a board, "
                + Measure.counted(ripping.rips(), "cut") + " along.";
    }

    /** The first section's boards have plain numbers, those of further ones and of strips a letter before them. */
    private static String series(int index) {
        return index == 0 ? "" : Bed.wallLetter(index);
    }

    static List<Page> floorCards(JobSheet sheet, PrintAsk ask) {
        List<BedWork> works = inBuildingOrder(sheet).map(JobSheet.BedSheet::work).toList();
        return FloorCards.pages(works, materials(sheet), ask.bench(sheet));
    }

    private static Stream<JobSheet.BedSheet> inBuildingOrder(JobSheet sheet) {
        return sheet.beds().stream().sorted(Comparator.comparingInt(bed -> bed.work().bed().stage()));
    }

    /** Boards of each section, then strips ripped from them. */
    static Stream<SectionCutting> sawn(JobSheet sheet) {
        return Stream.concat(sheet.cutting().stream(), sheet.strips().stream());
    }

    /** What they are called. */
    static String named(SectionCutting cutting, boolean imperial) {
        return (cutting.saw().ripping().isPresent() ? "Strips ripped from " : "Timber ") + TradeName.section(cutting.section(), imperial);
    }

    private static List<SawDay.Work> works(JobSheet sheet, PrintAsk ask, OptionalDouble longestMm) {
        List<SawDay.Work> works = new ArrayList<>();
        sawn(sheet).forEach(cutting -> works.add(work(sheet, series(works.size()), cutting, ask, longestMm)));
        works.removeIf(work -> work.boards().isEmpty());
        return works;
    }

    /** @throws IllegalArgumentException for labels that are not columns x rows or do not fit their paper */
    static List<Page> labels(JobSheet sheet, PrintAsk ask) {
        boolean imperial = sheet.garden().imperial();
        Optional<Paper> paper = ask.paper().map(Paper::named);
        LabelGrid usual = LabelGrid.usual(imperial);
        LabelGrid grid = ask.labels().map(words -> LabelGrid.read(words, paper.orElse(usual.paper()))).orElse(usual);
        return LabelSheets.pages(
                imperial, sheet.lifting(), sheet.works(), works(sheet, ask, OptionalDouble.empty()), grid, ask.mono());
    }

    private static List<RollSheets.Material> materials(JobSheet sheet) {
        Garden garden = sheet.garden();
        CurrencyUnit currency = CurrencyUnit.of(garden.terms().currency());
        List<RollSheets.Material> materials = new ArrayList<>();
        for (JobSheet.MaterialRolls material : sheet.rolls()) {
            Optional<BigDecimal> apart = material.costBedByBed();
            Optional<BigDecimal> saved = apart.map(cost -> cost.subtract(material.result().cost())).filter(less -> less.signum() > 0);
            materials.add(new RollSheets.Material(
                    material.material(),
                    garden.goods().catalogue().rolls(material.material()),
                    material.result(),
                    material.metresBedByBed().orElseThrow(),
                    apart.isPresent() ? money(Optional.of(material.result().cost()), currency) : "",
                    saved.isPresent() ? money(saved, currency) : ""));
        }
        return materials;
    }

    private static SawDay.Work work(JobSheet sheet, String series, SectionCutting cutting, PrintAsk ask, OptionalDouble longestMm) {
        Garden garden = sheet.garden();
        boolean imperial = garden.imperial();
        JobSheet.SawWork saw = cutting.saw();
        boolean strips = saw.ripping().isPresent();
        Optional<Section> section = sheet.beds().stream()
                .map(bed -> bed.work().bed().section())
                .filter(one -> !strips && one.id().equals(cutting.section()))
                .findFirst();
        Batches.Rates usual = saw.batches().rates();
        Batches.Rates rates = new Batches.Rates(
                strips ? usual.minutesACut() : ask.saw().minutesACut().orElse(usual.minutesACut()), ask.saw().minutesASetting().orElse(usual.minutesASetting()));
        double kerf = garden.goods().saw().kerfMm();
        List<SawBoard> fromMerchant = saw.boards().stream()
                .filter(board -> saw.problem().stock().stream()
                        .anyMatch(stock -> stock.id().equals(board.stock()) && stock.available().isEmpty()))
                .toList();
        return new SawDay.Work(
                series,
                named(cutting, imperial),
                saw.ripping().map(ripping -> ripped(TradeName.section(cutting.section(), imperial), ripping, imperial)).orElse(""),
                section,
                kerf,
                garden.goods().saw().keepOffcutMm(),
                saw.boards(),
                new Batches(saw.batches().stages(), rates),
                saw.ledger(),
                strips || longestMm.isEmpty() ? List.of() : SawBoard.firstCuts(fromMerchant, longestMm.getAsDouble(), kerf),
                saw.nests());
    }

    static String money(Optional<BigDecimal> amount, CurrencyUnit currency) {
        return amount.map(money -> currency.getCode() + " " + Ordering.rounded(money, currency).toPlainString()).orElse("no price");
    }
}
