package lapyard.prints;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.drawing.Page;
import lapyard.drawing.PdfWriter;
import lapyard.drawing.PngWriter;
import lapyard.drawing.SvgWriter;
import lapyard.job.JobSheet;
import lapyard.working.Abandonable;
import lapyard.working.BrokenRule;

/** All kinds of sheets, each alone and together as the set that is carried outside. */
public final class Prints {
    /** The set's own name. */
    public static final String SET = "sheets";

    /** The kind that stands on the sheet of the contents where there is room. */
    static final String JOB = "job";

    /** In the order of the set, which is that of the work. The plan is the one kind that is also a picture of its own. */
    static final List<Print> ALL = List.of(
            new Print(JOB, "The job on one page", JobPrint::pages),
            new Print("plan", "Garden plan", PlanPrint::pages),
            new Print("client-plan", "Client's plan", (sheet, ask) -> false, PlanPrint::client),
            new Print("bed-register", "Bed register", (sheet, ask) -> sheet.beds().size() > 1, RegisterPrint::pages),
            new Print("setting-out", "Setting-out", PlanPrint::settingOut),
            new Print("shade", "Sun and shade", PlanPrint::shade),
            new Print("access", "Access", PlanPrint::access),
            new Print("saw-day", "Saw Day", BenchPrint::sawDay),
            new Print("course-cards", "Course cards", BenchPrint::courseCards),
            new Print("provenance", "Where boards come from", HandOverPrint::provenance),
            new Print("base-and-liner", "Base and liner", BenchPrint::floorCards),
            new Print("rolls", "Rolls", BenchPrint::rollsApart, BenchPrint::rolls),
            new Print("weekends", "Weekends", JobPrint::weekends),
            new Print("slip", "Slip", OrderPrint::slip),
            new Print("load-in", "Delivery and access", OrderPrint::loadIn),
            new Print("quote", "Quote", OrderPrint::quote),
            new Print("price-request", "Request for prices", (sheet, ask) -> false, MerchantPrint::request),
            new Print("offers", "Offers side by side", (sheet, ask) -> false, MerchantPrint::offers),
            new Print("payments", "Money: what to pay when", (sheet, ask) -> false, OfficePrint::payments),
            new Print("labels", "Labels", (sheet, ask) -> false, BenchPrint::labels),
            new Print("as-built", "As built", (sheet, ask) -> false, (sheet, ask) -> HandOverPrint.asBuilt(sheet, ask, true)),
            new Print("care", "Care", (sheet, ask) -> false, HandOverPrint::care),
            new Print("snag-list", "Snag list", (sheet, ask) -> false, HandOverPrint::snags),
            new Print("office", "Office", (sheet, ask) -> false, OfficePrint::pages));

    /** What a client is handed over; nothing in it says what goods cost. */
    public static final String HAND_OVER = "hand-over";

    /** Sheets that go together, with contents in front. */
    record Kit(String name, String title, String about, List<Print> prints, boolean forWork) {}

    private static final Kit ALL_SHEETS = new Kit(SET, "all sheets", "all sheets of the garden in the order of the work", ALL, true);

    private static final List<String> HANDED_OVER = List.of("client-plan", "bed-register", "as-built", "care", "snag-list", "provenance", "setting-out", "base-and-liner", "access");

    private static final Kit CLIENTS = new Kit(HAND_OVER, "hand-over", "what goes with the garden to whoever tends it", HANDED_OVER.stream().map(Prints::handedOver).toList(), false);

    private static Print handedOver(String name) {
        Print print = print(name);
        return new Print(name, print.title(), name.equals("as-built") ? (sheet, ask) -> HandOverPrint.asBuilt(sheet, ask, false) : print.pages());
    }

    private static Optional<Kit> kit(String name) {
        return Stream.of(ALL_SHEETS, CLIENTS).filter(one -> one.name().equals(name)).findFirst();
    }

    private static final double SCREEN_DPI = 150;

    private Prints() {}

    /** Names of all kinds, in the order of the set. */
    public static List<String> names() {
        return ALL.stream().map(Print::name).toList();
    }

    /** Name and title of every kind of sheet, in the order of the set. */
    public static Map<String, String> titles() {
        return ALL.stream().collect(Collectors.toMap(Print::name, Print::title, (one, same) -> one, LinkedHashMap::new));
    }

    /** Whether sheets of that name can be asked for, the sets among them. */
    public static boolean known(String name) {
        return kit(name).isPresent() || ALL.stream().anyMatch(print -> print.name().equals(name));
    }

    /** Whether sheets of that name show photos. */
    public static boolean showPhotos(String name) {
        return name.equals("snag-list") || name.equals(HAND_OVER);
    }

    /**
     * The pages of one kind, or of the set.
     *
     * @throws IllegalArgumentException where there is no such kind, a paper is not known, or nothing can be drawn
     */
    public static List<Page> pages(String name, JobSheet sheet, PrintAsk ask) {
        Optional<Kit> kit = kit(name);
        return kit.isPresent() ? SheetSet.pages(kit.get(), sheet, ask) : print(name).pages().apply(sheet, ask);
    }

    static Print print(String name) {
        return ALL.stream()
                .filter(print -> print.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there are no sheets " + name));
    }

    /**
     * All pages of a kind or of the set as PDF, or one as SVG or PNG. A PDF is written as its pages are made.
     *
     * @param page from 1; of no meaning to a PDF
     * @param done told after each page how many are drawn
     * @throws IllegalArgumentException as {@link #pages}, and for a page that is not there, naming how many there are
     */
    public static void write(String name, JobSheet sheet, PrintAsk ask, String format, int page, OutputStream out, IntConsumer done)
            throws IOException {
        if (format.equals("pdf")) {
            pdf(name, sheet, ask, out, done);
        } else {
            List<Page> pages = pages(name, sheet, ask);
            BrokenRule.between(name, "sheet", page, 1, pages.size(), "");
            picture(pages.get(page - 1), format, out);
            done.accept(1);
        }
    }

    /** As the longer form, nobody being told of pages done. */
    public static void write(String name, JobSheet sheet, PrintAsk ask, String format, int page, OutputStream out) throws IOException {
        write(name, sheet, ask, format, page, out, pages -> {});
    }

    /** A page as {@code svg} or {@code png}. */
    public static void picture(Page page, String format, OutputStream out) throws IOException {
        out.write(format.equals("png") ? PngWriter.write(page, SCREEN_DPI) : SvgWriter.write(page).getBytes(StandardCharsets.UTF_8));
    }

    /**
     * A set as PDF, as {@link #write}.
     *
     * @param laid pages of kinds that are laid out already, as {@link #pages} does for this garden and the same ask
     */
    public static void set(String name, JobSheet sheet, PrintAsk ask, Map<String, List<Page>> laid, OutputStream out, IntConsumer done) throws IOException {
        SheetSet.write(kit(name).orElseThrow(), sheet, ask, laid, out, done);
    }

    private static void pdf(String name, JobSheet sheet, PrintAsk ask, OutputStream out, IntConsumer done) throws IOException {
        Optional<Kit> kit = kit(name);
        if (kit.isPresent()) {
            SheetSet.write(kit.get(), sheet, ask, Map.of(), out, done);
            return;
        }
        List<Page> pages = pages(name, sheet, ask);
        PdfWriter writer = new PdfWriter(out, title(sheet, print(name).title()));
        List<List<String>> subjects = new ArrayList<>();
        for (Page page : pages) {
            Abandonable.check();
            writer.add(page);
            subjects.add(page.subjects());
            done.accept(subjects.size());
        }
        writer.finish(bookmarks(subjects, 0));
    }

    static String title(JobSheet sheet, String what) {
        return sheet.garden().name().isBlank() ? what : sheet.garden().name() + ": " + what;
    }

    /**
     * A bookmark for each subject, to the page where it begins; none where all pages have one.
     *
     * @param subjects of each page
     * @param first    number of the first page in its file, from 0
     */
    static List<PdfWriter.Bookmark> bookmarks(List<List<String>> subjects, int first) {
        Map<String, Integer> begins = new LinkedHashMap<>();
        for (int i = 0; i < subjects.size(); i++) for (String subject : subjects.get(i)) begins.putIfAbsent(subject, first + i);
        if (begins.size() < 2) return List.of();
        return begins.entrySet().stream().map(entry -> new PdfWriter.Bookmark(entry.getKey(), entry.getValue(), List.of())).toList();
    }
}
