package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@link PdfUaTest} for every file of each sample. */
class PdfUaIT {
    @ParameterizedTest
    @ValueSource(strings = {"allotment-field", "chapel-corner", "ferry-lane", "lock-keepers-yard", "school-courtyard", "terrace-feet", "village-hall"})
    void everyFileOfASampleKeepsTheStandard(String sample) throws Exception {
        JobSheet sheet = Gardens.sample(sample);
        int checked = 0;
        for (String name : PdfUaTest.files(sheet)) {
            byte[] pdf;
            try {
                pdf = PdfUaTest.pdf(name, sheet);
            } catch (CannotPrint notEnough) {
                continue;
            }
            assertEquals(Set.of(), PdfUaTest.broken(pdf), name);
            checked++;
        }
        assertTrue(checked >= 5, () -> "few files of " + sample);
    }
}
