package lapyard.construction;

import java.util.List;

/**
 * The angled screws of one corner joint. The head goes into a long face and the thread ends in a long face: never into
 * end grain.
 *
 * @param course    1 is the lowest
 * @param corner    1 is the start of wall A
 * @param head      mark of the timber that takes the head, from its inner face
 * @param into      mark of the timber that takes the thread
 * @param entryMm   from the joint
 * @param heightsMm over the underside of the course
 */
public record CornerScrew(int course, int corner, String head, String into, double entryMm, List<Double> heightsMm) {
    public CornerScrew {
        heightsMm = List.copyOf(heightsMm);
    }
}
