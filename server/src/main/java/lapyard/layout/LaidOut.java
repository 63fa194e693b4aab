package lapyard.layout;

import java.util.List;

/**
 * A yard laid out.
 *
 * @param proposals  best first; they differ visibly, and none is worse than another in every figure
 * @param mostBeds   proved: more do not fit square to the house wall or to the longest side, pinned ones counted
 * @param shortOf    beds of the wish list's least that even the fullest proposal has no room for
 */
public record LaidOut(List<Proposal> proposals, int mostBeds, int shortOf) {
    public LaidOut {
        proposals = List.copyOf(proposals);
    }
}
