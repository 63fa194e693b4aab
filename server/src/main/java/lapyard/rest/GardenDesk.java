package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
import lapyard.drawing.PdfWriter;
import lapyard.job.BuildingCalendar;
import lapyard.job.Buying;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.job.Quoting;
import lapyard.job.SawAdvice;
import lapyard.job.TryOut;
import lapyard.json.GardenReader;
import lapyard.json.GardenSchema;
import lapyard.json.GroundJson;
import lapyard.json.JobSheetJson;
import lapyard.json.LoadInJson;
import lapyard.json.MerchantListJson;
import lapyard.json.QuoteJson;
import lapyard.json.Reading;
import lapyard.json.SolveLine;
import lapyard.json.TryOutJson;
import lapyard.json.UnreadableDocument;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import lapyard.order.Variation;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.prints.CannotPrint;
import lapyard.prints.OrderPrint;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;
import lapyard.working.Progress;

/** The desk of the real program: documents are read, job sheets prepared once each, and shown in their forms. */
public final class GardenDesk implements Desk {
    /** Job sheets kept, by their document's hash, for the other forms of the same document that are asked for next. */
    private static final int KEPT = 16;

    private final Map<String, CompletableFuture<JobSheet>> kept = new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, CompletableFuture<JobSheet>> eldest) {
            return size() > KEPT;
        }
    };

    /** A document read, and refused too for what only shows once beds, paths and levels stand together. */
    public static Reading read(String document) throws UnreadableDocument {
        Reading reading = GardenReader.read(document);
        if (reading instanceof Reading.Read read) {
            List<Finding> stops = Job.stops(read.garden());
            if (!stops.isEmpty()) {
                List<Finding> all = new ArrayList<>(read.findings());
                all.addAll(stops);
                return new Reading.Refused(all);
            }
        }
        return reading;
    }

    @Override
    public List<Finding> check(String document) {
        return reading(document).findings();
    }

    private static Reading reading(String document) {
        try {
            return read(document);
        } catch (UnreadableDocument e) {
            return new Reading.Refused(List.of(refused("garden", e.getMessage()).way(WayKind.SEND_OBJECT)));
        }
    }

    private static com.fasterxml.jackson.databind.node.ObjectNode loads(JobSheet sheet) {
        return LoadInJson.of(Loads.of(sheet), lapyard.words.Wording.of(sheet.garden().imperial()));
    }

    private static Finding refused(String where, String why) {
        return Finding.of(FindingKind.REQUEST_REFUSED, Place.field(where)).with("text", Fact.name(why));
    }

    @Override
    public String jobSheetJson(String document) {
        return JobSheetJson.of(sheet(document), Optional.empty()).toString();
    }

    @Override
    public Optional<String> jobSheetPart(String document, String part) {
        if (part.equals("advice")) {
            return Optional.of(JobSheetJson.advice(SawAdvice.of(sheet(document))).toString());
        }
        if (GroundJson.PARTS.contains(part)) {
            return Optional.of(GroundJson.part(part, sheet(document)).toString());
        }
        if (part.equals("weekends")) {
            return Optional.of(JobSheetJson.weekends(sheet(document)).toString());
        }
        if (part.equals("loads")) {
            return Optional.of(loads(sheet(document)).toString());
        }
        if (part.equals("quote")) {
            return Optional.of(QuoteJson.of(Quoting.of(sheet(document)), sheet(document).garden().terms().quote()).toString());
        }
        ObjectNode whole = JobSheetJson.of(sheet(document), Optional.empty());
        JsonNode found = part.equals("take-off") ? whole.retain("beds", "paths") : whole.get(part);
        boolean known = List.of("take-off", "cutting", "rolls", "slip", "snags", "tally").contains(part);
        return known ? Optional.of(found.toString()) : Optional.empty();
    }

    @Override
    public byte[] print(String document, String name, String format, int page, PrintAsk ask) {
        JobSheet sheet = sheet(document);
        try {
            return Prints.file(Prints.pages(name, sheet, ask), format, page);
        } catch (CannotPrint tooLittle) {
            throw new Refused(List.of(refused(name, tooLittle.getMessage())));
        } catch (IllegalArgumentException e) {
            throw new Refused(List.of(refused(name, e.getMessage()).way(WayKind.LEAVE_OUT_PARAMETER)));
        }
    }

    @Override
    public String slipCsv(String document, Optional<String> supplier) {
        Slip slip = sheet(document).slip();
        if (supplier.isEmpty()) {
            return SlipCsv.write(slip);
        }
        return slip.orders().stream()
                .filter(order -> order.supplier().id().equals(supplier.get()))
                .findFirst()
                .map(order -> SlipCsv.write(order, slip.currency().getCode()))
                .orElseThrow(() -> new Refused(List.of(Finding.of(FindingKind.SUPPLIER_NOT_ON_SLIP, Place.field("slip"))
                        .with("supplier", Fact.name(supplier.get()))
                        .way(WayKind.NAME_SUPPLIER_OF, Fact.names(slip.orders().stream().map(order -> order.supplier().id()).toList())))));
    }

    @Override
    public String variation(String before, String after) {
        return QuoteJson.of(between(sheet(before), sheet(after))).toString();
    }

    @Override
    public byte[] variationSheet(String before, String after, String from, String to) {
        JobSheet was = sheet(before);
        JobSheet is = sheet(after);
        return PdfWriter.write(OrderPrint.variation(was, is, between(was, is), from, to, PrintAsk.usual(to, "")));
    }

    private static Variation between(JobSheet before, JobSheet after) {
        try {
            return Variation.between(before.slip(), after.slip());
        } catch (IllegalArgumentException e) {
            throw new Refused(List.of(refused("variation", e.getMessage()).way(WayKind.SAME_CURRENCY)));
        }
    }

    @Override
    public String merchantList(String body) {
        try {
            return MerchantListJson.preview(body).toString();
        } catch (IllegalArgumentException | UnreadableDocument e) {
            throw new Refused(List.of(refused("list", e.getMessage()).way(WayKind.SEND_LIST)));
        }
    }

    @Override
    public String weekendsIcs(String document, String id, java.time.Instant made, int revision) {
        return BuildingCalendar.ics(sheet(document), id, made, revision);
    }

    @Override
    public String weekendsCsv(String document) {
        JobSheet sheet = sheet(document);
        return Buying.of(sheet).csv(sheet.garden().people().crew().dates().start());
    }

    @Override
    public String tryOut(String asked) {
        try {
            TryOutJson.Asked both = TryOutJson.read(asked);
            JobSheet before = sheet(both.before());
            return TryOutJson.write(TryOut.of(before, sheet(both.after())), both.after()).toString();
        } catch (IllegalArgumentException | UnreadableDocument e) {
            throw new Refused(List.of(refused("try-out", e.getMessage()).way(WayKind.MEND_NAMED)));
        }
    }

    @Override
    public String solve(String kind, String problem, double seconds, Function<String, Progress> progress) {
        try {
            return (switch (kind) {
                case "cutting" -> SolveLine.cutting(problem, seconds, progress.apply(kind));
                case "rolls" -> SolveLine.rolls(problem, seconds, progress.apply(kind));
                case "staging" -> SolveLine.staging(problem, seconds, progress.apply(kind));
                case "garden" -> JobSheetJson.slip(sheet(problem, progress));
                default -> throw new IllegalArgumentException("no problems of kind " + kind + " are solved here");
            }).toString();
        } catch (IllegalArgumentException | UnreadableDocument e) {
            throw new Refused(List.of(refused(kind + " problem", e.getMessage()).way(WayKind.MEND_NAMED)));
        }
    }

    @Override
    public String exampleCatalogue() {
        return MerchantListJson.examples();
    }

    @Override
    public String schema() {
        return GardenSchema.text();
    }

    private JobSheet sheet(String document) {
        return sheet(document, what -> Progress.UNHEARD);
    }

    /**
     * Whoever asks first works it out; all others wait for the same sheet. One that was told to stop gives what it has by
     * then and works it out anew for those who wait.
     */
    private JobSheet sheet(String document, Function<String, Progress> progress) {
        String key = Output.hash(document.getBytes(StandardCharsets.UTF_8));
        CompletableFuture<JobSheet> own = new CompletableFuture<>();
        CompletableFuture<JobSheet> found;
        synchronized (kept) {
            found = kept.putIfAbsent(key, own);
        }
        if (found != null) {
            try {
                return found.join();
            } catch (CompletionException e) {
                if (e.getCause() instanceof CutShort) {
                    return sheet(document, progress);
                }
                throw e.getCause() instanceof Refused refused ? new Refused(refused.findings()) : e;
            }
        }
        try {
            Reading reading = reading(document);
            if (!(reading instanceof Reading.Read read)) {
                throw new Refused(reading.findings());
            }
            JobSheet sheet = Job.prepare(read.garden(), progress);
            if (Thread.currentThread().isInterrupted()) {
                forget(key, own, new CutShort());
            } else {
                own.complete(sheet);
            }
            return sheet;
        } catch (RuntimeException | Error e) {
            forget(key, own, e);
            throw e;
        }
    }

    private void forget(String key, CompletableFuture<JobSheet> own, Throwable why) {
        synchronized (kept) {
            kept.remove(key, own);
        }
        own.completeExceptionally(why);
    }

    /** Told to stop before the searches had ended: not what the document gives. */
    private static final class CutShort extends RuntimeException {
        private static final long serialVersionUID = 1;
    }
}
