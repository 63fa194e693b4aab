package lapyard.prints;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
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
import lapyard.working.SecondThread;

/**
 * The set of all sheets of a garden. The paper asked for is that of the plan; all else is on the paper for the bench. What a
 * garden has not is named in the contents.
 *
 * @param <P> a page in the form in which it is kept until the contents are known
 */
final class SheetSet<P> {
    private record Part<P>(Print print, String paper, List<P> pages, List<List<String>> subjects) {}

    private final JobSheet sheet;
    private final BenchOptions options;
    private final List<Part<P>> parts = new ArrayList<>();
    private final List<SetSheets.LeftOut> leftOut = new ArrayList<>();
    private final List<Page> front;
    private final Map<String, List<Page>> laidBefore;

    private interface Keeping<P> {
        P of(Page page) throws IOException;
    }

    private final Prints.Kit kit;

    private SheetSet(Prints.Kit kit, JobSheet sheet, PrintAsk ask, Map<String, List<Page>> laid, Keeping<P> keep) throws IOException {
        this.kit = kit;
        this.sheet = sheet;
        this.options = ask.bench(sheet);
        this.laidBefore = laid;
        Optional<Page> job = parts(ask, keep);
        // where one sheet holds the contents and the job, that has no sheet of its own
        List<Page> joined = job.isPresent() ? front(Optional.of(JobPrint.job(sheet))) : List.of();
        if (joined.size() != 1 && job.isPresent()) parts.add(0, part(Prints.print(Prints.JOB), new ArrayDeque<>(List.of(job.get())), keep));
        this.front = joined.size() == 1 ? joined : front(Optional.empty());
    }

    /** Pages of a kind, none where it is not in the set, or why they cannot be made. */
    private record Laid(Print print, Queue<Page> pages, Optional<CannotPrint> cannot) {}

    /**
     * Lays out each kind while the pages of the one before are kept; the first two, of a page or a few, side by side.
     *
     * @return the job where that is one page, which is not kept yet
     */
    private Optional<Page> parts(PrintAsk ask, Keeping<P> keep) throws IOException {
        Optional<Page> job = Optional.empty();
        Iterator<Print> prints = kit.prints().iterator();
        Queue<SecondThread<Laid>> laying = new ArrayDeque<>(List.of(laying(prints.next(), ask)));
        try {
            laying.add(laying(prints.next(), ask));
            while (!laying.isEmpty()) {
                Laid laid = laying.element().result();
                laying.remove();
                if (laying.isEmpty() && prints.hasNext()) laying.add(laying(prints.next(), ask));
                laid.cannot().ifPresent(cannot -> leftOut.add(new SetSheets.LeftOut(laid.print().title(), Wording.of(sheet.garden().imperial()).text(cannot.findings().get(0)))));
                if (laid.print().name().equals(Prints.JOB) && laid.pages().size() == 1) job = Optional.of(laid.pages().remove());
                else if (!laid.pages().isEmpty()) parts.add(part(laid.print(), laid.pages(), keep));
            }
        } finally {
            laying.forEach(SecondThread::close);
        }
        return job;
    }

    private SecondThread<Laid> laying(Print print, PrintAsk ask) {
        PrintAsk asked = print.name().equals("plan") ? ask : ask.onPaper(Optional.empty());
        return new SecondThread<>(() -> {
            try {
                return new Laid(print, new ArrayDeque<>(print.inSet().test(sheet, asked) ? pages(print, asked) : List.of()), Optional.empty());
            } catch (CannotPrint cannot) {
                return new Laid(print, new ArrayDeque<>(), Optional.of(cannot));
            }
        });
    }

    private List<Page> pages(Print print, PrintAsk asked) {
        List<Page> laid = laidBefore.get(print.name());
        return laid == null ? print.pages().apply(sheet, asked) : laid;
    }

    /** @param pages emptied one by one: what is kept is far smaller than a page */
    private static <P> Part<P> part(Print print, Queue<Page> pages, Keeping<P> keep) throws IOException {
        String paper = SetSheets.paper(pages.element().widthMm(), pages.element().heightMm());
        List<P> kept = new ArrayList<>();
        List<List<String>> subjects = new ArrayList<>();
        while (!pages.isEmpty()) {
            Abandonable.check();
            subjects.add(pages.element().subjects());
            kept.add(keep.of(pages.remove()));
        }
        return new Part<>(print, paper, kept, subjects);
    }

    /** The pages of the set, the contents first. */
    static List<Page> pages(Prints.Kit kit, JobSheet sheet, PrintAsk ask) {
        SheetSet<Page> set;
        try {
            set = new SheetSet<>(kit, sheet, ask, Map.of(), page -> page);
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
     * @param laid pages of kinds that are laid out already
     * @param done told after each page how many are painted
     */
    static void write(Prints.Kit kit, JobSheet sheet, PrintAsk ask, Map<String, List<Page>> laid, OutputStream out, IntConsumer done) throws IOException {
        PdfWriter writer = new PdfWriter(out, Prints.title(sheet, kit.title()));
        try (Painter painter = new Painter(writer)) {
            int[] painted = {0};
            SheetSet<CompletableFuture<PdfWriter.Painted>> set = new SheetSet<>(kit, sheet, ask, laid, page -> {
                done.accept(++painted[0]);
                return painter.paint(page);
            });
            List<CompletableFuture<PdfWriter.Painted>> front = new ArrayList<>();
            for (Page page : set.front) front.add(painter.paint(page));
            painter.awaitAll();
            int of = front.size() + painted[0];
            int number = 0;
            for (CompletableFuture<PdfWriter.Painted> page : front) set.add(writer, page.join(), ++number, of);
            List<PdfWriter.Bookmark> bookmarks = new ArrayList<>(List.of(new PdfWriter.Bookmark("Contents", 0, List.of())));
            for (Part<CompletableFuture<PdfWriter.Painted>> part : set.parts) {
                bookmarks.add(new PdfWriter.Bookmark(part.print().title(), number, Prints.bookmarks(part.subjects(), number)));
                for (CompletableFuture<PdfWriter.Painted> page : part.pages()) set.add(writer, page.join(), ++number, of);
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
