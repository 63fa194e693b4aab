package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.drawing.Scale;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Length;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;
import lapyard.plan.Garden;
import lapyard.working.Whole;

/** All that stands beside a drawing: legend, cautions and snags that flow from column to column, and the title block. */
record Panel(double width, Inks inks) {
    static final double TEXT = 2.75;

    /** Title, then rows of fields, then scale bar and north. */
    static final double BLOCK_HEIGHT = 40;

    static final double BAR_HEIGHT = 20;
    static final double FIXED_HEIGHT = BLOCK_HEIGHT + 3 + BAR_HEIGHT;

    private static final double PITCH = 1.3;
    private static final double CAPTION = TypeSize.LEAST;
    private static final double PAD = 1.2;
    private static final double TITLE = 3.6;

    /** What stands beside it is the heading of the sheet. */
    private static final String DOCUMENT_TYPE = "Document type";

    /** What the block grows by, upwards into the room below the scale bar, where the title takes two lines. */
    private static final double SECOND_LINE = 2.6;

    private static final List<String> CAUTIONS = List.of(
            "Copies change size: trust the written sizes, and check this print against its scale bar.",
            "Find buried pipes and cables before anything is dug or driven.",
            "Heavy timber: two people or more lift each piece whose mark has a dot. Saw with eyes, ears and lungs covered.",
            "Walls that hold back ground and beds on decks are not designed here: ask a licensed person. Local rules go first.");

    Flow.Block heading(String words) {
        return new Flow.Block(6.2, false, (x, y) -> List.of(inks.text(x, y + 4.6, words, 2.9, true).as(Tag.subheading())));
    }

    Flow.Block entry(Legend.Entry entry) {
        List<String> lines = TextMeasure.wrap(entry.words(), TEXT, false, width - 12.5);
        double height = Math.max(4.9, lines.size() * TEXT * PITCH + 1.2);
        return new Flow.Block(height, false, (x, y) -> {
            List<Shape> shapes = new ArrayList<>(entry.sample().apply(new Box(x, y + 0.6, x + 10, y + 4.3)));
            shapes.addAll(inks.lines(x + 12.5, y + 3.3, TEXT * PITCH, lines, TEXT, false, Tag.paragraph()));
            return shapes;
        });
    }

    /** Text in as many lines as it needs, up to {@code most}. */
    Flow.Block words(String words, int most) {
        return words(words, most, 0, (x, y) -> List.of());
    }

    /** A snag beside its letter. */
    Flow.Block snag(String letter, String words) {
        return words(words, 3, 5.2, (x, y) -> PlanSnags.sign(letter, new Point(x + 1.9, y + 1.6), inks));
    }

    private Flow.Block words(String words, int most, double indent, Flow.Drawer sign) {
        double size = TypeSize.LEAST;
        List<String> wrapped = TextMeasure.wrap(words, size, false, width - indent);
        List<String> lines = new ArrayList<>(wrapped.subList(0, Math.min(most, wrapped.size())));
        if (wrapped.size() > most) {
            lines.set(most - 1, TextMeasure.cut(lines.get(most - 1), size, false, width - indent - 2) + "…");
        }
        double pitch = size * PITCH;
        double height = Math.max(lines.size() * pitch + 1, indent > 0 ? 4.4 : 0);
        return new Flow.Block(height, false, (x, y) -> {
            List<Shape> shapes = new ArrayList<>(sign.at(x, y));
            shapes.addAll(inks.lines(x + indent, y + pitch * 0.8, pitch, lines, size, false, Tag.paragraph()));
            return shapes;
        });
    }

    List<Flow.Block> cautions() {
        List<Flow.Block> pieces = new ArrayList<>();
        pieces.add(heading("Cautions"));
        CAUTIONS.forEach(caution -> pieces.add(words(caution, 9)));
        return pieces;
    }

    record Title(
            String garden, String kind, String client, String drawnBy, String address, String revision, String date, String sheet, String paper, boolean imperial) {}

    /**
     * Title block after ISO 7200:2004: title, document type, client, revision, date of issue, sheet, who drew it, and the
     * address, scale, paper and unit beside them. Fields that a garden does not know are left open to be written in by hand. Its lower edge lies at {@code y + BLOCK_HEIGHT}.
     */
    List<Shape> title(Title title, Scale scale, double x, double y) {
        List<Shape> shapes = new ArrayList<>();
        double more = fitting(title.garden(), TITLE, true, width - 2 * PAD) < 0 ? SECOND_LINE : 0;
        shapes.add(Inks.plain(inks.paper()).area(new Box(x, y - more, x + width, y + BLOCK_HEIGHT), inks.pen(Inks.OUTLINE)));
        double row = 7.6;
        double top = BLOCK_HEIGHT - 4 * row;
        field(shapes, x, y - more, width, top + more, "Title", title.garden(), TITLE, true);
        double at = y + top;
        double client = share(title.client(), 0.5, 0.68);
        cells(shapes, x, at, row, new double[] {1 - client, client}, DOCUMENT_TYPE, title.kind(), "Client", title.client());
        at += row;
        cells(
                shapes, x, at, row, new double[] {0.4, 0.36, 0.24}, "Revision", title.revision(), "Date of issue",
                title.date(), "Sheet", title.sheet());
        at += row;
        String unit = title.imperial() ? "feet, inches" : "mm";
        cells(
                shapes, x, at, row, new double[] {0.5, 0.24, 0.26}, "Scale", scale.label(title.imperial()), "Paper",
                title.paper(), "Lengths in", unit);
        at += row;
        double drawn = share(title.drawnBy(), 0.36, 0.6);
        cells(shapes, x, at, row, new double[] {drawn, 1 - drawn}, "Drawn by", title.drawnBy(), "Address", title.address());
        return shapes;
    }

    /** The largest size at which a value is read whole on one line; where there is none the least, below 0. */
    private static double fitting(String value, double size, boolean bold, double mostMm) {
        double fitting = size;
        while (fitting > Math.max(TypeSize.LEAST, size * 0.7) + 0.2 && TextMeasure.widthMm(value, fitting, bold) > mostMm) fitting -= 0.2;
        return TextMeasure.widthMm(value, fitting, bold) > mostMm ? -fitting : fitting;
    }

    /** The part of a row that a value needs to be read whole, within bounds. */
    private double share(String value, double least, double most) {
        return Math.max(least, Math.min(most, (TextMeasure.widthMm(value, TypeSize.LEAST, false) + 2 * PAD) / width));
    }

    private void cells(List<Shape> shapes, double x, double y, double height, double[] shares, String... captionsAndValues) {
        double left = x;
        shapes.add(Shape.Lines.of(inks.pen(Inks.SIGN), new Point(x, y), new Point(x + width, y)));
        for (int i = 0; i < shares.length; i++) {
            double wide = width * shares[i];
            if (i > 0) {
                shapes.add(Shape.Lines.of(inks.pen(Inks.SIGN), new Point(left, y), new Point(left, y + height)));
            }
            field(shapes, left, y, wide, height, captionsAndValues[2 * i], captionsAndValues[2 * i + 1], 2.5, false);
            left += wide;
        }
    }

    private void field(
            List<Shape> shapes, double x, double y, double wide, double height, String caption, String value, double size, boolean bold) {
        Tag named = Tag.paragraph();
        Tag tag = caption.equals(DOCUMENT_TYPE) ? Tag.heading() : named;
        shapes.add(inks.text(x + PAD, y + 0.6 + CAPTION, caption, CAPTION, false).as(named));
        double most = wide - 2 * PAD;
        double whole = fitting(value, size, bold, most);
        double fitting = Math.abs(whole);
        double pitch = fitting * 1.15;
        // A long value first shrinks a little, then takes a second line where the field has room for it, then loses its end.
        String last = value;
        if (whole < 0 && height - 1.5 - pitch - fitting > 0.6 + 1.25 * CAPTION) {
            List<String> lines = TextMeasure.wrap(value, fitting, bold, most);
            shapes.add(inks.text(x + PAD, y + height - 1.5 - pitch, lines.get(0), fitting, bold).as(tag));
            last = String.join(" ", lines.subList(1, lines.size()));
        }
        // nothing known: a rule to write on
        if (value.isEmpty()) shapes.add(Shape.Lines.of(inks.pen(Inks.SECONDARY), new Point(x + PAD, y + height - 1.2), new Point(x + wide - PAD, y + height - 1.2)));
        shapes.add(inks.text(x + PAD, y + height - 1.5, TextMeasure.cut(last, fitting, bold, most), fitting, bold).as(tag));
    }

    /** North, where it is known, and a scale bar side by side. */
    List<Shape> barAndNorth(Scale scale, Garden garden, boolean turned, double x, double y) {
        boolean imperial = garden.imperial();
        List<Shape> shapes = new ArrayList<>();
        Point centre = new Point(x + 8, y + BAR_HEIGHT / 2);
        if (garden.northKnown()) shapes.addAll(north(centre, garden.ground().northDeg() + (turned ? 90 : 0)));
        shapes.addAll(bar(scale, imperial, x + 21, y + 8, width - 27));
        if (turned) shapes.add(inks.text(x + 21, y + 17.6, "Turned: the front is on the right.", CAPTION, true));
        return shapes;
    }

    private List<Shape> north(Point centre, double northDeg) {
        double angle = Math.toRadians(northDeg);
        double ux = -Math.sin(angle);
        double uy = -Math.cos(angle);
        double r = 5.2;
        Point tip = centre.plus(ux * r, uy * r);
        Point tail = centre.plus(-ux * r * 0.75, -uy * r * 0.75);
        Point notch = centre.plus(-ux * r * 0.35, -uy * r * 0.35);
        double wide = r * 0.55;
        Point left = tail.plus(uy * wide, -ux * wide);
        Point right = tail.plus(-uy * wide, ux * wide);
        double size = 3.2;
        Point letter = centre.plus(ux * (r + 2.2), uy * (r + 2.2));
        Stroke pen = inks.pen(Inks.SECONDARY);
        return List.of(new Shape.Group("north", "North", "north", List.of(
                new Shape.Circle(centre, r, Optional.empty(), Optional.of(pen)),
                Inks.plain(inks.ink()).area(List.of(tip, left, notch), pen), Inks.plain(inks.paper()).area(List.of(tip, notch, right), pen),
                Inks.sign(letter, "N", size, inks.ink()))));
    }

    /** A bar of four to five equal steps, dark and light in turn, no longer than {@code most} on paper. */
    List<Shape> bar(Scale scale, boolean imperial, double x, double y, double most) {
        double unit = imperial ? Length.FOOT_MM : 1000;
        double step = step(scale.realMm(most) / 4 / unit);
        double stepMm = scale.paperMm(step * unit);
        int steps = (int) Math.min(5, Whole.down(most / stepMm));
        List<Shape> shapes = new ArrayList<>();
        for (int i = 0; i < steps; i++) {
            Box part = new Box(x + i * stepMm, y, x + (i + 1) * stepMm, y + 2.2);
            shapes.add(Inks.plain(i % 2 == 0 ? inks.ink() : inks.paper()).area(part, inks.pen(Inks.SIGN)));
        }
        for (int i = 0; i <= steps; i++) {
            String number = Lengths.text(i * step) + (i == steps ? imperial ? " ft" : " m" : "");
            shapes.add(new Shape.Text(
                    new Point(x + i * stepMm, y - 1.2), number, TEXT, Shape.Anchor.MIDDLE, 0, false, inks.ink()));
        }
        String check = "this bar is " + Length.written(steps * stepMm, imperial) + (imperial ? "" : " mm") + " long on paper";
        shapes.add(inks.text(x, y + 5.6, check, CAPTION, false));
        return List.of(new Shape.Group("scale-bar", "Scale " + scale.label(imperial), "scale", shapes));
    }

    /** The largest of 1, 2, 5 and their tens or tenths that is not above {@code most}. */
    static double step(double most) {
        double ten = Math.pow(10, Whole.down(Math.log10(most)));
        double times = most / ten + 1e-9;
        double step = ten * (times >= 5 ? 5 : times >= 2 ? 2 : 1);
        return Math.max(step, 0.1);
    }
}
