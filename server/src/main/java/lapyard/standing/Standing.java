package lapyard.standing;

import java.util.ArrayList;
import java.util.List;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.BedWork;
import lapyard.plan.Bed;
import lapyard.plan.StandingRules;
import lapyard.working.Quantity;

/**
 * Whether a bed would stand: an estimate, not a design.
 *
 * @param notDesigned why this bed is a case for an engineer, in words; its verdicts are then left out
 * @param quantities  mass.dry, mass.wet, ground.load, wall.push, wall.push.blocked, wall.push.guide, wall.use, wall.bow,
 *     ties.spacing, ties.spacing.blocked, ties.advised, ties.force, corner.pull, corner.hold, slats.span, slats.use,
 *     slats.sag, bearers.use, bearers.sag, bearers.load, each where it applies
 */
public record Standing(String bed, List<String> notDesigned, List<Verdict> verdicts, List<Quantity> quantities) {
    /** Stands beside every verdict. */
    public static final String CAUTION =
            "An estimate, not a design or a certificate: local codes and a qualified person decide.";

    /** The same beside a finding. */
    public static final String CAUTION_SHORT = "an estimate, not a design: a qualified person decides";

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
        double depth = soilDepthMm(bed);
        if (depth > 0) {
            new WallCheck(work, loads, timber, depth).into(verdicts, quantities);
            FloorCheck.into(work, loads, footing, verdicts, quantities);
        }
        List<String> refused = notDesigned(bed, footing, depth, weights);
        return new Standing(bed.id(), refused, refused.isEmpty() ? verdicts : List.of(), quantities);
    }

    /** Soil and mulch that push on the walls: from the floor, or the ground where there is none, to the freeboard. */
    static double soilDepthMm(Bed bed) {
        return bed.heightMm() - bed.inside().base().heightMm() - bed.planting().fill().freeboardMm();
    }

    private static List<String> notDesigned(Bed bed, Footing footing, double depthMm, Weights weights) {
        List<String> why = new ArrayList<>();
        if (depthMm > DEEPEST_MM + 1e-6) {
            why.add(Say.mm(depthMm) + " of soil, over " + Say.mm(DEEPEST_MM));
        }
        if (footing.surfaces().contains("deck")) {
            why.add("on a raised deck, " + Say.whole(weights.wetKgM2()) + " kg a square metre wet, "
                    + Say.tenth(weights.wetKpa()) + " kN/m2, where decks are built for people at "
                    + Weights.DECK_LEAST_KPA + " to " + Weights.DECK_MOST_KPA);
        }
        Bed.NEAR.forEach((word, words) -> {
            if (bed.siting().near().contains(word)) {
                why.add(words);
            }
        });
        if (!footing.unknownTimber().isEmpty()) {
            why.add("boards of unknown treatment are in it: " + footing.unknownTimber());
        }
        return why;
    }
}
