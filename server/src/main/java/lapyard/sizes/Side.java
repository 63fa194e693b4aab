package lapyard.sizes;

import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Outline;
import lapyard.geometry.Spans;
import lapyard.plan.Bed;

/**
 * What changes as one: a span of a bed, with those of the beds that stay alike.
 *
 * @param leastMm 0 or below, {@code mostMm} 0 or above, both whole multiples of {@code stepMm}
 */
public record Side(List<Part> parts, double leastMm, double mostMm, double stepMm) {
    /**
     * A span of one bed, see {@link Spans}.
     *
     * @param bed     its place in the document, from 0
     * @param acrossX whether it lies along the bed's own x, its width, else its depth
     */
    public record Part(int bed, boolean acrossX, int span) {}

    public Side {
        parts = List.copyOf(parts);
    }

    Outline applied(int bed, Outline outline, double byMm) {
        Outline changed = outline;
        for (Part part : parts) {
            if (part.bed() == bed && byMm != 0) {
                changed = Spans.stretched(changed, part.acrossX(), part.span(), byMm);
            }
        }
        return changed;
    }

    boolean touches(int bed) {
        return parts.stream().anyMatch(part -> part.bed() == bed);
    }

    /** Walls of its first bed that change their length, by their letters. */
    public List<String> walls(List<Bed> beds) {
        Part first = parts.get(0);
        return Spans.sides(beds.get(first.bed()).outline(), first.acrossX(), first.span()).stream().map(Bed::wallLetter).toList();
    }

    /** Every change it may make, smallest first, nothing left out. */
    List<Double> values() {
        List<Double> values = new ArrayList<>();
        int from = (int) Math.round(leastMm / stepMm);
        int to = (int) Math.round(mostMm / stepMm);
        for (int i = from; i <= to; i++) values.add(i * stepMm);
        return values;
    }
}
