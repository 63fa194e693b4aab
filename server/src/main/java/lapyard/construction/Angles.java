package lapyard.construction;

import java.util.List;
import lapyard.geometry.Lengths;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Joint;
import lapyard.plan.Place;
import lapyard.plan.WayKind;

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
        for (int corner = 0; corner < bed.outline().sides(); corner++) if (!bed.outline().square(corner)) sawLimit(bed, corner, findings);
        List<Piece> angled = courses.stream()
                .flatMap(course -> course.pieces().stream())
                .filter(piece -> !piece.squareEnds())
                .toList();
        List<Piece> apart = angled.stream().filter(piece -> piece.seen() && bed.section().goodFaces() < 2).toList();
        double extra = apart.stream().mapToDouble(piece -> piece.lengthMm() - piece.meanMm()).sum();
        if (extra > 0.05) {
            findings.add(Finding.of(FindingKind.ANGLE_POINTS, Place.bed(bed.id()))
                    .with("pieces", Fact.count(apart.size(), "pieces")).by(Fact.mm(extra))
                    .way(WayKind.GOOD_FACES_TWO, new Fact.Section(bed.section().id())));
        }
        if (!angled.isEmpty()) {
            List<String> sets = angled.stream().flatMap(piece -> piece.setsDeg().stream()).distinct().sorted().map(Lengths::text).toList();
            findings.add(Finding.of(FindingKind.SAW_ANGLES, Place.bed(bed.id())).with("angles", Fact.names(sets))
                    .way(WayKind.TRY_ON_SCRAP));
        }
    }

    private static void sawLimit(Bed bed, int corner, List<Finding> findings) {
        double turn = Math.abs(bed.outline().turnDeg(corner));
        double interior = 180 - turn;
        if (bed.joint(corner) == Joint.MITRE && turn / 2 > WIDEST_SET_DEG + STRAY_DEG) {
            findings.add(Finding.of(FindingKind.MITRE_TOO_STEEP, Place.wall(bed.id(), Bed.wallLetter(corner)))
                    .with("angle", new Fact.Angle(turn / 2)).with("most", new Fact.Angle(WIDEST_SET_DEG))
                    .by(new Fact.Angle(turn / 2 - WIDEST_SET_DEG))
                    .way(interior >= SHARPEST_BUTT_DEG - STRAY_DEG ? WayKind.LAP_CORNER : WayKind.CUT_POINT_OFF)
                    .way(WayKind.OPEN_CORNER, new Fact.Angle(90)));
        } else if (bed.joint(corner) == Joint.LAP && interior < SHARPEST_BUTT_DEG - STRAY_DEG) {
            findings.add(Finding.of(FindingKind.BUTT_TOO_SHARP, Place.wall(bed.id(), Bed.wallLetter(corner)))
                    .with("angle", new Fact.Angle(interior)).with("least", new Fact.Angle(SHARPEST_BUTT_DEG))
                    .by(new Fact.Angle(SHARPEST_BUTT_DEG - interior))
                    .way(WayKind.OPEN_CORNER, new Fact.Angle(SHARPEST_BUTT_DEG)).way(WayKind.CUT_POINT_OFF));
        }
    }
}
