package lapyard.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Preparation;
import lapyard.plan.SurfaceKind;

/** The yard: outline, surfaces, keep-clear, levels, north. */
final class GroundReader {
    private GroundReader() {}

    static Ground read(Cursor ground, boolean imperial) {
        SurveyReader.Surveyed surveyed = SurveyReader.read(ground);
        List<Outline> outline = GardenReader.outline(ground, "outline").map(List::of).orElse(surveyed.outline());
        List<Ground.Surface> surfaces = ground.each("surfaces", "surface", GroundReader::surface).stream().flatMap(Optional::stream).toList();
        List<Ground.KeepClear> keepClear = ground.each("keepClear", "keep-clear", GroundReader::keepClear).stream().flatMap(List::stream).toList();
        List<Ground.Level> levels = ground.each("levels", "level", level -> {
            if (!level.has("at") || !level.has("drop")) level.needed("{\"at\": [0, 0], \"drop\": 412}", "\"at\"", "\"drop\"");
            return new Ground.Level(level.point("at"), level.number("drop", 0));
        });
        ground.readIfAny("picture", GroundReader::picture);
        double north = ground.number("north");
        return new Ground(
                outline,
                surfaces,
                keepClear,
                levels,
                north,
                surveyed.survey(),
                ground.readIfAny("baseline", YardWorkReader::baseline),
                ground.like("preparation", Preparation.USUAL),
                YardWorkReader.rims(ground),
                YardWorkReader.access(ground, imperial),
                YardWorkReader.tall(ground),
                ground.readIfAny("sun", YardWorkReader::sun).flatMap(sun -> sun));
    }

    private static Optional<Ground.Surface> surface(Cursor surface) {
        SurfaceKind kind = SurfaceKind.of(surface.choice("kind"));
        if (!surface.has("outline")) surface.missing("outline", "\"outline\": [[0, 0], [3000, 0], [3000, 2000], [0, 2000]]");
        return GardenReader.outline(surface, "outline").map(outline -> new Ground.Surface(kind, outline));
    }

    /** A picture of the site that lies under the yard on the page: looked at, and never reckoned with. */
    private static String picture(Cursor picture) {
        String data = picture.text("data");
        if (!data.matches("data:image/(?:png|jpeg);base64,[A-Za-z0-9+/=]+")) {
            picture.misshapen("data", "a PNG or JPEG picture", picture.raw("data"), "\"data:image/png;base64,...\"");
        }
        picture.point("at");
        picture.number("width");
        picture.number("height");
        picture.number("turn", 0);
        picture.number("faint");
        picture.flag("hidden");
        return data;
    }

    /** A line of several places is kept clear leg by leg. */
    private static List<Ground.KeepClear> keepClear(Cursor one) {
        KeepClearKind kind = KeepClearKind.of(one.choice("kind"));
        double clearance = one.number("clearance", kind.clearanceMm);
        List<List<Point>> shapes = new ArrayList<>();
        double leaf = 0;
        boolean swingsIn = true;
        if (kind == KeepClearKind.GATE) {
            Point hinge = one.point("hinge");
            leaf = one.number("leaf");
            swingsIn = one.choice("swing").equals("in");
            // without a direction the closed leaf lies along the side of the yard that the hinge hangs in
            double closed = one.has("closed") ? Math.toRadians(one.number("closed", 0)) : 0;
            Point end = new Point(hinge.x() + leaf * Math.cos(closed), hinge.y() + leaf * Math.sin(closed));
            shapes.add(one.has("closed") ? List.of(hinge, end) : List.of(hinge));
        } else if (one.has("outline")) {
            GardenReader.outline(one, "outline").ifPresent(outline -> shapes.add(outline.corners()));
        } else if (one.has("line")) {
            List<Point> line = one.points("line");
            if (line.size() < 2) one.few("line", line.size(), 2, "points");
            for (int i = 1; i < line.size(); i++) shapes.add(line.subList(i - 1, i + 1));
        } else {
            if (!one.has("at")) one.missing("at", "\"at\": [x, y], or a line or an outline");
            shapes.add(List.of(one.point("at")));
        }
        double dampCourse = one.number("dampCourse");
        List<Ground.KeepClear> kept = new ArrayList<>();
        for (List<Point> shape : shapes) kept.add(new Ground.KeepClear(kind, shape, clearance, leaf, swingsIn, dampCourse));
        return kept;
    }
}
