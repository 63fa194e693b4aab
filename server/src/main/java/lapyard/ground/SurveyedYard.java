package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Finding;
import lapyard.plan.YardSurvey;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;

/**
 * The yard that a survey gives.
 *
 * @param corners        in the yard, adjusted; fewer than taped where tapes cannot meet
 * @param closingErrorMm by which walked sides miss their start; 0 for fixed corners
 * @param quantities     {@code survey.area} and {@code survey.perimeter}, {@code survey.side.1} ..., where sides were
 *                       walked {@code survey.closing} and {@code survey.shift.1} ..., where corners were taped
 *                       {@code survey.1.x}, {@code survey.1.y} ...
 * @param findings       a STOP for each corner whose tapes cannot meet
 */
public record SurveyedYard(List<Point> corners, double closingErrorMm, List<Quantity> quantities, List<Finding> findings) {
    private static final String COMPASS_RULE = "compass rule of traverse surveying";

    public SurveyedYard {
        corners = List.copyOf(corners);
        quantities = List.copyOf(quantities);
        findings = List.copyOf(findings);
    }

    /** @throws IllegalArgumentException if the marks of the baseline are one place */
    public static SurveyedYard of(YardSurvey survey) {
        double base = survey.from().distanceMm(survey.to());
        if (base == 0) throw new IllegalArgumentException("a baseline needs two different marks");
        List<Quantity> quantities = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        List<Point> own = new ArrayList<>();
        double closing = 0;
        if (survey.walk().isEmpty()) {
            for (int i = 0; i < survey.corners().size(); i++) {
                own.addAll(corner(survey.corners().get(i), i + 1, base, quantities, findings));
            }
        } else {
            List<Survey.Side> sides = survey.walk().stream()
                    .map(leg -> new Survey.Side(Survey.levelMm(leg.tapedMm(), leg.fallMm()), leg.turnDeg()))
                    .toList();
            Survey.Walk walk = Survey.walked(sides);
            own.addAll(walk.adjusted());
            closing = walk.closingErrorMm();
            findings.addAll(walk.findings());
            adjustment(walk, sides, quantities);
        }
        List<Point> corners = own.stream().map(point -> survey.from().moved(survey.from().way(survey.to()), point.x(), point.y())).toList();
        if (corners.size() >= 3 && findings.stream().noneMatch(f -> f.weight() == Finding.Weight.STOP)) {
            measures(new Outline(corners), quantities);
            checks(survey.checks(), corners, findings);
        }
        return new SurveyedYard(corners, closing, quantities, findings);
    }

    private static List<Point> corner(
            YardSurvey.Corner corner, int number, double base, List<Quantity> quantities, List<Finding> findings) {
        if (corner instanceof YardSurvey.Corner.Offset offset) return List.of(new Point(offset.alongMm(), offset.offMm()));
        YardSurvey.Corner.Tapes tapes = (YardSurvey.Corner.Tapes) corner;
        Survey.Fix fix = Survey.byTwoTapes("survey, corner " + number, base, tapes.firstMm(), tapes.secondMm(), tapes.left());
        if (fix instanceof Survey.Fix.CannotMeet none) {
            findings.add(none.stop());
            return List.of();
        }
        Survey.Fix.Met met = (Survey.Fix.Met) fix;
        findings.addAll(met.findings());
        met.quantities().forEach(q -> quantities.add(new Quantity(q.key().kind().of(number), q.value(), q.unit(), q.working())));
        return List.of(met.at());
    }

    private static void adjustment(Survey.Walk walk, List<Survey.Side> sides, List<Quantity> quantities) {
        double whole = sides.stream().mapToDouble(Survey.Side::lengthMm).sum();
        quantities.add(Quantity.of(QuantityKind.SURVEY_CLOSING, walk.closingErrorMm(), "mm",
                "distance from the end of the last side to the first corner", Working.GEOMETRY,
                Working.Input.of("sides", sides.size(), ""), Working.Input.of("walked", whole, "mm")));
        double walked = 0;
        for (int i = 0; i < walk.corners().size(); i++) {
            quantities.add(Quantity.of(QuantityKind.SURVEY_SHIFT.of(i + 1), walk.corners().get(i).distanceMm(walk.adjusted().get(i)), "mm",
                    "closing error x walked up to the corner / walked in all", COMPASS_RULE,
                    Working.Input.of("closing error", walk.closingErrorMm(), "mm"), Working.Input.of("up to the corner", walked, "mm"),
                    Working.Input.of("in all", whole, "mm")));
            walked += sides.get(i).lengthMm();
        }
    }

    private static void measures(Outline yard, List<Quantity> quantities) {
        Working.Input corners = Working.Input.of("corners", yard.sides(), "");
        quantities.add(Quantity.of(QuantityKind.SURVEY_AREA, yard.areaMm2() / 1e6, "m2",
                "half the sum of x1 y2 - x2 y1 round the corners", Working.GEOMETRY,
                corners));
        quantities.add(Quantity.of(QuantityKind.SURVEY_PERIMETER, yard.perimeterMm() / 1000, "m",
                "sum of the sides", Working.GEOMETRY,
                corners));
        for (int i = 0; i < yard.sides(); i++) {
            Point a = yard.corner(i);
            Point b = yard.corner(i + 1);
            quantities.add(Quantity.of(QuantityKind.SURVEY_SIDE.of(i + 1), yard.sideMm(i), "mm",
                    "sqrt(dx^2 + dy^2)", Working.GEOMETRY,
                    Working.Input.of("dx", b.x() - a.x(), "mm"), Working.Input.of("dy", b.y() - a.y(), "mm")));
        }
    }

    private static void checks(List<YardSurvey.Check> checks, List<Point> corners, List<Finding> findings) {
        for (YardSurvey.Check check : checks) {
            String tape = "survey, tape from corner " + check.from() + " to " + check.to();
            Survey.check(tape, corners.get(check.from() - 1), corners.get(check.to() - 1),
                    check.tapedMm()).ifPresent(findings::add);
        }
    }
}
