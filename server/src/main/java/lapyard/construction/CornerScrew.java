package lapyard.construction;

import java.util.List;

/**
 * The angled screws of one corner joint whose heads one timber takes. At a lap the head goes into a long face and the
 * thread ends in a long face, never in end grain; at a mitre both timbers take heads by turns.
 *
 * @param course    1 is the lowest
 * @param corner    1 is the start of wall A
 * @param head      mark of the timber that takes the head
 * @param face      of it: the inner one, or the outer one where a mitre opens to that side
 * @param into      mark of the timber that takes the thread
 * @param angleDeg  off that face, towards the corner
 * @param entryMm   from the joint
 * @param threadMm  of each screw beyond the joint
 * @param heightsMm over the underside of the course
 */
public record CornerScrew(int course, int corner, String head, Face face, String into, double angleDeg, double entryMm,
        double threadMm, List<Double> heightsMm) {
    public enum Face {
        INNER,
        OUTER
    }

    public CornerScrew {
        heightsMm = List.copyOf(heightsMm);
    }
}
