package lapyard.job;

import lapyard.json.GardenReader;
import lapyard.json.Reading;
import lapyard.json.UnreadableDocument;
import lapyard.plan.Garden;

/** Documents as gardens, for tests that begin at the document. */
public final class Gardens {
    private Gardens() {}

    public static Garden garden(String text) {
        try {
            Reading reading = GardenReader.read(text);
            if (reading instanceof Reading.Read read) {
                return read.garden();
            }
            throw new AssertionError(reading.findings().toString());
        } catch (UnreadableDocument e) {
            throw new AssertionError(e);
        }
    }

    public static JobSheet sheet(String text) {
        return Job.prepare(garden(text));
    }
}
