package lapyard.prints;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import lapyard.catalogue.PackCode;
import lapyard.job.Buying;
import lapyard.job.JobSheet;

/** What must be there, as a person reads it: packs of the order by the weekend that first uses them. */
final class GoodsNeeded {
    private GoodsNeeded() {}

    static Map<Integer, List<String>> byWeekend(JobSheet sheet) {
        Map<Integer, Map<String, Map<String, Integer>>> needed = new TreeMap<>();
        for (Buying.Row row : Buying.of(sheet).rows()) {
            if (row.packs().isEmpty()) continue;
            Map<String, Integer> packs = needed.computeIfAbsent(row.weekend(), weekend -> new LinkedHashMap<>()).computeIfAbsent(row.label(), label -> new LinkedHashMap<>());
            row.packs().forEach((pack, count) -> packs.merge(pack, count, Integer::sum));
        }
        boolean imperial = sheet.garden().imperial();
        Map<Integer, List<String>> goods = new TreeMap<>();
        needed.forEach((weekend, lines) -> goods.put(weekend, lines.entrySet().stream().map(line -> line.getKey() + ": " + line.getValue().entrySet().stream()
                .map(one -> one.getValue() + " × " + PackCode.words(one.getKey(), imperial)).collect(Collectors.joining(", "))).toList()));
        return goods;
    }
}
