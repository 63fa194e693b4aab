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
import lapyard.catalogue.Section;
import lapyard.catalogue.TradeName;
import lapyard.diagrams.BenchTable.Column;
import lapyard.diagrams.BenchTable;
import lapyard.diagrams.ListSheets;
import lapyard.drawing.Page;
import lapyard.drawing.Photo;
import lapyard.geometry.Length;
import lapyard.job.AsBuilt;
import lapyard.job.CarePlan;
import lapyard.job.JobSheet;
import lapyard.job.Provenance;
import lapyard.plan.Bed;
import lapyard.plan.BedNames;
import lapyard.plan.FindingKind;
import lapyard.plan.HandOver;
import lapyard.plan.RackBoard;

/** What goes with a garden to whoever tends it. */
final class HandOverPrint {
    private static final String CAUTION =
            "What is hidden in a bed stands only here: look before you dig, drill or cut. Keep these sheets with the garden.";
    private static final String CARE_CAUTION =
            "Read the tin before you coat: gloves, eyes, no food plants below. Do not sand or burn timber whose treatment you do not know.";
    private static final String PROVENANCE_CAUTION =
            "Unknown is not safe: nothing of unknown origin, coating or treatment goes near food. Timber with creosote or CCA: licensed tip, never burn, saw or sand it.";

    private HandOverPrint() {}

    /** @param money whether what it cost stands there: for whoever bought, and not for the client */
    static List<Page> asBuilt(JobSheet sheet, PrintAsk ask, boolean money) {
        if (sheet.garden().beds().isEmpty()) throw CannotPrint.of(FindingKind.GARDEN_NO_BEDS);
        boolean imperial = sheet.garden().imperial();
        AsBuilt built = AsBuilt.of(sheet);
        Map<String, Bed> beds = sheet.garden().beds().stream().collect(Collectors.toMap(Bed::id, Function.identity()));
        Map<String, String> tenders = sheet.garden().people().handOver().tenders();
        List<String> words = new ArrayList<>();
        words.add(built.tasksDone() + " of " + built.tasks() + " tasks are tallied as done."
                + (sheet.garden().people().tally().boards().isEmpty() ? " No board is tallied as cut." : ""));
        words.add("Planned is what the garden needs as it is drawn in this revision. How the drawing changed since it was quoted or ordered is on the variation from that revision to this.");
        String builder = sheet.garden().terms().quote().builder();
        if (!builder.isBlank()) words.add("Built by " + builder + ".");
        ListSheets sheets = ask.list(sheet, CAUTION, "As built", "what was really done, against what was planned").words(words, 3.6, false)
                .table("Beds", List.of(new Column("bed", 0.1, true), new Column("size", 0.26, false), new Column("walls", 0.24, false), new Column("tasks done", 0.12, false),
                        new Column("last on", 0.12, false), new Column("tended by", 0.16, false)), built.beds().stream().map(bed -> List.of(bed.id(), RegisterPrint.size(beds.get(bed.id()), imperial), beds.get(bed.id()).courses() + " courses of " + TradeName.section(beds.get(bed.id()).section().id(), imperial),
                        bed.tasksDone() + " of " + bed.tasks(), when(sheet, bed.last()), tenders.getOrDefault(bed.id(), ""))).toList());
        if (!built.timber().isEmpty())
            sheets.table("Timber", List.of(new Column("section", 0.16, true), new Column("pieces planned", 0.14, false), new Column("cut", 0.14, true), new Column("spoiled", 0.14, false),
                    new Column("boards planned", 0.14, false), new Column("opened", 0.14, true), new Column("lost", 0.14, false)), built.timber().stream()
                    .map(one -> List.of(TradeName.section(one.section(), imperial), "" + one.pieces(), "" + one.cut(), "" + one.spoiled(), "" + one.boards(), "" + one.opened(), Length.written(one.lostMm(), imperial))).toList());
        if (money) OfficePrint.bought(sheets.section("As built: money", OfficePrint.total(built.money())), built.money());
        return sheets.pages();
    }

    private static String when(JobSheet sheet, OptionalInt day) {
        if (day.isEmpty()) return "";
        return sheet.garden().people().crew().dates().start().map(start -> start.plusDays(day.getAsInt()).toString()).orElse("day " + (day.getAsInt() + 1));
    }

    static List<Page> care(JobSheet sheet, PrintAsk ask) {
        CarePlan care = CarePlan.of(sheet);
        if (care.tasks().isEmpty()) throw CannotPrint.of(FindingKind.GARDEN_NO_BEDS);
        Optional<LocalDate> start = sheet.garden().people().crew().dates().start();
        List<String> words = new ArrayList<>(care.unknown());
        if (start.isEmpty()) words.add("The garden names no first day of work, so no dates stand here.");
        return ask.list(sheet, CARE_CAUTION, "Care", "what the beds ask for once they stand").words(words, 3.6, true)
                .table("What to do", List.of(new Column("what", 0.3, true), new Column("where", 0.16, false), new Column("first", 0.12, true), new Column("then", 0.12, false),
                        new Column("why", 0.18, false), new Column("whose figure", 0.12, false)), care.tasks().stream().map(task -> List.of(task.what(), task.where(), start.map(day -> CarePlan.due(task, day).toString()).orElse(task.spring() ? "the next spring" : ""), task.often(),
                        task.why(), task.source())).toList())
                .pages();
    }

    static List<Page> snags(JobSheet sheet, PrintAsk ask) {
        List<HandOver.Snag> snags = sheet.garden().people().handOver().snags();
        if (snags.isEmpty()) throw CannotPrint.of(FindingKind.SNAG_LIST_EMPTY);
        Map<String, Optional<Photo>> photos = new HashMap<>();
        return ask.list(sheet, CAUTION, "Snag list", "what was found on the walk round")
                .pictured("To mend", List.of(new Column("", 0.06, false), new Column("where", 0.12, true), new Column("what", 0.44, true), new Column("found", 0.12, false),
                        new Column("mended", 0.12, false), new Column("photos", 0.14, false)), snags.stream()
                        .map(snag -> snag(snag, snag.photos().stream().flatMap(photo -> photos.computeIfAbsent(photo, id -> ask.photos().find(id).flatMap(kept -> ListSheets.photo(kept, ask.mono()))).stream()).toList())).toList())
                .pages();
    }

    /** @param seen those of its photos that can be shown */
    private static ListSheets.Pictured snag(HandOver.Snag snag, List<Photo> seen) {
        int all = snag.photos().size();
        return new ListSheets.Pictured(List.of(snag.mended().isPresent() ? "" : BenchTable.TICK, snag.bed().isEmpty() ? "" : "bed " + snag.bed(), snag.text(), date(snag.found()), date(snag.mended()),
                all == 0 ? "" : seen.size() == all ? "" + all : seen.size() + " of " + all + " shown"), seen, "photo of: " + snag.text());
    }

    private static String date(Optional<LocalDate> date) {
        return date.map(Object::toString).orElse("");
    }

    /** What is known of the timber of a garden, board by board and bed by bed. */
    static List<Page> provenance(JobSheet sheet, PrintAsk ask) {
        boolean imperial = sheet.garden().imperial();
        List<Provenance> known = sheet.provenance();
        if (known.isEmpty() && sheet.garden().beds().stream().noneMatch(bed -> bed.planting().food())) {
            throw CannotPrint.of(FindingKind.BOARDS_NONE_TRACED);
        }
        ListSheets sheets = ask.list(sheet, PROVENANCE_CAUTION, "Where boards come from", "to be kept with the beds, for whoever eats from them or takes them down");
        if (!known.isEmpty())
            sheets.table("Boards on hand", List.of(new Column("Board", 0.08, true), new Column("What", 0.2, false), new Column("Comes from", 0.22, false), new Column("Treatment", 0.16, false),
                    new Column("Looked at by", 0.12, false), new Column("May go", 0.12, true), new Column("In beds", 0.1, false)), known.stream().map(one -> board(one, imperial)).toList());
        return sheets.table("Bed by bed", List.of(new Column("Bed", 0.14, true), new Column("Food", 0.1, true), new Column("Boards on hand", 0.4, false), new Column("Bought timber", 0.36, false)),
                sheet.garden().beds().stream().map(bed -> List.of(bed.id(), bed.planting().food() ? "food" : "", onHand(known, bed), timber(bed.section(), imperial))).toList()).pages();
    }

    private static String onHand(List<Provenance> known, Bed bed) {
        String boards = known.stream().filter(one -> one.beds().contains(bed.id()))
                .map(one -> one.board().id() + (one.board().past().origin().isEmpty() ? "" : ": " + one.board().past().origin()))
                .collect(Collectors.joining("; "));
        return boards.isEmpty() ? "none" : boards;
    }

    private static List<String> board(Provenance one, boolean imperial) {
        RackBoard board = one.board();
        return List.of(
                board.id(), (board.count() > 1 ? board.count() + " x " : "") + Length.written(board.lengthMm(), imperial) + " of " + TradeName.section(board.section(), imperial),
                board.past().origin().isEmpty() ? "unknown" : board.past().origin(), board.past().treatment().words + (board.past().coated() ? ", coated" : ""),
                board.past().checkedBy().isEmpty() ? "nobody" : board.past().checkedBy(),
                one.allowed() + (one.why().isEmpty() ? "" : ": " + one.why()), String.join(", ", BedNames.inOrder(one.beds())));
    }

    private static String timber(Section section, boolean imperial) {
        return TradeName.section(section.id(), imperial) + (section.treated() ? ", treated against rot: ask for the treatment in writing" : ", not treated");
    }
}
