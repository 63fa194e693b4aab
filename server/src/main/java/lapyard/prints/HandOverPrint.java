package lapyard.prints;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import lapyard.diagrams.HandOverSheets;
import lapyard.drawing.Page;
import lapyard.drawing.Photo;
import lapyard.geometry.Length;
import lapyard.job.AsBuilt;
import lapyard.job.CarePlan;
import lapyard.job.JobSheet;
import lapyard.plan.Bed;
import lapyard.plan.HandOver;

/** What goes with a garden to whoever tends it. */
final class HandOverPrint {
    private HandOverPrint() {}

    /** With what it cost, for whoever bought. */
    static List<Page> asBuilt(JobSheet sheet, PrintAsk ask) {
        return asBuilt(sheet, ask, true);
    }

    /** Without money, for the client. */
    static List<Page> forClient(JobSheet sheet, PrintAsk ask) {
        return asBuilt(sheet, ask, false);
    }

    private static List<Page> asBuilt(JobSheet sheet, PrintAsk ask, boolean money) {
        if (sheet.garden().beds().isEmpty()) throw new CannotPrint("the garden has no beds: add one");
        boolean imperial = sheet.garden().imperial();
        AsBuilt built = AsBuilt.of(sheet);
        Map<String, Bed> beds = sheet.garden().beds().stream().collect(Collectors.toMap(Bed::id, Function.identity()));
        Map<String, String> tenders = sheet.garden().people().handOver().tenders();
        List<String> words = new ArrayList<>();
        words.add(built.tasksDone() + " of " + built.tasks() + " tasks are tallied as done."
                + (sheet.garden().people().tally().boards().isEmpty() ? " No board is tallied as cut." : ""));
        String builder = sheet.garden().terms().quote().builder();
        if (!builder.isBlank()) words.add("Built by " + builder + ".");
        return HandOverSheets.asBuilt(sheet.garden().name(), imperial, new HandOverSheets.AsBuilt(
                words,
                built.beds().stream().map(bed -> List.of(bed.id(), RegisterPrint.size(beds.get(bed.id()), imperial), beds.get(bed.id()).courses() + " courses of " + beds.get(bed.id()).section().id(),
                        bed.tasksDone() + " of " + bed.tasks(), when(sheet, bed.last()), tenders.getOrDefault(bed.id(), ""))).toList(),
                built.timber().stream().map(one -> List.of(one.section(), "" + one.pieces(), "" + one.cut(), "" + one.spoiled(), "" + one.boards(), "" + one.opened(),
                        Length.written(one.lostMm(), imperial))).toList(),
                money ? Optional.of(new HandOverSheets.Money(built.money().currency().getCode(), MoneyPrint.total(built.money()), MoneyPrint.bought(built.money()))) : Optional.empty()),
                ask.bench(imperial));
    }

    private static String when(JobSheet sheet, OptionalInt day) {
        if (day.isEmpty()) return "";
        return sheet.garden().people().crew().dates().start().map(start -> start.plusDays(day.getAsInt()).toString()).orElse("day " + (day.getAsInt() + 1));
    }

    static List<Page> care(JobSheet sheet, PrintAsk ask) {
        CarePlan care = CarePlan.of(sheet);
        if (care.tasks().isEmpty()) throw new CannotPrint("the garden has no beds: add one");
        Optional<LocalDate> start = sheet.garden().people().crew().dates().start();
        List<String> words = new ArrayList<>(care.unknown());
        if (start.isEmpty()) words.add("The garden names no first day of work, so no dates stand here.");
        return HandOverSheets.care(sheet.garden().name(), sheet.garden().imperial(), words,
                care.tasks().stream().map(task -> List.of(task.what(), task.where(), start.map(day -> CarePlan.due(task, day).toString()).orElse(task.spring() ? "the next spring" : ""), task.often(),
                        task.why(), task.source())).toList(),
                ask.bench(sheet.garden().imperial()));
    }

    static List<Page> snags(JobSheet sheet, PrintAsk ask) {
        List<HandOver.Snag> snags = sheet.garden().people().handOver().snags();
        if (snags.isEmpty()) throw new CannotPrint("nothing stands on the snag list: add what you find under Hand-over");
        Map<String, Optional<Photo>> photos = new HashMap<>();
        return HandOverSheets.snags(sheet.garden().name(), sheet.garden().imperial(),
                snags.stream().map(snag -> new HandOverSheets.Snag(List.of(snag.mended().isPresent() ? "" : "\u2610", snag.bed().isEmpty() ? "" : "bed " + snag.bed(), snag.text(), date(snag.found()), date(snag.mended())),
                        snag.photos().size(), snag.photos().stream().flatMap(photo -> photos.computeIfAbsent(photo, id -> ask.photos().find(id).flatMap(HandOverSheets::photo)).stream()).toList())).toList(),
                ask.bench(sheet.garden().imperial()));
    }

    private static String date(Optional<LocalDate> date) {
        return date.map(Object::toString).orElse("");
    }
}
