package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Jts;
import lapyard.geometry.Measure;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;
import lapyard.working.Working;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * What one path takes. Shared area belongs to the path that stands first in the document.
 *
 * @param cover      the ground this path covers, for the drawing: union of its widths less beds, what stands up
 *                   and earlier paths; holes are cut open
 * @param strips     of the membrane, with their laps, in the order of laying; empty where the path has none
 * @param quantities path.area, path.volume of all layers, one a layer under the layer's item, edging.length and
 *                   edging.pegs where it has an edging, membrane and one membrane.strip a strip where it has a membrane
 */
public record PathWork(GardenPath path, List<Outline> cover, List<Strip> strips, List<Quantity> quantities) {
    /** Pegs that hold an edging stand this far apart at most. */
    private static final double PEG_EVERY_MM = 1000;

    public PathWork {
        cover = List.copyOf(cover);
        strips = List.copyOf(strips);
        quantities = List.copyOf(quantities);
    }

    /**
     * A straight piece of membrane.
     *
     * @param ends  of its ends that lap over other membrane; the lap is in the length
     * @param sides of its sides that do; the lap is in the width
     */
    public record Strip(double widthMm, double lengthMm, int ends, int sides) {}

    /** The same with other strips. */
    public PathWork with(List<Strip> others) {
        List<Quantity> same = quantities.stream().filter(one -> !one.is(QuantityKind.MEMBRANE_STRIP)).toList();
        List<Quantity> all = new ArrayList<>(same);
        others.forEach(strip -> all.add(quantity(path, strip)));
        return new PathWork(path, cover, others, all);
    }

    /** @param kept of which what stands up comes off the paths, and walls take no edging */
    public static List<PathWork> of(List<GardenPath> paths, List<Bed> beds, List<Ground.KeepClear> kept) {
        List<Geometry> bedAreas = beds.stream().map(bed -> Shapes.area(bed.inYard())).toList();
        List<Geometry> standing = new ArrayList<>(bedAreas);
        List<LineString> walls = new ArrayList<>();
        for (Ground.KeepClear one : kept) {
            Zone zone = Zone.of(0, one, Optional.empty());
            if (zone.solid()) {
                standing.add(zone.shape());
            } else if (one.kind() == KeepClearKind.WALL && zone.shape() instanceof LineString line) {
                walls.add(line);
            }
        }
        List<Geometry> before = new ArrayList<>(standing);
        List<Geometry> covers = new ArrayList<>();
        for (GardenPath path : paths) {
            Geometry whole = Shapes.strip(path);
            PreparedGeometry strip = PreparedGeometryFactory.prepare(whole);
            List<Geometry> taken = before.stream().filter(strip::intersects).toList();
            covers.add(taken.isEmpty() ? whole : Jts.less(whole, Shapes.union(taken)));
            before.add(whole);
        }
        List<List<Strip>> strips = Membrane.of(paths, covers);
        Edging edging = new Edging(paths, covers, standing, walls);
        List<PathWork> work = new ArrayList<>();
        for (int i = 0; i < paths.size(); i++) {
            work.add(new PathWork(
                    paths.get(i),
                    Shapes.outlines(covers.get(i)),
                    strips.get(i),
                    quantities(paths.get(i), covers.get(i), strips.get(i), edging.runsMm(i))));
        }
        return work;
    }

    private static List<Quantity> quantities(GardenPath path, Geometry cover, List<Strip> strips, List<Double> edgingRunsMm) {
        List<Quantity> quantities = new ArrayList<>();
        double areaM2 = cover.getArea() / 1e6;
        Working.Input area = Working.Input.of("area", areaM2, "m2");
        quantities.add(Quantity.of(QuantityKind.PATH_AREA, areaM2, "m2",
                "width along the line, bends mitred, ends flat, less beds and paths that stand before it", Working.GEOMETRY,
                Working.Input.of("width", path.widthMm(), "mm"), Working.Input.of("line", lengthMm(path.line()), "mm")));
        double depthMm = path.layers().stream().mapToDouble(GardenPath.Layer::depthMm).sum();
        quantities.add(Quantity.of(QuantityKind.PATH_VOLUME, areaM2 * depthMm / 1000, "m3",
                "area x depth of all layers", Working.GEOMETRY,
                area, Working.Input.of("depth", depthMm, "mm")));
        for (GardenPath.Layer layer : path.layers()) {
            quantities.add(Quantity.of(QuantityKind.MATERIAL.of(layer.item()), areaM2 * layer.depthMm() / 1000, "m3",
                    "area x depth", Working.GEOMETRY,
                    area, Working.Input.of("depth", layer.depthMm(), "mm")));
        }
        if (!path.edging().isEmpty()) edging(edgingRunsMm, quantities);
        if (!path.membrane().isEmpty()) {
            quantities.add(Quantity.of(QuantityKind.MEMBRANE, areaM2, "m2",
                    "area, without laps", Working.COMMON_PRACTICE,
                    area));
            strips.forEach(strip -> quantities.add(quantity(path, strip)));
        }
        return quantities;
    }

    private static Quantity quantity(GardenPath path, Strip strip) {
        return Quantity.of(QuantityKind.MEMBRANE_STRIP, strip.lengthMm() / 1000, "m",
                "the leg to its longest point, and a lap at each end that meets other membrane", Working.COMMON_PRACTICE,
                Working.Input.of("width", strip.widthMm(), "mm"), Working.Input.of("length", strip.lengthMm(), "mm"),
                Working.Input.of("lap", path.lapMm(), "mm"), Working.Input.of("lapped ends", strip.ends(), ""),
                Working.Input.of("lapped sides", strip.sides(), ""));
    }

    private static void edging(List<Double> runsMm, List<Quantity> quantities) {
        double lengthMm = 0;
        double pegs = 0;
        for (double run : runsMm) {
            lengthMm += run;
            pegs += Whole.up(run / PEG_EVERY_MM) + 1;
        }
        Working.Input runs = Working.Input.of("straight runs", runsMm.size(), "");
        quantities.add(Quantity.of(QuantityKind.EDGING_LENGTH, lengthMm / 1000, "m",
                "outline of all paths together, this path's part of it, less open ends and sides against beds and walls", Working.GEOMETRY,
                runs));
        quantities.add(Quantity.of(QuantityKind.EDGING_PEGS, pegs, "pegs",
                "sum over straight runs of ceil(run / " + Measure.plain(PEG_EVERY_MM, 1) + ") + 1", Working.COMMON_PRACTICE,
                runs, Working.Input.of("length", lengthMm, "mm")));
    }

    private static double lengthMm(List<Point> line) {
        double sum = 0;
        for (int i = 0; i + 1 < line.size(); i++) sum += line.get(i).distanceMm(line.get(i + 1));
        return sum;
    }
}
