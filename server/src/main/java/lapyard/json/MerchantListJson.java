package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import lapyard.plan.Finding;

/** A merchant's list against a garden: the preview says how it is understood and holds the garden with it. */
public final class MerchantListJson {
    private MerchantListJson() {}

    /** The catalogue that stands where a garden says nothing, as a document's catalogue is written. */
    public static String examples() {
        try (InputStream in = MerchantListJson.class.getResourceAsStream(CatalogueReader.EXAMPLES)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * @param body {@code {"list": CSV, "supplier": id, "garden": {...}}}
     * @throws IllegalArgumentException for a field that is not what it should be, naming it
     * @throws UnreadableDocument       when it is no JSON at all
     */
    public static ObjectNode preview(String body) throws UnreadableDocument {
        JsonNode ask = DocumentText.parse(body);
        if (!ask.path("list").isTextual()) {
            throw new IllegalArgumentException("list needs the text of the CSV, has " + Cursor.shown(ask.path("list")));
        }
        if (ask.has("supplier") && !ask.get("supplier").isTextual()) {
            throw new IllegalArgumentException("supplier needs a code in quotes, has " + Cursor.shown(ask.get("supplier")));
        }
        JsonNode garden = ask.path("garden");
        if (!garden.isMissingNode() && !garden.isObject()) {
            throw new IllegalArgumentException("garden needs a document in curly brackets, has " + Cursor.shown(garden));
        }
        return preview(
                ask.get("list").textValue(),
                ask.path("supplier").asText(""),
                garden instanceof ObjectNode object ? object : DocumentText.MAPPER.createObjectNode());
    }

    /** {@code garden} in the answer is null where a line is bad or the garden with the list could not be read. */
    public static ObjectNode preview(String csv, String supplier, ObjectNode garden) {
        MerchantList list = MerchantList.read(csv, supplier);
        if (!list.whole()) return list.preview(Optional.empty(), List.of());
        ObjectNode with = list.over(garden);
        Reading reading = GardenReader.read(with, new Cursor.Notes());
        List<Finding> about = reading.findings().stream().filter(finding -> finding.weight() == Finding.Weight.STOP).toList();
        return list.preview(reading instanceof Reading.Read ? Optional.of(with) : Optional.empty(), about);
    }
}
