package lapyard.prints;

import java.util.ArrayList;
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
        Map<Integer, List<String>> goods = new TreeMap<>();
        for (Buying.Row row : Buying.of(sheet).rows()) {
            if (row.packs().isEmpty()) continue;
            String packs = row.packs().entrySet().stream().map(one -> one.getValue() + " × " + PackCode.words(one.getKey(), sheet.garden().imperial()))
                    .collect(Collectors.joining(", "));
            goods.computeIfAbsent(row.weekend(), weekend -> new ArrayList<>()).add(row.label() + ": " + packs);
        }
        return goods;
    }
}
