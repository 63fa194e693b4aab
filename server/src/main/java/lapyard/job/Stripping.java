package lapyard.job;

import java.util.ArrayList;
import java.util.List;
import lapyard.catalogue.Roll;
import lapyard.geometry.Lengths;
import lapyard.ground.PathWork;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.working.Whole;

/**
 * Strips of membrane as rolls can give them: one too wide for every roll lies as several side by side, one longer than
 * every roll as several end to end, each over the one before by the path's lap.
 */
record Stripping(List<PathWork> paths, List<Finding> findings) {
    static Stripping of(Garden garden, List<PathWork> paths) {
        List<PathWork> divided = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (PathWork path : paths) {
            List<Roll> rolls = path.strips().isEmpty() ? List.of() : RollGoods.usable(garden.goods().catalogue().rolls(path.path().membrane()));
            divided.add(rolls.isEmpty() ? path : divided(path, rolls, findings));
        }
        return new Stripping(divided, findings);
    }

    private static PathWork divided(PathWork path, List<Roll> rolls, List<Finding> findings) {
        double lap = path.path().lapMm();
        double widest = rolls.stream().mapToDouble(Roll::widthMm).max().orElseThrow();
        double longest = rolls.stream().filter(roll -> roll.widthMm() == widest).mapToDouble(Roll::longestMm).max().orElseThrow();
        List<PathWork.Strip> strips = new ArrayList<>();
        for (int i = 0; i < path.strips().size(); i++) {
            PathWork.Strip strip = path.strips().get(i);
            if (rolls.stream().anyMatch(roll -> holds(roll, strip))) {
                strips.add(strip);
                continue;
            }
            boolean wide = strip.widthMm() > widest;
            double limit = wide ? widest : longest;
            if (lap >= limit) {
                findings.add(Finding.of(FindingKind.STRIP_LAP_WIDE, Place.of(What.PATH, path.path().id()).then(What.FIELD, "membrane S" + (i + 1)))
                        .with("lap", Fact.mm(lap)).with("limit", Fact.mm(limit)).with("strip", Fact.size(strip.widthMm(), strip.lengthMm()))
                        .by(Fact.mm(lap - limit))
                        .way(WayKind.LAP_BY, Fact.mm(lapyard.plan.GardenPath.USUAL_LAP_MM)).way(WayKind.LARGER_ROLL));
                strips.add(strip);
                continue;
            }
            List<PathWork.Strip> parts = new ArrayList<>();
            for (double width : parts(strip.widthMm(), widest, lap)) {
                for (double length : parts(strip.lengthMm(), longest, lap)) {
                    parts.add(new PathWork.Strip(width, length, strip.ends(), strip.sides()));
                }
            }
            findings.add(Finding.of(FindingKind.STRIP_DIVIDED, Place.of(What.PATH, path.path().id()).then(What.FIELD, "membrane S" + (i + 1)))
                    .with("strip", Fact.size(strip.widthMm(), strip.lengthMm())).with("parts", Fact.count(parts.size(), "parts")).with("lap", Fact.mm(lap))
                    .by(Fact.mm(wide ? strip.widthMm() - widest : strip.lengthMm() - longest)));
            strips.addAll(parts);
        }
        return strips.equals(path.strips()) ? path : path.with(strips);
    }

    /** Full ones, and the rest: together as long as the whole and a lap for each joint. */
    private static List<Double> parts(double whole, double limit, double lap) {
        if (whole <= limit) return List.of(whole);
        int count = (int) Whole.up((whole - lap) / (limit - lap));
        List<Double> parts = new ArrayList<>();
        for (int i = 1; i < count; i++) parts.add(limit);
        parts.add(Lengths.toTenth(whole - (count - 1) * (limit - lap)));
        return parts;
    }

    private static boolean holds(Roll roll, PathWork.Strip strip) {
        return strip.widthMm() <= roll.widthMm() && strip.lengthMm() <= roll.longestMm()
                || roll.mayTurn() && strip.lengthMm() <= roll.widthMm() && strip.widthMm() <= roll.longestMm();
    }
}
