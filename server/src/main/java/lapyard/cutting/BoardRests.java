package lapyard.cutting;

/**
 * The least money at which whole boards hold something, without a table over all money: in a cheapest set all but a few
 * boards are of the kind that holds most for its money. So it is enough to know for each rest of the money, divided by
 * the price of that kind, what other boards are worth more than as many of that kind as their money pays.
 *
 * @see "Gilmore and Gomory, The theory and computation of knapsack functions, Operations Research 14 (1966), for the
 *     periodic part of the answer"
 */
final class BoardRests {
    /** Sets of boards that there are few of; with more, a table over all money is quicker. */
    private static final int MOST_SETS = 64;
    /** The table must be so many times longer than there are rests. */
    private static final int LEAST_GAIN = 4;

    private final long[] price;
    private final long[] worth;
    private final int[] there;
    private final long below;

    /** The most worth with each rest, less that of the best kind that the same money pays whole. */
    private long[] over;
    /** The money that this takes. */
    private long[] money;

    /**
     * @param price of each board, whole units, 0 or more
     * @param worth the most that each board holds
     * @param there how many there are of each
     * @param below money from which on the answer is of no interest
     */
    BoardRests(long[] price, long[] worth, int[] there, long below) {
        this.price = price;
        this.worth = worth;
        this.there = there;
        this.below = below;
    }

    /**
     * @param need what must be held together
     * @param from money that is needed anyway, below {@code below}
     * @return the least money from {@code from} on at which whole boards hold it, at most {@code below}; -1 where this does
     *     not tell
     */
    long leastMoney(long need, long from) {
        int best = best();
        if (best < 0 || price[best] * LEAST_GAIN > below) return -1;
        long left = need;
        long[] setMoney = new long[MOST_SETS];
        long[] setWorth = new long[MOST_SETS];
        int sets = 1;
        for (int k = 0; k < price.length; k++) {
            if (!counts(k)) continue;
            if (price[k] == 0) {
                left -= there[k] == WholeProblem.UNLIMITED ? left : WholeBoards.capped(worth[k], there[k], Math.max(0, left));
            } else if (!bought(k)) {
                if ((long) sets * (there[k] + 1L) > MOST_SETS) return -1;
                int before = sets;
                for (int copies = 1; copies <= there[k]; copies++) {
                    for (int set = 0; set < before; set++) {
                        setMoney[sets] = setMoney[set] + price[k] * copies;
                        setWorth[sets++] = setWorth[set] + WholeBoards.capped(worth[k], copies, need);
                    }
                }
            }
        }
        long least = Math.max(0, from);
        if (left <= 0) return least;
        fill(best);
        long answer = below;
        boolean sure = true;
        for (int set = 0; set < sets; set++) {
            for (int rest = 0; rest < over.length; rest++) {
                long lacks = left - setWorth[set] - over[rest];
                long more = lacks <= 0 ? 0 : (lacks - 1) / worth[best] + 1;
                if (more > below / over.length) continue;
                long whole = rest + more * over.length;
                long here = Math.max(least, setMoney[set] + whole);
                boolean pays = money[rest] <= whole;
                if (here < answer || here == answer && pays) {
                    sure = here < answer ? pays : sure || pays;
                    answer = here;
                }
            }
        }
        return sure ? answer : -1;
    }

    private boolean counts(int k) {
        return there[k] != 0 && worth[k] > 0 && price[k] < below;
    }

    private boolean bought(int k) {
        return price[k] > 0 && (there[k] == WholeProblem.UNLIMITED || price[k] * there[k] >= below);
    }

    /** The board that holds most for its money; -1 where none can be bought. */
    private int best() {
        int best = -1;
        for (int k = 0; k < price.length; k++) if (counts(k) && bought(k) && (best < 0 || denser(k, best))) best = k;
        return best;
    }

    private boolean denser(int one, int other) {
        long quotients = worth[one] / price[one] - worth[other] / price[other];
        return quotients > 0 || quotients == 0 && worth[one] % price[one] * price[other] > worth[other] % price[other] * price[one];
    }

    private void fill(int best) {
        int size = Math.toIntExact(price[best]);
        over = new long[size];
        money = new long[size];
        for (int rest = 0; rest < size; rest++) money[rest] = rest;
        for (int k = 0; k < price.length; k++) {
            if (!counts(k) || !bought(k) || k == best) continue;
            long whole = price[k] / size;
            // as many of the best kind for no more money hold as much
            if (whole > 0 && worth[best] > (worth[k] - 1) / whole) continue;
            int step = (int) (price[k] % size);
            if (step == 0) continue;
            int laps = gcd(step, size);
            long gain = worth[k] - whole * worth[best];
            for (int start = 0; start < laps; start++) {
                int rest = start;
                // nowhere along a lap is a whole lap gained, so the second one finds all
                for (int i = 2 * size / laps; i > 0; i--) {
                    int next = rest + step;
                    long then = over[rest] + gain;
                    if (next >= size) {
                        next -= size;
                        then -= worth[best];
                    }
                    long paid = money[rest] + price[k];
                    if (then > over[next] || then == over[next] && paid < money[next]) {
                        over[next] = then;
                        money[next] = paid;
                    }
                    rest = next;
                }
            }
        }
    }

    private static int gcd(int a, int b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
