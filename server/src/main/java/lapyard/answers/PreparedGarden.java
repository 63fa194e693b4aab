package lapyard.answers;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import lapyard.job.BuildingCalendar;
import lapyard.job.Buying;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.job.Quoting;
import lapyard.job.SawAdvice;
import lapyard.json.GroundJson;
import lapyard.json.JobSheetJson;
import lapyard.json.LoadInJson;
import lapyard.json.QuoteJson;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.prints.CannotPrint;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;
import lapyard.words.Wording;

/** The job sheet of a garden and its forms. */
public record PreparedGarden(JobSheet sheet) implements Desk.Prepared {
    private static final long BED_BYTES = 40_000;
    private static final long REST_BYTES = 100_000;
    private static final List<String> MEMBERS = List.of("take-off", "cutting", "rolls", "slip", "snags", "tally");

    @Override
    public long sizeBytes() {
        return REST_BYTES + BED_BYTES * sheet.beds().size();
    }

    @Override
    public String jobSheetJson() {
        return JobSheetJson.of(sheet, Optional.empty()).toString();
    }

    @Override
    public String slipJson() {
        return JobSheetJson.slip(sheet).toString();
    }

    @Override
    public Optional<String> part(String part) {
        if (GroundJson.PARTS.contains(part)) return Optional.of(GroundJson.part(part, sheet).toString());
        return switch (part) {
            case "advice" -> Optional.of(JobSheetJson.advice(SawAdvice.of(sheet)).toString());
            case "weekends" -> Optional.of(JobSheetJson.weekends(sheet).toString());
            case "loads" -> Optional.of(LoadInJson.of(Loads.of(sheet), Wording.of(sheet.garden().imperial())).toString());
            case "quote" -> Optional.of(QuoteJson.of(Quoting.of(sheet), sheet.garden().terms().quote()).toString());
            default -> MEMBERS.contains(part) ? Optional.of(member(part).toString()) : Optional.empty();
        };
    }

    private JsonNode member(String part) {
        ObjectNode whole = JobSheetJson.of(sheet, Optional.empty());
        return part.equals("take-off") ? whole.retain("beds", "paths") : whole.get(part);
    }

    @Override
    public void print(String name, String format, int page, PrintAsk ask, OutputStream out) throws IOException {
        try {
            Prints.write(name, sheet, ask, format, page, out);
        } catch (CannotPrint tooLittle) {
            throw new Refused(name, tooLittle.getMessage());
        } catch (IllegalArgumentException e) {
            throw new Refused(name, e.getMessage(), WayKind.LEAVE_OUT_PARAMETER);
        }
    }

    @Override
    public String slipCsv(Optional<String> supplier) {
        Slip slip = sheet.slip();
        if (supplier.isEmpty()) return SlipCsv.write(slip);
        return slip.orders().stream()
                .filter(order -> order.supplier().id().equals(supplier.get()))
                .findFirst()
                .map(order -> SlipCsv.write(order, slip.currency().getCode()))
                .orElseThrow(() -> new Refused(List.of(Finding.of(FindingKind.SUPPLIER_NOT_ON_SLIP, Place.field("slip"))
                        .with("supplier", Fact.name(supplier.get()))
                        .way(WayKind.NAME_SUPPLIER_OF, Fact.names(slip.orders().stream().map(order -> order.supplier().id()).toList())))));
    }

    @Override
    public String weekendsIcs(String id, Instant made, int revision) {
        return BuildingCalendar.ics(sheet, id, made, revision);
    }

    @Override
    public String weekendsCsv() {
        return Buying.of(sheet).csv(sheet.garden().people().crew().dates().start());
    }
}
