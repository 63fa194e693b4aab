package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lapyard.catalogue.Roll;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.geometry.Lengths;
import lapyard.sheets.RollResult.Placed;
import lapyard.sheets.RollResult.RollLayout;
import lapyard.sheets.RollResult;
import lapyard.words.Wording;

/** The sheets by which liner and membrane are rolled out, marked and cut: each roll to scale, its cuts and its pieces. */
public final class RollSheets {
    private RollSheets() {}

    /** A remnant narrower than this either way is scrap: it is the usual lap, so it mends nothing larger. */
    static final double LEAST_REMNANT_MM = 300;

    private static final String CAUTION =
            "Roll out on clean, swept ground, not on stones. Cut away from yourself with a fresh blade, knees off the line. "
                    + "Weigh the sheet down in wind; two people carry a wide roll.";

    /**
     * One material on its rolls.
     *
     * @param rolls          all widths that it is sold in
     * @param metresBedByBed bought where each bed and path buys alone
     * @param cost           as it shall be read, empty where there is no price; so {@code saved} against bed by bed
     */
    public record Material(
            String name, List<Roll> rolls, RollResult result, double metresBedByBed, String cost, String saved) {
        double widthMm(RollLayout layout) {
            return rolls.stream()
                    .filter(roll -> roll.id().equals(layout.roll()))
                    .mapToDouble(Roll::widthMm)
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("no roll " + layout.roll() + " among those of " + name));
        }
    }

    /** @return one page or more; where nothing is cut from a roll it says so */
    public static List<Page> pages(List<Material> materials, BenchOptions options) {
        return BenchSheet.pages(CAUTION, options, "Rolls", "", "Nothing to cut from a roll in this garden.", flow -> on(flow, materials, flow.sheet));
    }

    static void on(Flow flow, List<Material> materials, BenchSheet sheet) {
        for (Material material : materials) {
            int count = material.result().rolls().size();
            for (int i = 0; i < count; i++) {
                roll(material, i, count, sheet, flow);
            }
        }
    }

    private static void roll(Material material, int index, int count, BenchSheet sheet, Flow flow) {
        RollLayout layout = material.result().rolls().get(index);
        double width = material.widthMm(layout);
        String kind = (material.name().isEmpty() ? "Roll" : Wording.capital(material.name())) + (count == 1 ? "" : ", run " + (index + 1) + " of " + count);
        String about = "roll " + sheet.written(width) + " wide: buy " + sheet.written(layout.boughtMm())
                + ", used " + sheet.written(layout.usedMm());
        flow.section(kind, about, MOST_USED);
        if (index == 0) {
            flow.words(List.of(bought(material, sheet)), 4, true);
        }
        Optional<RollCuts> cuts = RollCuts.of(layout, width);
        RollDrawing drawing = new RollDrawing(layout, width, cuts, sheet);
        double half = flow.columnWidth(2, Flow.APART);
        List<Flow.Block> tables = new ArrayList<>();
        cuts.ifPresent(order -> tables.addAll(cutTable(order, sheet).blocks(half)));
        tables.addAll(pieceTable(layout, sheet).blocks(half));
        cuts.ifPresent(order -> tables.addAll(flow.lines(List.of(remnants(order, sheet)), 3.4, false, half)));
        Flow.Block beside = Flow.Block.of(tables);
        if (drawing.wideMm(flow) < half && beside.heightMm() < sheet.space().height() * SHORT) {
            double top = flow.y();
            drawing.on(flow);
            flow.draw(beside.drawer().at(sheet.space().left() + half + Flow.APART, top), Math.max(0, top + beside.heightMm() - flow.y()));
            return;
        }
        drawing.on(flow);
        int columns = sheet.imperial ? 2 : 3;
        cuts.ifPresent(order -> {
            flow.words(List.of(remnants(order, sheet)), 3.4, false);
            cutTable(order, sheet).on(flow, columns);
        });
        pieceTable(layout, sheet).on(flow, columns);
    }

    private static String bought(Material material, BenchSheet sheet) {
        double mm = material.result().rolls().stream().mapToDouble(RollLayout::boughtMm).sum();
        double apart = material.metresBedByBed() * 1000;
        List<String> savings = new ArrayList<>();
        if (apart - mm > 0.5) {
            savings.add(length(apart - mm, sheet) + " less");
        }
        if (!material.saved().isEmpty()) {
            savings.add(material.saved() + " saved");
        }
        return "Buy " + length(mm, sheet) + (material.cost().isEmpty() ? "" : " for " + material.cost()) + ". Bed by bed it would be "
                + (savings.isEmpty() && Math.abs(apart - mm) <= 0.5 ? "as much" : length(apart, sheet))
                + (savings.isEmpty() ? "" : ": " + String.join(", ", savings)) + ".";
    }

    /** Rolls are spoken of in metres, or in feet and inches. */
    private static String length(double mm, BenchSheet sheet) {
        return sheet.imperial ? sheet.written(mm) : Lengths.text(mm / 1000) + " m";
    }

    private static BenchTable cutTable(RollCuts order, BenchSheet sheet) {
        BenchTable table = new BenchTable(sheet, "Cuts in order, edge to edge of the part in hand",
                new Column("cut", 0.1, true), new Column("at, from end or edge", 0.4, true), new Column("over", 0.5, false));
        int number = 1;
        for (RollCuts.Cut cut : order.cuts()) {
            String span = sheet.written(cut.fromMm()) + " – " + sheet.written(cut.toMm());
            table.row(String.valueOf(number++), sheet.written(cut.atMm()) + (cut.across() ? ", end" : ", edge"),
                    (cut.across() ? "across, " : "along, ") + span);
        }
        return table;
    }

    private static BenchTable pieceTable(RollLayout layout, BenchSheet sheet) {
        BenchTable table = new BenchTable(sheet, "Pieces as they come off",
                new Column("piece", 0.16, true), new Column("size", 0.28, false),
                new Column("from end", 0.33, false), new Column("edge", 0.13, false), new Column("turn", 0.1, false));
        layout.placed().stream().sorted(ORDER).forEach(piece -> table.row(
                piece.id(), sheet.written(piece.widthMm()) + " × " + sheet.written(piece.heightMm()),
                sheet.written(piece.y()) + " – " + sheet.written(piece.y() + piece.heightMm()), sheet.written(piece.x()),
                piece.turned() ? "yes" : ""));
        return table;
    }

    /** A roll is drawn as large as the rest of its sheet lets it be, so it begins on one that is mostly free. */
    private static final double MOST_USED = 0.5;

    /** Tables lower than this part of a sheet stand beside a short roll. */
    private static final double SHORT = 0.4;

    private static final Comparator<Placed> ORDER = Comparator.comparingDouble(Placed::y).thenComparingDouble(Placed::x);

    static boolean kept(Box remnant) {
        return remnant.width() >= LEAST_REMNANT_MM && remnant.height() >= LEAST_REMNANT_MM;
    }

    private static String remnants(RollCuts order, BenchSheet sheet) {
        List<String> kept = order.remnants().stream()
                .filter(RollSheets::kept)
                .map(box -> sheet.written(box.width()) + " × " + sheet.written(box.height()))
                .toList();
        return (kept.isEmpty() ? "No remnant worth keeping" : "Keep for patches and corners: " + String.join(", ", kept))
                + " (scrap is what is narrower than " + sheet.written(LEAST_REMNANT_MM) + ").";
    }
}
