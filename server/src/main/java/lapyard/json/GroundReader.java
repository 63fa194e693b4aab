package lapyard.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Ground;

/** The yard: outline, surfaces, keep-clear, levels, north. */
final class GroundReader {
    private static final int MOST_CORNERS = 200;
    /** Characters of a picture: a megabyte of it, a document being 5 at most. */
    private static final int MOST_PICTURE = 1_400_000;
    private static final String[] SURFACES = {"slab", "concrete", "gravel", "grass", "soil", "deck"};

    /** Clearance in mm that each kind of keep-clear usually asks for: common practice, no source. */
    static final Map<String, Double> CLEARANCE = Map.of(
            "gate", 0.0, "door", 900.0, "cover", 300.0, "drain", 300.0, "tap", 600.0, "tree", 1500.0, "air-brick", 300.0,
            "cable", 300.0, "wall", 0.0, "other", 0.0);

    private GroundReader() {}

    static Ground read(Cursor ground) {
        SurveyReader.Surveyed surveyed = SurveyReader.read(ground, MOST_CORNERS);
        List<Outline> outline = GardenReader.outline(ground, "outline", MOST_CORNERS).map(List::of).orElse(surveyed.outline());
        List<Ground.Surface> surfaces = new ArrayList<>();
        for (Cursor surface : ground.objects("surfaces", "surface", 500)) {
            String kind = surface.choice("kind", "slab", SURFACES);
            if (!surface.has("outline")) {
                surface.missing("outline", "\"outline\": [[0, 0], [3000, 0], [3000, 2000], [0, 2000]]");
            }
            GardenReader.outline(surface, "outline", MOST_CORNERS).ifPresent(o -> surfaces.add(new Ground.Surface(kind, o)));
            surface.refuseUnknown();
        }
        List<Ground.KeepClear> keepClear = new ArrayList<>();
        for (Cursor one : ground.objects("keepClear", "keep-clear", 500)) {
            keepClear.addAll(keepClear(one));
        }
        List<Ground.Level> levels = new ArrayList<>();
        for (Cursor level : ground.objects("levels", "level", 500)) {
            if (!level.has("at") || !level.has("drop")) {
                level.needed("{\"at\": [0, 0], \"drop\": 412}", "\"at\"", "\"drop\"");
            }
            levels.add(new Ground.Level(level.point("at", new Point(0, 0)), level.length("drop", 0, -20_000, 20_000)));
            level.refuseUnknown();
        }
        if (ground.has("picture")) picture(ground.object("picture"));
        double north = ground.number("north", 0, -360, 360, 3, "degrees");
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
        String data = picture.text("data", "", MOST_PICTURE);
        if (!data.matches("data:image/(?:png|jpeg);base64,[A-Za-z0-9+/=]+")) {
            picture.misshapen("data", "a PNG or JPEG picture", picture.raw("data"), "\"data:image/png;base64,...\"");
        }
        picture.point("at", new Point(0, 0));
        picture.length("width", 10_000, 1, Cursor.FAR_MM);
        picture.length("height", 10_000, 1, Cursor.FAR_MM);
        picture.number("turn", 0, -360, 360, 3, "degrees");
        picture.number("faint", 0.5, 0, 1, 2, "of the full strength");
        picture.flag("hidden", false);
        picture.refuseUnknown();
    }

    /** A line of several places is kept clear leg by leg. */
    private static List<Ground.KeepClear> keepClear(Cursor one) {
        String kind = one.choice("kind", "other", CLEARANCE.keySet().stream().sorted().toArray(String[]::new));
        double clearance = one.length("clearance", CLEARANCE.get(kind), 0, 20_000);
        List<List<Point>> shapes = new ArrayList<>();
        double leaf = 0;
        boolean swingsIn = true;
        if (kind.equals("gate")) {
            Point hinge = one.point("hinge", new Point(0, 0));
            leaf = one.length("leaf", 900, 100, 10_000);
            swingsIn = one.choice("swing", "in", "in", "out").equals("in");
            // without a direction the closed leaf lies along the side of the yard that the hinge hangs in
            if (one.has("closed")) {
                double closed = Math.toRadians(one.number("closed", 0, -360, 360, 3, "degrees"));
                shapes.add(List.of(hinge, new Point(hinge.x() + leaf * Math.cos(closed), hinge.y() + leaf * Math.sin(closed))));
            } else {
                shapes.add(List.of(hinge));
            }
        } else if (one.has("outline")) {
            GardenReader.outline(one, "outline", MOST_CORNERS).ifPresent(outline -> shapes.add(outline.corners()));
        } else if (one.has("line")) {
            List<Point> line = one.points("line", MOST_CORNERS);
            if (line.size() < 2) {
                one.few("line", line.size(), 2, "points");
            }
            for (int i = 1; i < line.size(); i++) {
                shapes.add(line.subList(i - 1, i + 1));
            }
        } else {
            if (!one.has("at")) {
                one.missing("at", "\"at\": [x, y], or a line or an outline");
            }
            shapes.add(List.of(one.point("at", new Point(0, 0))));
        }
        double dampCourse = one.length("dampCourse", 0, 0, 2_000);
        one.refuseUnknown();
        List<Ground.KeepClear> kept = new ArrayList<>();
        for (List<Point> shape : shapes) {
            kept.add(new Ground.KeepClear(kind, shape, clearance, leaf, swingsIn, dampCourse));
        }
        return kept;
    }
}
