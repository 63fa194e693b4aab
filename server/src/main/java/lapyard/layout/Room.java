package lapyard.layout;

import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Jts;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;
import org.locationtech.jts.geom.Envelope;

/**
 * Ground inside some rings and off others, asked for the stretches along x on which a band of it is free. Whatever crosses
 * the band takes all of the x that it crosses it over.
 */
record Room(List<List<Point>> inside, List<List<Point>> off, List<List<Point>> lines) {
    private static final double HAIR = 0.01;

    /** From and to, in order of x, of every box as deep as the band that is free. */
    List<double[]> stretches(double from, double to) {
        List<double[]> taken = new ArrayList<>();
        Envelope all = Jts.box(inside.stream().flatMap(List::stream).toList());
        inside.forEach(ring -> crossings(ring, true, from + HAIR, to - HAIR, taken));
        off.forEach(ring -> crossings(ring, true, from + HAIR, to - HAIR, taken));
        lines.forEach(line -> crossings(line, false, from + HAIR, to - HAIR, taken));
        return Lengths.free(all.getMinX(), all.getMaxX(), taken).stream()
                .filter(span -> span[1] - span[0] > HAIR && free(new Point((span[0] + span[1]) / 2, (from + to) / 2))).toList();
    }

    private boolean free(Point at) {
        return inside.stream().anyMatch(at::within) && off.stream().noneMatch(at::within);
    }

    private static void crossings(List<Point> line, boolean closed, double from, double to, List<double[]> taken) {
        for (int i = 0; i + (closed ? 0 : 1) < line.size(); i++) {
            Point a = line.get(i);
            Point b = line.get((i + 1) % line.size());
            double low = Math.min(a.y(), b.y());
            double high = Math.max(a.y(), b.y());
            if (high <= from || low >= to) continue;
            double t0 = high == low ? 0 : (Math.max(from, low) - a.y()) / (b.y() - a.y());
            double t1 = high == low ? 1 : (Math.min(to, high) - a.y()) / (b.y() - a.y());
            double x0 = a.x() + t0 * (b.x() - a.x());
            double x1 = a.x() + t1 * (b.x() - a.x());
            taken.add(new double[] {Math.min(x0, x1), Math.max(x0, x1)});
        }
    }

    /** What two lists of stretches share. */
    static List<double[]> both(List<double[]> one, List<double[]> other) {
        List<double[]> shared = new ArrayList<>();
        for (double[] a : one) {
            for (double[] b : other) {
                if (Math.min(a[1], b[1]) - Math.max(a[0], b[0]) > HAIR) shared.add(new double[] {Math.max(a[0], b[0]), Math.min(a[1], b[1])});
            }
        }
        return shared;
    }

    /** Coordinates y at which something of the ground begins or ends. */
    List<Double> levels() {
        List<Double> levels = new ArrayList<>();
        for (List<List<Point>> rings : List.of(inside, off)) {
            for (List<Point> ring : rings) {
                levels.add(Jts.box(ring).getMinY());
                levels.add(Jts.box(ring).getMaxY());
            }
        }
        inside.forEach(ring -> ring.forEach(corner -> levels.add(corner.y())));
        return levels.stream().distinct().sorted().toList();
    }
}
