package lapyard.json;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.SurveyedYard;
import lapyard.plan.Baseline;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.FindingList;
import lapyard.plan.WayKind;
import lapyard.plan.YardSurvey;

/** The yard as it was taped, and the outline that the tapes give. */
final class SurveyReader {

    private SurveyReader() {}

    /** Both are empty where no survey was written or its tapes give no outline; the latter is a STOP. */
    record Surveyed(Optional<YardSurvey> survey, List<Outline> outline) {}

    static Surveyed read(Cursor ground) {
        if (!ground.has("survey")) return new Surveyed(Optional.empty(), List.of());
        Cursor survey = ground.object("survey");
        int before = survey.notes.findings.size();
        Cursor base = survey.object("base");
        Point from = base.point("from");
        Point to = base.point("to", new Point(from.x() + 1000, from.y()));
        base.refuseUnknown();
        if (from.distanceMm(to) < Baseline.LEAST_MM) YardWorkReader.marksNear(survey, "base", from.distanceMm(to));
        List<YardSurvey.Corner> corners = survey.each("corners", "corner", corner -> corner(corner, base.has("to")));
        List<YardSurvey.Leg> walk = survey.each("walk", "side", SurveyReader::leg);
        int known = corners.size() + walk.size();
        if (known == 0) survey.needed("\"corners\": [...] taped from the marks, or \"walk\": [...] with the sides walked round", "\"corners\" or \"walk\"");
        else if (!corners.isEmpty() && !walk.isEmpty()) survey.clash("corners", "walk");
        else if (known < 3) survey.few(walk.isEmpty() ? "corners" : "walk", known, 3, walk.isEmpty() ? "corners" : "sides");
        List<YardSurvey.Check> checks = survey.each("checks", "check tape", check -> check(check, Math.max(1, known)));
        survey.refuseUnknown();
        if (ground.has("outline")) ground.clash("survey", "outline");
        if (survey.notes.findings.size() > before) return new Surveyed(Optional.empty(), List.of());
        YardSurvey read = new YardSurvey(from, to, corners, walk, checks);
        SurveyedYard yard = SurveyedYard.of(read);
        List<Finding> stops = FindingList.stops(yard.findings());
        stops.forEach(survey::add);
        return new Surveyed(Optional.of(read), stops.isEmpty() ? List.of(new Outline(yard.corners()).counterClockwise()) : List.of());
    }

    private static YardSurvey.Leg leg(Cursor leg) {
        double length = leg.neededLength("length");
        double fall = leg.number("fall");
        if (fall > length) leg.against("fall", Fact.mm(fall), "length", Fact.mm(length));
        return new YardSurvey.Leg(length, leg.number("turn", 90), fall > length ? 0 : fall);
    }

    private static YardSurvey.Check check(Cursor check, int known) {
        int one = check.count("from", 1, known);
        int other = check.count("to", 1, known);
        YardSurvey.Check read = new YardSurvey.Check(one, other, check.neededLength("taped"));
        if (one == other) check.add(check.fault(FindingKind.CHECK_SAME_CORNER, "to").with("corner", Fact.name(String.valueOf(one))).way(WayKind.TWO_CORNERS));
        return read;
    }

    private static YardSurvey.Corner corner(Cursor corner, boolean marked) {
        boolean taped = corner.has("first") || corner.has("second");
        boolean offset = corner.has("along") || corner.has("off");
        if (taped && offset) corner.clash("first", "along");
        if (!taped && !offset) corner.needed("{\"first\": 4200, \"second\": 5100} from both marks, or {\"along\": 3000, \"off\": 4500}", "\"first\"", "\"second\"");
        if (taped && !marked) corner.add(corner.fault(FindingKind.TAPES_ONE_MARK, "").way(WayKind.GIVE_LIKE, Fact.name("\"base\": {\"from\": [0, 0], \"to\": [6000, 0]}")));
        return taped
                ? new YardSurvey.Corner.Tapes(corner.neededLength("first"), corner.neededLength("second"), corner.choice("side").equals("left"))
                : new YardSurvey.Corner.Offset(corner.number("along"), corner.number("off"));
    }
}
