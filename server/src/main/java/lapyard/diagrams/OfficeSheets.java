package lapyard.diagrams;

import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.geometry.Length;
import lapyard.order.Slip;

/** For whoever buys: the sum of the order and each bed's part of it, boards bought together or apart, and lengths that would save money if they were shorter. */
public final class OfficeSheets {
    private static final String CAUTION = "What is offered here is not in the plan: a shorter piece makes a smaller bed.";

    private OfficeSheets() {}

    /** @param cost as it shall be read, empty where there is no price */
    public record Way(String way, int boards, String cost) {}

    /**
     * @param change what would be made smaller, asked for by the amount as it is written
     * @param saved  as it shall be read
     */
    public record NearMiss(UnaryOperator<String> change, double shorterMm, String saved, List<String> marks) {
        public NearMiss {
            marks = List.copyOf(marks);
        }
    }

    /** The boards of one section, or the strips ripped from one. */
    public record Boards(String name, List<Way> ways, List<NearMiss> nearMisses) {
        public Boards {
            ways = List.copyOf(ways);
            nearMisses = List.copyOf(nearMisses);
        }
    }

    /**
     * @param areasM2 of beds inside the walls, by {@code bed M}
     * @return one page or more; where there is nothing to weigh it says so
     */
    public static List<Page> pages(
            String garden, boolean imperial, Slip slip, Map<String, Double> areasM2, List<Boards> all, BenchOptions options) {
        return BenchSheet.pages(garden, CAUTION, imperial, options, sheet -> {
            if (all.isEmpty() && slip.orders().isEmpty()) return List.of(sheet.nothing("Office", "No boards are bought for this garden."));
            Flow flow = new Flow(sheet, "Office", "");
            if (!slip.orders().isEmpty()) {
                SlipSheets.sum(slip, sheet, flow);
                SlipSheets.shares(slip, areasM2, sheet, flow);
            }
            if (!all.isEmpty()) flow.section("Office: boards", "what to weigh before they are bought");
            for (Boards boards : all) {
                BenchTable ways = new BenchTable(sheet, boards.name() + ": bought together or apart",
                        new Column("way", 0.5, false), new Column("boards", 0.15, true), new Column("cost", 0.35, true));
                boards.ways().forEach(way -> ways.row(way.way(), String.valueOf(way.boards()), way.cost()));
                ways.on(flow);
                BenchTable misses = new BenchTable(sheet, boards.name() + ": near misses, offered and not applied",
                        new Column("change of a bed", 0.38, true), new Column("it would save in timber", 0.26, true),
                        new Column("pieces", 0.36, false));
                for (NearMiss miss : boards.nearMisses()) {
                    misses.row(miss.change().apply(shorter(miss.shorterMm(), sheet)), miss.saved(), SawOffcuts.some(miss.marks()));
                }
                misses.on(flow);
            }
            return flow.drafts();
        });
    }

    /** Rounded up where it is written in sixteenths: a little too much still saves, a little too little does not. */
    private static String shorter(double mm, BenchSheet sheet) {
        double sixteenth = Length.INCH_MM / 16;
        return sheet.imperial ? sheet.written(Math.ceil(mm / sixteenth - 1e-9) * sixteenth) : sheet.written(mm) + " mm";
    }
}
