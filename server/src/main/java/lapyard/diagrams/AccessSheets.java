package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.geometry.Length;
import lapyard.geometry.Lengths;
import lapyard.ground.AccessSheet;

/** Paths and beds held against a standard, what fails first, then pass or fail bed by bed. */
public final class AccessSheets {
    private AccessSheets() {}

    private static final String CAUTION =
            "A planning aid: local rules and whoever inspects decide. Surfaces must be firm, stable and not slippery; that is not checked here.";

    /** @return one page or more */
    public static List<Page> pages(AccessSheet access, BenchOptions options) {
        return BenchSheet.pages(CAUTION, options, "Access", "against " + access.standard().called() + " (" + access.standard().source() + ")", "", flow -> {
            BenchSheet sheet = flow.sheet;
            List<AccessSheet.Row> failing = access.rows().stream().filter(row -> !row.pass()).toList();
            flow.words(List.of(access.rows().size() - failing.size() + " of " + access.rows().size() + " checks pass."), 4.6, true);
            table("What fails", failing, sheet).on(flow);
            Map<String, List<String>> byPlace = new LinkedHashMap<>();
            for (AccessSheet.Row row : access.rows()) {
                for (String where : row.where().split(", ")) {
                    List<String> fails = byPlace.computeIfAbsent(where, place -> new ArrayList<>());
                    if (!row.pass()) {
                        fails.add(row.what().words + " by " + amount(row, row.missing(), sheet));
                    }
                }
            }
            BenchTable register = new BenchTable(
                    sheet, "Place by place", new Column("place", 0.25, true), new Column("", 0.15, true), new Column("fails", 0.6, false));
            byPlace.forEach((where, fails) -> register.row(where, fails.isEmpty() ? "pass" : "fail", String.join(", ", fails)));
            register.on(flow);
            table("All that was measured", access.rows(), sheet).on(flow);
        });
    }

    private static BenchTable table(String title, List<AccessSheet.Row> rows, BenchSheet sheet) {
        BenchTable table = new BenchTable(
                sheet, title, new Column("place", 0.25, true), new Column("what", 0.15, false), new Column("is", 0.15, true),
                new Column("limit", 0.15, false), new Column("fails by", 0.15, true), new Column("at", 0.15, false));
        for (AccessSheet.Row row : rows) {
            table.row(
                    row.where(), row.what().words, told(row, row.measured(), sheet), told(row, row.limit(), sheet),
                    row.pass() ? "" : amount(row, row.missing(), sheet),
                    row.at().map(at -> sheet.written(at.x()) + ", " + sheet.written(at.y())).orElse(""));
        }
        return table;
    }

    private static String told(AccessSheet.Row row, double value, BenchSheet sheet) {
        if (row.unit().equals("1:n")) {
            return Double.isFinite(value) ? "1:" + Lengths.text(value) : "level";
        }
        return Double.isFinite(value) ? sheet.written(value) : "none";
    }

    /** Of a slope in mm a metre, or a length. */
    private static String amount(AccessSheet.Row row, double missing, BenchSheet sheet) {
        if (!row.unit().equals("1:n")) return sheet.written(missing);
        return sheet.imperial ? sheet.written(missing * Length.FOOT_MM / 1000) + " a foot" : Lengths.text(missing) + " mm a metre";
    }
}
