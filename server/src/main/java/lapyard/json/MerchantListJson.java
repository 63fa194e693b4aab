package lapyard.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.exchange.XlsxReader;
import lapyard.plan.FindingList;
import lapyard.plan.WayKind;

/** A merchant's list against a garden: the preview says how it is understood and holds the garden with it. */
public final class MerchantListJson {
    private MerchantListJson() {}

    /** The catalogue that stands where a garden says nothing, as a document's catalogue is written. */
    public static String examples() {
        return DocumentText.ours(CatalogueReader.EXAMPLES);
    }

    /**
     * @param body {@code {"list": CSV, "supplier": id, "garden": {...}}}; in place of {@code list} the bytes of a workbook in base64 as
     *     {@code workbook}, and the answer has its first sheet as {@code list}
     * @throws lapyard.plan.CannotAnswer for a field that is not what it should be
     * @throws lapyard.working.BrokenRule for a workbook that cannot be read
     * @throws CannotAnswer       when it is no JSON at all
     */
    public static ObjectNode preview(String body) {
        return Asked.read("merchant-list", DocumentText.parse(body), ask -> {
            boolean workbook = ask.raw("workbook").isTextual();
            if (!workbook && !ask.has("list")) ask.missing("list", "{\"list\": \"item,price\\n...\", \"supplier\": \"\", \"garden\": {}}");
            String list = workbook ? XlsxReader.firstSheetAsCsv(bytes(ask)) : ask.text("list");
            ObjectNode preview = preview(list, ask.text("supplier"), Map.of(), Asked.object(ask, "garden"));
            return workbook ? preview.put("list", list) : preview;
        });
    }

    private static byte[] bytes(Cursor ask) {
        try {
            return Base64.getDecoder().decode(ask.text("workbook"));
        } catch (IllegalArgumentException e) {
            ask.shape("workbook", "the bytes of the file in base64", ask.raw("workbook"), WayKind.IN_QUOTES);
            throw e;
        }
    }

    /**
     * {@code garden} in the answer is null where a line is bad or the garden with the list could not be read.
     *
     * @param named fields by the heading that means them, where that was said by hand; the fields are those of {@link MerchantList#fields}
     */
    public static ObjectNode preview(String csv, String supplier, Map<String, String> named, ObjectNode garden) {
        MerchantList list = MerchantList.read(csv, supplier, named, garden);
        if (!list.whole()) {
            return list.preview(Optional.empty(), List.of());
        }
        ObjectNode with = list.over(garden);
        Reading reading = GardenReader.read(with);
        return list.preview(reading instanceof Reading.Read ? Optional.of(with) : Optional.empty(), FindingList.stops(reading.findings()));
    }
}
