package lapyard.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.SurveyedYard;
import lapyard.plan.Finding;
import lapyard.plan.YardSurvey;

/** The yard as it was taped, and the outline that the tapes give. */
final class SurveyReader {
    private static final double LONGEST_MM = 1_000_000;

    private SurveyReader() {}

    /** Both are empty where no survey was written or its tapes give no outline; the latter is a STOP. */
    record Surveyed(Optional<YardSurvey> survey, List<Outline> outline) {}

    static Surveyed read(Cursor ground, int mostCorners) {
        if (!ground.has("survey")) {
            return new Surveyed(Optional.empty(), List.of());
        }
        Cursor survey = ground.object("survey");
        int before = survey.notes.findings.size();
        Cursor base = survey.object("base");
        Point from = base.point("from", new Point(0, 0));
        Point to = base.point("to", new Point(from.x() + 1000, from.y()));
        base.refuseUnknown();
        if (from.distanceMm(to) == 0) {
            survey.stop("base", "both marks are one place", "give two marks on the house wall, as far apart as you can");
        }
        List<YardSurvey.Corner> corners = new ArrayList<>();
        for (Cursor corner : survey.objects("corners", "corner", mostCorners)) {
            corners.add(corner(corner, base.has("to")));
        }
        List<YardSurvey.Leg> walk = new ArrayList<>();
        for (Cursor leg : survey.objects("walk", "side", mostCorners)) {
            double length = leg.neededLength("length", 1, LONGEST_MM);
            double fall = leg.length("fall", 0, 0, LONGEST_MM);
            if (fall > length) {
                leg.stop("fall", "a tape of " + CatalogueReader.shownMm(length) + " mm cannot join levels "
                        + CatalogueReader.shownMm(fall) + " mm apart", "measure the difference of level again");
                fall = 0;
            }
            walk.add(new YardSurvey.Leg(length, leg.number("turn", 90, -180, 180, 3, "degrees"), fall));
            leg.refuseUnknown();
        }
        if (corners.isEmpty() == walk.isEmpty()) {
            survey.stop("", corners.isEmpty() ? "has neither corners nor a walk" : "has corners and a walk",
                    "give one of the two: corners from the baseline, or sides walked round");
        } else if (corners.size() + walk.size() < 3) {
            survey.stop("", corners.size() + walk.size() + " corners enclose nothing", "tape at least 3");
        }
        int known = corners.size() + walk.size();
        List<YardSurvey.Check> checks = new ArrayList<>();
        for (Cursor check : survey.objects("checks", "check tape", 200)) {
            int one = check.count("from", 1, 1, Math.max(1, known));
            int other = check.count("to", 1, 1, Math.max(1, known));
            checks.add(new YardSurvey.Check(one, other, check.neededLength("taped", 1, LONGEST_MM)));
            if (one == other) {
                check.stop("to", "is corner " + one + " like from", "name two corners");
            }
            check.refuseUnknown();
        }
        survey.refuseUnknown();
        if (ground.has("outline")) {
            ground.stop("survey", "stands beside an outline", "take one of the two out: the survey gives the outline");
        }
        if (survey.notes.findings.size() > before) {
            return new Surveyed(Optional.empty(), List.of());
        }
        YardSurvey read = new YardSurvey(from, to, corners, walk, checks);
        SurveyedYard yard = SurveyedYard.of(read);
        List<Finding> stops = yard.findings().stream()
                .filter(finding -> finding.weight() == Finding.Weight.STOP)
                .toList();
        stops.forEach(survey::add);
        return new Surveyed(
                Optional.of(read),
                stops.isEmpty() ? List.of(new Outline(yard.corners()).counterClockwise()) : List.of());
    }

    private static YardSurvey.Corner corner(Cursor corner, boolean marked) {
        boolean taped = corner.has("first") || corner.has("second");
        if (taped == (corner.has("along") || corner.has("off"))) {
            corner.stop("", taped ? "has tapes and an offset" : "has neither tapes nor an offset",
                    "give first and second (tapes from both marks), or along and off");
        }
        if (taped && !marked) {
            corner.stop("", "two tapes need the second mark", "give survey.base.to, the place of the second mark");
        }
        YardSurvey.Corner read = taped
                ? new YardSurvey.Corner.Tapes(
                        corner.neededLength("first", 0, LONGEST_MM),
                        corner.neededLength("second", 0, LONGEST_MM),
                        corner.choice("side", "left", "left", "right").equals("left"))
                : new YardSurvey.Corner.Offset(
                        corner.length("along", 0, -LONGEST_MM, LONGEST_MM),
                        corner.length("off", 0, -LONGEST_MM, LONGEST_MM));
        corner.refuseUnknown();
        return read;
    }
}
