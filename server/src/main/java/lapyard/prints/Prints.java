package lapyard.prints;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import lapyard.diagrams.DaySheets;
import lapyard.diagrams.SetSheets;
import lapyard.drawing.Page;
import lapyard.drawing.PdfWriter;
import lapyard.drawing.PngWriter;
import lapyard.drawing.SvgWriter;
import lapyard.job.JobSheet;
import lapyard.working.Abandonable;

/** All kinds of sheets, each alone and together as the set that is carried outside. */
public final class Prints {
    /** The set's own name. */
    public static final String SET = "sheets";

    /** In the order of the set, which is that of the work. The plan is the one kind that is also a picture of its own. */
    static final List<Print> ALL = List.of(
            new Print("plan", "Garden plan", PlanPrint::pages),
            new Print("bed-register", "Bed register", RegisterPrint::pages),
            new Print("setting-out", "Setting-out", GroundPrint::settingOut),
            new Print("shade", "Sun and shade", GroundPrint::shade),
            new Print("access", "Access", GroundPrint::access),
            new Print("saw-day", "Saw Day", BenchPrint::sawDay),
            new Print("course-cards", "Course cards", BenchPrint::courseCards),
            new Print("provenance", "Where boards come from", ProvenancePrint::pages),
            new Print("base-and-liner", "Base and liner", BenchPrint::floorCards),
            new Print("rolls", "Rolls", BenchPrint::rolls),
            new Print("weekends", "Weekends", (sheet, ask) -> DaySheets.pages(sheet.garden().name(), sheet.garden().imperial(),
                    sheet.weekends(), sheet.garden().people().crew(), ask.bench(sheet.garden().imperial()))),
            new Print("slip", "Slip", OrderPrint::slip),
            new Print("load-in", "Load-in", OrderPrint::loadIn),
            new Print("quote", "Quote", OrderPrint::quote));

    private static final double SCREEN_DPI = 150;

    private Prints() {}

    /** Names of the kinds that are written as NAME.pdf with a picture a page; the plan and the set stand apart. */
    public static List<String> names() {
        return ALL.stream().map(Print::name).filter(name -> !name.equals("plan")).toList();
    }

    /** Name and title of every kind of sheet, in the order of the set. */
    public static Map<String, String> titles() {
        Map<String, String> titles = new LinkedHashMap<>();
        ALL.forEach(print -> titles.put(print.name(), print.title()));
        return titles;
    }

    /** Whether sheets of that name can be asked for, {@link #SET} among them. */
    public static boolean known(String name) {
        return name.equals(SET) || ALL.stream().anyMatch(print -> print.name().equals(name));
    }

    /**
     * The pages of one kind, or of the set.
     *
     * @throws IllegalArgumentException where there is no such kind, a paper is not known, or nothing can be drawn
     */
    public static List<Page> pages(String name, JobSheet sheet, PrintAsk ask) {
        if (name.equals(SET)) return set(sheet, ask);
        return ALL.stream()
                .filter(print -> print.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there are no sheets " + name))
                .pages().apply(sheet, ask);
    }

    /** The paper asked for is that of the plan; all else in the set is on the paper for the bench. What a garden has not is named. */
    private static List<Page> set(JobSheet sheet, PrintAsk ask) {
        Map<Print, List<Page>> drawn = new LinkedHashMap<>();
        List<SetSheets.LeftOut> leftOut = new ArrayList<>();
        for (Print print : ALL) {
            Abandonable.check();
            try {
                drawn.put(print, print.pages().apply(sheet, print.name().equals("plan") ? ask : ask.onPaper(Optional.empty())));
            } catch (CannotPrint cannot) {
                leftOut.add(new SetSheets.LeftOut(print.title(), cannot.getMessage()));
            }
        }
        List<SetSheets.Part> parts = drawn.entrySet().stream()
                .map(entry -> new SetSheets.Part(entry.getKey().title(), entry.getValue()))
                .toList();
        return SetSheets.pages(sheet.garden().name(), sheet.garden().imperial(), parts, leftOut,
                sheet.cautions().stream().map(one -> new SetSheets.Mind(one.sheet(), one.text())).toList(), ask.bench(sheet.garden().imperial()));
    }

    /**
     * All pages as PDF, or one as SVG or PNG.
     *
     * @param page from 1
     * @throws IllegalArgumentException for a page that is not there, naming how many there are
     */
    public static byte[] file(List<Page> pages, String format, int page) {
        if (format.equals("pdf")) {
            return PdfWriter.write(pages);
        }
        if (page > pages.size()) {
            throw new IllegalArgumentException("there is no sheet " + page + ": there are 1 to " + pages.size());
        }
        return format.equals("png") ? PngWriter.write(pages.get(page - 1), SCREEN_DPI) : svg(pages.get(page - 1));
    }

    /**
     * As {@link #file}, written to where it goes.
     *
     * @throws IllegalArgumentException as {@link #pages} and {@link #file}
     */
    public static void write(String name, JobSheet sheet, PrintAsk ask, String format, int page, OutputStream out) throws IOException {
        out.write(file(pages(name, sheet, ask), format, page));
    }

    /** All pages as files: NAME.pdf and NAME-01.svg, NAME-02.svg and so on. */
    public static Map<String, byte[]> files(String name, List<Page> pages) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(name + ".pdf", PdfWriter.write(pages));
        for (int i = 0; i < pages.size(); i++) {
            files.put(String.format(Locale.ROOT, "%s-%02d.svg", name, i + 1), svg(pages.get(i)));
        }
        return files;
    }

    /** Every kind as files, and the set; a kind that cannot be drawn is named in the set alone. */
    public static Map<String, byte[]> takeOff(JobSheet sheet, PrintAsk ask) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        List<Page> plan = pages("plan", sheet, ask);
        files.put("plan.pdf", PdfWriter.write(plan));
        for (int i = 0; i < plan.size(); i++) {
            String name = plan.size() == 1 ? "plan" : String.format(Locale.ROOT, "plan-%02d", i + 1);
            files.put(name + ".svg", svg(plan.get(i)));
            files.put(name + ".png", PngWriter.write(plan.get(i), SCREEN_DPI));
        }
        for (String name : names()) {
            try {
                files.putAll(files(name, pages(name, sheet, ask.onPaper(Optional.empty()))));
            } catch (CannotPrint saidInTheSet) {
                continue;
            }
        }
        files.put(SET + ".pdf", PdfWriter.write(set(sheet, ask)));
        return files;
    }

    private static byte[] svg(Page page) {
        return SvgWriter.write(page).getBytes(StandardCharsets.UTF_8);
    }
}
