package lapyard.exchange;

import com.fasterxml.jackson.databind.JsonNode;

/** Files of a site in open formats. Nothing in them names another file, and each is read within bounds. */
public final class SiteReader {
    private SiteReader() {}

    /** @see DxfReader */
    public static SiteDrawing dxf(String text) {
        return DxfReader.read(text);
    }

    /** @see CoordinateCsv */
    public static SiteDrawing csv(String text) {
        return CoordinateCsv.read(text.startsWith("\uFEFF") ? text.substring(1) : text);
    }

    /** @see GeoJsonReader */
    public static SiteDrawing geoJson(JsonNode root) {
        return GeoJsonReader.read(root);
    }
}
