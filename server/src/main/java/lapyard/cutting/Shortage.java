package lapyard.cutting;

import java.math.BigDecimal;
import java.util.List;

/**
 * What a plan that leaves pieces over is short of.
 *
 * @param atLeast proved: no plan leaves fewer pieces over
 * @param ways    sets of boards that would hold all the pieces left over, the cheapest first; each was found by cutting the whole
 *     job with them, or the rest from them alone
 */
public record Shortage(int atLeast, List<Way> ways) {
    /** The shortage of a plan that places every piece: none. */
    public static final Shortage NONE = new Shortage(0, List.of());

    public Shortage {
        ways = List.copyOf(ways);
    }

    /** @param cost prices of these boards, or what they would be worth kept where they have no price */
    public record Way(BigDecimal cost, List<More> boards) {
        public Way {
            boards = List.copyOf(boards);
        }
    }

    /**
     * More boards of one kind.
     *
     * @param stock     id of a board of this kind; empty where none of those given could hold the piece
     * @param leastMm   length that each of them must have at least, end trim included
     * @param goodFaces how many good faces they must have
     */
    public record More(String stock, int count, double leastMm, int goodFaces) {}
}
