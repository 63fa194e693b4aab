package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Ground;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.WayKind;

/**
 * The plane of the ground: drop(x, y) = a x + b y + c, least squares through all readings.
 *
 * @param residualsMm reading less plane, one a reading
 */
public record Fall(double a, double b, double c, List<Double> residualsMm) {
    /** A reading further off the plane is a lump or a slip of the tape. */
    static final double MOST_RESIDUAL_MM = 15;

    /** Readings whose mean square distance from one line is below this, or a thousandth of their spread, lie in it. */
    private static final double IN_LINE_MM = 1;

    public Fall {
        residualsMm = List.copyOf(residualsMm);
    }

    /** Empty for fewer than three readings or readings all in a line. */
    public static Optional<Fall> of(List<Ground.Level> levels) {
        int n = levels.size();
        if (n < 3) return Optional.empty();
        double x = 0;
        double y = 0;
        double drop = 0;
        for (Ground.Level level : levels) {
            x += level.at().x() / n;
            y += level.at().y() / n;
            drop += level.dropMm() / n;
        }
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double xd = 0;
        double yd = 0;
        for (Ground.Level level : levels) {
            double dx = level.at().x() - x;
            double dy = level.at().y() - y;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
            xd += dx * (level.dropMm() - drop);
            yd += dy * (level.dropMm() - drop);
        }
        double spread = Math.hypot(xx - yy, 2 * xy);
        double across = Math.sqrt(Math.max(0, (xx + yy - spread) / 2 / n));
        double along = Math.sqrt((xx + yy + spread) / 2 / n);
        if (across < Math.max(IN_LINE_MM, along / 1000)) return Optional.empty();
        double det = xx * yy - xy * xy;
        double a = (xd * yy - yd * xy) / det;
        double b = (yd * xx - xd * xy) / det;
        double c = drop - a * x - b * y;
        return Optional.of(new Fall(a, b, c, levels.stream().map(level -> level.dropMm() - (a * level.at().x() + b * level.at().y() + c)).toList()));
    }

    /** What is wrong with the readings: too few, all in a line, or one off the plane. None for no readings at all. */
    static List<Finding> findings(List<Ground.Level> levels) {
        if (levels.isEmpty()) return List.of();
        Optional<Fall> fall = of(levels);
        if (fall.isEmpty() && levels.size() < 3) {
            int missing = 3 - levels.size();
            return List.of(Finding.of(FindingKind.LEVELS_FEW, Place.of(What.LEVELS))
                    .with("read", Fact.count(levels.size(), "level readings")).by(Fact.count(missing, "readings"))
                    .way(WayKind.TAKE_MORE_LEVELS, Fact.count(missing, "readings")));
        }
        if (fall.isEmpty()) {
            return List.of(Finding.of(FindingKind.LEVELS_IN_LINE, Place.of(What.LEVELS))
                    .with("read", Fact.count(levels.size(), "level readings")).by(Fact.count(1, "readings"))
                    .way(WayKind.LEVEL_BESIDE));
        }
        List<Finding> found = new ArrayList<>();
        for (int i = 0; i < levels.size(); i++) {
            double off = Math.abs(fall.get().residualsMm.get(i));
            if (off > MOST_RESIDUAL_MM) {
                found.add(Finding.of(FindingKind.LEVEL_OFF, Place.of(What.LEVELS).then(What.READING, String.valueOf(i + 1)))
                        .with("at", Fact.spot(levels.get(i).at().x(), levels.get(i).at().y())).with("limit", Fact.mm(MOST_RESIDUAL_MM))
                        .by(Fact.mm(off)).way(WayKind.READ_AGAIN).way(WayKind.READ_ROUND_IT));
            }
        }
        return found;
    }

    /** The slope (x, y) in the yard, pointing downhill. */
    public Point downhill() {
        return new Point(a, b);
    }

    public double dropMm(Point at) {
        return a * at.x() + b * at.y() + c;
    }

    /** Drop at the lowest corner of a bed. */
    double lowestMm(Bed bed) {
        return bed.inYard().corners().stream().mapToDouble(this::dropMm).max().orElseThrow();
    }

    /** n of 1:n; infinite on level ground. */
    public double oneIn() {
        return 1 / Math.hypot(a, b);
    }
}
