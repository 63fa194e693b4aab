package lapyard.prints;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lapyard.diagrams.BedRegister;
import lapyard.diagrams.BedRegister.Row;
import lapyard.drawing.Page;
import lapyard.geometry.Length;
import lapyard.geometry.Measure;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.job.JobSheet;
import lapyard.job.JobSheet.BedSheet;
import lapyard.plan.Bed;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;

/** The bed register of a job sheet. */
final class RegisterPrint {
    private RegisterPrint() {}

    static List<Page> pages(JobSheet sheet, PrintAsk ask) {
        boolean imperial = sheet.garden().imperial();
        List<Row> beds = sheet.beds().stream().map(bed -> row(bed, imperial)).toList();
        Map<String, List<BedSheet>> types = sheet.beds().stream()
                .filter(bed -> !bed.work().bed().type().isEmpty())
                .collect(Collectors.groupingBy(bed -> bed.work().bed().type(), LinkedHashMap::new, Collectors.toList()));
        List<Row> sums = new ArrayList<>();
        types.forEach((type, some) -> sums.add(new Row(
                type, some.size() + (some.size() == 1 ? " bed: " : " beds: ") + names(some), size(some.get(0).work().bed(), imperial), "",
                "", amount(some, QuantityKind.TIMBER_LENGTH, imperial), amount(some, QuantityKind.TIMBER_MASS, imperial),
                amount(some, QuantityKind.SOIL_LOOSE, imperial))));
        return BedRegister.pages(sheet.garden().name(), imperial, beds, sums, Warned.all(sheet), ask.bench(imperial));
    }

    private static Row row(BedSheet sheet, boolean imperial) {
        Bed bed = sheet.work().bed();
        String what = bed.name().equals(bed.id()) ? "" : bed.name();
        String type = bed.type().isEmpty() ? "" : "type " + bed.type();
        Point at = bed.placement().at();
        String turned = bed.placement().turnDeg() == 0 ? "" : ", turned " + Length.millimetres(bed.placement().turnDeg()) + "°";
        return new Row(
                bed.id(), what.isEmpty() || type.isEmpty() ? what + type : what + ", " + type, size(bed, imperial),
                Length.written(at.x(), imperial) + ", " + Length.written(at.y(), imperial) + turned
                        + (bed.placement().mirror() ? ", mirrored" : ""),
                Integer.toString(bed.stage()), amount(List.of(sheet), QuantityKind.TIMBER_LENGTH, imperial),
                amount(List.of(sheet), QuantityKind.TIMBER_MASS, imperial), amount(List.of(sheet), QuantityKind.SOIL_LOOSE, imperial));
    }

    private static String names(List<BedSheet> beds) {
        return beds.stream().map(bed -> bed.work().bed().id()).collect(Collectors.joining(", "));
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
