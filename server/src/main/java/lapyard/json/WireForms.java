package lapyard.json;

import static lapyard.json.CuttingJson.EXACT;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.Vehicle;
import lapyard.construction.CornerScrew;
import lapyard.construction.CrossTie;
import lapyard.construction.CrossTies;
import lapyard.construction.FloorBay;
import lapyard.construction.LinerPiece;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.construction.PieceEnd;
import lapyard.cutting.Batches;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.Ledger;
import lapyard.cutting.NearMisses.NearMiss;
import lapyard.cutting.Replan;
import lapyard.cutting.SawBoard;
import lapyard.cutting.Shortage;
import lapyard.cutting.StagedCutting;
import lapyard.ground.AccessSheet;
import lapyard.ground.Pegs;
import lapyard.ground.SettingOut;
import lapyard.ground.SunHours;
import lapyard.ground.SurveyedYard;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet;
import lapyard.job.MerchantOffers;
import lapyard.job.Payments;
import lapyard.job.Provenance;
import lapyard.job.SawAdvice;
import lapyard.job.StagingCost;
import lapyard.job.TryOut;
import lapyard.json.Wire.Exact;
import lapyard.json.Wire.Form;
import lapyard.json.Wire.Part;
import lapyard.json.Wire.To;
import lapyard.loadin.Load;
import lapyard.loadin.LoadIn;
import lapyard.loadin.Trips;
import lapyard.order.Quote;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.order.Variation;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.RackBoard;
import lapyard.plan.Tally;
import lapyard.sheets.RollResult;
import lapyard.stages.StagingResult;
import lapyard.standing.Standing;
import lapyard.standing.Verdict;
import lapyard.weekends.Weekends;
import lapyard.words.Wording;
import lapyard.working.DayNames;

/**
 * Where a record that is sent as it stands differs from its parts: another name, other decimals, a part left out, something
 * worked out, another order. A form says only what differs and names parts as the record does.
 */
final class WireForms<T> {
    private static final Map<Class<?>, WireForms<?>> FORMS = new HashMap<>();
    /** Where records are declared that are asked for apart: their forms are not made ready with the rest. */
    private static final Set<String> APART = Set.of(
            "LoadIn", "Load", "Trips", "Vehicle", "Payments", "MerchantOffers", "StagingCost", "Variation", "TryOut", "SawAdvice");

    static {
        // of a bed
        of(CornerScrew.class).without("threadMm");
        of(CrossTies.Post.class).called("at", "place");
        of(PieceEnd.class).called("kind", "cut");
        of(CrossTie.class).also("lengthMm").first("wall", "atMm", "toWall", "from", "to", "lengthMm");
        of(Piece.class).also("runsPast", "shortMm", "outerFaceMm", "innerFaceMm")
                .first("mark", "course", "wall", "part", "lengthMm", "runsPast", "fromMm", "seen", "lies",
                        "shortMm", "outerFaceMm", "innerFaceMm");
        of(LinerPiece.class).without("floor").also("floor", piece -> piece.wall().isEmpty() ? piece.floor() : null).ifGiven("floor", "wall")
                .first("id", "widthMm", "heightMm", "layingOrder", "floor");
        of(FloorBay.class).without("bearersLaid", "slatsLaid").also("bearersRun", bay -> bay.alongY() ? "up" : "across").also("bearerMm")
                .without("alongY").also("rows", bay -> bay.slats().rows()).also("gapMm", bay -> bay.slats().gapMm())
                .also("rippedMm", bay -> bay.slats().rippedMm()).also("rowMm", bay -> bay.slats().piecesMm()).without("slats")
                .first("floor", "bearersRun", "bearerMm");
        // of boards
        of(Nest.class).also("mark").also("goodFaces").called("parts", "pieces").also("cuts")
                .first("mark", "lengthMm", "goodFaces");
        of(Nest.Part.class).only("piece").also("mark", part -> part.piece().mark()).also("outer", part -> part.outerOnFace() ? "face" : "back")
                .also("face", part -> List.of(part.faceFromMm(), part.faceToMm())).also("back", part -> List.of(part.backFromMm(), part.backToMm()))
                .without("piece").to(1, "face", "back");
        of(RackBoard.class).only("id", "section", "lengthMm", "count");
        of(JobSheet.PathSheet.class).also("id", one -> one.path().id()).also("name", one -> one.path().name()).without("path").first("id", "name");
        of(Provenance.class).also("section", one -> one.board().section()).also("origin", one -> one.board().past().origin())
                .also("coated", one -> one.board().past().coated()).also("treatment", one -> one.board().past().treatment())
                .also("checkedBy", one -> one.board().past().checkedBy()).also("of", one -> one.board().id()).without("board").called("of", "board")
                .first("of", "section", "origin", "coated", "treatment", "checkedBy");
        of(CuttingResult.class).without("salvage", "shortage").also("salvage", result -> result.salvage().signum() > 0 ? result.salvage() : null)
                .also("unplacedProven", result -> result.unplaced().isEmpty() ? null : result.unplacedProven())
                .also("moreBoards", result -> result.shortage().ways()).ifGiven("salvage", "unplacedProven", "moreBoards")
                .exact("cost", "salvage", "lowerBound").first("name", "cost", "salvage", "boards");
        of(CuttingResult.BoardLine.class).to(EXACT, "lengthsMm", "leftMm");
        of(CuttingResult.Unplaced.class).to(EXACT, "lengthMm").without("count", "scarce");
        of(Shortage.Way.class).exact("cost");
        of(Shortage.More.class).ifGiven("stock").to(EXACT, "leastMm").called("leastMm", "atLeast");
        of(StagedCutting.Way.class).exact("paid").called("paid", "cost");
        of(NearMiss.class).to(EXACT, "lengthMm").exact("saved").called("ids", "pieces").without("then");
        of(SawBoard.Cut.class).first("mark", "stage");
        of(Ledger.class).first("stages");
        of(Ledger.Offcut.class).called("marks", "pieces");
        of(Batches.Draw.class).called("marks", "pieces");
        of(Batches.Setting.class).also("pieces").called("draws", "from").first("stopMm", "pieces");
        of(JobSheet.Ripping.class).without("ripsPerBoard").also("rips");
        of(SawWork.class).without("problem", "marks").ifGiven("ripping").also("onHand", WireForms::onHand);
        of(Batches.class).without("stages", "rates").also("minutesACut", batches -> batches.rates().minutesACut())
                .also("minutesASetting", batches -> batches.rates().minutesASetting()).also("minutes").also("stages", WireForms::stages)
                .to(1, "minutesACut", "minutesASetting", "minutes");
        of(Replan.Planned.class).without("rest", "result", "lacking").to(EXACT, "neededMm", "thereMm").also("wanted")
                .also("lacking", plan -> plan.lacking().stream().map(piece -> new Lacking(piece.id(), piece.lengthMm(), piece.count())).toList())
                .first("cut", "wanted", "neededMm", "thereMm", "fit", "lacking");
        // of what is bought
        of(SlipLine.class).without("uses").also("saved")
                .first("item", "label", "need", "unit", "packs", "leftOver", "cost", "bedByBed", "saved");
        of(SlipLine.PackCount.class).said("called", (pack, words) -> pack.words(words.imperial())).first("pack", "called");
        of(Tally.Bought.class).said("called", (one, words) -> PackCode.words(one.pack(), words.imperial()));
        of(Slip.Order.class).also("name", order -> order.supplier().name()).also("leadDays", order -> order.supplier().leadDays())
                .also("validUntil", order -> order.supplier().validUntil()).called("charge", "delivery").also("total")
                .also("taxRate", order -> order.supplier().taxPercent()).also("freeOver", order -> order.supplier().freeOver())
                .also("shortOfFree").also("overLimit").also("of", order -> order.supplier().id())
                .without("supplier").called("of", "supplier")
                .first("of", "name", "leadDays", "validUntil", "goods", "charge", "total", "tax", "taxRate", "atLeast", "freeOver", "shortOfFree", "overLimit");
        of(Slip.Part.class).also("item", part -> part.line().item()).also("label", part -> part.line().label()).without("line", "packs")
                .also("packs", Slip.Part::costed).first("item", "label", "packs");
        of(Slip.Costed.class).unwrapped("pack");
        of(Quote.Line.class).only("what").also("cost", line -> line.priced() ? line.cost() : null).also("price", line -> line.priced() ? line.price() : null);
        // of whether a bed stands
        of(Standing.class).without("bed", "notDesigned").also("caution", standing -> Standing.CAUTION)
                .said("notDesigned", (standing, words) -> standing.notDesigned().stream().map(words::text).toList()).first("caution", "notDesigned");
        of(Verdict.class).without("finding").said("text", (verdict, words) -> words.text(verdict.finding()))
                .said("ways", (verdict, words) -> words.ways(verdict.finding()));
        // of rolls
        of(RollResult.class).exact("cost", "lowerBound");
        of(JobSheet.MaterialRolls.class).to(3, "metresBedByBed").first("material", "metresBedByBed", "costBedByBed");
        of(RollResult.RollLayout.class).to(3, "usedMm", "boughtMm");
        of(RollResult.Placed.class).to(3, "x", "y", "widthMm", "heightMm");
        of(RollResult.Unplaced.class).to(3, "widthMm", "heightMm");
        // of the ground and of days
        of(AccessSheet.class).without("standard", "findings").also("standard", sheet -> sheet.standard().id()).also("named", sheet -> sheet.standard().named())
                .also("values", sheet -> sheet.standard()).first("standard", "named", "values");
        of(AccessSheet.Row.class).to(1, "measured", "limit", "missing").ifGiven("at").without("what").also("what", row -> row.what().words).also("pass")
                .first("where", "what", "measured", "limit", "unit", "pass");
        of(SettingOut.Triangle.class).also("wall", one -> one.peg() > 0 ? Bed.wallLetter(one.peg() - 1) : null).ifGiven("wall").first("peg", "wall");
        of(SunHours.BedSun.class).only("bed", "light", "quantities").also("sun", bed -> bed.light().words).without("light").called("sun", "light")
                .first("bed", "sun");
        of(AccessStandard.class).without("id", "named").unwrapped("walking", "reaching", "height").first("name", "source");
        of(AccessStandard.Walking.class).to(1, "gradient", "crossGradient");
        of(SurveyedYard.class).without("findings");
        of(Pegs.LinePeg.class).called("beyond", "past");
        of(StagingResult.class).without("ends", "late").also("proven").first("name", "starts", "makespan", "lowerBound", "proven");
        of(Weekends.Day.class).also("day", day -> DayNames.brief(day.dayOfWeek()).toLowerCase(Locale.ROOT)).without("dayOfWeek")
                .also("state", day -> day.isOver() ? "over" : day.wet() ? "wet" : day.hoursLeft() < 0.25 ? "full" : "open").without("wet").called("hoursThere", "there")
                .called("hoursUsed", "used").also("hoursLeft").called("hoursLeft", "left").to(2, "hoursThere", "hoursUsed", "hoursLeft")
                .first("number", "weekend", "date", "day", "state", "people", "hoursThere", "hoursUsed", "hoursLeft");
        of(Weekends.Part.class).called("fromMinute", "from").called("toMinute", "to").called("togetherMinutes", "together").called("number", "part");
    }

    private static final class Apart {
        private static final Map<Class<?>, WireForms<?>> FORMS = new HashMap<>();

        private static <T> WireForms<T> of(Class<T> type) {
            return WireForms.of(FORMS, type);
        }

        static {
            of(Vehicle.class).to(1, "payloadKg").called("payloadKg", "payload").to(3, "volumeM3").called("volumeM3", "volume");
            of(Load.class).to(1, "massKg").to(4, "volumeM3").without("acrossMm").also("bulk");
            of(LoadIn.Lift.class).unwrapped("load").without("massKg");
            of(LoadIn.Drop.class).also("name", drop -> drop.supplier().name()).also("leadDays", drop -> drop.supplier().leadDays()).without("supplier")
                    .also("supplier", drop -> drop.supplier().id()).to(1, "massKg").to(3, "volumeM3")
                    .first("supplier", "name", "leadDays", "massKg", "massAtLeast", "volumeM3");
            of(Trips.class).also("count", trips -> trips.trips().size()).also("proved").called("proved", "proven").first("count", "atLeast", "proved");
            of(Trips.Trip.class).to(1, "massKg").to(3, "volumeM3").also("loads", trip -> trip.counts().entrySet().stream()
                    .map(of -> new Count(of.getKey().item(), of.getKey().name(), of.getValue())).toList()).without("counts");
            of(LoadIn.Barrows.class).to(2, "hours");
            of(Payments.class).without("currency").also("currency", all -> all.currency().getCode())
                    .first("currency", "total", "atLeast", "paid", "open", "delivery", "dues");
            of(Payments.Due.class).without("supplier").also("supplier", due -> due.supplier().id()).also("name", due -> due.supplier().name()).without("what")
                    .also("what", due -> due.what().words).first("day", "date", "supplier", "name", "what");
            of(Payments.BoughtLine.class).also("over");
            of(MerchantOffers.class).without("best").also("currency", offers -> offers.best().currency().getCode())
                    .also("total", offers -> offers.best().total()).also("atLeast", offers -> offers.best().atLeast())
                    .first("currency", "total", "atLeast", "proven");
            of(MerchantOffers.Merchant.class).without("supplier", "leavesOut").also("id", one -> one.supplier().id()).also("name", one -> one.supplier().name())
                    .also("leadDays", one -> one.supplier().leadDays()).also("validUntil", one -> one.supplier().validUntil()).called("charge", "delivery")
                    .also("whole")
                    .first("id", "name", "leadDays", "validUntil", "goods", "charge", "total", "whole");
            of(MerchantOffers.Line.class).called("chosen", "from");
            of(StagingCost.Way.class).also("sum").first("way", "boards", "boardsCost", "drops", "delivery", "sum");
            of(Variation.class).first("currency", "before", "after", "difference", "atLeast");
            of(SawAdvice.class).first("section", "pooledOnce", "weekendByWeekend", "changesTried", "changesThere");
            of(SawAdvice.NearMiss.class).also("beds", miss -> miss.sizes().beds()).also("walls", miss -> miss.sizes().walls())
                    .also("narrower", miss -> miss.sizes().narrower()).also("shallower", miss -> miss.sizes().shallower())
                    .said("text", (miss, words) -> miss.sizes().words(miss.shorterMm(), words.imperial())).without("sizes").called("marks", "pieces")
                    .first("beds", "walls", "narrower", "shallower", "shorterMm", "text", "sure", "saved", "boardsSaved");
            of(LoadIn.class).to(1, "roundTurn");
            of(TryOut.Figures.class).to(1, "massKg", "hours").called("massKg", "mass").to(3, "soilM3").called("soilM3", "soil");
        }
    }

    private record Stage(int stage, int boards, int pieces, int trims, int cuts, int handlings, @To(1) double minutes,
            BoardByBoard boardByBoard, List<Batches.Setting> settings) {}

    private record BoardByBoard(int settings, int handlings, @To(1) double minutes) {}

    /** A board on hand, what it is worth kept and how many of it the plan opens. */
    private record OnHand(String stock, double lengthMm, int available, long opened, @Exact BigDecimal salvage) {}

    private record Count(String item, String name, long count) {}

    private record Lacking(String id, @To(EXACT) double lengthMm, int count) {}

    private final Class<T> type;
    private final List<UnaryOperator<List<Part>>> changes = new ArrayList<>();

    private WireForms(Class<T> type) {
        this.type = type;
    }

    private static <T> WireForms<T> of(Class<T> type) {
        return of(FORMS, type);
    }

    private static <T> WireForms<T> of(Map<Class<?>, WireForms<?>> forms, Class<T> type) {
        WireForms<T> form = new WireForms<>(type);
        forms.put(type, form);
        return form;
    }

    /** Every record that has a form. */
    static Set<Class<?>> types() {
        return Stream.of(FORMS, Apart.FORMS).flatMap(forms -> forms.keySet().stream()).collect(Collectors.toSet());
    }

    /** The parts of a record as its form has them. */
    static List<Part> changed(Class<?> type, List<Part> parts) {
        WireForms<?> form = (APART.contains(type.getNestHost().getSimpleName()) ? Apart.FORMS : FORMS).get(type);
        List<Part> changed = parts;
        if (form != null) for (UnaryOperator<List<Part>> change : form.changes) changed = change.apply(changed);
        return changed;
    }

    private WireForms<T> each(UnaryOperator<Part> change, String... names) {
        for (String name : names) changes.add(parts -> {
            if (parts.stream().noneMatch(part -> part.of().equals(name))) throw new IllegalStateException("there is no part " + name + " of " + parts);
            return parts.stream().map(part -> part.of().equals(name) ? change.apply(part) : part).toList();
        });
        return this;
    }

    private WireForms<T> called(String part, String name) {
        return each(one -> one.called(name), part);
    }

    private WireForms<T> to(int decimals, String... names) {
        return each(part -> part.as(new Form(decimals, false)), names);
    }

    private WireForms<T> exact(String... names) {
        return each(part -> part.as(new Form(part.form().decimals(), true)), names);
    }

    private WireForms<T> ifGiven(String... names) {
        return each(Part::whereGiven, names);
    }

    private WireForms<T> unwrapped(String... names) {
        return each(Part::amongOthers, names);
    }

    private WireForms<T> without(String... names) {
        each(part -> part, names);
        changes.add(parts -> parts.stream().filter(part -> !List.of(names).contains(part.of())).toList());
        return this;
    }

    private WireForms<T> only(String... names) {
        each(part -> part, names);
        changes.add(parts -> parts.stream().filter(part -> List.of(names).contains(part.of())).toList());
        return this;
    }

    /** These before all others, in the order given. */
    private WireForms<T> first(String... names) {
        each(part -> part, names);
        List<String> before = List.of(names);
        changes.add(parts -> parts.stream().sorted(Comparator.comparingInt(part -> before.contains(part.of()) ? before.indexOf(part.of()) : before.size())).toList());
        return this;
    }

    /** What methods of these names work out, behind the parts so far. */
    private WireForms<T> also(String... methods) {
        for (String name : methods) changes.add(parts -> with(parts, Part.of(type, name)));
        return this;
    }

    private WireForms<T> also(String name, Function<T, Object> value) {
        return said(name, (whole, words) -> value.apply(whole));
    }

    /** What is told in the measures of the garden. */
    private WireForms<T> said(String name, BiFunction<T, Wording, Object> value) {
        changes.add(parts -> with(parts, Part.of(name, (whole, words) -> value.apply(type.cast(whole), words))));
        return this;
    }

    private static List<Part> with(List<Part> parts, Part more) {
        return Stream.concat(parts.stream(), Stream.of(more)).toList();
    }

    private static List<?> onHand(SawWork work) {
        return work.problem().stock().stream()
                .filter(stock -> stock.available().isPresent())
                .map(stock -> new OnHand(stock.id(), stock.lengthMm(), stock.available().orElse(0),
                        work.boards().stream().filter(board -> board.stock().equals(stock.id())).count(), stock.salvage()))
                .toList();
    }

    /** Batches beside the same board by board. */
    private static List<?> stages(Batches batches) {
        Batches.Rates rates = batches.rates();
        return batches.stages().stream()
                .map(stage -> new Stage(
                        stage.stage(), stage.boards(), stage.pieces(), stage.trims(), stage.cuts(), stage.handlings(),
                        stage.minutes(rates),
                        new BoardByBoard(stage.settingsBoardByBoard(), stage.boards(), stage.minutesBoardByBoard(rates)),
                        stage.settings()))
                .toList();
    }
}
