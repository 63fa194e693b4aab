package lapyard.sizes;

import java.util.List;
import java.util.stream.IntStream;
import lapyard.geometry.Outline;
import lapyard.geometry.Stretch;
import lapyard.plan.Bed;

/**
 * What changes as one: a stretch of a bed, with those of the beds that stay alike.
 *
 * @param leastMm 0 or below, {@code mostMm} 0 or above, both whole multiples of {@code stepMm}
 */
public record Side(List<Part> parts, double leastMm, double mostMm, double stepMm) {
    /**
     * A stretch of one bed.
     *
     * @param bed    its place in the document, from 0
     * @param number of the stretch among the bed's
     */
    public record Part(int bed, int number, Stretch stretch) {
        /** Whether its width changes, along the bed's own x, else its depth. */
        public boolean acrossX() {
            return stretch.acrossX();
        }
    }

    public Side {
        parts = List.copyOf(parts);
    }

    Outline applied(int bed, Outline outline, double byMm) {
        Outline changed = outline;
        for (Part part : parts) {
            if (part.bed() == bed && byMm != 0) {
                changed = part.stretch().applied(changed, byMm);
            }
        }
        return changed;
    }

    boolean touches(int bed) {
        return parts.stream().anyMatch(part -> part.bed() == bed);
    }

    /** Walls of its first bed that change their length, by their letters. */
    public List<String> walls() {
        return parts.get(0).stretch().sides().stream().map(Bed::wallLetter).toList();
    }

    /** Whether walls only become longer as it does. */
    boolean growing() {
        return parts.stream().allMatch(part -> part.stretch().growing());
    }

    /** Every change it may make, smallest first, nothing left out. */
    List<Double> values() {
        return IntStream.rangeClosed((int) Math.round(leastMm / stepMm), (int) Math.round(mostMm / stepMm)).mapToObj(i -> i * stepMm).toList();
    }
}
