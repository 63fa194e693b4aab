package lapyard.construction;

import java.util.List;
import java.util.stream.Collectors;
import lapyard.geometry.Lengths;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Joint;

/** What angled corners ask of the saw and of the boards. */
final class Angles {
    /** A common saw tilts or swivels no further. Common practice, no source. */
    static final double WIDEST_SET_DEG = 45;

    /** A butt at a sharper corner is cut to more than 30 degrees off square along its whole height. Likewise. */
    static final double SHARPEST_BUTT_DEG = 60;

    /** Corners are given to 0.1 mm, which turns a short wall by as much as this. */
    private static final double STRAY_DEG = 0.05;

    private Angles() {}

    static void findings(Bed bed, List<Course> courses, List<Finding> findings) {
        for (int corner = 0; corner < bed.outline().sides(); corner++) {
            if (!bed.outline().square(corner)) {
                sawLimit(bed, corner, findings);
            }
        }
        List<Piece> angled = courses.stream()
                .flatMap(course -> course.pieces().stream())
                .filter(piece -> !piece.squareEnds())
                .toList();
        List<Piece> apart = angled.stream().filter(piece -> piece.seen() && bed.section().goodFaces() < 2).toList();
        double extra = apart.stream().mapToDouble(piece -> piece.lengthMm() - piece.meanMm()).sum();
        if (extra > 0.05) {
            findings.add(Finding.note(
                    "bed " + bed.id(),
                    Lengths.text(extra) + " of timber goes into the points of " + apart.size()
                            + " pieces with angled ends: of a board with one good face each is cut by its long point, square"
                            + " across first, because a piece nested into its neighbour shows its other face",
                    new Amount(Lengths.toTenth(extra), "mm"),
                    "if both faces of " + bed.section().id() + " may be seen, put goodFaces 2 to it in the catalogue: such pieces"
                            + " are then nested where it saves a board"));
        }
        if (!angled.isEmpty()) {
            String sets = angled.stream()
                    .flatMap(piece -> piece.setsDeg().stream())
                    .distinct()
                    .sorted()
                    .map(Lengths::text)
                    .collect(Collectors.joining(", "));
            findings.add(Finding.note(
                    "bed " + bed.id(),
                    sets + " degrees off square is how the saw is set for its angled ends: try each set on scrap and put two"
                            + " scraps together before cutting a board",
                    null));
        }
    }

    private static void sawLimit(Bed bed, int corner, List<Finding> findings) {
        double turn = Math.abs(bed.outline().turnDeg(corner));
        double interior = 180 - turn;
        String where = "bed " + bed.id() + ", wall " + Bed.wallLetter(corner);
        if (bed.joint(corner) == Joint.MITRE && turn / 2 > WIDEST_SET_DEG + STRAY_DEG) {
            findings.add(Finding.snag(
                    where,
                    degrees(turn / 2) + " degrees is the mitre where wall " + Bed.wallLetter(corner)
                            + " starts; a saw is set to 45 at most",
                    new Amount(Lengths.toTenth(turn / 2 - WIDEST_SET_DEG), "degrees"),
                    interior >= SHARPEST_BUTT_DEG - STRAY_DEG ? "lap that corner" : "cut the point off with a short wall",
                    "open the corner to 90 degrees or more"));
        } else if (bed.joint(corner) == Joint.LAP && interior < SHARPEST_BUTT_DEG - STRAY_DEG) {
            findings.add(Finding.snag(
                    where,
                    degrees(interior) + " degrees is the corner where wall " + Bed.wallLetter(corner)
                            + " starts; a timber is butted at 60 or more",
                    new Amount(Lengths.toTenth(SHARPEST_BUTT_DEG - interior), "degrees"),
                    "open the corner to 60 degrees or more",
                    "cut the point off with a short wall"));
        }
    }

    private static String degrees(double degrees) {
        return Lengths.text(degrees);
    }
}
