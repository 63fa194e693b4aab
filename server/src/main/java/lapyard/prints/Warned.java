package lapyard.prints;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.job.JobSheet;
import lapyard.plan.Finding;
import lapyard.words.Wording;

/** The warnings of a garden as sentences, bed by bed. */
final class Warned {
    private Warned() {}

    /** Sentences by the bed's id; beds without a warning are left out. */
    static Map<String, List<String>> beds(JobSheet sheet) {
        Wording words = Wording.of(sheet.garden().imperial());
        Map<String, List<Finding>> warnings = sheet.warnings();
        Map<String, List<String>> warned = new LinkedHashMap<>();
        for (JobSheet.BedSheet bed : sheet.beds()) {
            List<Finding> own = warnings.get(bed.work().bed().id());
            if (own != null) warned.put(bed.work().bed().id(), own.stream().map(words::text).toList());
        }
        return warned;
    }

    /** All of them, each once. */
    static List<String> all(JobSheet sheet) {
        return beds(sheet).values().stream().flatMap(List::stream).distinct().toList();
    }
}
