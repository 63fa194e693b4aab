package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.Shape;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Point;

/** The set of all sheets of a garden: contents and cautions in front, and a foot with page n of m on every page. */
public final class SetSheets {
    private SetSheets() {}

    /** One kind of sheet with its pages. */
    public record Part(String title, List<Page> pages) {
        public Part {
            pages = List.copyOf(pages);
        }
    }

    /** A kind of sheet that could not be drawn, and why. */
    public record LeftOut(String title, String why) {}

    /** What to mind, and at which work. */
    public record Mind(String work, String text) {}

    private static final String CAUTION = "Paper copies change size: trust the written sizes. What is printed here is as old as its revision.";

    private static final double FOOT_TEXT = 2.6;

    /** The pages of the set, the contents first. */
    public static List<Page> pages(
            String garden, boolean imperial, List<Part> parts, List<LeftOut> leftOut, List<Mind> cautions, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        // the contents' own length must be known before its page numbers can be written
        int front = front(sheet, parts, leftOut, cautions, 0).size();
        List<Page> pages = new ArrayList<>(sheet.pages(front(sheet, parts, leftOut, cautions, front)));
        parts.forEach(part -> pages.addAll(part.pages()));
        List<Page> numbered = new ArrayList<>();
        for (int i = 0; i < pages.size(); i++) {
            numbered.add(footed(pages.get(i), garden, options, i + 1, pages.size()));
        }
        return numbered;
    }

    private static List<BenchSheet.Draft> front(BenchSheet sheet, List<Part> parts, List<LeftOut> leftOut, List<Mind> cautions, int before) {
        Flow flow = new Flow(sheet, "Contents", "all sheets of the garden in the order of the work");
        BenchTable contents = new BenchTable(
                sheet, "Contents", new BenchTable.Column("Sheets", 0.6, true), new BenchTable.Column("Pages", 0.22, false),
                new BenchTable.Column("Paper", 0.18, false));
        int at = before + 1;
        for (Part part : parts) {
            int last = at + part.pages().size() - 1;
            contents.row(part.title(), at == last ? "" + at : at + " to " + last, paper(part.pages().get(0)));
            at = last + 1;
        }
        contents.on(flow);
        if (!leftOut.isEmpty()) {
            BenchTable missing = new BenchTable(
                    sheet, "Not in this set", new BenchTable.Column("Sheets", 0.3, true), new BenchTable.Column("Why", 0.7, false));
            leftOut.forEach(one -> missing.row(one.title(), one.why()));
            missing.on(flow);
        }
        if (!cautions.isEmpty()) {
            flow.next();
            BenchTable minded = new BenchTable(
                    sheet, "Cautions", new BenchTable.Column("At", 0.12, true), new BenchTable.Column("Before you lift, saw, dig or pour", 0.88, false));
            cautions.forEach(one -> minded.row(one.work(), one.text()));
            minded.on(flow);
        }
        return flow.drafts();
    }

    private static String paper(Page page) {
        double small = Math.min(page.widthMm(), page.heightMm());
        double large = Math.max(page.widthMm(), page.heightMm());
        for (Paper paper : Paper.values()) {
            if (Math.abs(paper.shortMm - small) < 0.1 && Math.abs(paper.longMm - large) < 0.1) return paper.label();
        }
        return Math.round(page.widthMm()) + " x " + Math.round(page.heightMm());
    }

    private static Page footed(Page page, String garden, BenchOptions options, int number, int of) {
        String revision = options.revision().isEmpty() ? "" : " · " + options.revision();
        String date = options.date().isEmpty() || revision.contains(options.date()) ? "" : " · " + options.date();
        String place = "page " + number + " of " + of;
        double y = page.heightMm() - 4;
        double room = page.widthMm() - 40 - TextMeasure.widthMm(place, FOOT_TEXT, true);
        String words = TextMeasure.cut((garden.isBlank() ? "Garden" : garden) + revision + date, FOOT_TEXT, false, room);
        String ink = new Inks(options.mono()).ink();
        List<Shape> shapes = new ArrayList<>(page.shapes());
        shapes.add(new Shape.Group("foot", "", "foot", List.of(
                new Shape.Text(new Point(20, y), words, FOOT_TEXT, Shape.Anchor.START, 0, false, ink),
                new Shape.Text(new Point(page.widthMm() - 10, y), place, FOOT_TEXT, Shape.Anchor.END, 0, true, ink))));
        return new Page(page.title() + ", " + place, page.widthMm(), page.heightMm(), shapes);
    }
}
