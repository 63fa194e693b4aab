package lapyard.standing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.BedWork;
import lapyard.construction.CrossTies;
import lapyard.construction.Seam;
import lapyard.geometry.Inset;
import lapyard.geometry.Lengths;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.StandingRules;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import lapyard.standing.Verdict.Outcome;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/**
 * The walls against the soil. Each course is looked at alone between its corners and ties, the lowest one carries
 * most: nothing is counted on from the course above.
 *
 * @param longest the wall of the longest clear run
 */
record WallCheck(BedWork work, StandingRules loads, StrengthClass timber, double depthM, EarthPressure earth, CrossTies tied, int longest) {
    private static final String EARTH = "Rankine, level soil, upright wall";
    private static final String TIMBER = "EN 1995-1-1, 2.2.3, 2.4.1, 6.1.6; EN 338:2016; EN 1990, factors 1.35 and 1.5";

    /** The guide figure of the trade: soil of 16 kN/m3 at rest, half of it pushing sideways. */
    private static final EarthPressure GUIDE = new EarthPressure(16, 30, 0);

    static WallCheck of(BedWork work, StandingRules loads, StrengthClass timber, double depthMm) {
        CrossTies tied = CrossTies.of(work.bed(), work.frame().inner(), work.frame().seams());
        int longest = 0;
        for (int side = 1; side < tied.clearMm().size(); side++) {
            if (tied.clearMm().get(side) > tied.clearMm().get(longest) + 1e-6) longest = side;
        }
        EarthPressure earth = new EarthPressure(loads.soilKnM3(), loads.frictionDeg(), loads.besideKpa());
        return new WallCheck(work, loads, timber, depthMm / 1000, earth, tied, longest);
    }

    private Bed bed() {
        return work.bed();
    }

    /** Pressures in N/mm2, that is in 1000 kN/m2, averaged over the height of the lowest course that soil lies against. */
    private record Course(double characteristic, double design) {}

    /** Of the lowest course that soil lies against: what stands over the floor. */
    private double bearsM() {
        double height = bed().section().heightMm();
        double floor = bed().inside().base().heightMm() % height;
        return Math.min(height - floor, depthM * 1000) / 1000;
    }

    private Course drained() {
        double heightM = bed().section().heightMm() / 1000;
        double bears = bearsM();
        double middle = depthM - bears / 2;
        double share = bears / heightM / 1000;
        double soil = earth.soilPartKpa(middle) * share;
        double beside = earth.besidePartKpa() * share;
        return new Course(soil + beside, Beam.GAMMA_G * soil + Beam.GAMMA_Q * beside);
    }

    private Course blocked() {
        double heightM = bed().section().heightMm() / 1000;
        double bears = bearsM();
        double pressure = earth.blockedKpaPerM() * (depthM - bears / 2) * bears / heightM / 1000;
        return new Course(pressure, Beam.GAMMA_G * pressure);
    }

    private double spanMm(StrengthClass of, double thicknessMm, Course pressure) {
        return Beam.clearSpanMm(of, thicknessMm, pressure.characteristic(), pressure.design(), loads.bowPart());
    }

    void into(List<Verdict> verdicts, List<Quantity> quantities) {
        double clear = tied.clearMm().get(longest);
        Course drained = drained();
        Course blocked = blocked();
        double height = bed().section().heightMm();
        Beam course = new Beam(timber, height, bed().section().thicknessMm());
        double use = course.bendingUse(drained.design() * height, clear);
        double bow = course.sagMm(drained.characteristic() * height, clear);
        double span = spanMm(timber, bed().section().thicknessMm(), drained);
        double blockedSpan = spanMm(timber, bed().section().thicknessMm(), blocked);
        double blockedUse = course.bendingUse(blocked.design() * height, clear);
        pushes(quantities);
        bending(quantities, clear, drained, use, bow);
        quantities.add(spacing(QuantityKind.TIES_SPACING, span, drained));
        quantities.add(spacing(QuantityKind.TIES_SPACING_BLOCKED, blockedSpan, blocked));
        ties(quantities, clear, span);
        verdicts.add(walls(clear, use, bow, span));
        if (use <= 1 && blockedUse > 1) {
            verdicts.add(new Verdict("walls blocked", Outcome.BOWS, Finding.of(FindingKind.WALL_BLOCKED, Place.bed(bed().id()).then(What.WALLS_BLOCKED))
                    .with("wall", Fact.name(letter())).with("clear", Fact.mm(SpanRounding.down(blockedSpan))).by(Fact.share(blockedUse))
                    .way(WayKind.KEEP_NOTCHES_OPEN).way(WayKind.TIES_APART, Fact.mm(SpanRounding.down(blockedSpan)))));
        }
        joints(verdicts);
        new CornerCheck(work, timber, earth.drainedKnM(depthM), tied, advised()).into(verdicts, quantities);
    }

    /** The ties that the bed's own distances ask for, where there is a wall to tie to. */
    private CrossTies advised() {
        return advised(Double.POSITIVE_INFINITY);
    }

    private CrossTies advised(double mostMm) {
        return CrossTies.advised(bed(), work.frame().inner(), work.frame().seams(), Math.min(bed().making().ties().across().crossEveryMm(), mostMm));
    }

    private String letter() {
        return Bed.wallLetter(longest);
    }

    private Verdict walls(double clear, double use, double bow, double span) {
        boolean bows = clear > span + 1e-6 && use <= 1;
        boolean holds = use <= 1 && !bows;
        Finding found = Verdict.about(bed().id(), "walls", holds ? FindingKind.WALL_HOLDS : bows ? FindingKind.WALL_BOWS : FindingKind.WALL_WEAK)
                .with("wall", Fact.name(letter())).with("clear", Fact.mm(clear)).with("bow", Fact.mm(Lengths.toTenth(bow)))
                .with("most", Fact.mm(Lengths.toTenth(clear / loads.bowPart())))
                .with("timber", Fact.mm(bed().section().thicknessMm())).with("class", Fact.name(timber.toString())).by(Fact.share(use));
        if (holds) return new Verdict("walls", Outcome.HOLDS, found);
        List<WayOut> ways = new ArrayList<>();
        ways.add(tiesAt(span));
        thicker(clear).ifPresent(ways::add);
        stronger(clear).ifPresent(ways::add);
        return new Verdict("walls", bows ? Outcome.BOWS : Outcome.WEAK, found.ways(ways));
    }

    /** Where ties would stand, joints first, told for the wall that is the worst. */
    private WayOut tiesAt(double span) {
        CrossTies advised = advised(span);
        double start = Inset.innerCornerMm(bed().outline().turnDeg(longest), bed().section().thicknessMm(), bed().section().thicknessMm());
        List<Double> places = advised.restsMm().get(longest).stream()
                .filter(rest -> !tied.restsMm().get(longest).contains(rest))
                .map(rest -> (double) Math.round(rest - start))
                .toList();
        if (places.isEmpty() || advised.clearMm().get(longest) > span + 1e-6) {
            return WayOut.of(WayKind.POSTS_AT_MOST, Fact.name(letter()), Fact.mm(SpanRounding.down(span)));
        }
        return WayOut.of(WayKind.TIES_AT, Fact.count(places.size(), "cross ties"), Fact.name(letter()), new Fact.Lengths(places));
    }

    private Optional<WayOut> thicker(double clear) {
        for (double t = 25 * Math.ceil(bed().section().thicknessMm() / 25 + 1e-9); t <= 200; t += 25) {
            if (spanMm(timber, t, drained()) >= clear) return Optional.of(WayOut.of(WayKind.TIMBER_THICK, Fact.mm(t)));
        }
        return Optional.empty();
    }

    private Optional<WayOut> stronger(double clear) {
        return Stream.of(StrengthClass.C16, StrengthClass.C24)
                .filter(other -> other.bendingNmm2 > timber.bendingNmm2 && spanMm(other, bed().section().thicknessMm(), drained()) >= clear)
                .findFirst().map(other -> WayOut.of(WayKind.TIMBER_STAMPED, Fact.name(other.toString())));
    }

    private void pushes(List<Quantity> quantities) {
        Input depth = Input.of("depth", depthM, "m");
        quantities.add(Quantity.of(QuantityKind.WALL_PUSH, earth.drainedKnM(depthM), "kN/m",
                "share x soil x depth x depth / 2 + share x stepped on x depth",
                EARTH + "; soil and share: HUD, Residential Structural Design Guide, silty sand and sandy silt; stepped on: IBC 1607,"
                        + " landscaped areas that nobody occupies",
                Input.of("share", earth.active(), ""), Input.of("soil", loads.soilKnM3(), "kN/m3"),
                Input.of("stepped on", loads.besideKpa(), "kN/m2"), depth, Input.of("friction", loads.frictionDeg(), "degrees")));
        quantities.add(Quantity.of(QuantityKind.WALL_PUSH_BLOCKED, earth.blockedKnM(depthM), "kN/m",
                "(share x (soil - water) + water) x depth x depth / 2", "effective stress and water standing in the bed, drains blocked",
                Input.of("share", earth.active(), ""), Input.of("soil", loads.soilKnM3(), "kN/m3"),
                Input.of("water", EarthPressure.WATER_KN_M3, "kN/m3"), depth));
        quantities.add(Quantity.of(QuantityKind.WALL_PUSH_GUIDE, GUIDE.atRest() * GUIDE.soilKnM3() * depthM * depthM / 2, "kN/m",
                "0.5 x at rest x soil x depth x depth; a guide only", Working.COMMON_PRACTICE,
                Input.of("at rest", GUIDE.atRest(), ""), Input.of("soil", GUIDE.soilKnM3(), "kN/m3"), depth));
    }

    private void bending(List<Quantity> quantities, double clear, Course drained, double use, double bow) {
        Input span = Input.of("clear run", clear, "mm");
        Input thick = Input.of("thickness", bed().section().thicknessMm(), "mm");
        quantities.add(Quantity.of(QuantityKind.WALL_USE, use * 100, "%",
                "100 x 0.75 x design pressure x (clear run / thickness) x (clear run / thickness) / strength", TIMBER,
                Input.of("design pressure", drained.design(), "N/mm2"), span, thick,
                Input.of("strength", Beam.design(timber.bendingNmm2), "N/mm2"),
                Input.of("characteristic strength of " + timber, timber.bendingNmm2, "N/mm2")));
        quantities.add(Quantity.of(QuantityKind.WALL_BOW, bow, "mm",
                "3 x 0.15625 x pressure x clear run ^ 4 / (stiffness x thickness ^ 3), three times what it bends at once",
                "EN 1995-1-1, 2.2.3 and Table 3.2, service class 3; EN 338:2016",
                Input.of("pressure", drained.characteristic(), "N/mm2"), span, thick,
                Input.of("stiffness", timber.stiffnessNmm2, "N/mm2")));
    }

    private Quantity spacing(QuantityKind kind, double spanMm, Course pressure) {
        return Quantity.of(kind, spanMm, "mm",
                "smaller of thickness x root(strength / (0.75 x design pressure)) and cube root of (stiffness x thickness ^ 3 / (3 x"
                        + " 0.15625 x part x pressure))", TIMBER,
                Input.of("thickness", bed().section().thicknessMm(), "mm"), Input.of("strength", Beam.design(timber.bendingNmm2), "N/mm2"),
                Input.of("design pressure", pressure.design(), "N/mm2"), Input.of("stiffness", timber.stiffnessNmm2, "N/mm2"),
                Input.of("part", loads.bowPart(), ""), Input.of("pressure", pressure.characteristic(), "N/mm2"));
    }

    /** What cross ties would take, wanted or not. */
    private void ties(List<Quantity> quantities, double clear, double span) {
        CrossTies usual = advised(span);
        int advised = !CrossTies.highEnough(bed()) && work.frame().seams().isEmpty() ? 0 : usual.ties().size();
        quantities.add(Quantity.of(QuantityKind.TIES_ADVISED, advised, "ties",
                "one behind each joint, and no clear run over the greatest where the wall is high enough; a tie serves both its walls",
                Working.COMMON_PRACTICE,
                Input.of("greatest", Math.min(bed().making().ties().across().crossEveryMm(), span), "mm"),
                Input.of("longest clear run now", clear, "mm"), Input.of("put in", work.frame().crossTies().size(), "ties")));
        if (advised > 0) {
            double between = usual.clearMm().stream().mapToDouble(Double::doubleValue).max().orElse(0) / 1000;
            quantities.add(Quantity.of(QuantityKind.TIES_FORCE, earth.blockedKnM(depthM) * between, "kN",
                    "push with drains blocked x distance; drained: push drained x distance", "statics",
                    Input.of("push with drains blocked", earth.blockedKnM(depthM), "kN/m"),
                    Input.of("push drained", earth.drainedKnM(depthM), "kN/m"), Input.of("distance", between, "m")));
        }
    }

    /** A joint with nothing behind it is a hinge: a course that turns in it between two holds carries nothing. */
    private void joints(List<Verdict> verdicts) {
        if (work.frame().seams().isEmpty()) return;
        int all = work.frame().seams().size();
        int loose = tied.hinges().size();
        if (loose == 0) {
            verdicts.add(new Verdict("joints", Outcome.HOLDS, Verdict.about(bed().id(), "joints", FindingKind.JOINTS_HELD).with("joints", Fact.count(all, "joints"))));
            return;
        }
        Map<String, List<Seam>> byWall = new LinkedHashMap<>();
        tied.hinges().forEach(seam -> byWall.computeIfAbsent(seam.wall(), wall -> new ArrayList<>()).add(seam));
        byWall.forEach((wall, seams) -> verdicts.add(loose(wall, seams)));
    }

    private Verdict loose(String wall, List<Seam> seams) {
        Seam first = seams.get(0);
        int loose = seams.size();
        List<Double> places = seams.stream().map(Seam::atMm).distinct().sorted().toList();
        Finding found = Finding.of(FindingKind.JOINT_HINGE, Place.wall(bed().id(), wall).then(Place.What.FIELD, "joints"))
                .with("loose", Fact.count(loose, "joints")).with("course", Fact.name(String.valueOf(first.course())))
                .with("at", Fact.mm(first.atMm())).by(Fact.count(loose, "joints"));
        if (advised().hinges().stream().noneMatch(seam -> seam.wall().equals(wall))) {
            found = found.way(WayKind.TIES_AT_JOINTS, Fact.name(wall), new Fact.Lengths(places)).way(WayKind.POSTS_AT_JOINTS, Fact.name(wall));
        } else {
            found = found.way(WayKind.POSTS_AT_JOINTS, Fact.name(wall), new Fact.Lengths(places));
        }
        return new Verdict("joints", Outcome.WEAK, found);
    }
}
