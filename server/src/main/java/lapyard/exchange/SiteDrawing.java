package lapyard.exchange;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import lapyard.geometry.Length;
import lapyard.geometry.Point;

/**
 * What a file of a site holds: lines and spots by layer, in the file's own unit. Where something is {@code bad} nothing of
 * it is of use.
 *
 * @param format     {@code dxf}, {@code geojson} or {@code csv}
 * @param unit       of its coordinates; empty where the file does not say
 * @param layers     in the order of the file
 * @param passedOver what is not taken, in the order of its words, with how many there are
 * @param bad        what is wrong, by line of the file; line 0 where the text itself says where
 */
public record SiteDrawing(String format, Optional<LengthUnit> unit, List<Layer> layers, Map<String, Integer> passedOver, List<Bad> bad) {
    /** No yard comes near these. */
    static final int MOST_POINTS = 50_000;
    static final int MOST_LAYERS = 200;
    private static final int MOST_BAD = 20;

    /** @param mm of one of it */
    public enum LengthUnit {
        MM(1),
        CM(10),
        M(1000),
        IN(Length.INCH_MM),
        FT(Length.FOOT_MM);

        public final double mm;

        LengthUnit(double mm) {
            this.mm = mm;
        }

        /** As it is written beside a number. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** @param closed whether the last point is joined to the first, which does not stand twice */
    public record Line(List<Point> points, boolean closed) {
        public Line {
            points = List.copyOf(points);
        }
    }

    /** {@code height} is upwards, {@code drop} downwards from a string; empty where the file does not say. */
    public record Spot(Point at, OptionalDouble height, OptionalDouble drop) {}

    public record Layer(String name, List<Line> lines, List<Spot> spots) {}

    public record Bad(long line, String text, String way) {}

    /** Put together shape by shape. */
    static final class Builder {
        private final String format;
        private final Map<String, List<Line>> lines = new LinkedHashMap<>();
        private final Map<String, List<Spot>> spots = new LinkedHashMap<>();
        private final Map<String, Integer> passedOver = new TreeMap<>();
        private final List<Bad> bad = new ArrayList<>();
        private int points;
        Optional<LengthUnit> unit = Optional.empty();

        Builder(String format) {
            this.format = format;
        }

        /** @return false where there is no more room */
        private boolean room(String layer, int more, long at) {
            if (isFull()) return false;
            points += more;
            if (points > MOST_POINTS) bad(at, "the file holds more than " + MOST_POINTS + " points", "keep what shows the yard and save it again");
            else if (!lines.containsKey(layer) && lines.size() >= MOST_LAYERS)
                bad(at, "the file holds more than " + MOST_LAYERS + " layers", "keep the layers that show the yard and save it again");
            else {
                lines.computeIfAbsent(layer, name -> new ArrayList<>());
                spots.computeIfAbsent(layer, name -> new ArrayList<>());
                return true;
            }
            return false;
        }

        void line(String layer, List<Point> given, boolean closed, long at) {
            List<Point> kept = new ArrayList<>();
            for (Point point : given) if (kept.isEmpty() || !kept.get(kept.size() - 1).equals(point.steady())) kept.add(point.steady());
            boolean meets = kept.size() > 2 && kept.get(0).equals(kept.get(kept.size() - 1));
            if (meets) kept.remove(kept.size() - 1);
            if (kept.size() < 2) passOver("line of one point");
            else if (room(layer, kept.size(), at)) lines.get(layer).add(new Line(kept, closed || meets));
        }

        void spot(String layer, Spot spot, long at) {
            if (room(layer, 1, at)) spots.get(layer).add(spot);
        }

        void passOver(String what) {
            passedOver.merge(what, 1, Integer::sum);
        }

        void bad(long line, String text, String way) {
            if (bad.size() < MOST_BAD) bad.add(new Bad(line, text, way));
        }

        boolean isFull() {
            return points > MOST_POINTS || bad.size() >= MOST_BAD;
        }

        SiteDrawing done() {
            List<Layer> layers = new ArrayList<>();
            lines.forEach((name, some) -> layers.add(new Layer(name, joined(some), spots.get(name))));
            if (bad.isEmpty() && layers.isEmpty()) bad(1, "the file holds no lines and no points", "draw the yard as lines or polylines and save it again");
            return new SiteDrawing(format, unit, layers, passedOver, bad);
        }
    }

    /** Lines that share an end with exactly one other are one; where they come round they are closed. */
    private static List<Line> joined(List<Line> lines) {
        Map<Point, List<Integer>> ends = new HashMap<>();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).closed()) continue;
            ends.computeIfAbsent(first(lines.get(i)), point -> new ArrayList<>()).add(i);
            ends.computeIfAbsent(last(lines.get(i)), point -> new ArrayList<>()).add(i);
        }
        boolean[] used = new boolean[lines.size()];
        List<Line> joined = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            if (used[i]) continue;
            used[i] = true;
            if (lines.get(i).closed()) {
                joined.add(lines.get(i));
                continue;
            }
            LinkedList<Point> chain = new LinkedList<>(lines.get(i).points());
            grow(chain, lines, ends, used, true);
            grow(chain, lines, ends, used, false);
            boolean closed = chain.size() > 3 && chain.getFirst().equals(chain.getLast());
            if (closed) chain.removeLast();
            joined.add(new Line(chain, closed));
        }
        return joined;
    }

    private static void grow(LinkedList<Point> chain, List<Line> lines, Map<Point, List<Integer>> ends, boolean[] used, boolean atEnd) {
        while (true) {
            Point end = atEnd ? chain.getLast() : chain.getFirst();
            List<Integer> here = ends.getOrDefault(end, List.of());
            if (here.size() != 2) return; // a fork is left as it is
            int next = used[here.get(0)] ? here.get(1) : here.get(0);
            if (used[next]) return;
            used[next] = true;
            List<Point> more = new ArrayList<>(lines.get(next).points());
            boolean begins = first(lines.get(next)).equals(end);
            if (begins != atEnd) Collections.reverse(more);
            if (atEnd) {
                chain.addAll(more.subList(1, more.size()));
            } else {
                for (int i = more.size() - 2; i >= 0; i--) chain.addFirst(more.get(i));
            }
        }
    }

    private static Point first(Line line) {
        return line.points().get(0);
    }

    private static Point last(Line line) {
        return line.points().get(line.points().size() - 1);
    }
}
