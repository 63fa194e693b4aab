package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import lapyard.geometry.Inset;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Notches;
import lapyard.plan.Place;
import lapyard.plan.WayKind;

/** Drain notches under course 1 of the low walls. They are cut before stacking and cannot be added later. */
final class Notching {
    private Notching() {}

    record Cut(List<Notch> notches, List<Finding> findings) {}

    static Cut of(Bed bed, LowSide low, List<Seam> seams) {
        List<Finding> findings = new ArrayList<>();
        if (low.walls().isEmpty()) {
            findings.add(Finding.of(low.toward().isEmpty() ? FindingKind.NOTCHES_NO_LEVELS : FindingKind.NOTCHES_NO_LOW_WALL, Place.bed(bed.id()))
                    .way(WayKind.TAKE_LEVELS).way(WayKind.NAME_LOW_WALLS));
            return new Cut(List.of(), findings);
        }
        deep(bed, findings);
        List<Notch> notches = new ArrayList<>();
        for (int side : low.walls()) wall(bed, side, seams, notches, findings);
        if (notches.isEmpty()) {
            findings.add(Finding.of(FindingKind.NOTCHES_NONE_FIT, Place.bed(bed.id())).by(Fact.count(0, "notches"))
                    .way(WayKind.OTHER_LOW_WALL).way(WayKind.LONGER_LOW_WALL));
        }
        return new Cut(notches, findings);
    }

    private static void deep(Bed bed, List<Finding> findings) {
        double over = bed.making().notches().depthMm() - bed.section().heightMm() / 4;
        if (over > 1e-6) {
            findings.add(Finding.of(FindingKind.NOTCH_DEEP, Place.bed(bed.id()))
                    .with("depth", Fact.mm(bed.making().notches().depthMm())).with("height", Fact.mm(bed.section().heightMm()))
                    .by(Fact.mm(over))
                    .way(WayKind.NOTCHES_AT_MOST, Fact.mm(bed.section().heightMm() / 4)));
        }
    }

    /** From corners and joints: an angled corner screw ends 0.707 of its length from the corner, and no notch may bare it. */
    static double keepMm(Bed bed) {
        return Math.max(bed.making().notches().fromCornersMm(), Math.sqrt(0.5) * bed.making().screws().lengthMm());
    }

    private static void wall(Bed bed, int side, List<Seam> seams, List<Notch> notches, List<Finding> findings) {
        Outline outline = bed.outline();
        Notches wanted = bed.making().notches();
        String letter = Bed.wallLetter(side);
        double t = bed.section().thicknessMm();
        double from = takenMm(outline.turnDeg(side), t);
        double to = outline.sideMm(side) - takenMm(outline.turnDeg(side + 1), t);
        double keep = keepMm(bed);
        List<Double> ends = ends(from, seams, letter, to);
        double longest = IntStream.range(1, ends.size()).mapToDouble(i -> ends.get(i) - ends.get(i - 1)).max().orElseThrow();
        if (longest < 2 * keep - 1e-6) {
            findings.add(Finding.of(FindingKind.NOTCH_WALL_SHORT, Place.wall(bed.id(), letter))
                    .with("clear", Fact.mm(longest)).with("keep", Fact.mm(keep)).by(Fact.mm(2 * keep - longest))
                    .way(WayKind.OTHER_LOW_WALL));
            return;
        }
        List<Double> places = new ArrayList<>();
        for (double place : spread(from + keep, to - keep, wanted.maxGapMm())) {
            double moved = nearest(place, ends, keep);
            if (!apart(places, moved, wanted.widthMm())) continue;
            places.add(moved);
            if (moved != place) {
                findings.add(Finding.of(FindingKind.NOTCH_MOVED, Place.wall(bed.id(), letter))
                        .with("keep", Fact.mm(keep)).by(Fact.mm(Math.abs(moved - place))));
            }
        }
        fillGaps(places, ends, keep, wanted);
        places.forEach(place -> notches.add(new Notch(letter, Lengths.toTenth(place))));
    }

    /** Where the clear run of a wall begins, its joints in course 1 and where it ends. */
    private static List<Double> ends(double from, List<Seam> seams, String letter, double to) {
        List<Double> ends = new ArrayList<>(seams.stream()
                .filter(seam -> seam.course() == 1 && seam.wall().equals(letter))
                .map(Seam::atMm)
                .sorted()
                .toList());
        ends.add(0, from);
        ends.add(to);
        return ends;
    }

    /** What the neighbour's timber takes off the clear run at a corner; nothing at an inside corner. */
    private static double takenMm(double turnDeg, double thicknessMm) {
        return Math.max(0, -Inset.innerCornerMm(turnDeg, thicknessMm, thicknessMm));
    }

    /** ceil(length / gap) + 1 places, both ends included; one in the middle where there is no length. */
    static List<Double> spread(double from, double to, double gap) {
        int spaces = (int) Math.ceil((to - from - 1e-6) / gap);
        List<Double> places = new ArrayList<>();
        for (int i = 0; i <= spaces; i++) places.add(spaces == 0 ? (from + to) / 2 : from + (to - from) * i / spaces);
        return places;
    }

    /** The place nearest to this one that keeps off all of these. */
    private static double nearest(double place, List<Double> ends, double keep) {
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < ends.size(); i++) {
            double least = ends.get(i - 1) + keep;
            double most = ends.get(i) - keep;
            if (most < least - 1e-6) continue;
            double here = Math.max(least, Math.min(place, most));
            if (Math.abs(here - place) < Math.abs(nearest - place)) nearest = here;
        }
        return Math.abs(nearest - place) < 1e-6 ? place : nearest;
    }

    /** Notches that would run into one another are one. */
    private static boolean apart(List<Double> places, double place, double widthMm) {
        return places.stream().allMatch(other -> Math.abs(other - place) >= widthMm);
    }

    /** A move may leave too wide a gap beside it: one more notch on the other side of the seam closes it. */
    private static void fillGaps(List<Double> places, List<Double> ends, double keep, Notches wanted) {
        for (int i = 0; i + 1 < places.size(); i++) {
            if (places.get(i + 1) - places.get(i) > wanted.maxGapMm() + 1e-6) {
                double between = nearest((places.get(i) + places.get(i + 1)) / 2, ends, keep);
                if (apart(places, between, wanted.widthMm())) places.add(i + 1, between);
            }
        }
    }
}
