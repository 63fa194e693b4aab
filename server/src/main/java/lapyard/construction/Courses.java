package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.Saw;
import lapyard.plan.WayKind;

/** Rings of timber one on the other, the lap swapped from course to course. */
final class Courses {
    private Courses() {}

    record Laid(List<Course> courses, List<Seam> seams, List<Finding> findings) {}

    /** @param joined how walls are joined, by side, where that was settled with the boards; others as is usual */
    static Laid of(Bed bed, Saw saw, double longestMm, Map<Integer, SeamSplit> joined) {
        Outline outline = bed.outline();
        List<Finding> findings = new ArrayList<>();
        List<List<Wall>> walls = new ArrayList<>();
        for (boolean odd : new boolean[] {true, false}) {
            List<Wall> ring = new ArrayList<>();
            for (int side = 0; side < outline.sides(); side++) ring.add(new Wall(WallRun.of(bed, side, odd), List.of()));
            walls.add(ring);
        }
        for (int side = 0; side < outline.sides(); side++) {
            join(bed, saw, longestMm, joined, walls, side, findings);
            shortPieces(bed, saw, walls, side, findings);
        }
        List<Course> courses = new ArrayList<>();
        List<Seam> seams = new ArrayList<>();
        for (int number = 1; number <= bed.courses(); number++) {
            List<Piece> pieces = new ArrayList<>();
            for (Wall wall : walls.get((number + 1) % 2)) lay(bed, number, wall, pieces, seams);
            courses.add(new Course(number, pieces));
        }
        seamNotes(bed, seams, findings);
        Angles.findings(bed, courses, findings);
        return new Laid(courses, seams, findings);
    }

    /** One wall in the courses of one kind. */
    private record Wall(WallRun run, List<Double> seamsMm) {
        double shortestMm() {
            return run.partsMm(seamsMm).min().orElseThrow();
        }
    }

    private static void join(
            Bed bed,
            Saw saw,
            double longestMm,
            Map<Integer, SeamSplit> joined,
            List<List<Wall>> walls,
            int side,
            List<Finding> findings) {
        double needed = WallRun.longestMm(bed, side);
        double over = needed - longestMm;
        if (over <= 1e-6 && !joined.containsKey(side)) return;
        String wall = Bed.wallLetter(side);
        Optional<SeamSplit> split = joined.containsKey(side)
                ? Optional.of(joined.get(side))
                : bed.walls().seams() ? SeamSplit.of(bed, side, longestMm, saw)
                : Optional.empty();
        if (split.isEmpty()) {
            findings.add(Finding.of(bed.walls().seams() ? FindingKind.WALL_NOT_JOINABLE : FindingKind.WALL_TOO_LONG, Place.wall(bed.id(), wall))
                    .with("needed", Fact.mm(needed)).with("longest", Fact.mm(longestMm)).with("least", Fact.mm(saw.leastPartMm()))
                    .by(Fact.mm(over))
                    .way(bed.walls().seams() ? WayKind.SHORTER_LEAST_PART : WayKind.ALLOW_JOINT)
                    .way(WayKind.SHORTEN_WALL, Fact.name(wall), Fact.mm(over))
                    .way(WayKind.LONGER_BOARD, Fact.mm(needed + 2 * saw.endTrimMm())));
            return;
        }
        walls.get(0).set(side, new Wall(walls.get(0).get(side).run(), split.get().oddMm()));
        walls.get(1).set(side, new Wall(walls.get(1).get(side).run(), split.get().evenMm()));
        double missing = saw.seamStaggerMm() - split.get().staggerMm();
        if (missing > 1e-6) {
            findings.add(Finding.of(FindingKind.JOINT_STAGGER, Place.wall(bed.id(), wall))
                    .with("stagger", Fact.mm(split.get().staggerMm())).with("wanted", Fact.mm(saw.seamStaggerMm()))
                    .by(Fact.mm(missing))
                    .way(WayKind.SHORTEN_WALL_NO_JOINT, Fact.name(wall), Fact.mm(over)).way(WayKind.ACCEPT_IT));
        }
    }

    private static void shortPieces(Bed bed, Saw saw, List<List<Wall>> walls, int side, List<Finding> findings) {
        double shortest = walls.get(0).get(side).shortestMm();
        if (bed.courses() > 1) shortest = Math.min(shortest, walls.get(1).get(side).shortestMm());
        double missing = saw.leastPieceMm() - shortest;
        if (missing > 1e-6) {
            String wall = Bed.wallLetter(side);
            findings.add(Finding.of(FindingKind.PIECE_SHORT, Place.wall(bed.id(), wall))
                    .with("shortest", Fact.mm(shortest)).with("least", Fact.mm(saw.leastPieceMm())).by(Fact.mm(missing))
                    .way(WayKind.LENGTHEN_WALL, Fact.name(wall), Fact.mm(missing)).way(WayKind.THINNER_TIMBER));
        }
    }

    private static void lay(Bed bed, int course, Wall wall, List<Piece> pieces, List<Seam> seams) {
        WallRun run = wall.run();
        String letter = Bed.wallLetter(run.side());
        double t = bed.section().thicknessMm();
        PieceEnd start = run.start();
        int parts = wall.seamsMm().size() + 1;
        for (int i = 0; i < parts; i++) {
            PieceEnd end = i < parts - 1 ? PieceEnd.seam(wall.seamsMm().get(i)) : run.end();
            String part = parts == 1 ? "" : Bed.smallLetter(i);
            double from = Math.min(start.outerMm(), start.innerMm());
            pieces.add(new Piece(
                    bed.id() + "-" + course + letter + part,
                    course,
                    letter,
                    part,
                    Lengths.toTenth(Math.max(end.outerMm(), end.innerMm()) - from),
                    from,
                    WallRun.lies(bed.outline(), run.side(), t, start, end),
                    !bed.walls().hidden().contains(letter),
                    start,
                    end));
            if (i < parts - 1) seams.add(new Seam(course, letter, end.outerMm()));
            start = end;
        }
    }

    private static void seamNotes(Bed bed, List<Seam> seams, List<Finding> findings) {
        for (Seam seam : seams) {
            findings.add(Finding.of(FindingKind.JOINT, Place.wall(bed.id(), seam.wall()).then(What.COURSE, String.valueOf(seam.course())))
                    .with("at", Fact.mm(seam.atMm())).with("screws", Fact.count(Fixings.SCREWS_A_SEAM, "screws")));
        }
    }
}
