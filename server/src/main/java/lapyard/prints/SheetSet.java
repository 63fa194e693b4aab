package lapyard.prints;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntConsumer;
import lapyard.diagrams.BenchOptions;
import lapyard.diagrams.JobPage;
import lapyard.diagrams.SetSheets;
import lapyard.drawing.Page;
import lapyard.drawing.PdfWriter;
import lapyard.job.Caution;
import lapyard.job.JobSheet;
import lapyard.words.Wording;
import lapyard.working.Abandonable;

/**
 * The set of all sheets of a garden. The paper asked for is that of the plan; all else is on the paper for the bench. What a
 * garden has not is named in the contents.
 *
 * @param <P> a page in the form in which it is kept until the contents are known
 */
final class SheetSet<P> {
    /** One kind with its pages. */
    private record Part<P>(Print print, String paper, List<P> pages, List<List<String>> subjects) {}

    private final JobSheet sheet;
    private final BenchOptions options;
    private final List<Part<P>> parts = new ArrayList<>();
    private final List<SetSheets.LeftOut> leftOut = new ArrayList<>();
    private final List<Page> front;

    private interface Keeping<P> {
        P of(Page page) throws IOException;
    }

    private final Prints.Kit kit;

    private SheetSet(Prints.Kit kit, JobSheet sheet, PrintAsk ask, Keeping<P> keep) throws IOException {
        this.kit = kit;
        this.sheet = sheet;
        this.options = ask.bench(sheet);
        Optional<List<Page>> job = Optional.empty();
        for (Print print : kit.prints()) {
            PrintAsk asked = print.name().equals("plan") ? ask : ask.onPaper(Optional.empty());
            if (!print.inSet().test(sheet, asked)) continue;
            try {
                List<Page> pages = print.pages().apply(sheet, asked);
                boolean mayJoin = print.name().equals(Prints.JOB) && pages.size() == 1;
                if (mayJoin) job = Optional.of(pages);
                else parts.add(part(print, pages, keep));
            } catch (CannotPrint cannot) {
                leftOut.add(new SetSheets.LeftOut(print.title(), Wording.of(sheet.garden().imperial()).text(cannot.findings().get(0))));
            }
        }
        // where one sheet holds the contents and the job, that has no sheet of its own
        List<Page> joined = job.isPresent() ? front(Optional.of(JobPrint.job(sheet))) : List.of();
        if (joined.size() != 1 && job.isPresent()) parts.add(0, part(Prints.print(Prints.JOB), job.get(), keep));
        this.front = joined.size() == 1 ? joined : front(Optional.empty());
    }

    private static <P> Part<P> part(Print print, List<Page> pages, Keeping<P> keep) throws IOException {
        List<P> kept = new ArrayList<>();
        List<List<String>> subjects = new ArrayList<>();
        for (Page page : pages) {
            Abandonable.check();
            kept.add(keep.of(page));
            subjects.add(page.subjects());
        }
        return new Part<>(print, SetSheets.paper(pages.get(0).widthMm(), pages.get(0).heightMm()), kept, subjects);
    }

    /** The pages of the set, the contents first. */
    static List<Page> pages(Prints.Kit kit, JobSheet sheet, PrintAsk ask) {
        SheetSet<Page> set;
        try {
            set = new SheetSet<>(kit, sheet, ask, page -> page);
        } catch (IOException e) {
            throw new IllegalStateException("pages that are kept are not written", e);
        }
        List<Page> pages = new ArrayList<>(set.front);
        set.parts.forEach(part -> pages.addAll(part.pages()));
        List<Page> numbered = new ArrayList<>();
        for (Page page : pages) numbered.add(SetSheets.footed(page, set.options, numbered.size() + 1, pages.size()));
        return numbered;
    }

    /**
     * The set as one PDF. Pages are painted and written beside the laying out of those that follow; only their places in the file
     * are kept until the contents are known.
     *
     * @param done told after each page how many are painted
     */
    static void write(Prints.Kit kit, JobSheet sheet, PrintAsk ask, OutputStream out, IntConsumer done) throws IOException {
        PdfWriter writer = new PdfWriter(out, Prints.title(sheet, kit.title()));
        try (Painter painter = new Painter(writer)) {
            int[] painted = {0};
            SheetSet<Painter.Coming> set = new SheetSet<>(kit, sheet, ask, page -> {
                done.accept(++painted[0]);
                return painter.paint(page);
            });
            List<Painter.Coming> front = new ArrayList<>();
            for (Page page : set.front) front.add(painter.paint(page));
            painter.awaitAll();
            int of = front.size() + painted[0];
            int number = 0;
            for (Painter.Coming page : front) set.add(writer, page.painted(), ++number, of);
            List<PdfWriter.Bookmark> bookmarks = new ArrayList<>(List.of(new PdfWriter.Bookmark("Contents", 0, List.of())));
            for (Part<Painter.Coming> part : set.parts) {
                bookmarks.add(new PdfWriter.Bookmark(part.print().title(), number, Prints.bookmarks(part.subjects(), number)));
                for (Painter.Coming page : part.pages()) set.add(writer, page.painted(), ++number, of);
            }
            writer.finish(bookmarks);
        }
    }

    private void add(PdfWriter writer, PdfWriter.Painted page, int number, int of) throws IOException {
        writer.add(page, SetSheets.foot(page.widthMm(), page.heightMm(), options, number, of));
    }

    private List<Page> front(Optional<JobPage.Job> job) {
        return SetSheets.front(
                kit.about(), job,
                parts.stream().map(part -> new SetSheets.Part(part.print().title(), part.pages().size(), part.paper())).toList(), leftOut,
                (kit.forWork() ? sheet.cautions() : List.<Caution>of()).stream().map(one -> new SetSheets.Mind(one.sheet(), one.text())).toList(), options);
    }
}
