package lapyard.standing;

import java.util.List;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.BedWork;
import lapyard.construction.FloorBay;
import lapyard.geometry.Lengths;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.StandingRules;
import lapyard.plan.SurfaceKind;
import lapyard.plan.WayKind;
import lapyard.standing.Verdict.Outcome;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/** Slats, bearers and the ground under soil. Slats are old boards: they take the lowest class; bearers take their own. */
final class FloorCheck {
    private static final String TIMBER = "EN 1995-1-1, 2.2.3, 2.4.1, 6.1.6, 6.1.7; EN 338:2016; EN 1990, factor 1.35";

    /** Turf left on, or ground filled up: 500 psf, Chicago code for filled ground or loam. */
    private static final double FILLED_KPA = 24;

    private FloorCheck() {}

    static void into(BedWork work, StandingRules loads, Footing footing, List<Verdict> verdicts, List<Quantity> quantities) {
        Bed bed = work.bed();
        double depth = bed.filledMm();
        if (work.bottom().bays().isEmpty()) return;
        double pressure = pressureKpa(loads.soilKnM3(), depth / 1000) / 1000;
        slats(work, loads, depth, pressure, verdicts, quantities);
        if (footing.bearerMm() <= 0) return;
        if (bed.inside().base().bearerSpanMm() > 0) {
            bearers(work, loads, footing, pressure, verdicts, quantities);
        } else {
            ground(work, footing, pressure, verdicts, quantities);
        }
    }

    static double pressureKpa(double soilKnM3, double depthM) {
        return soilKnM3 * depthM;
    }

    private static void slats(
            BedWork work, StandingRules loads, double depthMm, double pressure, List<Verdict> verdicts, List<Quantity> quantities) {
        Base base = work.bed().inside().base();
        double span = work.bottom().bays().stream().mapToDouble(FloorBay::spacingMm).max().orElse(0);
        double gap = work.bottom().bays().stream().mapToDouble(bay -> bay.slats().gapMm()).max().orElse(0);
        StrengthClass timber = StrengthClass.LOWEST;
        double carries = base.slats().slatWidthMm() + gap;
        Beam slat = new Beam(timber, base.slats().slatWidthMm(), base.slats().slatThicknessMm());
        double load = pressure * carries;
        double use = slat.bendingUse(Beam.GAMMA_G * load, span);
        double sag = slat.sagMm(load, span);
        double spread = pressure * carries / base.slats().slatWidthMm();
        double clear = Beam.clearSpanMm(timber, base.slats().slatThicknessMm(), spread, Beam.GAMMA_G * spread, loads.sagPart());
        Input pressed = Input.of("load", load, "N/mm");
        Input wide = Input.of("width", base.slats().slatWidthMm(), "mm");
        Input thick = Input.of("thickness", base.slats().slatThicknessMm(), "mm");
        quantities.add(Quantity.of(QuantityKind.SLATS_SPAN, clear, "mm",
                "smaller of thickness x root(strength / (0.75 x 1.35 x pressure x spread)) and cube root of (stiffness x thickness ^"
                        + " 3 / (3 x 0.15625 x part x pressure x spread))", TIMBER,
                thick, Input.of("strength", slat.bendingStrength(), "N/mm2"), Input.of("pressure", pressure, "N/mm2"),
                Input.of("spread", carries / base.slats().slatWidthMm(), ""), Input.of("stiffness", timber.stiffnessNmm2, "N/mm2"),
                Input.of("part", loads.sagPart(), ""), Input.of("soil and mulch on the slats", depthMm, "mm")));
        quantities.add(Quantity.of(QuantityKind.SLATS_USE, use * 100, "%",
                "100 x 1.35 x load x span x span / 8 / (width x thickness x thickness / 6) / strength", TIMBER,
                pressed, Input.of("span", span, "mm"), wide, thick, Input.of("strength", slat.bendingStrength(), "N/mm2")));
        quantities.add(Quantity.of(QuantityKind.SLATS_SAG, sag, "mm",
                "3 x 5 x load x span ^ 4 / (384 x stiffness x width x thickness ^ 3 / 12)", TIMBER,
                pressed, Input.of("span", span, "mm"), Input.of("stiffness", timber.stiffnessNmm2, "N/mm2"), wide, thick));
        boolean weak = use > 1;
        boolean sags = span > clear + 1e-6;
        Finding found = Verdict.about(work.bed().id(), "slats", weak ? FindingKind.SLATS_WEAK : sags ? FindingKind.SLATS_SAG : FindingKind.SLATS_HOLD)
                .with("thick", Fact.mm(base.slats().slatThicknessMm())).with("span", Fact.mm(span)).with("soil", Fact.mm(depthMm))
                .with("sag", Fact.mm(Lengths.toTenth(sag))).by(Fact.share(use));
        verdicts.add(new Verdict("slats", weak ? Outcome.WEAK : sags ? Outcome.BOWS : Outcome.HOLDS,
                weak || sags ? found.way(WayKind.BEARERS_APART, Fact.mm(SpanRounding.down(clear))).way(WayKind.THICKER_SLATS) : found));
    }

    private static void bearers(
            BedWork work, StandingRules loads, Footing footing, double pressure, List<Verdict> verdicts, List<Quantity> quantities) {
        Base base = work.bed().inside().base();
        double every = work.bottom().bays().stream().mapToDouble(FloorBay::spacingMm).max().orElse(base.bearers().bearerEveryMm());
        StrengthClass timber = footing.bearers();
        double widthMm = footing.bearerMm();
        Beam bearer = new Beam(timber, widthMm, base.bearers().bearerLiftMm());
        double load = pressure * every;
        double span = base.bearerSpanMm();
        double size = Beam.sizeFactor(base.bearers().bearerLiftMm());
        double bending = bearer.bendingUse(Beam.GAMMA_G * load, span) / size;
        double shear = bearer.shearUse(Beam.GAMMA_G * load, span);
        double sag = bearer.sagMm(load, span);
        double use = Math.max(bending, shear);
        List<Input> inputs = List.of(
                Input.of("pressure", pressure, "N/mm2"),
                Input.of("spacing", every, "mm"),
                Input.of("span", span, "mm"),
                Input.of("width", widthMm, "mm"),
                Input.of("depth", base.bearers().bearerLiftMm(), "mm"),
                Input.of("strength", bearer.bendingStrength() * size, "N/mm2"),
                Input.of("shear strength", bearer.shearStrength(), "N/mm2"),
                Input.of("stiffness", timber.stiffnessNmm2, "N/mm2"));
        quantities.add(new Quantity(QuantityKind.BEARERS_USE, use * 100, "%", new Working(inputs,
                "larger of bending 100 x 1.35 x pressure x spacing x span ^ 2 / 8 / (width x depth ^ 2 / 6) / strength and"
                        + " shear 100 x 1.5 x 1.35 x pressure x spacing x span / 2 / (0.67 x width x depth) / shear strength",
                TIMBER)));
        quantities.add(new Quantity(QuantityKind.BEARERS_SAG, sag, "mm", new Working(inputs,
                "3 x 5 x pressure x spacing x span ^ 4 / (384 x stiffness x width x depth ^ 3 / 12)", TIMBER)));
        boolean weak = use > 1;
        boolean sags = sag > span / loads.sagPart() + 1e-6;
        Finding found = Verdict.about(work.bed().id(), "bearers", weak ? FindingKind.BEARERS_WEAK : sags ? FindingKind.BEARERS_SAG : FindingKind.BEARERS_HOLD)
                .with("span", Fact.mm(span)).with("sag", Fact.mm(Lengths.toTenth(sag))).by(Fact.share(use));
        verdicts.add(new Verdict("bearers", weak ? Outcome.WEAK : sags ? Outcome.BOWS : Outcome.HOLDS,
                weak || sags ? found.way(WayKind.PADS_CLOSER).way(WayKind.BEARERS_ON_GROUND).way(WayKind.DEEPER_BEARER) : found));
    }

    private static void ground(BedWork work, Footing footing, double pressure, List<Verdict> verdicts, List<Quantity> quantities) {
        double metres = 0;
        for (FloorBay bay : work.bottom().bays()) metres += bay.lengthMm() / 1000;
        double contactM2 = metres * footing.bearerMm() / 1000;
        double under = pressure * 1000 * work.frame().inner().areaMm2() / 1e6 / contactM2;
        List<SurfaceKind> kinds = footing.surfaces().stream().filter(kind -> kind.bearingKpa.isPresent()).sorted().toList();
        double bears = kinds.stream().mapToDouble(kind -> kind.bearingKpa.getAsDouble()).min().orElse(Double.POSITIVE_INFINITY);
        quantities.add(Quantity.of(QuantityKind.BEARERS_LOAD, under, "kN/m2",
                "pressure x inside / (length x width)",
                "derived: weight over contact; bearing presumed by the National Building Code of Canada, Table 9.4.4.1, and IBC 1806.2",
                Input.of("pressure", pressure * 1000, "kN/m2"), Input.of("inside", work.frame().inner().areaMm2() / 1e6, "m2"),
                Input.of("length", metres, "m"), Input.of("width", footing.bearerMm() / 1000, "m")));
        if (footing.surfaces().isEmpty()) return;
        boolean turf = !kinds.contains(SurfaceKind.GRAVEL) || kinds.size() > 1;
        boolean paved = Double.isInfinite(bears);
        boolean sinks = under > bears;
        Finding found = Verdict.about(work.bed().id(), "ground", paved ? FindingKind.GROUND_PAVED : sinks ? FindingKind.GROUND_SOFT : FindingKind.GROUND_BEARS)
                .by(Fact.kpa(under));
        if (!paved) found = found.with("ground", Fact.names(kinds.stream().map(SurfaceKind::code).sorted().toList())).with("bears", Fact.kpa(bears));
        if (!paved && turf) found = found.with("filled", Fact.kpa(FILLED_KPA));
        verdicts.add(new Verdict("ground", sinks ? Outcome.BOWS : Outcome.HOLDS,
                sinks ? found.way(WayKind.SLABS_UNDER_BEARERS).way(WayKind.BEARERS_CLOSER).way(WayKind.OPEN_BASE) : found));
    }
}
