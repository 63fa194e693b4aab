package lapyard.standing;

import java.util.List;
import lapyard.construction.BedWork;
import lapyard.plan.Bed;
import lapyard.plan.Fill;
import lapyard.plan.StandingRules;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working.Input;

/** What a bed weighs, dry and soaked, and how it loads its own footprint. */
record Weights(double timberKg, double soilM3, double soakedKgM3, double dryKgM3, double footprintM2) {
    /** Timber in a bed dries to about this share of its weight as lifted: 470 of 600 for whitewood. */
    static final double DRIED = 470.0 / 600;

    /** 40 psf of the International Residential Code, Table R301.5. */
    static final double DECK_LEAST_KPA = 1.92;

    /** Lower end of EN 1991-1-1 Table 6.2 for balconies. */
    static final double DECK_MOST_KPA = 2.5;

    static Weights of(BedWork work, StandingRules loads) {
        Bed bed = work.bed();
        double wallsM2 = (bed.outline().areaMm2() - work.frame().inner().areaMm2()) / 1e6;
        double timber = wallsM2 * bed.heightMm() / 1000 * bed.section().densityKgM3();
        double depth = Math.max(0, bed.filledMm());
        double soaked = loads.soilKgM3();
        return new Weights(
                timber,
                work.frame().inner().areaMm2() / 1e6 * depth / 1000,
                soaked,
                Math.min(soaked, Fill.LOOSE_KG_M3 / (1 - bed.planting().fill().settlement())),
                bed.outline().areaMm2() / 1e6);
    }

    double wetKg() {
        return timberKg + soilM3 * soakedKgM3;
    }

    double wetKgM2() {
        return wetKg() / footprintM2;
    }

    double wetKpa() {
        return wetKgM2() * StandingRules.GRAVITY / 1000;
    }

    void quantities(List<Quantity> quantities) {
        Input soil = Input.of("soil and mulch", soilM3, "m3");
        Input timber = Input.of("timber as lifted", timberKg, "kg");
        quantities.add(Quantity.of(QuantityKind.MASS_DRY, timberKg * DRIED + soilM3 * dryKgM3, "kg",
                "timber as lifted x share left when dry + soil and mulch x weight as settled; base not counted",
                "derived; air-dry 470 against 600 kg/m3 lifted for whitewood, settled soil from 1200 kg/m3 loose, common practice",
                timber, Input.of("share left when dry", DRIED, ""), soil, Input.of("weight as settled", dryKgM3, "kg/m3")));
        quantities.add(Quantity.of(QuantityKind.MASS_WET, wetKg(), "kg",
                "timber as lifted + soil and mulch x weight soaked; base not counted",
                "derived; " + StandingRules.WET_SOURCE,
                timber, soil, Input.of("weight soaked", soakedKgM3, "kg/m3")));
        quantities.add(Quantity.of(QuantityKind.GROUND_LOAD, wetKpa(), "kN/m2",
                "weight wet x 9.81 / 1000 / footprint", "derived: weight over area",
                Input.of("weight wet", wetKg(), "kg"), Input.of("footprint", footprintM2, "m2")));
    }
}
