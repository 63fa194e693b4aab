package lapyard.layout;

import java.util.List;

/**
 * A yard laid out.
 *
 * @param proposals  best first; they differ visibly, and none has fewer beds than another and is worse in everything else too
 * @param mostBeds   proved: more do not fit square to the house wall or to one of the slanted sides that are followed, pinned ones counted
 * @param shortOf    beds of the wish list's least that even the fullest proposal has no room for
 * @param complete   whether every order was tried
 * @param orders     what became of the orders that were tried
 */
public record LaidOut(List<Proposal> proposals, int mostBeds, int shortOf, boolean complete, Orders orders) {
    /** So many proposals are a choice. */
    static final int ENOUGH = 3;

    /**
     * @param tried   orders in which the yard was laid out
     * @param without left no bed that passes every check
     * @param alike   hardly differ to look at from a proposal
     * @param worse   left out for another that is better; where there are few proposals, for one with more beds that is better in all that differs
     */
    public record Orders(int tried, int without, int alike, int worse) {}

    public boolean few() {
        return proposals.size() < ENOUGH;
    }
}
