package lapyard.json;

import static lapyard.json.CuttingJson.EXACT;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import lapyard.catalogue.Vehicle;
import lapyard.construction.CornerScrew;
import lapyard.construction.CrossTie;
import lapyard.construction.CrossTies;
import lapyard.construction.Piece;
import lapyard.construction.PieceEnd;
import lapyard.cutting.Batches;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.Ledger;
import lapyard.cutting.NearMisses.NearMiss;
import lapyard.cutting.SawBoard;
import lapyard.cutting.Shortage;
import lapyard.cutting.StagedCutting;
import lapyard.ground.Pegs;
import lapyard.ground.SurveyedYard;
import lapyard.job.JobSheet;
import lapyard.job.MerchantOffers;
import lapyard.job.Payments;
import lapyard.job.StagingCost;
import lapyard.job.TryOut;
import lapyard.json.Wire.Form;
import lapyard.json.Wire.Part;
import lapyard.loadin.Load;
import lapyard.loadin.LoadIn;
import lapyard.order.Variation;
import lapyard.plan.AccessStandard;
import lapyard.plan.RackBoard;
import lapyard.sheets.RollResult;
import lapyard.weekends.Weekends;

/**
 * Where a record that is sent as it stands differs from its parts: another name, other decimals, a part left out, something
 * worked out, another order. A form says only what differs and names parts as the record does.
 */
final class WireForms<T> {
    static final Map<Class<?>, WireForms<?>> ALL = new HashMap<>();

    static {
        // of a bed
        of(CornerScrew.class).without("threadMm");
        of(CrossTies.Post.class).called("at", "place");
        of(PieceEnd.class).called("kind", "cut");
        of(CrossTie.class).also("lengthMm", CrossTie::lengthMm).first("wall", "atMm", "toWall", "from", "to", "lengthMm");
        of(Piece.class).also("runsPast", Piece::runsPast).also("shortMm", Piece::shortMm).also("outerFaceMm", Piece::outerFaceMm)
                .also("innerFaceMm", Piece::innerFaceMm).first("mark", "course", "wall", "part", "lengthMm", "runsPast", "fromMm", "seen", "lies",
                        "shortMm", "outerFaceMm", "innerFaceMm");
        // of boards
        of(RackBoard.class).only("id", "section", "lengthMm", "count");
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
        of(Batches.Setting.class).also("pieces", Batches.Setting::pieces).called("draws", "from").first("stopMm", "pieces");
        of(JobSheet.Ripping.class).without("ripsPerBoard").also("rips", JobSheet.Ripping::rips);
        // of rolls
        of(RollResult.class).exact("cost", "lowerBound");
        of(RollResult.RollLayout.class).to(3, "usedMm", "boughtMm");
        of(RollResult.Placed.class).to(3, "x", "y", "widthMm", "heightMm");
        of(RollResult.Unplaced.class).to(3, "widthMm", "heightMm");
        // of the delivery and of money
        of(Vehicle.class).to(1, "payloadKg").called("payloadKg", "payload").to(3, "volumeM3").called("volumeM3", "volume");
        of(Load.class).to(1, "massKg").to(4, "volumeM3").without("acrossMm").also("bulk", Load::bulk);
        of(LoadIn.Lift.class).unwrapped("load").without("massKg");
        of(LoadIn.Barrows.class).to(2, "hours");
        of(Payments.BoughtLine.class).also("over", Payments.BoughtLine::over);
        of(MerchantOffers.Line.class).called("chosen", "from");
        of(StagingCost.Way.class).also("sum", StagingCost.Way::sum).first("way", "boards", "boardsCost", "drops", "delivery", "sum");
        of(Variation.class).first("currency", "before", "after", "difference", "atLeast");
        of(TryOut.Figures.class).to(1, "massKg", "hours").called("massKg", "mass").to(3, "soilM3").called("soilM3", "soil");
        // of the ground and of days
        of(AccessStandard.class).without("id", "named").to(1, "gradient", "crossGradient").first("name", "source");
        of(SurveyedYard.class).without("findings");
        of(Pegs.LinePeg.class).called("beyond", "past");
        of(Weekends.Part.class).called("fromMinute", "from").called("toMinute", "to").called("togetherMinutes", "together").called("number", "part");
    }

    private final List<UnaryOperator<List<Part>>> changes = new ArrayList<>();

    private static <T> WireForms<T> of(Class<T> type) {
        WireForms<T> form = new WireForms<>();
        ALL.put(type, form);
        return form;
    }

    /** The parts of a record as its form has them. */
    static List<Part> changed(Class<?> type, List<Part> parts) {
        List<Part> changed = parts;
        if (ALL.containsKey(type)) for (UnaryOperator<List<Part>> change : ALL.get(type).changes) changed = change.apply(changed);
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

    /** What is worked out, behind the parts so far. */
    private WireForms<T> also(String name, Function<T, Object> value) {
        changes.add(parts -> Stream.concat(parts.stream(), Stream.of(Part.of(name, whole -> value.apply(cast(whole))))).toList());
        return this;
    }

    @SuppressWarnings("unchecked") // the parts are those of a T
    private T cast(Object whole) {
        return (T) whole;
    }
}
