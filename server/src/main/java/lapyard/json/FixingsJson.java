package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import lapyard.construction.BedWork;
import lapyard.construction.CornerScrew;
import lapyard.construction.CrossTie;
import lapyard.construction.CrossTies;
import lapyard.construction.FloorBay;
import lapyard.geometry.Point;

/** Places of screws, cross ties, bearers and slats of a bed. */
final class FixingsJson {
    private FixingsJson() {}

    static void into(ObjectNode json, BedWork work) {
        ArrayNode screws = json.putArray("screws");
        for (CornerScrew screw : work.frame().screws()) {
            ObjectNode one = screws.addObject();
            one.put("course", screw.course());
            one.put("corner", screw.corner());
            one.put("head", screw.head());
            one.put("face", screw.face().name().toLowerCase(Locale.ROOT));
            one.put("into", screw.into());
            one.set("angle", JobSheetJson.number(screw.angleDeg(), 1));
            one.set("entry", JobSheetJson.number(screw.entryMm(), 1));
            ArrayNode heights = one.putArray("heights");
            screw.heightsMm().forEach(height -> heights.add(JobSheetJson.number(height, 1)));
        }
        ArrayNode ties = json.putArray("crossTies");
        for (CrossTie tie : work.frame().crossTies()) {
            ObjectNode one = ties.addObject();
            one.put("wall", tie.wall());
            one.set("at", JobSheetJson.number(tie.atMm(), 1));
            one.put("toWall", tie.toWall());
            one.set("from", point(tie.from(), one));
            one.set("to", point(tie.to(), one));
            one.set("length", JobSheetJson.number(tie.lengthMm(), 1));
            one.set("height", JobSheetJson.number(tie.heightMm(), 1));
        }
        ArrayNode posts = json.putArray("posts");
        CrossTies.of(work.bed(), work.frame().inner(), work.frame().seams()).posts().forEach(post -> {
            ObjectNode one = posts.addObject();
            one.put("wall", post.wall());
            one.set("at", JobSheetJson.number(post.atMm(), 1));
            one.set("place", point(post.at(), one));
        });
        ArrayNode base = json.putArray("base");
        for (FloorBay bay : work.bottom().bays()) {
            ObjectNode one = base.addObject();
            one.set("floor", JobSheetJson.rectangle(bay.floor()));
            one.put("bearersRun", bay.alongY() ? "up" : "across");
            one.set("bearer", JobSheetJson.number(bay.bearerMm(), 1));
            ArrayNode at = one.putArray("bearersAt");
            bay.bearersAtMm().forEach(place -> at.add(JobSheetJson.number(place, 1)));
            one.put("rows", bay.slats().rows());
            one.set("gap", JobSheetJson.number(bay.slats().gapMm(), 1));
            one.set("ripped", JobSheetJson.number(bay.slats().rippedMm(), 1));
            ArrayNode row = one.putArray("row");
            bay.slats().piecesMm().forEach(piece -> row.add(JobSheetJson.number(piece, 1)));
        }
    }

    private static ArrayNode point(Point point, ObjectNode json) {
        return json.arrayNode().add(JobSheetJson.number(point.x(), 1)).add(JobSheetJson.number(point.y(), 1));
    }
}
