package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lapyard.drawing.Shape;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Length;
import lapyard.geometry.Point;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;

/** The paths: what they cover, their middle lines, their names and widths. */
record PathShapes(Garden garden, List<PathCover> covers, Sketch sketch) {
    private static final double LONGEST_NAME = 50;

    /** @param middles whether the middle lines are drawn */
    Shape.Group shapes(boolean middles) {
        List<Shape> shapes = new ArrayList<>();
        List<String> materials = Legend.materials(covers);
        for (PathCover cover : covers) {
            Inks.Filling filling = sketch.inks().path(cover.material(), materials.indexOf(cover.material()));
            List<Shape> areas = new ArrayList<>();
            cover.cover().forEach(ring -> areas.add(filling.area(sketch.on(ring), sketch.pen(Inks.SECONDARY))));
            String name = cover.name().isBlank() || cover.name().equals(cover.id()) ? "" : ", " + cover.name();
            shapes.add(new Shape.Group(Shape.id("path", cover.id()), "Path " + cover.id() + name, "path", areas));
        }
        for (GardenPath path : garden.paths()) {
            if (path.line().size() > 1 && (middles || covers.isEmpty())) {
                shapes.add(new Shape.Lines(List.of(sketch.on(path.line())), Legend.centreLine(sketch.inks())));
            }
        }
        return new Shape.Group("paths", "", "paths", shapes);
    }

    Shape.Group names() {
        List<Shape> shapes = new ArrayList<>();
        garden.paths().forEach(path -> shapes.addAll(name(path)));
        return new Shape.Group("path-names", "", "names", shapes);
    }

    private List<Shape> name(GardenPath path) {
        String name = path.name().isBlank() ? path.id() : path.name();
        String wide = Length.written(path.widthMm(), garden.imperial()) + " wide";
        double size = Math.max(TypeSize.LEAST, Math.min(2.8, sketch.view().scale().paperMm(path.widthMm()) * 0.6));
        for (String text : List.of(TextMeasure.cut(name, size, false, LONGEST_NAME) + ", " + wide, wide)) {
            Words words = Words.of(text, size, false);
            List<Plate> plates = legs(path).stream().filter(leg -> leg.get(0).distanceMm(leg.get(1)) >= words.widthMm())
                    .flatMap(leg -> words.along(leg.get(0), leg.get(1), 0.5, 0.35, 0.65, 0.2, 0.8, 0.27, 0.73, 0.12, 0.88).stream()).toList();
            Optional<Plate> place = sketch.labels().firstClear(plates);
            if (place.isPresent()) return words.on(place.get(), sketch.inks());
        }
        return List.of();
    }

    /** The straight parts on the paper, longest first. */
    private List<List<Point>> legs(GardenPath path) {
        List<Point> line = sketch.on(path.line());
        List<List<Point>> legs = new ArrayList<>();
        for (int i = 0; i + 1 < line.size(); i++) {
            legs.add(List.of(line.get(i), line.get(i + 1)));
        }
        legs.sort(Comparator.comparingDouble(leg -> -leg.get(0).distanceMm(leg.get(1))));
        return legs;
    }
}
