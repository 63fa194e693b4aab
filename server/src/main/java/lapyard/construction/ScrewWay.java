package lapyard.construction;

import lapyard.plan.Bed;
import lapyard.plan.Joint;

/**
 * How the screws of one corner lie: from a face of the timber that takes the head, towards the corner, half on each side
 * of the joint, as near as whole 5 mm let it. Plane trigonometry.
 *
 * @param angleDeg   off the face that takes the head
 * @param entryMm    where the head goes in, from the joint
 * @param coverMm    timber left over the screw, at the joint or over its tip, whichever is less
 * @param endCoverMm timber left between the tip and the end of the timber that runs past; unbounded where none does so
 *     towards the tip
 * @param threadMm   of the screw beyond the joint
 * @param outerFace  whether the head goes into the outer face: at an inside corner the joint of a mitre opens to that side
 */
record ScrewWay(boolean mitre, double angleDeg, double entryMm, double coverMm, double endCoverMm, double threadMm, boolean outerFace) {
    /**
     * Off the face through a mitre. NDS commentary on toe-nails, from memory; and no screw that is counted on lies
     * nearer to the grain (EN 1995-1-1, 8.7.2, from memory).
     */
    private static final double MITRE_DEG = 30;

    /** Of the length, where a corner is square: half of it at 45 degrees, as the trade rounds it. */
    private static final double SQUARE_ENTRY = 0.354;

    static ScrewWay of(Bed bed, int corner, double lengthMm) {
        return of(bed.joint(corner), bed.outline().turnDeg(corner), lengthMm, bed.section().thicknessMm());
    }

    /** @param turnDeg of the outline at the corner, above 0 for an outer corner */
    static ScrewWay of(Joint joint, double turnDeg, double lengthMm, double thicknessMm) {
        return joint == Joint.MITRE
                ? mitre(180 - Math.abs(turnDeg), turnDeg < 0, lengthMm, thicknessMm)
                : lap(turnDeg, lengthMm, thicknessMm);
    }

    /**
     * From the inner face of the timber that stops short, at half the angle at which that face meets the other timber. At an
     * outer corner they meet inside the bed; at an inside corner the timber that runs past ends there, flush.
     */
    private static ScrewWay lap(double turnDeg, double lengthMm, double thicknessMm) {
        double between = Math.toRadians(turnDeg > 0 ? 180 - turnDeg : -turnDeg);
        double half = between / 2;
        double entry = nearest5(SQUARE_ENTRY * lengthMm * Math.sqrt(0.5) / Math.cos(half));
        double atJoint = 2 * entry * Math.cos(half);
        double cover = thicknessMm
                - Math.max(atJoint * Math.sin(half), (lengthMm - atJoint) * Math.sin(half));
        double alongIt = lengthMm / (4 * Math.cos(half)) + lengthMm / 2 * Math.cos(half);
        double end = turnDeg > 0 ? thicknessMm / Math.sin(between) - alongIt : Double.POSITIVE_INFINITY;
        return new ScrewWay(false, Math.toDegrees(half), entry, cover, end, lengthMm - atJoint, false);
    }

    /** From the faces between which the corner is hollow; sharp ones leave no room for the usual angle. */
    private static ScrewWay mitre(double betweenDeg, boolean outerFace, double lengthMm, double thicknessMm) {
        double between = Math.toRadians(betweenDeg);
        double joint = between / 2;
        double angle = Math.min(Math.toRadians(MITRE_DEG), between / 3);
        double entry = nearest5(lengthMm / 2 * Math.sin(joint - angle) / Math.sin(joint));
        double atJoint = entry * Math.sin(joint) / Math.sin(joint - angle);
        double tip = lengthMm * Math.sin(between - angle) - entry * Math.sin(between);
        double cover = thicknessMm - Math.max(atJoint * Math.sin(angle), tip);
        return new ScrewWay(true, Math.toDegrees(angle), entry, cover, Double.POSITIVE_INFINITY, lengthMm - atJoint, outerFace);
    }

    private static double nearest5(double mm) {
        return 5 * Math.floor(mm / 5 + 0.5);
    }
}
