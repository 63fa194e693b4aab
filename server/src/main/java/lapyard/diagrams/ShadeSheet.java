package lapyard.diagrams;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lapyard.drawing.Page;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.SunHours;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.Tall;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** The yard by its hours of direct sun on one day, with the hours of each bed beside it. */
public record ShadeSheet(Garden garden, SunHours sun, BenchSheet sheet, List<Shape> shapes) {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final double PANEL = 78;
    private static final double RIM = 6;

    private static final String CAUTION =
            "Worked out for a clear sky and flat tops. Trees grow and lose their leaves; walk round on the day and look.";

    public static Page page(Garden garden, SunHours sun, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(CAUTION, options);
        return sheet.pages(List.of(new ShadeSheet(garden, sun, sheet, new ArrayList<>()).draft())).get(0);
    }

    private BenchSheet.Draft draft() {
        Box space = sheet.space();
        Box field = new Box(space.left(), space.low(), space.right() - PANEL - 4, space.high());
        View view = View.usual(extent(), field, RIM, garden.imperial());
        shapes.addAll(cells(garden, sun, view, sheet.inks));
        garden.ground().outline().forEach(yard ->
                shapes.add(Shape.Area.outline(view.on(yard), sheet.inks.pen(Inks.WIDE))));
        Labels labels = new Labels(field);
        garden.ground().tall().forEach(thing -> tall(thing, view, labels));
        for (int i = 0; i < garden.beds().size(); i++) {
            bed(garden.beds().get(i), sun.beds().get(i), view, labels);
        }
        panel(new Box(space.right() - PANEL, space.low(), space.right(), space.high()), view.scale());
        String day = sun.day().day().toString();
        return new BenchSheet.Draft(
                "Sun and shade",
                day + ", " + degrees(sun.day().latitudeDeg(), "N", "S") + " " + degrees(sun.day().longitudeDeg(), "E", "W")
                        + ", times in " + sun.day().zone().getId(),
                shapes);
    }

    private static String degrees(double value, String above, String below) {
        return String.format(Locale.ROOT, "%.3f° %s", Math.abs(value), value < 0 ? below : above);
    }

    private Box extent() {
        List<Point> points = new ArrayList<>();
        for (Tall thing : garden.ground().tall()) {
            for (Point place : thing.shape()) {
                double half = thing.spreadMm() / 2;
                points.add(place.plus(-half, -half));
                points.add(place.plus(half, half));
            }
        }
        return Box.round(garden, points);
    }

    private void tall(Tall thing, View view, Labels labels) {
        List<Point> on = view.on(thing.shape());
        if (on.size() == 1) {
            double radius = Math.max(0.8, view.scale().paperMm(thing.spreadMm() / 2));
            shapes.add(new Shape.Circle(on.get(0), radius, Optional.empty(), Optional.of(sheet.inks.pen(Inks.MEDIUM))));
            shapes.add(Shape.Circle.dot(on.get(0), 0.7, sheet.inks.ink()));
        } else {
            shapes.add(new Shape.Lines(List.of(on), sheet.inks.pen(1.4)));
        }
        Words words = Words.of(thing.kind() + " " + sheet.written(thing.heightMm()), 2.8, false);
        Point middle = on.size() == 1 ? on.get(0) : on.get(0).middle(on.get(1));
        List<Plate> plates = Stream.of(new double[][] {{0, 4}, {0, -4}, {0, 8}, {0, -8}, {14, 4}, {-14, 4}, {14, -4}, {-14, -4}})
                .map(off -> words.at(middle.plus(off[0], off[1]), 0)).toList();
        shapes.addAll(words.first(labels, plates, sheet.inks.ink(), sheet.inks.plate()));
    }

    private void bed(Bed bed, SunHours.BedSun hours, View view, Labels labels) {
        List<Point> ring = view.on(bed.inYard());
        shapes.add(Shape.Area.outline(ring, sheet.inks.pen(Inks.BROAD)));
        Words words = new Words(List.of(
                new Words.Line(bed.id(), 3.4, true), new Words.Line(hours(hours.meanHours()), 3, false)));
        labels.within(ring, words).ifPresent(plate -> shapes.addAll(words.on(plate, sheet.inks)));
    }

    private static String hours(double hours) {
        return String.format(Locale.ROOT, "%.1f h", hours);
    }

    private void panel(Box box, Scale scale) {
        double y = box.low() + 5;
        shapes.add(sheet.text(box.left(), y, "Direct sun in the day", 4.4, true).as(Tag.subheading()));
        y += 4;
        for (SunHours.Light light : SunHours.Light.values()) {
            shapes.add(sheet.inks.light(light.ordinal()).area(new Box(box.left(), y, box.left() + 10, y + 5), sheet.inks.pen(Inks.THIN)));
            shapes.add(sheet.text(box.left() + 13, y + 3.9, words(light), 3.4, false).as(Tag.paragraph()));
            y += 7.4;
        }
        y += 3;
        shapes.add(sheet.text(
                box.left(), y, "rises " + time(sun.rise()) + ", sets " + time(sun.set()), 3.6, false).as(Tag.paragraph()));
        BenchTable table = new BenchTable(sheet, "Each bed", new BenchTable.Column("bed", 0.24, true), new BenchTable.Column("mean", 0.19, true),
                new BenchTable.Column("least – most", 0.26, false), new BenchTable.Column("light", 0.31, false));
        sun.beds().forEach(bed -> table.row(bed.bed(), hours(bed.meanHours()),
                String.format(Locale.ROOT, "%.1f – %.1f", bed.leastHours(), bed.mostHours()), bed.light().words));
        List<Flow.Block> rows = table.blocks(PANEL);
        shapes.addAll(new Columns(List.of(new Box(box.left(), y + 3, box.right(), box.high() - 22))).list(
                rows.get(0), rows.subList(1, rows.size()), left -> new Flow.Block(5, false, (x, at) ->
                        List.of(sheet.text(x, at + 4.2, left + " more beds: see the job sheet", 3, false).as(Tag.paragraph())))));
        shapes.addAll(new Panel(PANEL, sheet.inks)
                .barAndNorth(scale, garden, false, box.left(), box.high() - 20));
    }

    private static String time(Optional<ZonedDateTime> at) {
        return at.map(TIME::format).orElse("not");
    }

    /** Squares of one kind of light are drawn as one area, cut at the edge of the yard. */
    static List<Shape> cells(Garden garden, SunHours sun, View view, Inks inks) {
        Map<SunHours.Light, List<Geometry>> squares = new EnumMap<>(SunHours.Light.class);
        for (SunHours.Cell cell : sun.cells()) {
            squares.computeIfAbsent(SunHours.Light.of(cell.hours()), light -> new ArrayList<>())
                    .add(Jts.area(Box.about(cell.middle(), sun.cellMm() / 2).corners()));
        }
        List<Shape> shapes = new ArrayList<>();
        for (Outline yard : garden.ground().outline()) {
            Geometry ground = Jts.area(yard.corners());
            squares.forEach((light, own) -> {
                Inks.Filling filling = inks.light(light.ordinal());
                List<Shape> areas = Jts.areas(Jts.common(OverlayNGRobust.union(own), ground)).stream()
                        .map(rings -> (Shape) filling.areas(rings.stream().map(view::on).toList(), Optional.empty()))
                        .toList();
                shapes.add(new Shape.Group(
                        "light-" + light.name().toLowerCase(Locale.ROOT).replace('_', '-'), light.words, "light", areas));
            });
        }
        return shapes;
    }

    /** What a kind of light is called in a legend. */
    static String words(SunHours.Light light) {
        return light.words + switch (light) {
            case FULL_SUN -> ", 6 h and more";
            case PART_SHADE -> ", 3 to 6 h";
            case SHADE -> ", under 3 h";
        };
    }
}
