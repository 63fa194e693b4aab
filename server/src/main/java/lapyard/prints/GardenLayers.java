package lapyard.prints;

import java.util.List;
import java.util.TreeSet;
import lapyard.exchange.LayeredDrawing;
import lapyard.exchange.LayeredDrawing.Colour;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.job.JobSheet;
import lapyard.plan.Bed;
import lapyard.plan.Ground;

/** The plan of a job sheet on layers, in true size: the yard and what is in it, beds with both faces of their walls, paths, names, levels. */
public final class GardenLayers {
    private static final String YARD = "Outline";
    private static final String SURFACE = "Surface ";
    private static final String KEEP_CLEAR = "Keep clear ";
    private static final String PATHS = "Paths";
    private static final String BEDS = "Beds";
    private static final String NAMES = "Names";
    private static final String LEVELS = "Levels";

    /** Of a bed's name; readable on A3 at 1:50. */
    private static final double NAME_MM = 150;
    private static final double LEVEL_MM = 60;

    private GardenLayers() {}

    public static LayeredDrawing of(JobSheet sheet) {
        Ground ground = sheet.garden().ground();
        LayeredDrawing drawing = new LayeredDrawing().layer(YARD, Colour.INK);
        new TreeSet<>(ground.surfaces().stream().map(surface -> surface.kind().code()).toList()).forEach(kind -> drawing.layer(SURFACE + kind, Colour.GREEN));
        new TreeSet<>(ground.keepClear().stream().map(thing -> thing.kind().code()).toList()).forEach(kind -> drawing.layer(KEEP_CLEAR + kind, Colour.RED));
        drawing.layer(PATHS, Colour.GREY).layer(BEDS, Colour.BROWN).layer(LayeredDrawing.INNER_FACES, Colour.BROWN).layer(NAMES, Colour.INK).layer(LEVELS, Colour.BLUE);

        ground.outline().forEach(outline -> drawing.line(YARD, outline.corners(), true, 0));
        ground.surfaces().forEach(surface -> drawing.line(SURFACE + surface.kind().code(), surface.outline().corners(), true, 0));
        ground.keepClear().forEach(thing -> keepClear(drawing, thing));
        sheet.paths().forEach(path -> path.cover().forEach(cover -> drawing.line(PATHS, cover.corners(), true, 0)));
        sheet.beds().forEach(bed -> bed(drawing, bed));
        ground.levels().forEach(level -> {
            drawing.spot(LEVELS, level.at(), -level.dropMm());
            drawing.words(LEVELS, new Point(level.at().x(), level.at().y() + LEVEL_MM), LEVEL_MM, String.valueOf(Math.round(level.dropMm())));
        });
        return drawing;
    }

    private static void keepClear(LayeredDrawing drawing, Ground.KeepClear thing) {
        String layer = KEEP_CLEAR + thing.kind().code();
        List<Point> shape = thing.shape();
        if (shape.size() == 1) drawing.spot(layer, shape.get(0), 0);
        else drawing.line(layer, shape, shape.size() > 2, 0);
    }

    private static void bed(LayeredDrawing drawing, JobSheet.BedSheet sheet) {
        Bed bed = sheet.work().bed();
        Outline outer = bed.outline().placed(bed.placement());
        Outline inner = sheet.work().frame().inner().placed(bed.placement());
        drawing.line(BEDS, outer.corners(), true, bed.heightMm());
        drawing.line(LayeredDrawing.INNER_FACES, inner.corners(), true, bed.heightMm());
        double x = outer.corners().stream().mapToDouble(Point::x).average().orElse(0);
        double y = outer.corners().stream().mapToDouble(Point::y).average().orElse(0);
        drawing.words(NAMES, new Point(x, y), NAME_MM, bed.id());
    }
}
