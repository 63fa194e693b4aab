package lapyard.working;

import java.util.Arrays;

/**
 * The least cost of columns that cover each of some rows once: a linear programme to which columns are added as they are
 * found. Revised simplex with an explicit inverse; each row begins with one column that covers it alone. Its prices are
 * what a bound is made from, so that rounding here can make a bound weaker, never wrong.
 *
 * @see "Gilmore and Gomory, A linear programming approach to the cutting-stock problem, Operations Research 9 (1961)"
 */
public final class CoverProgramme {
    private static final double TINY = 1e-9;

    private final int rows;
    private final double[][] inverse;
    private final double[] level;
    private final double[] cost;
    private final double[] prices;

    /**
     * @param covers by row, the part of it that its first column covers; above 0
     * @param costs  of these columns
     */
    public CoverProgramme(double[] covers, double[] costs) {
        rows = covers.length;
        inverse = new double[rows][rows];
        level = new double[rows];
        cost = costs.clone();
        prices = new double[rows];
        for (int r = 0; r < rows; r++) {
            level[r] = 1 / covers[r];
            inverse[r][r] = level[r];
        }
    }

    /** Takes steps until no price is below 0. @return the least cost over the columns there are, never below the least over all */
    public double solve() {
        double[] surplus = new double[rows];
        for (int step = 0; ; step++) {
            double now = price();
            int lowest = 0;
            for (int i = 1; i < rows; i++) if (prices[i] < prices[lowest]) lowest = i;
            if (prices[lowest] >= -TINY || step > 4 * rows) return now;
            Arrays.fill(surplus, 0);
            surplus[lowest] = -1;
            if (!enter(0, surplus)) return now;
        }
    }

    /** What covering a row once is worth, after {@link #solve}; 0 where that is next to nothing. */
    public double price(int row) {
        return prices[row] > TINY ? prices[row] : 0;
    }

    private double price() {
        Arrays.fill(prices, 0);
        double now = 0;
        for (int r = 0; r < rows; r++) {
            now += cost[r] * level[r];
            if (cost[r] != 0) for (int i = 0; i < rows; i++) prices[i] += cost[r] * inverse[r][i];
        }
        return now;
    }

    /**
     * @param covers by row, the part of it that the column covers
     * @return false where rounding has spoilt the programme
     */
    public boolean enter(double columnCost, double[] covers) {
        double[] direction = new double[rows];
        for (int r = 0; r < rows; r++) for (int i = 0; i < rows; i++) direction[r] += inverse[r][i] * covers[i];
        int leaving = -1;
        for (int r = 0; r < rows; r++) {
            if (direction[r] <= TINY) continue;
            if (leaving < 0 || level[r] * direction[leaving] < level[leaving] * direction[r]) leaving = r;
        }
        if (leaving < 0) return false;
        double by = direction[leaving];
        for (int i = 0; i < rows; i++) inverse[leaving][i] /= by;
        level[leaving] /= by;
        for (int r = 0; r < rows; r++) {
            if (r == leaving || direction[r] == 0) continue;
            for (int i = 0; i < rows; i++) inverse[r][i] -= direction[r] * inverse[leaving][i];
            level[r] = Math.max(0, level[r] - direction[r] * level[leaving]);
        }
        cost[leaving] = columnCost;
        return true;
    }
}
