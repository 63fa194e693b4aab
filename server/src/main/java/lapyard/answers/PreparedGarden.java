package lapyard.answers;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import lapyard.exchange.CsvWriter;
import lapyard.exchange.DxfWriter;
import lapyard.exchange.Table;
import lapyard.exchange.XlsxWriter;
import lapyard.job.BuildingCalendar;
import lapyard.job.Buying;
import lapyard.job.JobSheet;
import lapyard.json.JobSheetJson;
import lapyard.json.JobSheetPart;
import lapyard.json.SheetAsk;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.prints.BuyingTables;
import lapyard.prints.GardenLayers;
import lapyard.prints.GardenTables;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;
import lapyard.words.Wording;
import lapyard.working.Look;

/** The job sheet of a garden and its forms, each made anew with every call. */
public class PreparedGarden {
    private static final long BED_BYTES = 40_000;
    private static final long REST_BYTES = 100_000;

    private final JobSheet sheet;

    public PreparedGarden(JobSheet sheet) {
        this.sheet = sheet;
    }

    public JobSheet sheet() {
        return sheet;
    }

    /** How much was looked for. */
    public Look look() {
        return sheet.look();
    }

    /** What it takes in memory, roughly. */
    public long sizeBytes() {
        return REST_BYTES + BED_BYTES * sheet.beds().size();
    }

    public void jobSheet(SheetAsk ask, OutputStream out) throws IOException {
        JobSheetJson.write(sheet, ask, out);
    }

    public String slipJson() {
        return JobSheetJson.part("slip", sheet).toString();
    }

    /** Writes one part of the job sheet as JSON. */
    public void part(JobSheetPart part, OutputStream out) throws IOException {
        JobSheetJson.write(part, sheet, out);
    }

    /**
     * One kind of sheets, or the set of all, written page by page; name, format and page as {@link Prints} takes them.
     *
     * @throws Refused if there is no such page, it does not fit or the paper is unknown
     */
    public void print(String name, String format, int page, PrintAsk ask, OutputStream out) throws IOException {
        try {
            ask.check();
            Prints.write(name, sheet, ask, format, page, out);
        } catch (IllegalArgumentException e) {
            throw Refused.of(e, Wording.of(sheet.garden().imperial()));
        }
    }

    private String slipCsv(Optional<String> supplier) {
        Slip slip = sheet.slip();
        if (supplier.isEmpty()) return SlipCsv.write(slip, sheet.garden().imperial());
        return slip.orders().stream()
                .filter(order -> order.supplier().id().equals(supplier.get()))
                .findFirst()
                .map(order -> SlipCsv.write(order, slip.currency().getCode(), sheet.garden().imperial()))
                .orElseThrow(() -> new Refused(List.of(Finding.of(FindingKind.SUPPLIER_NOT_ON_SLIP, Place.field("slip"))
                        .with("supplier", Fact.name(supplier.get()))
                        .way(WayKind.NAME_SUPPLIER_OF, Fact.names(slip.orders().stream().map(order -> order.supplier().id()).toList())))));
    }

    /**
     * Writes a file that is no sheet.
     *
     * @throws Refused if it is of a supplier from whom nothing comes
     */
    public void file(FileAsk ask, OutputStream out) throws IOException {
        if (ask.name().equals("garden.xlsx")) XlsxWriter.write(GardenTables.of(sheet), out);
        else if (ask.name().endsWith(".xlsx")) XlsxWriter.write(tables(ask), out);
        else out.write(text(ask).getBytes(StandardCharsets.UTF_8));
    }

    private String text(FileAsk ask) {
        return switch (ask.name()) {
            case "slip.csv" -> slipCsv(ask.supplier());
            case "weekends.csv" -> Buying.of(sheet).csv(sheet.garden().people().crew().dates().start(), sheet.garden().imperial());
            case "weekends.ics" -> BuildingCalendar.ics(sheet, ask.garden(), ask.made(), ask.revision());
            case "care.ics" -> BuildingCalendar.care(sheet, ask.garden(), ask.made(), ask.revision());
            case "plan.dxf" -> DxfWriter.write(GardenLayers.of(sheet));
            default -> CsvWriter.write(tables(ask).get(0));
        };
    }

    private List<Table> tables(FileAsk ask) {
        return BuyingTables.of(ask.name().substring(0, ask.name().lastIndexOf('.')), sheet);
    }
}
