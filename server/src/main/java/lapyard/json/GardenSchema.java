package lapyard.json;


/** The JSON Schema (2020-12) of the garden document. */
public final class GardenSchema {
    private GardenSchema() {}

    public static String text() {
        return DocumentText.ours("/lapyard/json/garden.schema.json");
    }
}
