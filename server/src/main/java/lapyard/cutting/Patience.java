package lapyard.cutting;

import lapyard.working.SearchBudget;

/** Gives up a while after the last gain, so that a quick answer does not use up its whole budget on a proof. */
final class Patience {
    private final SearchBudget budget;
    private final long turns;
    private long since;

    /** @param steps to go on without a gain */
    Patience(SearchBudget budget, long steps) {
        this.budget = budget;
        turns = SearchBudget.turns(steps);
        since = budget.spent();
    }

    void renew() {
        since = budget.spent();
    }

    /** Does not count what these steps were spent on. */
    void skip(long steps) {
        since += SearchBudget.turns(steps);
    }

    /** Inner-loop turns until it is over. */
    long left() {
        return turns - (budget.spent() - since);
    }

    boolean over() {
        return budget.spent() - since > turns || budget.over();
    }
}
