package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard.Gardener;
import lapyard.plan.AccessStandard;
import lapyard.plan.Baseline;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.RimGroup;
import lapyard.plan.SunDay;
import lapyard.plan.Tall;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;

/** What is to be done in the yard and held against it: pegging out, ground preparation, rims, access, sun. */
final class YardWorkReader {
    private YardWorkReader() {}

    static Baseline baseline(Cursor baseline) {
        if (!baseline.has("from") || !baseline.has("to")) baseline.needed("{\"from\": [0, 0], \"to\": [12000, 0]}", "\"from\"", "\"to\"");
        Baseline read = new Baseline(baseline.point("from"), baseline.point("to", new Point(1000, 0)), baseline.number("standOff"));
        if (read.from().distanceMm(read.to()) < Baseline.LEAST_MM) marksNear(baseline, "to", read.from().distanceMm(read.to()));
        return read;
    }

    static void marksNear(Cursor cursor, String field, double apartMm) {
        cursor.add(cursor.fault(FindingKind.MARKS_NEAR, field).with("apart", Fact.mm(apartMm)).with("least", Fact.mm(Baseline.LEAST_MM))
                .by(Fact.mm(Baseline.LEAST_MM - apartMm)).way(WayKind.TWO_MARKS));
    }

    static List<RimGroup> rims(Cursor ground) {
        Set<String> taken = new HashSet<>();
        return ground.each("rims", "rim group", group -> {
            List<String> beds = group.list("beds").stream().map(JsonNode::asText).toList();
            if (beds.size() < 2) group.few("beds", beds.size(), 2, "beds");
            for (String bed : beds) if (!taken.add(bed)) group.twice("beds", "bed code", Fact.name(BrokenRule.cut(bed)), WayKind.KEEP_ONE);
            return new RimGroup(beds, group.numberIfAny("level"));
        });
    }

    static AccessStandard access(Cursor ground, boolean imperial) {
        boolean asked = ground.has("access");
        return ground.read("access", access -> {
            String id = access.choice("standard");
            AccessStandard named = AccessStandard.all(imperial).stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow().named(asked);
            String rim = access.choice("rim");
            return access.like(rim.equals("any") ? named : named.withHeight(Gardener.valueOf(Cursor.constant(rim)).height));
        });
    }

    static List<Tall> tall(Cursor ground) {
        return ground.each("tall", "tall thing", one -> {
            String kind = one.choice("kind");
            double height = one.neededLength("height");
            List<Point> shape = one.has("line") ? one.points("line") : List.of(one.point("at"));
            if (one.has("line") == one.has("at")) {
                if (one.has("at")) {
                    one.clash("at", "line");
                } else {
                    one.needed("\"at\": [x, y] for a tree, or \"line\": [[x, y], [x, y]] for what stands along a line", "\"at\" or \"line\"");
                }
            } else if (one.has("line") && shape.size() < 2) {
                one.few("line", shape.size(), 2, "points");
            }
            double spread = one.number("spread", one.has("at") ? 3_000 : 0);
            double stem = one.number("stem");
            if (stem >= height) one.against("stem", Fact.mm(stem), "height", Fact.mm(height));
            return new Tall(kind, shape, height, spread, stem);
        });
    }

    static Optional<SunDay> sun(Cursor sun) {
        if (!sun.has("latitude") || !sun.has("longitude")) {
            sun.needed("{\"latitude\": 52.2, \"longitude\": -1.5, \"day\": \"2026-06-21\"}", "\"latitude\"", "\"longitude\"");
        }
        double latitude = sun.number("latitude", 0);
        double longitude = sun.number("longitude", 0);
        ZoneId zone = ZoneId.of(CrewReader.zone(sun, "UTC"));
        String day = sun.text("day");
        try {
            return Optional.of(new SunDay(latitude, longitude, zone, LocalDate.parse(day)));
        } catch (DateTimeException e) {
            CrewReader.misdated(sun, "day", day);
            return Optional.empty();
        }
    }
}
