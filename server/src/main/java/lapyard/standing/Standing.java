package lapyard.standing;

import java.util.ArrayList;
import java.util.List;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.BedWork;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.StandingRules;
import lapyard.plan.SurfaceKind;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;

/**
 * Whether a bed would stand: an estimate, not a design.
 *
 * @param notDesigned why this bed is a case for an engineer; its verdicts are then left out
 * @param quantities  mass.dry, mass.wet, ground.load, wall.push, wall.push.blocked, wall.push.guide, wall.use, wall.bow,
 *     ties.spacing, ties.spacing.blocked, ties.advised, ties.force, corner.pull, corner.hold, slats.span, slats.use,
 *     slats.sag, bearers.use, bearers.sag, bearers.load, each where it applies
 */
public record Standing(String bed, List<Finding> notDesigned, List<Verdict> verdicts, List<Quantity> quantities) {
    /** Stands beside every verdict. */
    public static final String CAUTION = "An estimate, not a design or a certificate: local codes and a qualified person decide.";

    /** Deepest soil that is looked at. */
    public static final double DEEPEST_MM = 600;

    public Standing {
        notDesigned = List.copyOf(notDesigned);
        verdicts = List.copyOf(verdicts);
        quantities = List.copyOf(quantities);
    }

    public static Standing of(BedWork work, StandingRules loads, Footing footing) {
        Bed bed = work.bed();
        StrengthClass timber = footing.fromRack() ? StrengthClass.LOWEST : bed.section().strength();
        List<Quantity> quantities = new ArrayList<>();
        List<Verdict> verdicts = new ArrayList<>();
        Weights weights = Weights.of(work, loads);
        weights.quantities(quantities);
        double depth = bed.filledMm();
        if (depth > 0) {
            WallCheck.of(work, loads, timber, depth).into(verdicts, quantities);
            FloorCheck.into(work, loads, footing, verdicts, quantities);
        }
        List<Finding> refused = notDesigned(bed, footing, depth, weights);
        return new Standing(bed.id(), refused, refused.isEmpty() ? verdicts : List.of(), quantities);
    }

    private static List<Finding> notDesigned(Bed bed, Footing footing, double depthMm, Weights weights) {
        List<Finding> why = new ArrayList<>();
        Place place = Place.bed(bed.id());
        if (depthMm > DEEPEST_MM + 1e-6) {
            why.add(Finding.of(FindingKind.NOT_DESIGNED_DEEP, place).with("depth", Fact.mm(depthMm)).with("most", Fact.mm(DEEPEST_MM))
                    .way(WayKind.ASK_ENGINEER).way(WayKind.LESS_SOIL));
        }
        if (footing.surfaces().contains(SurfaceKind.DECK)) {
            why.add(Finding.of(FindingKind.NOT_DESIGNED_DECK, place).with("wet", Fact.kpa(weights.wetKpa()))
                    .with("least", Fact.kpa(Weights.DECK_LEAST_KPA)).with("most", Fact.kpa(Weights.DECK_MOST_KPA))
                    .way(WayKind.ASK_ENGINEER).way(WayKind.OFF_DECK));
        }
        Bed.NEAR.forEach((word, words) -> {
            if (bed.siting().near().contains(word)) {
                why.add(Finding.of(FindingKind.NOT_DESIGNED_NEAR, place).with("near", Fact.name(words)).way(WayKind.ASK_ENGINEER).way(WayKind.MOVE_BED));
            }
        });
        if (!footing.unknownTimber().isEmpty()) {
            why.add(Finding.of(FindingKind.NOT_DESIGNED_BOARDS, place).with("boards", Fact.name(footing.unknownTimber()))
                    .way(WayKind.ASK_ENGINEER).way(WayKind.NAME_TREATMENT));
        }
        return why;
    }
}
