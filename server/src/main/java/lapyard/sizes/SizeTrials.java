package lapyard.sizes;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.geometry.Outline;
import lapyard.geometry.OutlineCheck;
import lapyard.ground.AccessSheet;
import lapyard.job.Costing;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.job.SizeCosts;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Finding;
import lapyard.plan.Garden;

/**
 * Sizes that are tried: what they come to about, in a millisecond or two, and worked out whole. An outline with which a bed
 * failed a check is not tried again.
 */
final class SizeTrials {
    /** Of so many sides a long look can estimate each set closely and still see them all. */
    private static final int CLOSE = 8;

    private record Own(int bed, Outline outline) {}

    private final Garden garden;
    private final List<Side> sides;
    private final SearchMemory memory;
    private final JobSheet now;
    private final SizeChecks checks;
    private final SizeCosts costs;
    private final Map<List<Double>, BigDecimal> likely = new HashMap<>();
    private final Map<List<Double>, Optional<SizeAnswer>> whole = new LinkedHashMap<>();
    private final Map<Own, Boolean> barred = new HashMap<>();
    private SizeLook look;
    private boolean closely;
    private boolean stopped;
    private int estimates;
    private int wholes;

    SizeTrials(Garden garden, List<Side> sides, SearchMemory memory, JobSheet now, SizeCosts costs) {
        this.garden = garden;
        this.sides = sides;
        this.memory = memory;
        this.now = now;
        this.checks = new SizeChecks(now);
        this.costs = costs;
    }

    /** Whether no more sets are looked for: the rest of the estimates is for giving back what those found do not need. */
    boolean explored() {
        return estimates >= look.estimates() * 3 / 5 || stopped();
    }

    /** Whether a part of the estimates is spent that leaves enough for giving back what is not needed. */
    boolean improved() {
        return estimates >= look.estimates() * 4 / 5 || stopped();
    }

    /** Also where the thread is told to stop: what was found by then stands. */
    boolean over() {
        return estimates >= look.estimates() || stopped();
    }

    /** Whether nothing more is worked out whole. */
    boolean full() {
        return wholes >= look.wholes() || stopped();
    }

    /** Counts anew, of what is looked for next; what was tried stays known. */
    void begin(SizeLook next) {
        look = next;
        boolean near = next.closely() && sides.size() <= CLOSE;
        if (near != closely) likely.clear();
        closely = near;
        estimates = 0;
        wholes = 0;
    }

    /** Whether the thread was told to stop before the counts ended the look. */
    boolean stopped() {
        stopped |= Thread.currentThread().isInterrupted();
        return stopped;
    }

    /** All sides as they are. */
    List<Double> stay() {
        return new ArrayList<>(Collections.nCopies(sides.size(), 0.0));
    }

    static List<Double> with(List<Double> sizes, int i, double value) {
        List<Double> other = new ArrayList<>(sizes);
        other.set(i, value);
        return other;
    }

    /** What the order comes to about; {@link SizeCosts#UNMADE} or more where a bed cannot be made so, or is known to fail a check. */
    BigDecimal likely(List<Double> sizes) {
        List<Outline> outlines = outlines(sizes);
        for (int bed = 0; bed < outlines.size(); bed++) {
            if (barred(bed, outlines.get(bed))) return SizeCosts.UNMADE;
        }
        BigDecimal known = likely.get(sizes);
        if (known == null) {
            estimates++;
            known = costs.likely(outlines, closely);
            likely.put(List.copyOf(sizes), known);
        }
        return known;
    }

    private boolean barred(int bed, Outline outline) {
        if (outline.equals(garden.beds().get(bed).outline())) return false;
        return barred.computeIfAbsent(new Own(bed, outline), own -> !costs.makeable(bed, outline));
    }

    /** Whether these sizes were worked out whole. */
    boolean knows(List<Double> sizes) {
        return whole.containsKey(sizes);
    }

    /** Worked out whole; empty where it passes less than the garden as it stands, or there is no room for more. */
    Optional<SizeAnswer> whole(List<Double> sizes) {
        Optional<SizeAnswer> known = whole.get(sizes);
        if (known != null) return known;
        if (full()) return Optional.empty();
        wholes++;
        List<Resize> changes = changes(sizes);
        Garden other = SizesThatGive.changed(garden, changes);
        Set<String> failing = SizeChecks.undrawable(other);
        Optional<SizeAnswer> answer = Optional.empty();
        if (failing.isEmpty()) {
            Costing costed = Costing.of(other, memory);
            BigDecimal total = costed.total();
            SizeAnswer one = new SizeAnswer(changes, changes.stream().mapToDouble(change -> Math.abs(change.byMm())).sum(), total, now.slip().total().subtract(total), 0);
            boolean grows = changes.stream().anyMatch(change -> change.byMm() > 0);
            // the rest of its sheet is worth working out only for what nothing beats, and for a growth, which beats nothing
            if (!grows && !costed.leftOut() && whole.values().stream().flatMap(Optional::stream).anyMatch(better -> better.beatsOrEquals(one))) {
                whole.put(List.copyOf(sizes), Optional.empty());
                return Optional.empty();
            }
            JobSheet sheet = costed.sheet(memory);
            failing = checks.failing(sheet);
            if (failing.isEmpty()) {
                answer = Optional.of(new SizeAnswer(changes, one.mm(), total, one.saved(), boards(now) - boards(sheet)));
            }
        }
        // searches that were cut short prove nothing of these sizes
        if (Thread.currentThread().isInterrupted()) return Optional.empty();
        bar(sizes, failing);
        whole.put(List.copyOf(sizes), answer);
        return answer;
    }

    /** Changed beds that the failing places name do not come in these outlines again. */
    private void bar(List<Double> sizes, Set<String> failing) {
        List<Outline> outlines = outlines(sizes);
        for (int bed = 0; bed < outlines.size(); bed++) {
            String name = "bed " + garden.beds().get(bed).id();
            boolean named = failing.stream().anyMatch(where -> where.equals(name) || where.startsWith(name + ","));
            if (named && !outlines.get(bed).equals(garden.beds().get(bed).outline())) barred.put(new Own(bed, outlines.get(bed)), true);
        }
    }

    /** Beds that cannot be as these sizes have them, by themselves or with all the others. */
    Set<Integer> barredBeds(List<Double> sizes) {
        List<Outline> outlines = outlines(sizes);
        Set<Integer> beds = new HashSet<>();
        for (int bed = 0; bed < outlines.size(); bed++) {
            if (barred(bed, outlines.get(bed))) beds.add(bed);
        }
        if (!beds.isEmpty() || likely(sizes).compareTo(SizeCosts.UNMADE) < 0) return beds;
        List<Double> rest = new ArrayList<>(sizes);
        for (int bed = outlines.size() - 1; bed >= 0 && likely(rest).compareTo(SizeCosts.UNMADE) >= 0; bed--) {
            for (int i = 0; i < sides.size(); i++) {
                if (sides.get(i).touches(bed) && rest.set(i, 0.0) != 0) beds.add(bed);
            }
        }
        return beds;
    }

    List<SizeAnswer> answers() {
        return whole.values().stream().flatMap(Optional::stream).toList();
    }

    private List<Outline> outlines(List<Double> sizes) {
        List<Outline> outlines = new ArrayList<>();
        for (int bed = 0; bed < garden.beds().size(); bed++) {
            Outline outline = garden.beds().get(bed).outline();
            for (int i = 0; i < sides.size(); i++) outline = sides.get(i).applied(bed, outline, sizes.get(i));
            outlines.add(outline);
        }
        return outlines;
    }

    private List<Resize> changes(List<Double> sizes) {
        return IntStream.range(0, sides.size()).filter(i -> sizes.get(i) != 0).mapToObj(i -> new Resize(sides.get(i), sizes.get(i))).toList();
    }

    private static int boards(JobSheet sheet) {
        return sheet.cutting().stream().mapToInt(cutting -> cutting.result().boards()).sum();
    }

    /** Whether a garden of other sizes passes what the garden as it stands passes. */
    private static final class SizeChecks {
        /** Reach is searched for to a part of a millimetre, and people measure to one. */
        private static final double REACH_MM = 1;

        private static final double HAIR = 1e-6;

        private final Map<String, Integer> snags;
        private final Map<String, Double> missing;

        SizeChecks(JobSheet now) {
            snags = snags(now);
            missing = missing(now);
        }

        /**
         * Places that can be named before anything is worked out: outlines that no bed can have. What else would keep a garden from being
         * stored (the yard, its levels, its paths) is as it was.
         */
        static Set<String> undrawable(Garden changed) {
            return changed.beds().stream().filter(bed -> !OutlineCheck.faults(bed.outline(), OutlineCheck.Rules.bed(bed.section().thicknessMm())).isEmpty())
                    .map(bed -> "bed " + bed.id()).collect(Collectors.toSet());
        }

        /** Places that have more snags than they had, or whose room is shorter of its standard; none where it passes. */
        Set<String> failing(JobSheet changed) {
            Set<String> places = new LinkedHashSet<>();
            snags(changed).forEach((where, count) -> {
                if (count > snags.getOrDefault(where, 0)) places.add(where);
            });
            missing(changed).forEach((row, missing) -> {
                double stray = row.endsWith("\nreach") ? REACH_MM : HAIR;
                if (missing > this.missing.getOrDefault(row, 0.0) + stray) places.add(row.substring(0, row.indexOf('\n')));
            });
            if (changed.leftOut() && places.isEmpty()) places.add("order");
            return places;
        }

        private static Map<String, Integer> snags(JobSheet sheet) {
            return sheet.snags().stream().filter(finding -> finding.weight() != Weight.NOTE).collect(Collectors.groupingBy(Finding::where, Collectors.summingInt(finding -> 1)));
        }

        private static Map<String, Double> missing(JobSheet sheet) {
            return sheet.ground().access().rows().stream().collect(Collectors.toMap(row -> row.where() + "\n" + row.what(), AccessSheet.Row::missing, Double::sum));
        }
    }
}
