package lapyard.cutting;

import java.util.Arrays;

/**
 * A bound that knows that boards are bought whole: whatever a millimetre of each piece is said to be worth, the boards
 * of a plan must together be able to hold the worth of all pieces, so no plan costs less than the cheapest whole
 * boards that can.
 */
final class WholeBoards {
    private static final long LARGEST_TABLE = 4_000_000;

    private final WholeProblem problem;
    private final CuttingBudget budget;
    private long[] most = new long[0];

    WholeBoards(WholeProblem problem, CuttingBudget budget) {
        this.problem = problem;
        this.budget = budget;
    }

    /**
     * @param worth the most that each board can hold, in the unit of {@code need}, 0 or more
     * @param there how many there are of each
     * @param need  what must be held together
     * @param from  price units known to be needed anyway
     * @param below the answer is of no interest from here on
     * @return the least price units, from {@code from} on, at which whole boards hold {@code need}; at most {@code below}
     */
    long leastMoney(long[] worth, int[] there, long need, long from, long below) {
        if (below <= from) return Math.min(from, below);
        int size = Math.toIntExact(below);
        for (int k = 0; k < worth.length; k++) if (there[k] != 0 && worth[k] > 0) budget.spend(size);
        long told = new BoardRests(problem.price, worth, there, below).leastMoney(need, from);
        if (told >= 0) return told;
        if (most.length < size) most = new long[size];
        Arrays.fill(most, 0, size, 0);
        for (int k = 0; k < worth.length; k++) {
            if (there[k] == 0 || worth[k] <= 0) continue;
            long price = problem.price[k];
            if (price == 0) {
                long all = there[k] == WholeProblem.UNLIMITED ? need : capped(worth[k], there[k], need);
                for (int m = 0; m < size; m++) most[m] = Math.min(need, most[m] + all);
            } else if (there[k] == WholeProblem.UNLIMITED || price * there[k] >= below) {
                for (int m = (int) Math.min(size, price); m < size; m++) {
                    most[m] = Math.max(most[m], Math.min(need, most[m - (int) price] + worth[k]));
                }
            } else {
                int left = there[k];
                for (int part = 1; left > 0; part *= 2) {
                    int here = Math.min(part, left);
                    left -= here;
                    int step = (int) (price * here);
                    long gain = capped(worth[k], here, need);
                    for (int m = size - 1; m >= step; m--) {
                        most[m] = Math.max(most[m], Math.min(need, most[m - step] + gain));
                    }
                }
            }
        }
        for (int m = (int) Math.max(0, from); m < size; m++) if (most[m] >= need) return m;
        return below;
    }

    /**
     * Whether fewer than {@code boards} whole boards can hold {@code need} for exactly {@code money}; true as well where
     * the table would be too large to tell.
     */
    boolean fewerMight(long[] worth, int[] there, long need, long money, long boards) {
        if ((money + 1) * boards > LARGEST_TABLE) return true;
        int rows = (int) boards;
        int size = (int) money + 1;
        long[] held = new long[rows * size];
        Arrays.fill(held, -1);
        held[0] = 0;
        long cheapest = size;
        long dearest = 0;
        for (int k = 0; k < worth.length; k++) {
            if (there[k] == 0 || worth[k] <= 0 || problem.price[k] >= size) continue;
            cheapest = Math.min(cheapest, problem.price[k]);
            dearest = Math.max(dearest, problem.price[k]);
        }
        for (int k = 0; k < worth.length; k++) {
            int price = (int) Math.min(size, problem.price[k]);
            if (there[k] == 0 || worth[k] <= 0 || price >= size) continue;
            boolean unlimited = there[k] >= rows;
            for (int copy = 0; copy < (unlimited ? 1 : there[k]); copy++) {
                for (int row = 1; row < rows; row++) {
                    // Bought boards may follow on themselves; one on hand must not, so its rows run backwards.
                    int to = unlimited ? row : rows - row;
                    int from = (to - 1) * size - price;
                    int here = to * size;
                    // Less, so many boards cannot cost, or the boards left could not make up the money; more, they cannot cost.
                    int first = (int) Math.max(price + (to - 1) * cheapest, money - (rows - 1 - to) * dearest);
                    int last = (int) Math.min(money, price + (to - 1) * dearest);
                    for (int m = Math.max(price, first); m <= last; m++) {
                        long before = held[from + m];
                        if (before < 0) continue;
                        held[here + m] = Math.max(held[here + m], Math.min(need, before + worth[k]));
                    }
                }
                budget.spend((long) rows * size);
            }
        }
        for (int row = 0; row < rows; row++) if (held[row * size + size - 1] >= need) return true;
        return false;
    }

    static long capped(long worth, int times, long need) {
        return worth > need / times ? need : worth * times;
    }
}
