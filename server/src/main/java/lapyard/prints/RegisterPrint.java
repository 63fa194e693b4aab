package lapyard.prints;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lapyard.diagrams.BenchTable.Column;
import lapyard.diagrams.BenchTable;
import lapyard.drawing.Page;
import lapyard.geometry.Length;
import lapyard.geometry.Lengths;
import lapyard.geometry.Measure;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.job.JobSheet.BedSheet;
import lapyard.job.JobSheet;
import lapyard.plan.Bed;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;

/** The list of all beds with where each stands and what it takes, a box to tick a bed, and the sum of each type. */
final class RegisterPrint {
    private static final String CAUTION =
            "Two people or more lift each timber whose mark has a dot. Check each bed's place on the plan before anything is cut for it.";

    private RegisterPrint() {}

    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        boolean imperial = sheet.garden().imperial();
        Map<String, List<BedSheet>> types = sheet.beds().stream()
                .filter(bed -> !bed.work().bed().type().isEmpty())
                .collect(Collectors.groupingBy(bed -> bed.work().bed().type(), LinkedHashMap::new, Collectors.toList()));
        List<List<String>> sums = new ArrayList<>();
        types.forEach((type, some) -> sums.add(row(
                some, imperial, type, some.size() + (some.size() == 1 ? " bed: " : " beds: ") + some.stream().map(bed -> bed.work().bed().id()).collect(Collectors.joining(", ")), size(some.get(0).work().bed(), imperial))));
        return ask.list(sheet, CAUTION, "Bed register", Measure.counted(sheet.beds().size(), "bed") + ", each to be ticked when it is filled")
                .warned(Warned.all(sheet))
                .table("Beds", List.of(new Column("Bed", 0.07, true), new Column("Name, type", 0.18, false), new Column("Width, depth, height", 0.18, false),
                        new Column("Stands at: along, away", 0.21, false), new Column("Stage", 0.08, false), new Column("Timber", 0.09, false),
                        new Column("Mass", 0.08, false), new Column("Loose soil", 0.07, false), new Column("Done", 0.04, false)),
                        sheet.beds().stream().map(bed -> row(bed, imperial)).toList())
                .table("Types", List.of(new Column("Type", 0.14, true), new Column("Beds", 0.22, false), new Column("Width, depth, height", 0.28, false),
                        new Column("Timber", 0.12, false), new Column("Mass", 0.12, false), new Column("Loose soil", 0.12, false)), sums)
                .pages("No bed stands in this garden yet.");
    }

    private static List<String> row(BedSheet sheet, boolean imperial) {
        Bed bed = sheet.work().bed();
        String what = bed.name().equals(bed.id()) ? "" : bed.name();
        String type = bed.type().isEmpty() ? "" : "type " + bed.type();
        Point at = bed.placement().at();
        String turned = bed.placement().turnDeg() == 0 ? "" : ", turned " + Lengths.text(bed.placement().turnDeg()) + "°";
        List<String> row = row(
                List.of(sheet), imperial, bed.id(), what.isEmpty() || type.isEmpty() ? what + type : what + ", " + type, size(bed, imperial),
                Length.written(at.x(), imperial) + ", " + Length.written(at.y(), imperial) + turned + (bed.placement().mirror() ? ", mirrored" : ""),
                Integer.toString(bed.stage()));
        row.add(BenchTable.TICK);
        return row;
    }

    /** What some beds are called, and what they take together. */
    private static List<String> row(List<BedSheet> beds, boolean imperial, String... called) {
        List<String> row = new ArrayList<>(List.of(called));
        for (QuantityKind kind : List.of(QuantityKind.TIMBER_LENGTH, QuantityKind.TIMBER_MASS, QuantityKind.SOIL_LOOSE)) row.add(amount(beds, kind, imperial));
        return row;
    }

    static String size(Bed bed, boolean imperial) {
        Outline box = bed.outline().box();
        return Length.written(box.sideMm(0), imperial) + " × " + Length.written(box.sideMm(1), imperial) + " × "
                + Length.written(bed.heightMm(), imperial);
    }

    /** The sum of a quantity over some beds, empty where none has it. */
    private static String amount(List<BedSheet> beds, QuantityKind kind, boolean imperial) {
        List<Quantity> found = beds.stream()
                .flatMap(bed -> bed.quantities().stream())
                .filter(quantity -> quantity.is(kind))
                .toList();
        if (found.isEmpty()) return "";
        double sum = found.stream().mapToDouble(Quantity::value).sum();
        String unit = found.get(0).unit();
        return Measure.of(sum, unit, unit.equals("m3") ? 2 : 1, imperial);
    }
}
