package lapyard.layout;

import java.math.BigDecimal;
import java.util.List;
import lapyard.job.JobSheet;
import lapyard.plan.Garden;
import lapyard.plan.LayoutWishes.Merit;

/**
 * Beds and paths of one order, as a garden.
 *
 * @param order   words for it: rows along the wall
 * @param garden  pinned beds, then the others; the paths are laid anew
 * @param figures of it
 * @param ground  what the standard asks of a path's fall and the ground does not give, in words; no layout mends it
 */
public record Proposal(String order, Garden garden, JobSheet sheet, Figures figures, List<String> ground) {
    /**
     * @param plantingM2 inside the walls
     * @param sunHours   mean of the food beds, of all beds where none is for food; 0 where no place and day is given
     * @param barrowM    loads of soil times the way from the entrance, there and back
     * @param hoseM      the longest way from the tap to a bed; 0 where there is no tap
     * @param cost       of the order
     */
    public record Figures(
            int beds, double plantingM2, double pathM2, double sunHours, double barrowM, double hoseM, BigDecimal cost, boolean atLeast) {
        private static final double TOLD = 0.05;

        /** Nowhere worse and somewhere better, as far as figures are told. */
        boolean beats(Figures other) {
            boolean better = false;
            for (Merit what : Merit.values()) {
                double more = worth(what) - other.worth(what);
                if (more < -TOLD) return false;
                better |= more > TOLD;
            }
            return better;
        }

        boolean differs(Figures other, Merit what) {
            return Math.abs(worth(what) - other.worth(what)) > TOLD;
        }

        boolean betterInAll(Figures other, List<Merit> whats) {
            return !whats.isEmpty() && whats.stream().allMatch(what -> worth(what) - other.worth(what) > TOLD);
        }

        /** Larger is better. */
        double worth(Merit what) {
            return switch (what) {
                case BEDS -> beds;
                case AREA -> plantingM2;
                case SUN -> sunHours;
                case PATHS -> -pathM2;
                case BARROW -> -barrowM;
                case HOSE -> -hoseM;
                case COST -> -cost.doubleValue();
            };
        }
    }
}
