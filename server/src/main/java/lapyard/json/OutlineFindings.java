package lapyard.json;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import lapyard.geometry.Outline;
import lapyard.geometry.OutlineCheck;
import lapyard.geometry.OutlineCheck.Rules;
import lapyard.geometry.OutlineFault;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.Place;
import lapyard.plan.WayKind;

/** Outlines that cannot be built or drawn, as STOPs. */
final class OutlineFindings {
    private OutlineFindings() {}

    static List<Finding> of(Garden garden) {
        List<Finding> found = new ArrayList<>();
        Map<List<Object>, List<OutlineFault>> known = new HashMap<>();
        for (Bed bed : garden.beds()) {
            if (narrow(bed, found)) continue;
            double thickness = bed.section().thicknessMm();
            List<OutlineFault> faults = known.computeIfAbsent(
                    List.of(bed.outline(), thickness), drawn -> OutlineCheck.faults(bed.outline(), Rules.bed(thickness)));
            for (OutlineFault fault : faults) {
                Place place = fault.sides().size() == 1 ? Place.wall(bed.id(), Bed.wallLetter(fault.sides().get(0))) : Place.bed(bed.id());
                found.add(finding(bed.outline(), fault, place, "bed " + bed.id(), side -> "wall " + Bed.wallLetter(side)));
            }
        }
        garden.ground().outline().forEach(yard -> any(found, yard, "ground, outline", "the yard"));
        int number = 1;
        for (Ground.Surface surface : garden.ground().surfaces()) {
            any(found, surface.outline(), "ground, surface " + number, "surface " + number++);
        }
        for (Ground.KeepClear one : garden.ground().keepClear()) {
            if (one.shape().size() > 2) {
                any(found, new Outline(one.shape()), "ground, keep-clear " + one.kind().code(), "keep-clear " + one.kind().code());
            }
        }
        return found;
    }

    /** A rectangle is told its least width at once, for its corner joints and for the inside together. */
    private static boolean narrow(Bed bed, List<Finding> found) {
        Outline outline = bed.outline();
        if (outline.sides() != 4 || !IntStream.range(0, 4).allMatch(outline::square)) return false;
        Rules rules = Rules.bed(bed.section().thicknessMm());
        double least = rules.leastWidthMm();
        boolean any = false;
        for (int side = 0; side < 2; side++) {
            double length = outline.sideMm(side);
            if (length > 0 && length < least) {
                boolean wide = Math.abs(outline.corners().get(side).y() - outline.corners().get(side + 1).y()) < 1e-9;
                found.add(Finding.of(FindingKind.BED_NARROW, Place.bed(bed.id())).with("length", Fact.mm(length))
                        .with("across", Fact.name(wide ? "wide" : "deep")).with("least", Fact.mm(least)).with("thick", Fact.mm(rules.insetMm()))
                        .by(Fact.mm(least - length)).way(WayKind.MAKE_AT_LEAST, Fact.mm(least), Fact.name(wide ? "wide" : "deep"))
                        .way(WayKind.THINNER_TIMBER));
                any = true;
            }
        }
        return any;
    }

    private static void any(List<Finding> found, Outline outline, String where, String called) {
        for (OutlineFault fault : OutlineCheck.faults(outline, Rules.ANY)) {
            Place place = Place.field(fault.sides().size() == 1 ? where + ", side " + (fault.sides().get(0) + 1) : where);
            found.add(finding(outline, fault, place, called, side -> "side " + (side + 1)));
        }
    }

    private static Finding finding(Outline outline, OutlineFault fault, Place place, String called, IntFunction<String> sideName) {
        List<Integer> corners = fault.corners();
        Fact by = switch (fault.unit()) {
            case "mm" -> Fact.mm(fault.amount());
            case "corners" -> Fact.count(Math.round(fault.amount()), "corners");
            default -> new Fact.Angle(fault.amount());
        };
        Finding found = Finding.of(FindingKind.valueOf(fault.kind().name()), place).with("outline", Fact.name(called)).with("at", Fact.spot(fault.at().x(), fault.at().y()));
        for (int i = 0; i < corners.size() && i < 2; i++) {
            found = found.with(i == 0 ? "first" : "second", Fact.name(String.valueOf(corners.get(i))));
        }
        for (int i = 0; i < fault.sides().size() && i < 2; i++) {
            found = found.with(i == 0 ? "one" : "other", Fact.name(sideName.apply(fault.sides().get(i))));
        }
        found = found.by(by);
        return switch (fault.kind()) {
            case CORNERS_FEW -> found.way(WayKind.ADD_CORNERS, by);
            case CORNERS_SAME -> found.way(WayKind.LEAVE_OUT_CORNER, found.facts().get("second"));
            case SIDES_CROSS -> found.way(WayKind.MOVE_CORNER_OR_ORDER, found.facts().get("first"));
            case SIDES_TOUCH -> (fault.amount() > 0 ? found.with("along", by) : found).way(WayKind.MOVE_SIDE_AWAY, found.facts().get("other"));
            case CORNER_NOT_SQUARE -> found.way(WayKind.SQUARE_THE_CORNER, found.facts().get("first"));
            case CORNER_FLAT -> found.way(WayKind.LEAVE_OUT_CORNER, found.facts().get("first"));
            case CORNER_SHARP -> found.way(WayKind.OPEN_OR_CUT_OFF, found.facts().get("first"));
            case OUTLINE_TILTED -> found.way(WayKind.DRAW_ALONG_AXES);
            case SIDE_SHORT -> {
                double length = outline.sideMm(fault.sides().get(0));
                Fact least = Fact.mm(length + fault.amount());
                yield found.with("length", Fact.mm(length)).with("least", least).way(WayKind.LENGTHEN_SIDE, found.facts().get("one"), least);
            }
            case INSIDE_NARROW -> found.way(WayKind.MOVE_SIDE_OUT, found.facts().get("other"), by);
        };
    }
}
