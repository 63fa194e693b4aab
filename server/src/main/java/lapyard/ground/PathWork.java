package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground;
import lapyard.working.Quantity;
import lapyard.working.Working;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * What one path takes. Shared area belongs to the path that stands first in the document.
 *
 * @param cover      the ground this path covers, for the drawing: union of its widths less beds, what stands up
 *                   and earlier paths; holes are cut open
 * @param quantities path.area, path.volume of all layers, one a layer under the layer's item, edging.length and
 *                   edging.pegs where it has an edging, membrane and one membrane.strip a strip where it has a membrane
 */
public record PathWork(GardenPath path, List<Outline> cover, List<Quantity> quantities) {
    /** Pegs that hold an edging stand this far apart at most. */
    private static final double PEG_EVERY_MM = 1000;

    public PathWork {
        cover = List.copyOf(cover);
        quantities = List.copyOf(quantities);
    }

    /** A straight piece of membrane; joints between strips have no lap. */
    public record Strip(double widthMm, double lengthMm) {}

    public static List<PathWork> of(List<GardenPath> paths, List<Bed> beds) {
        return of(paths, beds, List.of());
    }

    /** @param kept of which what stands up comes off the paths, and walls take no edging */
    public static List<PathWork> of(List<GardenPath> paths, List<Bed> beds, List<Ground.KeepClear> kept) {
        List<Geometry> bedAreas =
                beds.stream().map(bed -> Shapes.area(bed.inYard())).toList();
        List<Geometry> standing = new ArrayList<>(bedAreas);
        List<LineString> walls = new ArrayList<>();
        for (Ground.KeepClear one : kept) {
            Zone zone = Zone.of(0, one, Optional.empty());
            if (zone.solid()) {
                standing.add(zone.shape());
            } else if (one.kind().equals("wall") && zone.shape() instanceof LineString line) {
                walls.add(line);
            }
        }
        List<Geometry> before = new ArrayList<>(standing);
        List<Geometry> covers = new ArrayList<>();
        for (GardenPath path : paths) {
            Geometry whole = Shapes.strip(path);
            PreparedGeometry strip = PreparedGeometryFactory.prepare(whole);
            List<Geometry> taken = before.stream().filter(strip::intersects).toList();
            covers.add(taken.isEmpty() ? whole : Shapes.less(whole, Shapes.union(taken)));
            before.add(whole);
        }
        Edging edging = new Edging(paths, covers, standing, walls);
        List<PathWork> work = new ArrayList<>();
        for (int i = 0; i < paths.size(); i++) {
            work.add(new PathWork(
                    paths.get(i),
                    Shapes.outlines(covers.get(i)),
                    quantities(paths.get(i), covers.get(i), edging.runsMm(i))));
        }
        return work;
    }

    /** The membrane in straight strips, leg by leg; empty where the path has none. */
    public List<Strip> membraneStrips() {
        if (path.membrane().isEmpty()) {
            return List.of();
        }
        return strips(path, Shapes.union(cover.stream().map(Shapes::area).toList()));
    }

    private static List<Quantity> quantities(GardenPath path, Geometry cover, List<Double> edgingRunsMm) {
        List<Quantity> quantities = new ArrayList<>();
        double areaM2 = cover.getArea() / 1e6;
        Working.Input area = Working.Input.of("area", areaM2, "m2");
        quantities.add(new Quantity(
                "path.area",
                areaM2,
                "m2",
                Working.of(
                        "width along the line, bends mitred, ends flat, less beds and paths that stand before it",
                        Working.GEOMETRY,
                        Working.Input.of("width", path.widthMm(), "mm"),
                        Working.Input.of("line", lengthMm(path.line()), "mm"))));
        double depthMm =
                path.layers().stream().mapToDouble(GardenPath.Layer::depthMm).sum();
        quantities.add(new Quantity(
                "path.volume",
                areaM2 * depthMm / 1000,
                "m3",
                Working.of(
                        "area x depth of all layers",
                        Working.GEOMETRY,
                        area,
                        Working.Input.of("depth", depthMm, "mm"))));
        for (GardenPath.Layer layer : path.layers()) {
            quantities.add(new Quantity(
                    layer.item(),
                    areaM2 * layer.depthMm() / 1000,
                    "m3",
                    Working.of(
                            "area x depth", Working.GEOMETRY, area, Working.Input.of("depth", layer.depthMm(), "mm"))));
        }
        if (!path.edging().isEmpty()) {
            edging(edgingRunsMm, quantities);
        }
        if (!path.membrane().isEmpty()) {
            quantities.add(new Quantity(
                    "membrane", areaM2, "m2", Working.of("area, without laps", Working.COMMON_PRACTICE, area)));
            for (Strip strip : strips(path, cover)) {
                quantities.add(new Quantity(
                        "membrane.strip",
                        strip.lengthMm() / 1000,
                        "m",
                        Working.of(
                                "the leg with its mitres, to the longest point",
                                Working.COMMON_PRACTICE,
                                Working.Input.of("width", strip.widthMm(), "mm"),
                                Working.Input.of("length", strip.lengthMm(), "mm"))));
            }
        }
        return quantities;
    }

    private static void edging(List<Double> runsMm, List<Quantity> quantities) {
        double lengthMm = 0;
        double pegs = 0;
        for (double run : runsMm) {
            lengthMm += run;
            pegs += Math.ceil(run / PEG_EVERY_MM - 1e-9) + 1;
        }
        Working.Input runs = Working.Input.of("straight runs", runsMm.size(), "");
        quantities.add(new Quantity(
                "edging.length",
                lengthMm / 1000,
                "m",
                Working.of(
                        "outline of all paths together, this path's part of it, less open ends and sides against beds and walls",
                        Working.GEOMETRY,
                        runs)));
        quantities.add(new Quantity(
                "edging.pegs",
                pegs,
                "pegs",
                Working.of(
                        "sum over straight runs of ceil(run / " + Say.mm(PEG_EVERY_MM) + ") + 1",
                        Working.COMMON_PRACTICE,
                        runs,
                        Working.Input.of("length", lengthMm, "mm"))));
    }

    /** What of each leg, mitres included, lies in the cover: each part as long and as wide as it needs. */
    private static List<Strip> strips(GardenPath path, Geometry cover) {
        List<Strip> strips = new ArrayList<>();
        List<Point> line = Shapes.legs(path.line());
        for (int i = 0; i + 1 < line.size(); i++) {
            Point from = line.get(i);
            Point to = line.get(i + 1);
            double length = from.distanceMm(to);
            double alongX = (to.x() - from.x()) / length;
            double alongY = (to.y() - from.y()) / length;
            double before = i == 0 ? 0 : mitreMm(line.get(i - 1), from, to, path.widthMm());
            double after = i + 2 == line.size() ? 0 : mitreMm(from, to, line.get(i + 2), path.widthMm());
            Polygon leg = band(from, alongX, alongY, -before, length + after, path.widthMm() / 2);
            for (Polygon part : Shapes.polygons(Shapes.common(leg, cover))) {
                double[] along = extent(part, from, alongX, alongY);
                double[] across = extent(part, from, -alongY, alongX);
                if (along[1] - along[0] > Shapes.TOUCH_MM && across[1] - across[0] > Shapes.TOUCH_MM) {
                    strips.add(new Strip(upToTenth(across[1] - across[0]), upToTenth(along[1] - along[0])));
                }
            }
        }
        return strips;
    }

    /** No blade follows less than a tenth; what joining shapes adds below a thousandth is no length. */
    private static double upToTenth(double mm) {
        return Math.ceil((mm - 1e-3) * 10) / 10;
    }

    /** How far the outer side of a bend runs past the middle of the line: width / 2 x tan(turn / 2). */
    private static double mitreMm(Point before, Point bend, Point after, double widthMm) {
        double turn = Math.abs(Math.atan2(after.y() - bend.y(), after.x() - bend.x())
                - Math.atan2(bend.y() - before.y(), bend.x() - before.x()));
        turn = turn > Math.PI ? 2 * Math.PI - turn : turn;
        return widthMm / 2 * Math.min(10, Math.tan(turn / 2));
    }

    private static Polygon band(Point from, double alongX, double alongY, double start, double end, double half) {
        double[][] corners = {{start, -half}, {end, -half}, {end, half}, {start, half}, {start, -half}};
        Coordinate[] ring = new Coordinate[corners.length];
        for (int i = 0; i < ring.length; i++) {
            double u = corners[i][0];
            double v = corners[i][1];
            ring[i] = new Coordinate(from.x() + u * alongX - v * alongY, from.y() + u * alongY + v * alongX);
        }
        return Shapes.FACTORY.createPolygon(ring);
    }

    private static double[] extent(Geometry part, Point origin, double x, double y) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Coordinate corner : part.getCoordinates()) {
            double value = (corner.x - origin.x()) * x + (corner.y - origin.y()) * y;
            least = Math.min(least, value);
            most = Math.max(most, value);
        }
        return new double[] {least, most};
    }

    private static double lengthMm(List<Point> line) {
        double sum = 0;
        for (int i = 0; i + 1 < line.size(); i++) {
            sum += line.get(i).distanceMm(line.get(i + 1));
        }
        return sum;
    }
}
