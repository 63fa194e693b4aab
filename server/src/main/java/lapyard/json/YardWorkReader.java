package lapyard.json;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Baseline;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.Preparation;
import lapyard.plan.RimGroup;
import lapyard.plan.SunDay;
import lapyard.plan.Tall;
import lapyard.plan.WayKind;

/** What is to be done in the yard and held against it: pegging out, ground preparation, rims, access, sun. */
final class YardWorkReader {
    private YardWorkReader() {}

    static Optional<Baseline> baseline(Cursor ground) {
        if (!ground.has("baseline")) return Optional.empty();
        Cursor baseline = ground.object("baseline");
        if (!baseline.has("from") || !baseline.has("to")) baseline.needed("{\"from\": [0, 0], \"to\": [12000, 0]}", "\"from\"", "\"to\"");
        Baseline read = new Baseline(
                baseline.point("from", new Point(0, 0)),
                baseline.point("to", new Point(1000, 0)),
                baseline.number("standOff"));
        if (read.from().distanceMm(read.to()) < Baseline.LEAST_MM) marksNear(baseline, "to", read.from().distanceMm(read.to()));
        baseline.refuseUnknown();
        return Optional.of(read);
    }

    static Preparation preparation(Cursor preparation) {
        Preparation usual = Preparation.USUAL;
        Preparation read = new Preparation(
                Preparation.Soft.valueOf(
                        preparation.choice("soft").toUpperCase(Locale.ROOT)),
                preparation.number("strip", usual.stripMm()),
                preparation.number("depth", usual.depthMm()),
                preparation.number("subBase", usual.subBaseMm()),
                preparation.number("pad", usual.padMm()),
                preparation.number("padEvery", usual.padEveryMm()),
                preparation.number("bulking", usual.bulking() * 100) / 100);
        preparation.refuseUnknown();
        return read;
    }

    static void marksNear(Cursor cursor, String field, double apartMm) {
        cursor.add(cursor.fault(FindingKind.MARKS_NEAR, field).with("apart", Fact.mm(apartMm)).with("least", Fact.mm(Baseline.LEAST_MM))
                .by(Fact.mm(Baseline.LEAST_MM - apartMm)).way(WayKind.TWO_MARKS));
    }

    static List<RimGroup> rims(Cursor ground) {
        List<RimGroup> groups = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        for (Cursor group : ground.objects("rims", "rim group")) {
            List<String> beds = new ArrayList<>();
            group.list("beds").forEach(bed -> beds.add(bed.asText()));
            if (beds.size() < 2) group.few("beds", beds.size(), 2, "beds");
            for (String bed : beds) if (!taken.add(bed)) group.twice("beds", "bed code", Fact.name(Cursor.cut(bed)), WayKind.KEEP_ONE);
            OptionalDouble level = group.has("level")
                    ? OptionalDouble.of(group.number("level"))
                    : OptionalDouble.empty();
            group.refuseUnknown();
            groups.add(new RimGroup(beds, level));
        }
        return groups;
    }

    static AccessStandard access(Cursor ground) {
        boolean asked = ground.has("access");
        Cursor access = ground.object("access");
        String id = access.choice("standard");
        AccessStandard base = id.equals("usual") ? AccessStandard.USUAL : AccessStandard.ADA_2010;
        String rim = access.choice("rim");
        double least = 0;
        double most = 0;
        if (!rim.equals("any")) {
            AccessStandard.Gardener gardener = AccessStandard.Gardener.valueOf(rim.toUpperCase(Locale.ROOT));
            least = gardener.rimLeastMm;
            most = gardener.rimMostMm;
        }
        AccessStandard read = new AccessStandard(
                id,
                base.name(),
                base.named(),
                access.number("path", base.pathMm()),
                access.number("pinch", base.pinchMm()),
                access.number("pinchLength", base.pinchLengthMm()),
                access.number("turning", base.turningMm()),
                access.number("passing", base.passingMm()),
                access.number("passingEvery", base.passingEveryMm()),
                access.number("gradient", base.gradient()),
                access.number("crossGradient", base.crossGradient()),
                access.number("reach", base.reachMm()),
                access.number("stand", base.standMm()),
                access.number("standAlong", base.standAlongMm()),
                access.number("rimLeast", least),
                access.number("rimMost", most),
                base.source());
        access.refuseUnknown();
        return asked ? read.asked() : read;
    }

    static List<Tall> tall(Cursor ground) {
        List<Tall> tall = new ArrayList<>();
        for (Cursor one : ground.objects("tall", "tall thing")) {
            String kind = one.choice("kind");
            double height = one.neededLength("height");
            List<Point> shape = one.has("line") ? one.points("line") : List.of(one.point("at", new Point(0, 0)));
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
            one.refuseUnknown();
            tall.add(new Tall(kind, shape, height, spread, stem));
        }
        return tall;
    }

    static Optional<SunDay> sun(Cursor ground) {
        if (!ground.has("sun")) return Optional.empty();
        Cursor sun = ground.object("sun");
        if (!sun.has("latitude") || !sun.has("longitude")) {
            sun.needed("{\"latitude\": 52.2, \"longitude\": -1.5, \"day\": \"2026-06-21\"}", "\"latitude\"", "\"longitude\"");
        }
        double latitude = sun.number("latitude", 0);
        double longitude = sun.number("longitude", 0);
        String zone = sun.text("zone");
        String day = sun.text("day");
        sun.refuseUnknown();
        try {
            ZoneId.of(zone);
        } catch (DateTimeException e) {
            sun.misshapen("zone", "a time zone by its IANA name", sun.raw("zone"), "\"Europe/London\"");
            zone = "UTC";
        }
        try {
            return Optional.of(new SunDay(latitude, longitude, ZoneId.of(zone), LocalDate.parse(day)));
        } catch (DateTimeException e) {
            CrewReader.misdated(sun, "day", day);
            return Optional.empty();
        }
    }
}
