package lapyard.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Map;
import lapyard.exchange.SiteDrawing.Line;
import lapyard.geometry.Point;

/** A yard that was drawn as single lines becomes one outline where the lines meet end to end. */
final class LineJoining {
    private LineJoining() {}

    /** Lines that share an end with exactly one other are one; where they come round they are closed. */
    static List<Line> joined(List<Line> lines) {
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
            if (begins != atEnd) java.util.Collections.reverse(more);
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
