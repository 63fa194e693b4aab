package lapyard.standing;

import java.util.List;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.BedWork;
import lapyard.construction.CornerScrew;
import lapyard.construction.CrossTies;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Joint;
import lapyard.plan.WayKind;
import lapyard.standing.Verdict.Outcome;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working.Input;

/**
 * The corners against what pulls them apart, the one that is pulled most for what it holds. Soil presses an inside corner
 * together.
 *
 * @param advised the ties that could be put in, which are offered only where the corners then hold
 */
record CornerCheck(BedWork work, StrengthClass timber, double pushKnM, CrossTies tied, CrossTies advised) {
    /** More would stand so near each other that the timber splits. Common practice, no source. */
    private static final int MOST_SCREWS_A_JOINT = 4;

    private Bed bed() {
        return work.bed();
    }

    /**
     * Pull square to the joint, kN. At a lap the wall that runs past is held across its end by the joint alone: half its run.
     * A mitre stands at half the turn to both walls, so its pull has to be larger for the part of it that lies square to a
     * wall to hold half that wall's run: the mean of the two halves / sin(turn / 2).
     *
     * @param beforeMm run of the wall that ends at the corner up to its next tie, post or corner
     * @param afterMm  the same of the wall that starts there
     */
    static double pullKn(Joint joint, double turnDeg, double pushKnM, double beforeMm, double afterMm) {
        return joint == Joint.MITRE
                ? pushKnM * (beforeMm + afterMm) / 4000 / Math.sin(Math.toRadians(turnDeg / 2))
                : pushKnM * Math.max(beforeMm, afterMm) / 2000;
    }

    /** One corner, {@code corner} counted from 0. */
    private record Corner(int corner, double beforeMm, double afterMm, double pullKn, int screws, double threadMm, double holdKn) {
        double use() {
            return holdKn > 0 ? pullKn / holdKn : pullKn;
        }
    }

    void into(List<Verdict> verdicts, List<Quantity> quantities) {
        Corner worst = worst(tied);
        boolean mitre = bed().joint(worst.corner()) == Joint.MITRE;
        quantities.add(Quantity.of(QuantityKind.CORNER_PULL, worst.pullKn(), "kN",
                mitre ? "push drained x (run before + run after) / 4 / sin(turn / 2), square to the mitre" : "push drained x the"
                        + " longer run / 2", "statics",
                Input.of("push drained", pushKnM, "kN/m"), Input.of("run before", worst.beforeMm() / 1000, "m"),
                Input.of("run after", worst.afterMm() / 1000, "m"), Input.of("turn", bed().outline().turnDeg(worst.corner()), "degrees")));
        if (work.frame().screws().isEmpty()) {
            if (!bed().making().ties().corners().brackets()) {
                verdicts.add(new Verdict("corners", Outcome.WEAK, Verdict.about(bed().id(), "corners", FindingKind.CORNER_NO_SCREWS)
                        .by(Fact.kn(worst.pullKn())).way(WayKind.FITTING_SCREWS).way(WayKind.BRACKETS)));
            }
            return;
        }
        quantities.add(Quantity.of(QuantityKind.CORNER_HOLD, worst.holdKn(), "kN",
                "screws x 19.65 x gravity x gravity x shank x thread x wet x for good x angled / 1000",
                "NDS wood screws in withdrawal; its factors for wet timber, lasting load and angled driving from memory",
                Input.of("screws", worst.screws(), ""), Input.of("gravity", ScrewHold.gravity(timber), ""),
                Input.of("shank", bed().making().screws().diameterMm(), "mm"), Input.of("thread", worst.threadMm(), "mm"),
                Input.of("wet", 0.7, ""), Input.of("for good", 0.9, ""), Input.of("angled", 0.67, "")));
        boolean pulls = worst.pullKn() > worst.holdKn() && !bed().making().ties().corners().brackets();
        Finding found = Verdict.about(bed().id(), "corners", pulls ? FindingKind.CORNER_PULLS
                        : bed().making().ties().corners().brackets() ? FindingKind.CORNER_BRACKETS : FindingKind.CORNER_HOLDS)
                .with("number", Fact.name(String.valueOf(worst.corner() + 1))).with("screws", Fact.count(worst.screws(), "screws"))
                .with("hold", Fact.kn(worst.holdKn())).with("use", Fact.share(worst.pullKn() / worst.holdKn())).by(Fact.kn(worst.pullKn()));
        if (pulls) {
            int need = (int) Math.ceil(worst.pullKn() / (worst.holdKn() / worst.screws()) / bed().courses());
            found = found.way(WayKind.BRACKETS);
            if (worst(advised).use() <= 1) found = found.way(WayKind.CROSS_TIES);
            if (need <= MOST_SCREWS_A_JOINT) found = found.way(WayKind.SCREWS_A_JOINT, Fact.count(need, "screws"));
        }
        verdicts.add(new Verdict("corners", pulls ? Outcome.BOWS : Outcome.HOLDS, found));
    }

    /** The corner that is pulled most for what it holds. */
    private Corner worst(CrossTies ties) {
        Corner worst = null;
        for (int corner = 0; corner < bed().outline().sides(); corner++) {
            if (bed().outline().turnDeg(corner) > 0) {
                Corner own = corner(corner, ties);
                worst = worst == null || own.use() > worst.use() + 1e-9 ? own : worst;
            }
        }
        return worst;
    }

    private Corner corner(int corner, CrossTies ties) {
        int sides = bed().outline().sides();
        int before = Math.floorMod(corner - 1, sides);
        List<Double> restsBefore = ties.restsMm().get(before);
        List<Double> restsAfter = ties.restsMm().get(corner);
        double lengthBefore = work.frame().inner().sideMm(before);
        double beforeMm = restsBefore.isEmpty() ? lengthBefore : lengthBefore - restsBefore.get(restsBefore.size() - 1);
        double afterMm = restsAfter.isEmpty() ? work.frame().inner().sideMm(corner) : restsAfter.get(0);
        double pull = pullKn(bed().joint(corner), bed().outline().turnDeg(corner), pushKnM, beforeMm, afterMm);
        int count = 0;
        double hold = 0;
        double thread = 0;
        for (CornerScrew screw : work.frame().screws()) {
            if (screw.corner() == corner + 1) {
                double each = ScrewHold.inABedN(
                        ScrewHold.allowableN(ScrewHold.gravity(timber), bed().making().screws().diameterMm(), screw.threadMm()));
                count += screw.heightsMm().size();
                hold += each * screw.heightsMm().size() / 1000;
                thread = screw.threadMm();
            }
        }
        return new Corner(corner, beforeMm, afterMm, pull, count, thread, hold);
    }
}
