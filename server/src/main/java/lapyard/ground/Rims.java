package lapyard.ground;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.RimGroup;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;

/**
 * One bed of a group whose rims shall be level.
 *
 * @param quantities {@code rim.level}, mm below the level string as it stands; {@code rim.packing}, mm by which it must
 *                   come up, below 0 by which it must be let in
 */
public record Rims(String bed, List<Quantity> quantities) {
    public Rims {
        quantities = List.copyOf(quantities);
    }

    record Outcome(List<Rims> beds, List<Finding> findings) {}

    static Outcome of(Garden garden, Optional<Fall> fall) {
        Map<String, Bed> byId = new LinkedHashMap<>();
        garden.beds().forEach(bed -> byId.put(bed.id(), bed));
        List<Rims> rims = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        int number = 0;
        for (RimGroup group : garden.ground().rims()) {
            number++;
            List<Bed> beds = new ArrayList<>();
            for (String id : group.beds()) {
                if (byId.containsKey(id)) {
                    beds.add(byId.get(id));
                } else {
                    findings.add(Finding.of(FindingKind.RIM_UNKNOWN_BED, Place.of(What.RIM_GROUP, String.valueOf(number)))
                            .with("unknown", Fact.name(id)).by(Fact.count(1, "beds")).way(WayKind.TAKE_OUT_OF_GROUP).way(WayKind.ADD_BED));
                }
            }
            if (fall.isEmpty()) {
                findings.add(Finding.of(FindingKind.RIM_NO_LEVELS, Place.of(What.RIM_GROUP, String.valueOf(number)))
                        .by(Fact.count(3, "readings")).way(WayKind.TAKE_LEVELS));
            } else {
                group(group, beds, fall.get(), rims, findings);
            }
        }
        return new Outcome(rims, findings);
    }

    private static void group(RimGroup group, List<Bed> beds, Fall fall, List<Rims> rims, List<Finding> findings) {
        Map<Bed, Double> grounds = new LinkedHashMap<>();
        beds.forEach(bed -> grounds.put(bed, fall.lowestMm(bed)));
        double datum = group.levelMm()
                .orElseGet(() -> grounds.entrySet().stream()
                        .mapToDouble(entry -> entry.getValue() - entry.getKey().heightMm())
                        .min()
                        .orElse(0));
        grounds.forEach((bed, ground) -> {
            Working.Input low = Working.Input.of("level reading at its lowest corner", ground, "mm");
            Working.Input height = Working.Input.of("H", bed.heightMm(), "mm");
            double rim = ground - bed.heightMm();
            double packing = rim - datum;
            rims.add(new Rims(
                    bed.id(),
                    List.of(
                            Quantity.of(QuantityKind.RIM_LEVEL, rim, "mm",
                                    "level reading at its lowest corner - H", Working.GEOMETRY,
                                    low, height),
                            Quantity.of(QuantityKind.RIM_PACKING, packing, "mm",
                                    "rim - H - ground, all below the string", Working.GEOMETRY,
                                    low, height, Working.Input.of("rim wanted", datum, "mm")))));
            tooMuch(bed, packing).ifPresent(findings::add);
        });
    }

    /** Packing over half a course is a course too few, letting in over half a course one too many. */
    private static Optional<Finding> tooMuch(Bed bed, double packing) {
        double course = bed.section().heightMm();
        if (Math.abs(packing) <= course / 2 + Shapes.TOUCH_MM) return Optional.empty();
        long courses = Math.round(Math.abs(packing) / course);
        double rest = Math.abs(packing) - courses * course;
        Fact count = Fact.count(courses, "courses");
        boolean low = packing > 0;
        WayKind one = low ? WayKind.ADD_COURSES : WayKind.TAKE_OFF_COURSES;
        WayKind two = low ? WayKind.ADD_COURSES_AND : WayKind.TAKE_OFF_COURSES_AND;
        boolean even = Math.abs(rest) <= Shapes.TOUCH_MM;
        Finding off = Finding.of(FindingKind.RIM_OFF_GROUP, Place.bed(bed.id()));
        Finding told = even ? off.way(one, count)
                : off.way(two, count, Fact.name(rest > 0 == low ? "pack it up by" : "let it in by"),
                Fact.mm(Math.abs(rest)));
        return Optional.of(told
                .with("limit", Fact.mm(course / 2)).with(low ? "under" : "over", Fact.mm(Math.abs(packing))).by(Fact.mm(Math.abs(packing)))
                .way(WayKind.TAKE_OUT_OF_GROUP));
    }
}
