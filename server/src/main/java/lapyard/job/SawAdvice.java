package lapyard.job;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.construction.Nest;
import lapyard.cutting.CuttingResult.Unplaced;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.NearMisses;
import lapyard.cutting.Staging;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.job.JobSheet.Way;

/**
 * What a person may weigh before a section's boards are bought. It takes many times as long as the job sheet itself,
 * so it is worked out only where it is shown.
 *
 * @param pooledOnce       what they take where all is cut on one day, so that no offcut is trimmed again
 * @param weekendByWeekend what the boards take where no offcut is carried from one weekend to the next
 * @param nearMisses       lengths that would save money if they were cut a little shorter, the largest saving first
 * @param lengthsTried     of {@code lengthsThere} that are cut at least twice, those that take the most timber
 */
public record SawAdvice(
        String section, Way pooledOnce, Way weekendByWeekend, List<NearMiss> nearMisses, int lengthsTried, int lengthsThere) {
    public SawAdvice {
        nearMisses = List.copyOf(nearMisses);
    }

    /**
     * {@code count} pieces of {@code lengthMm}, each {@code shorterMm} less, would cost {@code saved} less.
     * Offered, never applied: a shorter piece makes a smaller bed.
     *
     * @param sure        whether at least so much is saved beside any plan of the pieces as they are; else beside the plan
     *     found, which is not proved the best
     * @param saved       money; empty where the boards have no price
     * @param boardsSaved below 0 where more, shorter boards would be bought
     * @param marks       the pieces that would be shorter
     */
    public record NearMiss(
            double lengthMm,
            int count,
            int shorterMm,
            boolean sure,
            Optional<BigDecimal> saved,
            int boardsSaved,
            List<String> marks) {
        public NearMiss {
            marks = List.copyOf(marks);
        }
    }

    /** One for each section of wall timber, in the order of {@link JobSheet#cutting}. */
    public static List<SawAdvice> of(JobSheet sheet) {
        return sheet.cutting().stream().map(SawAdvice::of).toList();
    }

    private static SawAdvice of(SectionCutting cutting) {
        int there = NearMisses.lengths(cutting.saw().problem(), byDemand(cutting), nested(cutting.saw()));
        int tried = Math.min(there, NearMisses.MOST_LENGTHS);
        Staging staging = Staging.of(cutting.saw().problem(), cutting.result(), CuttingSolver.QUICK);
        return new SawAdvice(
                cutting.section(),
                way("pooled once", staging.pooledOnce(), cutting),
                way("weekend by weekend", staging.stageByStage(), cutting),
                nearMisses(cutting),
                tried,
                there);
    }

    private static Way way(String name, Staging.Way way, SectionCutting cutting) {
        return new Way(name, way.boards(), priced(cutting) ? Optional.of(way.paid()) : Optional.empty());
    }

    private static boolean priced(SectionCutting cutting) {
        return cutting.saw().ways().get(0).cost().isPresent();
    }

    /** The largest saving that is sure first, then what was only found by search. */
    private static List<NearMiss> nearMisses(SectionCutting cutting) {
        SawWork saw = cutting.saw();
        return NearMisses.of(saw.problem(), byDemand(cutting), nested(saw), NearMisses.GLANCE, NearMisses.MOST_LENGTHS).stream()
                .filter(miss -> miss.sure() || priced(cutting) || miss.boardsSaved() > 0)
                .sorted(Comparator.comparing(NearMisses.NearMiss::sure).reversed())
                .map(miss -> new NearMiss(
                        miss.lengthMm(),
                        miss.count(),
                        miss.shorterMm(),
                        miss.sure(),
                        priced(cutting) ? Optional.of(miss.saved()) : Optional.empty(),
                        miss.boardsSaved(),
                        miss.ids().stream().flatMap(id -> saw.marks().get(id).stream()).toList()))
                .toList();
    }

    /** A nest is as long as its pieces make it. */
    private static Set<String> nested(SawWork saw) {
        Set<String> nests = saw.nests().stream().map(Nest::mark).collect(Collectors.toSet());
        Set<String> ids = new HashSet<>();
        saw.marks().forEach((id, marks) -> {
            if (marks.stream().anyMatch(nests::contains)) ids.add(id);
        });
        return ids;
    }

    /** The result with what could not be cut under the ids of the demands, as the problem has them. */
    private static CuttingResult byDemand(SectionCutting cutting) {
        Map<String, String> demandOf = new HashMap<>();
        cutting.saw().marks().forEach((id, marks) -> marks.forEach(mark -> demandOf.put(mark, id)));
        CuttingResult result = cutting.result();
        return result.renamed(result.plan(), result.unplaced().stream()
                .map(piece -> new Unplaced(
                        demandOf.getOrDefault(piece.id(), piece.id()), piece.lengthMm(), piece.count(), piece.why()))
                .toList());
    }
}
