package lapyard.layout;

import java.util.List;

/**
 * A yard laid out.
 *
 * @param proposals  best first; they differ visibly, and none has fewer beds than another and is worse in everything else too
 * @param mostBeds   proved: more do not fit square to the house wall or to one of the slanted sides that are followed, pinned ones counted
 * @param shortOf    beds of the wish list's least that even the fullest proposal has no room for
 * @param complete   whether every order was tried
 */
public record LaidOut(List<Proposal> proposals, int mostBeds, int shortOf, boolean complete) {
    public LaidOut {
        proposals = List.copyOf(proposals);
    }
}
