package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lapyard.drawing.Paper;
import lapyard.drawing.Scale;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;

/**
 * How a sheet is divided into the field of the drawing and the columns beside or below it.
 *
 * @param space   within the frame
 * @param field   for the drawing
 * @param columns for the flow, in reading order
 * @param block   for scale bar, north and title block
 */
record SheetLayout(double width, double height, Box space, Box field, List<Box> columns, Box block) {
    /** Round the drawing, for the lengths that stand outside the yard. */
    private static final double RIM = 9;

    private static final double GAP = 5;

    /** A field narrower than this is no drawing. */
    private static final double LEAST_FIELD = 20;

    /** ISO 5457: 20 mm on the left for filing, 10 mm elsewhere (from memory). */
    static Box frame(double width, double height) {
        return new Box(20, 10, width - 10, height - 10);
    }

    static double panelWidth(Paper paper) {
        return paper.shortMm < 250 ? 76 : 88;
    }

    /**
     * A layout with the scale that the drawing would need to just fit it.
     *
     * @param turned whether the drawing lies a quarter turned on the sheet
     */
    private record Fit(SheetLayout layout, double needs, boolean turned) {}

    record Chosen(SheetLayout layout, Scale scale, boolean turned) {}

    /**
     * The layout that gives the larger scale; the drawing is turned only where that gives a larger one than any sheet on which it
     * stands upright.
     *
     * @param extent of the drawing in the yard
     * @param flow   height that the columns must hold, their pieces one below the other
     * @throws CannotAnswer where a scale is asked for at which no layout fits
     */
    static Chosen choose(Paper paper, Optional<Scale> asked, boolean imperial, Box extent, double flow) {
        List<Fit> fits = new ArrayList<>();
        for (SheetLayout layout : all(paper, flow)) {
            if (Math.min(layout.field.width(), layout.field.height()) - 2 * RIM >= LEAST_FIELD) {
                fits.add(new Fit(layout, needs(extent, layout.field), false));
                fits.add(new Fit(layout, needs(new Box(0, 0, extent.height(), extent.width()), layout.field), true));
            }
        }
        Fit best = fits.stream()
                .min(Comparator.comparing((Fit fit) -> Scale.usual(fit.needs - 1e-9, imperial)).thenComparing(Fit::turned)
                        .thenComparing(Fit::needs))
                .orElseThrow();
        Scale usual = Scale.usual(best.needs - 1e-9, imperial);
        if (asked.isEmpty()) {
            return new Chosen(best.layout, usual, best.turned);
        }
        Fit roomiest = fits.stream()
                .min(Comparator.comparing((Fit fit) -> fit.needs > asked.get().n() + 1e-9).thenComparing(Fit::turned).thenComparing(Fit::needs))
                .orElseThrow();
        if (roomiest.needs > asked.get().n() + 1e-9) {
            Box field = roomiest.layout.field;
            double missing = Math.max(
                    asked.get().paperMm(roomiest.turned ? extent.height() : extent.width()) - (field.width() - 2 * RIM),
                    asked.get().paperMm(roomiest.turned ? extent.width() : extent.height()) - (field.height() - 2 * RIM));
            throw new CannotAnswer(Finding.of(FindingKind.PLAN_NOT_ON_SHEET, Place.field("plan")).with("scale", Fact.name(asked.get().toString()))
                    .with("paper", Fact.name(paper.label())).by(Fact.mm(Math.ceil(missing)))
                    .way(WayKind.SCALE_OF, Fact.name(usual.toString())).way(WayKind.LARGER_PAPER));
        }
        return new Chosen(roomiest.layout, asked.get(), roomiest.turned);
    }

    /** The scale 1:n at which a drawing just fits a field, with room round it for the lengths of its sides. */
    static double needs(Box extent, Box field) {
        return needs(extent, field, RIM);
    }

    static double needs(Box extent, Box field, double rim) {
        return Math.max(extent.width() / (field.width() - 2 * rim), extent.height() / (field.height() - 2 * rim));
    }

    /** The layout with the largest field, at whatever scale; where the drawing fits one sheet, as {@link #choose}. */
    static Chosen roomiest(
            Paper paper, Optional<Scale> asked, boolean imperial, Box extent, double flow, double more) {
        try {
            return choose(paper, asked, imperial, extent, flow);
        } catch (CannotAnswer split) {
            SheetLayout largest = all(paper, flow + more).stream()
                    .max(Comparator.comparingDouble(layout -> layout.field.width() * layout.field.height()))
                    .orElseThrow();
            return new Chosen(largest, asked.orElseThrow(), false);
        }
    }

    private static List<SheetLayout> all(Paper paper, double flow) {
        List<SheetLayout> all = new ArrayList<>();
        double panel = panelWidth(paper);
        for (boolean level : new boolean[] {true, false}) {
            double width = level ? paper.longMm : paper.shortMm;
            double height = level ? paper.shortMm : paper.longMm;
            Box space = frame(width, height);
            Box in = space.grown(-GAP / 2);
            Box block = new Box(in.right() - panel, in.high() - Panel.FIXED_HEIGHT, in.right(), in.high());
            Box column = new Box(block.left(), in.low(), block.right(), block.low() - GAP / 2);
            if (column.height() >= flow) {
                all.add(new SheetLayout(width, height, space, new Box(space.left(), space.low(), block.left() - GAP / 2, space.high()), List.of(column), block));
            }
            all.add(below(width, height, space, in, block, flow));
        }
        return all;
    }

    private static SheetLayout below(double width, double height, Box space, Box in, Box block, double flow) {
        int columns = (int) Math.max(2, Math.floor((space.width() - GAP / 2) / (block.width() + GAP)));
        // Pieces stay whole, so a column may end a piece short.
        double low = in.high() - Math.max(Panel.FIXED_HEIGHT, flow / (columns - 1) + (columns > 2 ? 8 : 0));
        List<Box> flowing = IntStream.range(0, columns - 1).mapToDouble(i -> in.left() + i * (block.width() + GAP))
                .mapToObj(left -> new Box(left, low, left + block.width(), in.high())).toList();
        return new SheetLayout(width, height, space, new Box(space.left(), space.low(), space.right(), low - GAP / 2), flowing, block);
    }
}
