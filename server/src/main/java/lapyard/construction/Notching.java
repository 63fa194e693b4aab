package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
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

    private static void wall(Bed bed, int side, List<Seam> seams, List<Notch> notches, List<Finding> findings) {
        Outline outline = bed.outline();
        Notches wanted = bed.making().notches();
        String letter = Bed.wallLetter(side);
        double t = bed.section().thicknessMm();
        double from = takenMm(outline.turnDeg(side), t);
        double to = outline.sideMm(side) - takenMm(outline.turnDeg(side + 1), t);
        // An angled corner screw ends 0.707 of its length from the corner, and no notch may bare it.
        double keep = Math.max(wanted.fromCornersMm(), Math.sqrt(0.5) * bed.making().screws().lengthMm());
        double free = to - from - 2 * keep;
        if (free < -1e-6) {
            findings.add(Finding.of(FindingKind.NOTCH_WALL_SHORT, Place.wall(bed.id(), letter))
                    .with("clear", Fact.mm(to - from)).with("keep", Fact.mm(keep)).by(Fact.mm(-free))
                    .way(WayKind.OTHER_LOW_WALL));
            return;
        }
        List<Double> joints = seams.stream()
                .filter(seam -> seam.course() == 1 && seam.wall().equals(letter))
                .map(Seam::atMm)
                .toList();
        List<Double> even = spread(from + keep, to - keep, wanted.maxGapMm());
        List<Double> places = new ArrayList<>();
        for (double place : even) {
            double moved = clear(place, joints, keep, from + keep, to - keep);
            if (moved != place) {
                findings.add(Finding.of(FindingKind.NOTCH_MOVED, Place.wall(bed.id(), letter))
                        .with("keep", Fact.mm(keep)).by(Fact.mm(Math.abs(moved - place))));
            }
            places.add(moved);
        }
        fillGaps(places, joints, keep, wanted.maxGapMm());
        places.forEach(place -> notches.add(new Notch(letter, Lengths.toTenth(place))));
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

    private static double clear(double place, List<Double> joints, double keep, double least, double most) {
        for (double joint : joints) {
            if (Math.abs(place - joint) < keep - 1e-6) {
                double before = joint - keep;
                double after = joint + keep;
                boolean back = place <= joint && before >= least || after > most;
                return back ? before : after;
            }
        }
        return place;
    }

    /** A move may leave too wide a gap beside it: one more notch on the other side of the seam closes it. */
    private static void fillGaps(List<Double> places, List<Double> joints, double keep, double gap) {
        for (int i = 0; i + 1 < places.size(); i++) {
            if (places.get(i + 1) - places.get(i) > gap + 1e-6) {
                double before = places.get(i);
                double after = places.get(i + 1);
                double middle = (before + after) / 2;
                places.add(i + 1, clear(middle, joints, keep, before, after));
            }
        }
    }
}
