package lapyard.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/** Where straight lines along the axes run inside an outline. */
public final class Chords {
    private Chords() {}

    /** Part of a line, {@code toMm} above {@code fromMm}. */
    public record Span(double fromMm, double toMm) {
        public double lengthMm() {
            return toMm - fromMm;
        }
    }

    /** Spans inside the outline of the line at {@code at}: upright lines at an x, others at a y. Ascending. */
    public static List<Span> at(Outline outline, boolean upright, double at) {
        List<Double> crossings = new ArrayList<>();
        for (int i = 0; i < outline.sides(); i++) {
            Point a = outline.corner(i);
            Point b = outline.corner(i + 1);
            double fromAcross = upright ? a.x() : a.y();
            double toAcross = upright ? b.x() : b.y();
            if (fromAcross > at != toAcross > at) {
                double share = (at - fromAcross) / (toAcross - fromAcross);
                double from = upright ? a.y() : a.x();
                double to = upright ? b.y() : b.x();
                crossings.add(Lengths.steady(from + (to - from) * share));
            }
        }
        crossings.sort(Comparator.naturalOrder());
        List<Span> spans = new ArrayList<>();
        for (int i = 0; i + 1 < crossings.size(); i += 2) spans.add(new Span(crossings.get(i), crossings.get(i + 1)));
        return spans;
    }

    /**
     * What a board must span that lies along a band and covers the outline there: the spans of all lines of the band
     * together, those that meet made one, cut off at {@code leastMm} and {@code mostMm}.
     */
    public static List<Span> band(Outline outline, boolean upright, double from, double to, double leastMm, double mostMm) {
        double hair = Math.min(1e-3, (to - from) / 4);
        TreeSet<Double> levels = new TreeSet<>(List.of(from + hair, to - hair));
        for (Point corner : outline.corners()) {
            double level = upright ? corner.x() : corner.y();
            if (level > from + hair && level < to - hair) {
                levels.add(level - hair);
                levels.add(level + hair);
            }
        }
        List<Span> all = new ArrayList<>();
        for (double level : levels) {
            for (Span span : at(outline, upright, level)) {
                double first = Math.max(span.fromMm(), leastMm);
                double last = Math.min(span.toMm(), mostMm);
                if (last - first > 0.5) all.add(new Span(first, last));
            }
        }
        all.sort(Comparator.comparingDouble(Span::fromMm));
        List<Span> merged = new ArrayList<>();
        for (Span span : all) {
            Span last = merged.isEmpty() ? span : merged.get(merged.size() - 1);
            if (!merged.isEmpty() && span.fromMm() <= last.toMm()) {
                merged.set(merged.size() - 1, new Span(last.fromMm(), Math.max(last.toMm(), span.toMm())));
            } else {
                merged.add(span);
            }
        }
        return merged;
    }
}
