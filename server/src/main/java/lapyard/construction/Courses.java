package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Saw;

/** Rings of timber one on the other, the lap swapped from course to course. */
final class Courses {
    private Courses() {}

    record Laid(List<Course> courses, List<Seam> seams, List<Finding> findings) {}

    static Laid of(Bed bed, Saw saw, double longestMm) {
        return of(bed, saw, longestMm, Map.of());
    }

    /** @param joined how walls are joined, by side, where that was settled with the boards; others as is usual */
    static Laid of(Bed bed, Saw saw, double longestMm, Map<Integer, SeamSplit> joined) {
        Outline outline = bed.outline();
        List<Finding> findings = new ArrayList<>();
        List<List<Wall>> walls = new ArrayList<>();
        for (boolean odd : new boolean[] {true, false}) {
            List<Wall> ring = new ArrayList<>();
            for (int side = 0; side < outline.sides(); side++) {
                ring.add(new Wall(WallRun.of(bed, side, odd), List.of()));
            }
            checkSum(bed, ring);
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
            for (Wall wall : walls.get((number + 1) % 2)) {
                lay(bed, number, wall, pieces, seams);
            }
            courses.add(new Course(number, pieces));
        }
        seamNotes(bed, seams, findings);
        Angles.findings(bed, courses, findings);
        return new Laid(courses, seams, findings);
    }

    /** One wall in the courses of one kind. */
    private record Wall(WallRun run, List<Double> seamsMm) {
        double shortestMm() {
            double shortest = Double.POSITIVE_INFINITY;
            double from = run.fromMm();
            for (double seam : seamsMm) {
                shortest = Math.min(shortest, seam - from);
                from = seam;
            }
            return Math.min(shortest, run.toMm() - from);
        }
    }

    /** A ring that is not P - t sum tan(turn / 2) is a fault of ours, and no such list may reach a saw. */
    private static void checkSum(Bed bed, List<Wall> ring) {
        double sum = ring.stream().mapToDouble(wall -> wall.run().meanMm()).sum();
        double wanted = bed.outline().perimeterMm()
                - bed.section().thicknessMm() * bed.outline().sumOfHalfTurnTangents();
        if (Math.abs(sum - wanted) > 1e-3) {
            throw new IllegalArgumentException("bed " + bed.id() + ": a course sums to " + sum + " mm, must be "
                    + wanted + "; the outline must be counter-clockwise");
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
        WallRun odd = walls.get(0).get(side).run();
        WallRun even = walls.get(1).get(side).run();
        boolean evenLaid = bed.courses() > 1;
        double needed = evenLaid ? Math.max(odd.lengthMm(), even.lengthMm()) : odd.lengthMm();
        double over = needed - longestMm;
        if (over <= 1e-6) {
            return;
        }
        String wall = Bed.wallLetter(side);
        String where = "bed " + bed.id() + ", wall " + wall;
        Optional<SeamSplit> split = joined.containsKey(side)
                ? Optional.of(joined.get(side))
                : bed.walls().seams() ? SeamSplit.of(odd, even, evenLaid, bed.outline().sideMm(side), longestMm, saw)
                : Optional.empty();
        if (split.isEmpty()) {
            String tooLong = Lengths.text(needed) + " needed; the longest board gives " + Lengths.text(longestMm);
            findings.add(Finding.snag(
                    where,
                    bed.walls().seams()
                            ? tooLong + ", and no split leaves parts of " + Lengths.text(saw.leastPartMm())
                            : tooLong + ", and seams are not allowed",
                    new Amount(Lengths.toTenth(over), "mm"),
                    bed.walls().seams() ? "allow a shorter least part" : "allow a seam",
                    "shorten wall " + wall + " by " + Lengths.text(over),
                    "add a board of " + Lengths.text(needed + 2 * saw.endTrimMm()) + " or longer"));
            return;
        }
        walls.get(0).set(side, new Wall(odd, split.get().oddMm()));
        walls.get(1).set(side, new Wall(even, split.get().evenMm()));
        double missing = saw.seamStaggerMm() - split.get().staggerMm();
        if (missing > 1e-6) {
            findings.add(Finding.snag(
                    where,
                    Lengths.text(split.get().staggerMm())
                            + " between seams of neighbouring courses is the best that boards of "
                            + Lengths.text(longestMm) + " reach; " + Lengths.text(saw.seamStaggerMm()) + " is wanted",
                    new Amount(Lengths.toTenth(missing), "mm"),
                    "add a longer board",
                    "shorten wall " + wall + " by " + Lengths.text(over) + " and leave out the seam",
                    "accept the smaller stagger"));
        }
    }

    private static void shortPieces(Bed bed, Saw saw, List<List<Wall>> walls, int side, List<Finding> findings) {
        double shortest = walls.get(0).get(side).shortestMm();
        if (bed.courses() > 1) {
            shortest = Math.min(shortest, walls.get(1).get(side).shortestMm());
        }
        double missing = saw.leastPieceMm() - shortest;
        if (missing > 1e-6) {
            String wall = Bed.wallLetter(side);
            findings.add(Finding.snag(
                    "bed " + bed.id() + ", wall " + wall,
                    Lengths.text(shortest) + " long is a piece of this wall; the least is "
                            + Lengths.text(saw.leastPieceMm()),
                    new Amount(Lengths.toTenth(missing), "mm"),
                    "lengthen wall " + wall + " by " + Lengths.text(missing),
                    "swap the lap",
                    "use thinner timber"));
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
            String part = parts == 1 ? "" : partLetter(i);
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
            if (i < parts - 1) {
                seams.add(new Seam(course, letter, end.outerMm()));
            }
            start = end;
        }
    }

    /** a, b ... z, aa, ab ... */
    private static String partLetter(int i) {
        return Bed.wallLetter(i).toLowerCase(Locale.ROOT);
    }

    private static void seamNotes(Bed bed, List<Seam> seams, List<Finding> findings) {
        for (Seam seam : seams) {
            findings.add(Finding.note(
                    "bed " + bed.id() + ", wall " + seam.wall(),
                    Lengths.text(seam.atMm()) + " from the start of wall " + seam.wall() + ", course " + seam.course()
                            + " has a seam; it takes a backing plate and " + Fixings.SCREWS_A_SEAM + " screws",
                    new Amount(seam.atMm(), "mm"),
                    "use a longer board"));
        }
    }
}
