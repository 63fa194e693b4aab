package lapyard.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import lapyard.answers.FileAsk;
import lapyard.answers.PreparedGarden;
import lapyard.drawing.Page;
import lapyard.geometry.Measure;
import lapyard.job.JobSheet;
import lapyard.json.JobSheetJson;
import lapyard.json.JobSheetPart;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.prints.BuyingTables;
import lapyard.prints.CannotPrint;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;

/** The files that a take-off of one garden can write. */
record TakeOffFiles(JobSheet sheet, PrintAsk ask, OutFolder folder, Consumer<String> progress) {
    /** Everything as data, in job-sheet.json. */
    static final String DATA = "data";

    /** Slip, cut list, bed register and weekends, in garden.xlsx. */
    static final String TABLES = "tables";

    /** The plan on layers in true size, in plan.dxf. */
    static final String DRAWING = "drawing";

    /** What is written where nothing is asked for. */
    static final List<String> USUAL = List.of("plan", "slip", Prints.SET, DATA);

    static final Set<String> FORMS = Set.of("pdf", "svg", "png");

    /** Every name that can be asked for. */
    static List<String> names() {
        return Stream.concat(Prints.names().stream(), Stream.of(Prints.SET, Prints.HAND_OVER, DATA, TABLES, DRAWING)).toList();
    }

    /** Whether a take-off may have written a file of that name: nobody shall saw by one that an earlier run left behind. */
    static boolean writes(String file) {
        return file.matches("(" + String.join("|", Prints.names()) + ")(-[0-9]{2,})?\\.(pdf|svg|png|csv|xlsx)|slip(-.*)?\\.csv|slip\\.json|weekends\\.(csv|ics)|care\\.ics|hand-over\\.pdf|garden\\.xlsx|plan\\.dxf");
    }

    /**
     * Writes what stands under these names; lists that belong to a kind of sheet come with it.
     *
     * @param forms of what is drawn; empty for the plan as SVG and all else as PDF
     * @param strict whether a kind that this garden has not enough for is refused; else it is left out
     * @return what was refused, by its name; the rest is written all the same
     */
    Map<String, Finding> write(Set<String> names, Set<String> forms, boolean strict) throws IOException {
        Map<String, Finding> refused = new LinkedHashMap<>();
        Map<String, List<Page>> laid = new HashMap<>();
        for (String name : Prints.names()) {
            if (names.contains(name)) attempt(name, strict, refused, () -> kind(name, forms, names.equals(Set.copyOf(USUAL)), laid));
        }
        for (String set : List.of(Prints.SET, Prints.HAND_OVER)) {
            if (names.contains(set))
                attempt(set, strict, refused, () -> folder.put(set + ".pdf", out -> Prints.set(set, sheet, ask, laid, out, this::pages)));
        }
        if (names.contains("care")) file("care.ics");
        if (names.contains("slip")) slip();
        if (names.contains("weekends")) {
            file("weekends.csv");
            file("weekends.ics");
        }
        if (names.contains(TABLES)) file("garden.xlsx");
        if (names.contains(DRAWING)) file("plan.dxf");
        if (names.contains(DATA)) {
            progress.accept("job-sheet.json");
            folder.put("job-sheet.json", out -> JobSheetJson.file(sheet, names.contains("office"), out));
        }
        return refused;
    }

    private interface Writing {
        void run() throws IOException;
    }

    private void attempt(String name, boolean strict, Map<String, Finding> refused, Writing writing) throws IOException {
        try {
            writing.run();
        } catch (IllegalArgumentException thrown) {
            Finding first = CannotAnswer.findings(thrown).get(0);
            if (strict || !(thrown instanceof CannotPrint)) refused.put(name, first);
            folder.drop(name + ".pdf");
        }
    }

    /**
     * @param usual whether the lists of the slip do, as its sheets stand in the set
     * @param laid  gets the pages of the plan, the only ones that stand in the set as here
     */
    private void kind(String name, Set<String> forms, boolean usual, Map<String, List<Page>> laid) throws IOException {
        boolean plan = name.equals("plan");
        if (usual && !plan) return;
        PrintAsk own = plan ? ask : ask.onPaper(Optional.empty());
        for (String form : forms.isEmpty() ? Set.of(plan ? "svg" : "pdf") : new TreeSet<>(forms)) {
            progress.accept(name + "." + form);
            if (form.equals("pdf")) {
                folder.put(name + ".pdf", out -> Prints.write(name, sheet, own, "pdf", 1, out, this::pages));
            } else {
                List<Page> pages = Prints.pages(name, sheet, own);
                if (plan) laid.put(name, pages);
                pictures(name, form, pages);
            }
        }
        if (BuyingTables.known(name)) { // what belongs to the sheets and is to be filled in or reckoned on with
            file(name + ".csv");
            file(name + ".xlsx");
        }
    }

    private void file(String name) throws IOException {
        folder.put(name, out -> new PreparedGarden(sheet).file(new FileAsk(name, Optional.empty(), gardenId(sheet.garden().name()), Instant.now(), 1), out));
    }

    private void pictures(String name, String form, List<Page> pages) throws IOException {
        for (int i = 0; i < pages.size(); i++) {
            Page page = pages.get(i);
            String file = name.equals("plan") && pages.size() == 1 ? name : String.format(Locale.ROOT, "%s-%02d", name, i + 1);
            folder.put(file + "." + form, out -> Prints.picture(page, form, out));
        }
    }

    private void slip() throws IOException {
        file("slip.csv");
        for (Slip.Order order : sheet.slip().orders()) {
            if (!order.supplier().id().isEmpty()) {
                String text = SlipCsv.write(order, sheet.slip().currency().getCode(), sheet.garden().imperial());
                folder.put("slip-" + order.supplier().id() + ".csv", out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
            }
        }
        folder.put("slip.json", out -> JobSheetJson.file(JobSheetPart.SLIP, sheet, out));
    }

    private void pages(int done) {
        progress.accept(Measure.counted(done, "page"));
    }

    /** The same for every file of one garden, so that a calendar replaces what it read before. */
    private static String gardenId(String name) {
        String id = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return id.isEmpty() ? "garden" : id;
    }
}
