package lapyard.json;

import java.util.List;
import lapyard.construction.BedWork;
import lapyard.construction.CornerScrew;
import lapyard.construction.CrossTies;
import lapyard.construction.FloorBay;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;

/** Places of screws, cross ties, bearers and slats of a bed. */
final class FixingsJson {
    private FixingsJson() {}

    record Screw(int course, int corner, String head, CornerScrew.Face face, String into, double angleDeg, double entryMm,
            List<Double> heightsMm) {}

    record Tie(String wall, double atMm, String toWall, Point from, Point to, double lengthMm, double heightMm) {}

    record Post(String wall, double atMm, Point place) {}

    record Bay(Rectangle floor, String bearersRun, double bearerMm, List<Double> bearersAtMm, int rows, double gapMm,
            double rippedMm, List<Double> rowMm) {}

    static List<Screw> screws(BedWork work) {
        return work.frame().screws().stream()
                .map(one -> new Screw(one.course(), one.corner(), one.head(), one.face(), one.into(), one.angleDeg(),
                        one.entryMm(), one.heightsMm()))
                .toList();
    }

    static List<Tie> ties(BedWork work) {
        return work.frame().crossTies().stream()
                .map(tie -> new Tie(tie.wall(), tie.atMm(), tie.toWall(), tie.from(), tie.to(), tie.lengthMm(), tie.heightMm()))
                .toList();
    }

    static List<Post> posts(BedWork work) {
        return CrossTies.of(work.bed(), work.frame().inner(), work.frame().seams()).posts().stream()
                .map(post -> new Post(post.wall(), post.atMm(), post.at()))
                .toList();
    }

    static List<Bay> bays(BedWork work) {
        return work.bottom().bays().stream().map(FixingsJson::bay).toList();
    }

    private static Bay bay(FloorBay bay) {
        return new Bay(bay.floor(), bay.alongY() ? "up" : "across", bay.bearerMm(), bay.bearersAtMm(), bay.slats().rows(),
                bay.slats().gapMm(), bay.slats().rippedMm(), bay.slats().piecesMm());
    }
}
