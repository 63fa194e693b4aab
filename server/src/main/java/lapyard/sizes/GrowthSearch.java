package lapyard.sizes;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.sizes.SizesThatGive.Growth;

/**
 * What each side could grow by at no cost, all others staying.
 *
 * @param now  what the order costs as it stands
 * @param open sides of which the look ended before it was known
 */
record GrowthSearch(List<Side> sides, SizeTrials trials, BigDecimal now, List<Growth> found, List<Side> open) {
    static GrowthSearch of(List<Side> sides, SizeTrials trials, BigDecimal now) {
        GrowthSearch search = new GrowthSearch(sides, trials, now, new ArrayList<>(), new ArrayList<>());
        for (int i = 0; i < sides.size(); i++) search.grown(i).ifPresent(search.found::add);
        return search;
    }

    /**
     * The largest growth that costs no more and passes, by halving: by estimates first, then worked out whole.
     */
    private Optional<Growth> grown(int index) {
        Side side = sides.get(index);
        List<Double> values = side.values().stream().filter(value -> value > 0).toList();
        if (values.isEmpty()) return Optional.empty();
        int fits = -1;
        int costs = values.size();
        int at = likeliest(index, values);
        if (at < costs - 1 && !trials.over()) costs = at + 1;
        Optional<SizeAnswer> answer = Optional.empty();
        while (costs - fits > 1 && !trials.over()) {
            List<Double> sizes = SizeTrials.with(trials.stay(), index, values.get(at));
            if (trials.full() && !trials.knows(sizes)) break;
            Optional<SizeAnswer> here = trials.likely(sizes).compareTo(now) > 0 ? Optional.empty()
                    : trials.whole(sizes).filter(one -> one.saved().signum() >= 0);
            if (here.isPresent()) {
                fits = at;
                answer = here;
            } else {
                costs = at;
            }
            at = (fits + costs) / 2;
        }
        if (costs - fits > 1 || trials.stopped()) open.add(side);
        boolean most = fits == values.size() - 1;
        return answer.map(one -> new Growth(one.changes().get(0), most));
    }

    /** The largest growth that by its estimate costs no more, by halving; -1 where none is. */
    private int likeliest(int index, List<Double> values) {
        int fits = -1;
        int costs = values.size();
        // most growths cost at once or not at all
        for (int at = costs - 1; costs - fits > 1 && !trials.over(); at = (fits + costs) / 2) {
            if (trials.likely(SizeTrials.with(trials.stay(), index, values.get(at))).compareTo(now) > 0) {
                costs = at;
            } else {
                fits = at;
            }
        }
        return fits;
    }
}
