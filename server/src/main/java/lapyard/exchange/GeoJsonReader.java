package lapyard.exchange;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.exchange.SiteDrawing.LengthUnit;
import lapyard.exchange.SiteDrawing.Spot;
import lapyard.geometry.Point;
import org.locationtech.jts.geom.Envelope;

/**
 * Outlines, lines and points of a GeoJSON text (RFC 7946). Coordinates are longitude and latitude, laid on the plane that touches
 * the earth at the first of them; where they cannot be degrees they are taken as lengths of a unit that is asked for. A feature's
 * {@code layer}, {@code kind} or {@code name} is its layer.
 */
public final class GeoJsonReader {
    private static final double MOST_DEGREES_APART = 0.5;

    private final SiteDrawing.Builder drawing = new SiteDrawing.Builder("geojson");
    private LocalPlane plane;
    private boolean globe;
    private int feature;

    private GeoJsonReader() {}

    public static SiteDrawing read(JsonNode root) {
        GeoJsonReader reader = new GeoJsonReader();
        reader.globe = reader.inDegrees(root);
        if (reader.globe) reader.drawing.unit = Optional.of(LengthUnit.M);
        reader.object(root, "");
        return reader.drawing.done();
    }

    /** Degrees where every number may be one; a yard in metres from its own corner may look so too, and then its features lie degrees apart. */
    private boolean inDegrees(JsonNode root) {
        Envelope box = new Envelope();
        for (JsonNode coordinates : root.findValues("coordinates")) widen(coordinates, box);
        boolean degrees = box.getMinX() >= -180 && box.getMaxX() <= 180 && box.getMinY() >= -85 && box.getMaxY() <= 85;
        return degrees && Math.max(box.getWidth(), box.getHeight()) < MOST_DEGREES_APART;
    }

    private static void widen(JsonNode coordinates, Envelope box) {
        if (coordinates.path(0).isNumber() && coordinates.path(1).isNumber()) {
            box.expandToInclude(coordinates.get(0).asDouble(), coordinates.get(1).asDouble());
        } else {
            coordinates.forEach(inner -> widen(inner, box));
        }
    }

    private void object(JsonNode object, String layer) {
        if (drawing.isFull()) return;
        switch (object.path("type").asText("")) {
            case "FeatureCollection" -> object.path("features").forEach(one -> object(one, ""));
            case "Feature" -> {
                feature++;
                object(object.path("geometry"), layerOf(object.path("properties")));
            }
            case "GeometryCollection" -> object.path("geometries").forEach(one -> object(one, layer));
            case "Polygon" -> polygon(object.path("coordinates"), layer);
            case "MultiPolygon" -> object.path("coordinates").forEach(one -> polygon(one, layer));
            case "LineString" -> drawing.line(layer, points(object.path("coordinates")), false, 0);
            case "MultiLineString" -> object.path("coordinates").forEach(one -> drawing.line(layer, points(one), false, feature));
            case "Point" -> spot(object.path("coordinates"), layer);
            case "MultiPoint" -> object.path("coordinates").forEach(one -> spot(one, layer));
            default -> {
                if (object.isNull()) drawing.passOver("feature without a place");
                else drawing.bad(0, "feature " + feature + " has no type that GeoJSON knows", "write it as a Feature with a Polygon, LineString or Point");
            }
        }
    }

    private static String layerOf(JsonNode properties) {
        for (String name : List.of("layer", "Layer", "kind", "name")) if (properties.path(name).isTextual()) return properties.get(name).asText().strip();
        return "";
    }

    /** Holes are passed over. */
    private void polygon(JsonNode rings, String layer) {
        drawing.line(layer, points(rings.path(0)), true, 0);
        for (int i = 1; i < rings.size(); i++) drawing.passOver("hole");
    }

    private void spot(JsonNode at, String layer) {
        OptionalDouble height = at.path(2).isNumber() ? OptionalDouble.of(at.get(2).asDouble()) : OptionalDouble.empty();
        point(at).ifPresent(point -> drawing.spot(layer, new Spot(point, height, OptionalDouble.empty()), feature));
    }

    private List<Point> points(JsonNode coordinates) {
        List<Point> points = new ArrayList<>();
        for (JsonNode one : coordinates) point(one).ifPresent(points::add);
        return points;
    }

    private Optional<Point> point(JsonNode at) {
        if (!at.path(0).isNumber() || !at.path(1).isNumber()) {
            drawing.bad(0, "feature " + feature + " has a place that is not two numbers", "write it as [longitude, latitude]");
            return Optional.empty();
        }
        double x = at.get(0).asDouble();
        double y = at.get(1).asDouble();
        if (!globe) return Optional.of(new Point(x, y));
        if (plane == null) plane = new LocalPlane(x, y);
        return Optional.of(plane.at(x, y));
    }
}
