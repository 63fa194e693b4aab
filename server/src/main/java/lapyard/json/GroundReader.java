package lapyard.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.SurfaceKind;

/** The yard: outline, surfaces, keep-clear, levels, north. */
final class GroundReader {
    /** Characters of a picture: a megabyte of it, a document being 5 at most. */

    /** Clearance in mm that each kind of keep-clear usually asks for: common practice, no source. */
    private GroundReader() {}

    static Ground read(Cursor ground) {
        SurveyReader.Surveyed surveyed = SurveyReader.read(ground);
        List<Outline> outline = GardenReader.outline(ground, "outline").map(List::of).orElse(surveyed.outline());
        List<Ground.Surface> surfaces = new ArrayList<>();
        for (Cursor surface : ground.objects("surfaces", "surface")) {
            SurfaceKind kind = SurfaceKind.of(surface.choice("kind"));
            if (!surface.has("outline")) surface.missing("outline", "\"outline\": [[0, 0], [3000, 0], [3000, 2000], [0, 2000]]");
            GardenReader.outline(surface, "outline").ifPresent(o -> surfaces.add(new Ground.Surface(kind, o)));
            surface.refuseUnknown();
        }
        List<Ground.KeepClear> keepClear = new ArrayList<>();
        for (Cursor one : ground.objects("keepClear", "keep-clear")) keepClear.addAll(keepClear(one));
        List<Ground.Level> levels = new ArrayList<>();
        for (Cursor level : ground.objects("levels", "level")) {
            if (!level.has("at") || !level.has("drop")) level.needed("{\"at\": [0, 0], \"drop\": 412}", "\"at\"", "\"drop\"");
            levels.add(new Ground.Level(level.point("at", new Point(0, 0)), level.number("drop", 0)));
            level.refuseUnknown();
        }
        if (ground.has("picture")) picture(ground.object("picture"));
        double north = ground.number("north");
        Ground read = new Ground(
                outline,
                surfaces,
                keepClear,
                levels,
                north,
                surveyed.survey(),
                YardWorkReader.baseline(ground),
                YardWorkReader.preparation(ground.object("preparation")),
                YardWorkReader.rims(ground),
                YardWorkReader.access(ground),
                YardWorkReader.tall(ground),
                YardWorkReader.sun(ground));
        ground.refuseUnknown();
        return read;
    }

    /** A picture of the site that lies under the yard on the page: looked at, and never reckoned with. */
    private static void picture(Cursor picture) {
        String data = picture.text("data");
        if (!data.matches("data:image/(?:png|jpeg);base64,[A-Za-z0-9+/=]+")) {
            picture.misshapen("data", "a PNG or JPEG picture", picture.raw("data"), "\"data:image/png;base64,...\"");
        }
        picture.point("at", new Point(0, 0));
        picture.number("width");
        picture.number("height");
        picture.number("turn", 0);
        picture.number("faint");
        picture.flag("hidden");
        picture.refuseUnknown();
    }

    /** A line of several places is kept clear leg by leg. */
    private static List<Ground.KeepClear> keepClear(Cursor one) {
        KeepClearKind kind = KeepClearKind.of(one.choice("kind"));
        double clearance = one.number("clearance", kind.clearanceMm);
        List<List<Point>> shapes = new ArrayList<>();
        double leaf = 0;
        boolean swingsIn = true;
        if (kind == KeepClearKind.GATE) {
            Point hinge = one.point("hinge", new Point(0, 0));
            leaf = one.number("leaf");
            swingsIn = one.choice("swing").equals("in");
            // without a direction the closed leaf lies along the side of the yard that the hinge hangs in
            if (one.has("closed")) {
                double closed = Math.toRadians(one.number("closed", 0));
                shapes.add(List.of(hinge, new Point(hinge.x() + leaf * Math.cos(closed), hinge.y() + leaf * Math.sin(closed))));
            } else {
                shapes.add(List.of(hinge));
            }
        } else if (one.has("outline")) {
            GardenReader.outline(one, "outline").ifPresent(outline -> shapes.add(outline.corners()));
        } else if (one.has("line")) {
            List<Point> line = one.points("line");
            if (line.size() < 2) one.few("line", line.size(), 2, "points");
            for (int i = 1; i < line.size(); i++) shapes.add(line.subList(i - 1, i + 1));
        } else {
            if (!one.has("at")) one.missing("at", "\"at\": [x, y], or a line or an outline");
            shapes.add(List.of(one.point("at", new Point(0, 0))));
        }
        double dampCourse = one.number("dampCourse");
        one.refuseUnknown();
        List<Ground.KeepClear> kept = new ArrayList<>();
        for (List<Point> shape : shapes) kept.add(new Ground.KeepClear(kind, shape, clearance, leaf, swingsIn, dampCourse));
        return kept;
    }
}
