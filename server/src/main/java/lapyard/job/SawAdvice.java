package lapyard.job;

import java.lang.ref.WeakReference;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.NearMisses;
import lapyard.cutting.StagedCutting;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.job.JobSheet.Way;

/**
 * What a person may weigh before a section's boards are bought. It takes many times as long as the job sheet itself,
 * so it is worked out only where it is shown.
 *
 * @param pooledOnce       what they take where all is cut on one day, so that no offcut is trimmed again
 * @param weekendByWeekend what the boards take where no offcut is carried from one weekend to the next
 * @param nearMisses       beds that would save money if they were a little smaller, the largest saving first
 * @param changesTried     of {@code changesThere} ways to make beds smaller, those with the most pieces; the rest would take too long
 */
public record SawAdvice(
        String section, Way pooledOnce, Way weekendByWeekend, List<NearMiss> nearMisses, int changesTried, int changesThere) {
    public SawAdvice {
        nearMisses = List.copyOf(nearMisses);
    }

    /**
     * Beds alike made smaller so that they still close: their timber would cost {@code saved} less. Offered, never applied.
     *
     * @param sizes       how the beds become smaller
     * @param shorterMm   whole millimetres, the same for each of the sizes
     * @param sure        whether at least so much is saved beside any plan of the pieces as they are; else beside the plan
     *     found, which is not proved the best
     * @param saved       money for timber; empty where the boards have no price
     * @param boardsSaved below 0 where more, shorter boards would be bought
     * @param marks       the pieces that would be shorter
     */
    public record NearMiss(
            SmallerBeds sizes, int shorterMm, boolean sure, Optional<BigDecimal> saved, int boardsSaved, List<String> marks) {
        public NearMiss {
            marks = List.copyOf(marks);
        }
    }

    /** Changes for which walls are joined and pieces nested anew, which takes longer. */
    private static final int MOST_ANEW = 12;

    private record Last(WeakReference<JobSheet> sheet, List<SawAdvice> advice) {}

    /** The office sheet and the file of the data ask one after the other. */
    private static volatile Last last = new Last(new WeakReference<>(null), List.of());

    /** One for each section of wall timber, in the order of {@link JobSheet#cutting}. */
    public static List<SawAdvice> of(JobSheet sheet) {
        Last known = last;
        if (known.sheet().refersTo(sheet)) return known.advice();
        List<SawAdvice> advice = sheet.cutting().stream().map(cutting -> of(sheet, cutting, new Glances(Glances.MOST_TIMBERS))).toList();
        if (!Thread.currentThread().isInterrupted()) last = new Last(new WeakReference<>(sheet), advice);
        return advice;
    }

    static SawAdvice of(JobSheet sheet, SectionCutting cutting, Glances glances) {
        List<SmallerBeds> changes = SmallerBeds.of(sheet, cutting);
        List<SmallerBeds> tried = new ArrayList<>();
        int anew = 0;
        for (SmallerBeds change : changes) {
            if (change.change().isEmpty() && ++anew > MOST_ANEW) continue;
            if (tried.size() < NearMisses.MOST_LENGTHS) tried.add(change);
        }
        List<NearMiss> nearMisses = nearMisses(sheet, cutting, tried, glances);
        StagedCutting staging = cutting.staging();
        return new SawAdvice(
                cutting.section(),
                way(JobSheet.Pooling.POOLED_ONCE, staging.pooledOnce(), cutting),
                way(JobSheet.Pooling.WEEKEND_BY_WEEKEND, staging.stageByStage(), cutting),
                nearMisses,
                tried.size(),
                changes.size());
    }

    private static Way way(JobSheet.Pooling pooling, StagedCutting.Way way, SectionCutting cutting) {
        return new Way(pooling, way.boards(), cutting.priced() ? Optional.of(way.paid()) : Optional.empty());
    }

    /**
     * The largest saving that is sure first, then what was only found by search; a change within another that saves as much.
     *
     * @param changes loses those that the glances did not suffice for
     */
    private static List<NearMiss> nearMisses(JobSheet sheet, SectionCutting cutting, List<SmallerBeds> changes, Glances glances) {
        SearchOptions looking = SearchOptions.pooledOnly(sheet.garden().goods().search(), new SearchMemory(1L << 20));
        // other joints could save as well, and the bound is of those that there are
        boolean joined = sheet.beds().stream().filter(bed -> bed.work().bed().section().id().equals(cutting.section()))
                .anyMatch(bed -> !bed.work().frame().seams().isEmpty());
        List<NearMiss> found = new ArrayList<>();
        for (SmallerBeds change : List.copyOf(changes)) {
            IntFunction<Optional<CuttingResult>> smaller = change.change()
                    .map(same -> NearMisses.shortened(cutting.saw().problem(), same, NearMisses.GLANCE))
                    .orElse(byMm -> change.planned(sheet, cutting, byMm, looking, glances));
            Optional<NearMisses.Saving> least = NearMisses.saving(cutting.result(), smaller, !joined);
            // what was not halved to its end may be more than it takes
            if (change.change().isEmpty() && glances.spent()) {
                changes.remove(change);
                continue;
            }
            least.filter(saving -> saving.sure() || cutting.priced() || saving.boardsSaved() > 0)
                    .ifPresent(saving -> found.add(new NearMiss(
                            change,
                            saving.shorterMm(),
                            saving.sure(),
                            cutting.priced() ? Optional.of(saving.saved()) : Optional.empty(),
                            saving.boardsSaved(),
                            change.marks())));
        }
        return found.stream()
                .filter(miss -> found.stream().noneMatch(less -> less != miss && miss.marks().size() > less.marks().size()
                        && miss.marks().containsAll(less.marks()) && less.shorterMm() <= miss.shorterMm() && !more(miss, less)))
                .sorted(Comparator.comparing(NearMiss::sure)
                        .thenComparing(miss -> miss.saved().orElse(BigDecimal.ZERO))
                        .thenComparingInt(NearMiss::boardsSaved)
                        .reversed())
                .toList();
    }

    private static boolean more(NearMiss one, NearMiss other) {
        int money = one.saved().orElse(BigDecimal.ZERO).compareTo(other.saved().orElse(BigDecimal.ZERO));
        return money > 0 || money == 0 && one.boardsSaved() > other.boardsSaved();
    }
}
