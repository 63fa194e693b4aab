package lapyard.plan;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A board on hand.
 *
 * @param section   id of the section it can stand in for
 * @param bad       spans from-to from its marked end that must not be used, mm
 * @param goodFaces 0, 1 or 2
 * @param salvage   what one of them is worth kept, in the garden's currency; empty for the garden's usual part of a new one
 */
public record RackBoard(
        String id, String section, double lengthMm, int count, List<Span> bad, int goodFaces, Past past, Measured measured,
        Optional<BigDecimal> salvage) {
    /**
     * What is known of its earlier life.
     *
     * @param origin    where it came from; empty if that is not known
     * @param checkedBy who looked at it; empty if it was not checked
     */
    public record Past(String origin, boolean coated, Treatment treatment, String checkedBy) {}

    /**
     * What scale and tape say.
     *
     * @param weightKg    mass of the whole board as weighed, kg; 0 if it was not weighed
     * @param thicknessMm as measured; 0 where it is as its section says, {@code heightMm} likewise
     */
    public record Measured(double weightKg, double thicknessMm, double heightMm) {}

    public RackBoard {
        bad = List.copyOf(bad);
    }

    /** Why it may go into no planted bed at all; empty where it may. */
    public Optional<String> barredEverywhere() {
        return past.treatment.nowhere ? Optional.of(past.treatment.words) : Optional.empty();
    }

    /** Why the board may not go into a bed marked food; empty where it may. A board of unknown origin may not. */
    public Optional<String> barredFromFood() {
        if (past.treatment.nowhere) return barredEverywhere();
        if (past.coated) return Optional.of("coated");
        if (past.origin.isEmpty()) return Optional.of("of unknown origin");
        return past.treatment.notFood ? Optional.of(past.treatment.words) : Optional.empty();
    }

    /** What is left between the bad spans, from the marked end on; runs shorter than {@code leastMm} are dropped. */
    public List<Span> usableRuns(double leastMm) {
        List<Span> sorted = new ArrayList<>(bad);
        sorted.sort(Comparator.comparingDouble(Span::fromMm));
        List<Span> runs = new ArrayList<>();
        double from = 0;
        for (Span span : sorted) {
            runs.add(new Span(from, span.fromMm()));
            from = Math.max(from, span.toMm());
        }
        runs.add(new Span(from, lengthMm));
        return runs.stream().filter(run -> run.toMm() - run.fromMm() >= Math.max(leastMm, 0.1)).toList();
    }

    public record Span(double fromMm, double toMm) {}
}
