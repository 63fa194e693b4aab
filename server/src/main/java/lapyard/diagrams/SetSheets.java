package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.words.Wording;

/** The set of all sheets of a garden: contents and cautions in front, and a foot with page n of m on every page. */
public final class SetSheets {
    private SetSheets() {}

    /**
     * One kind of sheet.
     *
     * @param pages how many it has
     * @param paper as printed
     */
    public record Part(String title, int pages, String paper) {}

    public record LeftOut(String title, String why) {}

    /** What to mind, and at which work. */
    public record Mind(String work, String text) {}

    private static final String CAUTION = "Paper copies change size: trust the written sizes. What is printed here is as old as its revision.";

    private static final double FOOT_TEXT = 2.6;
    private static final double CAUTION_TEXT = 3.2;

    /**
     * Contents, what is left out, and cautions: the pages in front of the parts, which the contents lead to.
     *
     * @param about what the set is
     * @param job that shall stand below the contents
     */
    public static List<Page> front(
            String about, Optional<JobPage.Job> job, List<Part> parts, List<LeftOut> leftOut, List<Mind> cautions, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(CAUTION, options);
        // the contents' own length must be known before its page numbers can be written
        int front = front(sheet, about, job, parts, leftOut, cautions, 0).size();
        return sheet.pages(front(sheet, about, job, parts, leftOut, cautions, front));
    }

    private static List<BenchSheet.Draft> front(
            BenchSheet sheet, String about, Optional<JobPage.Job> job, List<Part> parts, List<LeftOut> leftOut, List<Mind> cautions, int before) {
        Flow flow = new Flow(sheet, "Contents", about);
        BenchTable contents = new BenchTable(
                sheet, "Contents", new BenchTable.Column("Sheets", 0.6, true), new BenchTable.Column("Pages", 0.22, false),
                new BenchTable.Column("Paper", 0.18, false));
        int at = before + 1;
        for (Part part : parts) {
            int last = at + part.pages() - 1;
            contents.leading(at - 1, part.title(), at == last ? "" + at : at + " to " + last, part.paper());
            at = last + 1;
        }
        double half = flow.columnWidth(2, Flow.APART);
        List<Flow.Block> minded = new ArrayList<>();
        if (!cautions.isEmpty()) {
            minded.add(new Flow.Block(8, false, (left, top) -> List.of(sheet.text(left, top + 5, "Cautions: before you lift, saw, dig or pour", 4.6, true).as(Tag.subheading()))));
            Map<String, List<String>> works = new LinkedHashMap<>();
            cautions.forEach(one -> works.computeIfAbsent(one.work(), work -> new ArrayList<>()).add(one.text()));
            works.forEach((work, texts) -> {
                String words = Wording.capital(work) + ": " + String.join(" ", texts);
                minded.addAll(flow.lines(List.of(words), CAUTION_TEXT, false, half));
                minded.add(Flow.Block.gap(1));
            });
        }
        flow.columns(2, Flow.APART, List.of(Flow.Block.of(contents.blocks(half)), Flow.Block.of(minded)));
        flow.gap(2);
        if (!leftOut.isEmpty()) {
            flow.words(List.of("Not in this set. " + leftOut.stream().map(one -> one.title() + ": " + one.why().replaceAll("\\.$", "")).collect(Collectors.joining(". ")) + "."), 3, false);
        }
        job.ifPresent(one -> JobPage.section(flow, sheet, one));
        return flow.drafts();
    }

    /** The name of a page's paper, or its size in millimetres. */
    public static String paper(double widthMm, double heightMm) {
        double small = Math.min(widthMm, heightMm);
        double large = Math.max(widthMm, heightMm);
        for (Paper paper : Paper.values()) {
            if (Math.abs(paper.shortMm - small) < 0.1 && Math.abs(paper.longMm - large) < 0.1) return paper.label();
        }
        return Math.round(widthMm) + " x " + Math.round(heightMm);
    }

    /** What stands below the frame of every page of a set. */
    public static List<Shape> foot(double widthMm, double heightMm, BenchOptions options, int number, int of) {
        List<String> told = Stream.of(options.garden().isBlank() ? "Garden" : options.garden(), options.stamp().revision(), options.stamp().dateBeside())
                .filter(one -> !one.isEmpty()).toList();
        String place = place(number, of);
        double y = heightMm - 4;
        double room = widthMm - 40 - TextMeasure.widthMm(place, FOOT_TEXT, true);
        String words = TextMeasure.cut(String.join(" · ", told), FOOT_TEXT, false, room);
        Inks inks = new Inks(options.mono());
        return List.of(new Shape.Group("foot", "", "foot", List.of(
                inks.text(20, y, words, FOOT_TEXT, false).as(Tag.RUNNING_FOOT), inks.end(widthMm - 10, y, place, FOOT_TEXT, true).as(Tag.RUNNING_FOOT))));
    }

    /** A page with its foot, its place in the set in its title. */
    public static Page footed(Page page, BenchOptions options, int number, int of) {
        List<Shape> shapes = new ArrayList<>(page.shapes());
        shapes.addAll(foot(page.widthMm(), page.heightMm(), options, number, of));
        return new Page(page.title() + ", " + place(number, of), page.widthMm(), page.heightMm(), shapes, page.subjects());
    }

    private static String place(int number, int of) {
        return "page " + number + " of " + of;
    }
}
