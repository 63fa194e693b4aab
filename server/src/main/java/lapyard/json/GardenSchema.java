package lapyard.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The JSON Schema (2020-12) of the garden document. */
public final class GardenSchema {
    private GardenSchema() {}

    public static String text() {
        try (InputStream in = GardenSchema.class.getResourceAsStream("/lapyard/json/garden.schema.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
