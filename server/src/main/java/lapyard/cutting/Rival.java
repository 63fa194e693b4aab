package lapyard.cutting;

import java.math.BigDecimal;

/**
 * A plan in hand, in the price units of another problem: what that problem's plans have to beat.
 *
 * @param money a plan of more is no better; one of as much only with fewer than {@code boards}
 */
record Rival(long money, long boards) {
    /** Money that is no whole number of units is beaten by any number of boards for the units below it. */
    static Rival of(CuttingResult plan, WholeProblem problem) {
        BigDecimal[] units = plan.cost().divideAndRemainder(problem.priceUnit);
        long whole = units[0].longValueExact();
        return units[1].signum() == 0 ? new Rival(whole, plan.boards()) : new Rival(whole + 1, 0);
    }
}
