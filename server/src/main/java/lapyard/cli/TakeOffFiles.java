package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
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
        Optional<ObjectNode> data = names.contains(DATA) ? Optional.of(JobSheetJson.of(sheet)) : Optional.empty();
        if (names.contains("slip")) slip(data.map(json -> json.path("slip")).orElseGet(() -> JobSheetJson.part("slip", sheet)));
        if (names.contains("weekends")) {
            file("weekends.csv");
            file("weekends.ics");
        }
        if (names.contains(TABLES)) file("garden.xlsx");
        if (names.contains(DRAWING)) file("plan.dxf");
        if (data.isPresent()) data(data.get(), names.contains("office"));
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

    private void slip(JsonNode json) throws IOException {
        file("slip.csv");
        for (Slip.Order order : sheet.slip().orders()) {
            if (!order.supplier().id().isEmpty()) {
                text("slip-" + order.supplier().id() + ".csv", SlipCsv.write(order, sheet.slip().currency().getCode(), sheet.garden().imperial()));
            }
        }
        text("slip.json", JobSheetJson.text(json));
    }

    /**
     * @param json   the job sheet
     * @param advice whether it holds what only the office needs and takes a search of its own
     */
    private void data(ObjectNode json, boolean advice) throws IOException {
        progress.accept("job-sheet.json");
        List<String> beside = new ArrayList<>(List.of("weekends"));
        if (advice) beside.add("advice");
        beside.add("loads");
        if (sheet.garden().terms().quote().given()) beside.add("quote");
        beside.forEach(part -> json.set(part, JobSheetJson.part(part, sheet)));
        text("job-sheet.json", JobSheetJson.text(json));
    }

    private void text(String file, String text) throws IOException {
        folder.put(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
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
