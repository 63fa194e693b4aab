package lapyard.cutting;

import java.util.Arrays;
import lapyard.working.SearchBudget;

/**
 * The linear programme over the patterns known so far: least cost, every demand covered, no board used more often
 * than there are. Revised simplex with an explicit inverse: primal steps when patterns come in, dual steps when the
 * demands change. Costs are in any unit near 1; right-hand sides are whole.
 */
final class Master {
    private static final double TINY = 1e-9;
    /** An amount that is lower is below nothing by more than rounding. */
    private static final double LEAST = -1e-8;
    private static final int STEPS_BETWEEN_CHECKS = 100;

    private final int rows;
    private final int demandRows;
    private final SearchBudget budget;

    private int columns;
    private int[] from = new int[128];
    private int[] row = new int[512];
    private double[] entry = new double[512];
    private double[] cost = new double[128];
    /** Row in which a column is basic, or -1. */
    private int[] place = new int[128];

    private boolean[] barred = new boolean[128];

    private final double[][] inverse;
    private final int[] basis;
    private final double[] basic;
    private final double[] rhs;
    private final double[] nudged;
    private final double[] prices;
    private final double[] direction;
    private int sinceCheck;

    /** Rows: demands first, then limited boards. Every row starts with its slack as column number row. */
    Master(int demandRows, int supplyRows, SearchBudget budget) {
        this.demandRows = demandRows;
        this.rows = demandRows + supplyRows;
        this.budget = budget;
        inverse = new double[rows][rows];
        basis = new int[rows];
        basic = new double[rows];
        rhs = new double[rows];
        nudged = new double[rows];
        prices = new double[rows];
        direction = new double[rows];
        for (int r = 0; r < rows; r++) addColumn(0, new int[] {r}, new double[] {r < demandRows ? -1 : 1}, 1);
    }

    int addColumn(double columnCost, int[] columnRows, double[] entries, int length) {
        if (columns + 2 > from.length) {
            int size = from.length * 2;
            from = Arrays.copyOf(from, size);
            cost = Arrays.copyOf(cost, size);
            place = Arrays.copyOf(place, size);
            barred = Arrays.copyOf(barred, size);
        }
        int at = from[columns];
        if (at + length > row.length) {
            row = Arrays.copyOf(row, Math.max(row.length * 2, at + length));
            entry = Arrays.copyOf(entry, row.length);
        }
        System.arraycopy(columnRows, 0, row, at, length);
        System.arraycopy(entries, 0, entry, at, length);
        cost[columns] = columnCost;
        place[columns] = -1;
        barred[columns] = false;
        from[columns + 1] = at + length;
        return columns++;
    }

    int columns() {
        return columns;
    }

    /** Starts from columns that stand one in each row, the column of row r first in {@code start[r]}. */
    void startWith(int[] start) {
        Arrays.fill(place, 0, columns, -1);
        for (int r = 0; r < rows; r++) {
            basis[r] = start[r];
            place[start[r]] = r;
        }
        invert();
    }

    /** A barred column never comes in; one that is in may stay. */
    void bar(int column, boolean shut) {
        barred[column] = shut;
    }

    void rightHandSide(int[] demands, int[] supplies) {
        for (int r = 0; r < rows; r++) {
            rhs[r] = r < demandRows ? demands[r] : supplies[r - demandRows];
            // A nudge that differs from row to row keeps steps from standing still among ties.
            nudged[r] = rhs[r] + 1e-7 * (1 + (r * 0x9E3779B9L >>> 7 & 1023) / 512.0);
        }
        refreshBasic();
    }

    /**
     * Brings the programme to its optimum over the columns there are.
     *
     * @return false where it ends below nothing, as dual steps from prices that are out of order may: it has to start anew
     */
    boolean optimise() {
        dualSteps();
        primalSteps();
        return Arrays.stream(basic).allMatch(amount -> amount >= LEAST);
    }

    /** Duals of the rows: demands 0 or more, supplies 0 or less, up to rounding. */
    double[] prices() {
        return prices;
    }

    /** Value of the duals at the true right-hand side. */
    double value() {
        double sum = 0;
        for (int r = 0; r < rows; r++) sum += prices[r] * rhs[r];
        return sum;
    }

    /** Amount of the basic column of each row at the true right-hand side. */
    double[] amounts() {
        double[] amounts = new double[rows];
        for (int r = 0; r < rows; r++) {
            double sum = 0;
            double[] line = inverse[r];
            for (int c = 0; c < rows; c++) sum += line[c] * rhs[c];
            amounts[r] = sum;
        }
        return amounts;
    }

    int basicColumn(int r) {
        return basis[r];
    }

    private void refreshBasic() {
        for (int r = 0; r < rows; r++) {
            double sum = 0;
            double[] line = inverse[r];
            for (int c = 0; c < rows; c++) sum += line[c] * nudged[c];
            basic[r] = sum;
        }
        budget.spend((long) rows * rows / 4); // four entries a turn
    }

    private void refreshPrices() {
        budget.spend((long) rows * rows / 4); // four entries a turn
        Arrays.fill(prices, 0);
        for (int r = 0; r < rows; r++) {
            double c = cost[basis[r]];
            if (c == 0) continue;
            double[] line = inverse[r];
            for (int i = 0; i < rows; i++) prices[i] += c * line[i];
        }
    }

    private double reducedCost(int column) {
        double sum = cost[column];
        for (int at = from[column]; at < from[column + 1]; at++) sum -= prices[row[at]] * entry[at];
        return sum;
    }

    private void direction(int column) {
        for (int r = 0; r < rows; r++) {
            double sum = 0;
            double[] line = inverse[r];
            for (int at = from[column]; at < from[column + 1]; at++) sum += line[row[at]] * entry[at];
            direction[r] = sum;
        }
    }

    private void primalSteps() {
        refreshPrices();
        for (int turn = 0; turn < 50 * rows + 1000 && !(turn % 64 == 63 && budget.over()); turn++) {
            int in = -1;
            double least = -TINY;
            for (int c = 0; c < columns; c++) {
                if (place[c] >= 0 || barred[c]) continue;
                double reduced = reducedCost(c);
                if (reduced < least) {
                    least = reduced;
                    in = c;
                }
            }
            budget.spend(from[columns]);
            if (in < 0) return;
            direction(in);
            int out = -1;
            double ratio = Double.POSITIVE_INFINITY;
            for (int r = 0; r < rows; r++) {
                if (direction[r] <= 1e-8) continue;
                double here = Math.max(0, basic[r]) / direction[r];
                if (here < ratio - 1e-12 || here < ratio + 1e-12 && direction[r] > direction[out]) {
                    ratio = here;
                    out = r;
                }
            }
            if (out < 0) return; // only rounding can make a covering programme look unbounded
            pivot(in, out, least);
        }
    }

    private void dualSteps() {
        refreshPrices();
        for (int turn = 0; turn < 20 * rows + 500; turn++) {
            if (turn % 64 == 63 && budget.over()) return; // any prices give a bound, so stopping here is safe
            int out = -1;
            double lowest = LEAST;
            for (int r = 0; r < rows; r++) {
                if (basic[r] < lowest) {
                    lowest = basic[r];
                    out = r;
                }
            }
            if (out < 0) return;
            double[] line = inverse[out];
            int in = -1;
            double ratio = Double.POSITIVE_INFINITY;
            double pivotSize = 0;
            double reducedIn = 0;
            for (int c = 0; c < columns; c++) {
                if (place[c] >= 0 || barred[c]) continue;
                double size = 0;
                for (int at = from[c]; at < from[c + 1]; at++) size += line[row[at]] * entry[at];
                if (size >= -1e-8) continue;
                double reduced = Math.max(0, reducedCost(c));
                double here = reduced / -size;
                if (here < ratio - 1e-12 || here < ratio + 1e-12 && -size > pivotSize) {
                    ratio = here;
                    pivotSize = -size;
                    reducedIn = reduced;
                    in = c;
                }
            }
            budget.spend(2L * from[columns]);
            if (in < 0) return;
            direction(in);
            pivot(in, out, reducedIn);
        }
    }

    private void pivot(int in, int out, double reduced) {
        double size = direction[out];
        double[] outLine = inverse[out];
        for (int c = 0; c < rows; c++) outLine[c] /= size;
        basic[out] /= size;
        for (int r = 0; r < rows; r++) {
            double factor = direction[r];
            if (r == out || Math.abs(factor) < 1e-12) continue;
            double[] line = inverse[r];
            for (int c = 0; c < rows; c++) line[c] -= factor * outLine[c];
            basic[r] -= factor * basic[out];
        }
        for (int c = 0; c < rows; c++) prices[c] += reduced * outLine[c];
        place[basis[out]] = -1;
        basis[out] = in;
        place[in] = out;
        budget.spend((long) rows * rows / 4); // four entries a turn
        if (++sinceCheck >= STEPS_BETWEEN_CHECKS) {
            sinceCheck = 0;
            if (error() > 1e-7) invert();
            else refreshPrices();
        }
    }

    /** How far the basic amounts miss the right-hand side. */
    private double error() {
        double[] miss = nudged.clone();
        for (int r = 0; r < rows; r++) {
            int c = basis[r];
            for (int at = from[c]; at < from[c + 1]; at++) miss[row[at]] -= entry[at] * basic[r];
        }
        double worst = 0;
        for (double m : miss) worst = Math.max(worst, Math.abs(m));
        return worst;
    }

    /** The inverse of the basis afresh, by Gauss-Jordan elimination with row exchange. */
    private void invert() {
        double[][] matrix = new double[rows][rows];
        for (int r = 0; r < rows; r++) {
            int c = basis[r];
            for (int at = from[c]; at < from[c + 1]; at++) matrix[row[at]][r] = entry[at];
            Arrays.fill(inverse[r], 0);
            inverse[r][r] = 1;
        }
        for (int c = 0; c < rows; c++) {
            int best = c;
            for (int r = c + 1; r < rows; r++) if (Math.abs(matrix[r][c]) > Math.abs(matrix[best][c])) best = r;
            double[] keep = matrix[best];
            matrix[best] = matrix[c];
            matrix[c] = keep;
            keep = inverse[best];
            inverse[best] = inverse[c];
            inverse[c] = keep;
            double size = matrix[c][c];
            if (Math.abs(size) < 1e-11) throw new ArithmeticException("singular basis");
            for (int i = 0; i < rows; i++) {
                matrix[c][i] /= size;
                inverse[c][i] /= size;
            }
            for (int r = 0; r < rows; r++) {
                double factor = matrix[r][c];
                if (r == c || factor == 0) continue;
                for (int i = c; i < rows; i++) matrix[r][i] -= factor * matrix[c][i];
                for (int i = 0; i < rows; i++) inverse[r][i] -= factor * inverse[c][i];
            }
        }
        budget.spend((long) rows * rows * rows / 4);
        refreshBasic();
        refreshPrices();
    }
}
