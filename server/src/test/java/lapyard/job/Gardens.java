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

    /** Rectangular beds, each {@code widthxdepthxcourses}, six in a row; rows lie 2500 apart. */
    public static String rows(String search, String sizes) {
        StringBuilder beds = new StringBuilder();
        int number = 0;
        for (String size : sizes.split(" ")) {
            String[] parts = size.split("x");
            beds.append(number == 0 ? "" : ",").append("{\"width\":%s,\"depth\":%s,\"courses\":%s,\"at\":[%d,%d]}"
                    .formatted(parts[0], parts[1], parts[2], number % 6 * 5000, number / 6 * 2500));
            number++;
        }
        return "{\"name\":\"Many sizes\"" + (search.isEmpty() ? "" : ",\"search\":\"" + search + "\"")
                + ",\"ground\":{\"outline\":[[-1000,-1000],[32000,-1000],[32000,22000],[-1000,22000]]},\"beds\":[" + beds + "]}";
    }

    public static JobSheet sheet(String text) {
        return Job.prepare(garden(text));
    }
}
