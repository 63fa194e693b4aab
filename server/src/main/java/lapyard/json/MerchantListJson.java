package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.exchange.XlsxReader;
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
     * @param body {@code {"list": CSV, "supplier": id, "garden": {...}}}; in place of {@code list} the bytes of a workbook in base64 as
     *     {@code workbook}, and the answer has its first sheet as {@code list}
     * @throws IllegalArgumentException for a field that is not what it should be, naming it
     * @throws UnreadableDocument       when it is no JSON at all
     */
    public static ObjectNode preview(String body) throws UnreadableDocument {
        JsonNode ask = DocumentText.parse(body);
        boolean workbook = ask.path("workbook").isTextual();
        if (!workbook && !ask.path("list").isTextual()) {
            throw new IllegalArgumentException("list needs the text of the CSV, has " + Cursor.shown(ask.path("list")));
        }
        String list = workbook ? XlsxReader.firstSheetAsCsv(bytes(ask.get("workbook").textValue())) : ask.get("list").textValue();
        if (ask.has("supplier") && !ask.get("supplier").isTextual()) {
            throw new IllegalArgumentException("supplier needs a code in quotes, has " + Cursor.shown(ask.get("supplier")));
        }
        JsonNode garden = ask.path("garden");
        if (!garden.isMissingNode() && !garden.isObject()) {
            throw new IllegalArgumentException("garden needs a document in curly brackets, has " + Cursor.shown(garden));
        }
        ObjectNode preview = preview(
                list, ask.path("supplier").asText(""), Map.of(), garden instanceof ObjectNode object ? object : DocumentText.MAPPER.createObjectNode());
        return workbook ? preview.put("list", list) : preview;
    }

    private static byte[] bytes(String base64) {
        try {
            return Base64.getDecoder().decode(base64);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("workbook needs the bytes of the file in base64");
        }
    }

    /**
     * {@code garden} in the answer is null where a line is bad or the garden with the list could not be read.
     *
     * @param named fields by the heading that means them, where that was said by hand; the fields are those of {@link MerchantList#fields}
     */
    public static ObjectNode preview(String csv, String supplier, Map<String, String> named, ObjectNode garden) {
        MerchantList list = MerchantList.read(csv, supplier, named);
        if (!list.whole()) {
            return list.preview(Optional.empty(), List.of());
        }
        ObjectNode with = list.over(garden);
        Reading reading = GardenReader.read(with, new Cursor.Notes());
        List<Finding> about = reading.findings().stream().filter(finding -> finding.weight() == Finding.Weight.STOP).toList();
        return list.preview(reading instanceof Reading.Read ? Optional.of(with) : Optional.empty(), about);
    }
}
