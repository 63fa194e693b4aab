package lapyard.job;

import java.math.BigDecimal;
import lapyard.plan.Garden;
import lapyard.working.Progress;

/**
 * A garden whose order is worked out, and the rest of its job sheet when it is asked for. What each bed would take alone is
 * left out where that changes no plan.
 */
public final class CostedGarden {
    private final Costing costing;
    private final SearchMemory memory;

    private CostedGarden(Costing costing, SearchMemory memory) {
        this.costing = costing;
        this.memory = memory;
    }

    /** @param memory shared by the gardens that are compared, which repeat most of their searches */
    public static CostedGarden of(Garden garden, SearchMemory memory) {
        boolean alone = garden.beds().stream().anyMatch(PooledTimber::angled);
        return new CostedGarden(Costing.of(garden, new SearchOptions(garden.goods().search(), what -> Progress.UNHEARD, alone, memory)), memory);
    }

    /** The cost of the order, as {@link Job#prepare} finds it. */
    public BigDecimal total() {
        return costing.slip().total();
    }

    /** Whether something of it cannot be made and is missing in the order. */
    public boolean leftOut() {
        return costing.leftOut();
    }

    public JobSheet sheet() {
        return Job.sheet(costing, memory);
    }
}
