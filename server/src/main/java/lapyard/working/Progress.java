package lapyard.working;

import java.math.BigDecimal;

/** Hears how far a search is: on the searching thread, when it has found or proved more. It must be quick and throw nothing. */
@FunctionalInterface
public interface Progress {
    Progress UNHEARD = (best, bound) -> {};

    /**
     * @param best  what the best found so far costs
     * @param bound proved: nothing can cost less
     */
    void reached(BigDecimal best, BigDecimal bound);
}
