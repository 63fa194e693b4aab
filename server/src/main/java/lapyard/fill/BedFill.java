package lapyard.fill;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.construction.BedWork;
import lapyard.geometry.Length;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Fill;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/**
 * What one bed takes.
 *
 * @param quantities soil.depth, soil.settled, soil.loose, soil.mass, mulch, barrows, one a layer by its item
 *     ({@code soil.topsoil}), and soil.top-up with barrows.top-up where some of the loose soil has to wait for the rest to settle
 */
public record BedFill(List<Quantity> quantities, List<Finding> findings) {
    /** Under this depth most vegetables root poorly, mm; in feet the round 12". */
    static double usualDepthMm(boolean imperial) {
        return imperial ? 304.8 : 300;
    }

    public BedFill {
        quantities = List.copyOf(quantities);
        findings = List.copyOf(findings);
    }

    /**
     * Soil from the base to the freeboard and mulch below the rim; left out, with a finding, where there is no room.
     */
    public static BedFill of(BedWork work, double barrowLitres, boolean imperial) {
        Bed bed = work.bed();
        List<Quantity> quantities = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        depthFindings(bed, imperial, findings);
        mulchFindings(bed, findings);
        if (bed.soilMm() > 0) {
            double area = work.frame().inner().areaMm2() / 1e6;
            soil(bed, area, barrowLitres, quantities);
            mulch(bed.planting().fill(), area, quantities);
        }
        return new BedFill(quantities, findings);
    }

    private static void soil(Bed bed, double area, double barrowLitres, List<Quantity> quantities) {
        Fill fill = bed.planting().fill();
        double settled = area * bed.soilMm() / 1000;
        double loose = looseM3(settled, fill.settlement());
        quantities.add(Quantity.of(QuantityKind.SOIL_DEPTH, bed.soilMm(), "mm",
                "wall height - base height - gap below the rim - mulch", Working.COMMON_PRACTICE,
                Input.of("wall height", bed.heightMm(), "mm"), Input.of("base height", bed.inside().base().heightMm(), "mm"),
                Input.of("gap below the rim", fill.freeboardMm(), "mm"), Input.of("mulch", fill.mulchMm(), "mm")));
        quantities.add(Quantity.of(QuantityKind.SOIL_SETTLED, settled, "m3",
                "inside area x soil depth", Working.GEOMETRY,
                Input.of("inside area", area, "m2"), Input.of("soil depth", bed.soilMm(), "mm")));
        quantities.add(Quantity.of(QuantityKind.SOIL_LOOSE, loose, "m3",
                "settled / (1 - settlement)", Working.COMMON_PRACTICE,
                Input.of("settled", settled, "m3"), Input.of("settlement", fill.settlement(), "")));
        layers(fill, loose, quantities);
        quantities.add(Quantity.of(QuantityKind.SOIL_MASS, loose * Fill.LOOSE_KG_M3, "kg",
                "loose x weight of loose soil", Working.COMMON_PRACTICE,
                Input.of("loose", loose, "m3"), Input.of("loose soil", Fill.LOOSE_KG_M3, "kg/m3")));
        quantities.add(Quantity.of(QuantityKind.BARROWS, barrows(loose, barrowLitres), "barrows",
                "loose / barrow, rounded up", Working.COMMON_PRACTICE,
                Input.of("loose", loose, "m3"), Input.of("barrow", barrowLitres, "l")));
        heldBack(bed, area, loose, barrowLitres, quantities);
    }

    private static void mulch(Fill fill, double area, List<Quantity> quantities) {
        if (fill.mulchMm() <= 0) return;
        quantities.add(Quantity.of(QuantityKind.MULCH, area * fill.mulchMm() / 1000, "m3",
                "inside area x mulch depth", Working.GEOMETRY,
                Input.of("inside area", area, "m2"), Input.of("mulch depth", fill.mulchMm(), "mm")));
    }

    /** What would stand over the rim with its mulch on the day of filling is kept for topping up. */
    private static void heldBack(Bed bed, double area, double loose, double barrowLitres, List<Quantity> quantities) {
        double roomMm = bed.roomMm() - bed.planting().fill().mulchMm();
        double back = loose - area * Math.max(0, roomMm) / 1000;
        if (back <= 1e-9) return;
        quantities.add(Quantity.of(QuantityKind.SOIL_TOP_UP, back, "m3",
                "loose - inside area x (wall height - base height - mulch): kept back for topping up, or it would stand over the rim",
                Working.GEOMETRY,
                Input.of("loose", loose, "m3"), Input.of("inside area", area, "m2"), Input.of("wall height", bed.heightMm(), "mm"),
                Input.of("base height", bed.inside().base().heightMm(), "mm"), Input.of("mulch", bed.planting().fill().mulchMm(), "mm")));
        quantities.add(Quantity.of(QuantityKind.BARROWS_TOP_UP, barrows(back, barrowLitres), "barrows",
                "kept back / barrow, rounded up; counted among the barrows of the bed", Working.COMMON_PRACTICE,
                Input.of("kept back", back, "m3"), Input.of("barrow", barrowLitres, "l")));
    }

    /**
     * Loose soil that settles to a volume: the share is lost from what is put in, so divide, do not multiply by 1 +
     * share.
     */
    static double looseM3(double settledM3, double settlement) {
        return settledM3 / (1 - settlement);
    }

    /** Whole barrow loads. */
    static int barrows(double looseM3, double litres) {
        return (int) Whole.up(looseM3 * 1000 / litres);
    }

    /** One quantity an item, however many layers of it there are. */
    private static void layers(Fill fill, double loose, List<Quantity> quantities) {
        Map<String, Double> shares = new LinkedHashMap<>();
        fill.layers().forEach(layer -> shares.merge(layer.item(), layer.share(), Double::sum));
        shares.forEach((item, share) -> quantities.add(Quantity.of(QuantityKind.MATERIAL.of(item), loose * share, "m3",
                "loose x share", Working.COMMON_PRACTICE,
                Input.of("loose", loose, "m3"), Input.of("share", share, ""))));
    }

    /** Half a sixteenth of an inch short is told as no less: gardens are kept in tenths of a mm, which may not add up to somebody's inches. */
    private static void depthFindings(Bed bed, boolean imperial, List<Finding> findings) {
        double usual = usualDepthMm(imperial);
        double depth = bed.soilMm();
        if (depth <= 0) {
            Finding none = Finding.of(FindingKind.SOIL_NONE, Place.bed(bed.id())).with("usual", Fact.mm(usual)).by(Fact.mm(usual - depth));
            findings.add(deeper(none, bed, usual - depth));
        } else if (depth < usual - (imperial ? Length.INCH_MM / 32 : 1e-6)) {
            Finding shallow = Finding.of(FindingKind.SOIL_SHALLOW, Place.bed(bed.id()))
                    .with("depth", Fact.mm(depth)).with("usual", Fact.mm(usual)).by(Fact.mm(usual - depth));
            findings.add(deeper(shallow, bed, usual - depth));
        }
    }

    /** The ways to the usual depth of soil: more courses, an open base, less mulch; each only where it is enough. */
    private static Finding deeper(Finding finding, Bed bed, double lacking) {
        int courses = (int) Whole.up(lacking / bed.section().heightMm());
        Finding told = finding.way(WayKind.ADD_COURSES, Fact.count(courses, "courses"));
        if (bed.inside().base().heightMm() >= lacking) told = told.way(WayKind.OPEN_BASE);
        double mulch = bed.planting().fill().mulchMm();
        return mulch >= Math.ceil(lacking) && lacking >= 1 ? told.way(WayKind.LESS_MULCH_BY, Fact.mm(Math.ceil(lacking))) : told;
    }

    private static void mulchFindings(Bed bed, List<Finding> findings) {
        double over = bed.planting().fill().mulchMm() - bed.planting().fill().freeboardMm() - 100;
        if (over > 1e-6) {
            findings.add(Finding.of(FindingKind.MULCH_OVER_RIM, Place.bed(bed.id()))
                    .with("mulch", Fact.mm(bed.planting().fill().mulchMm())).with("gap", Fact.mm(bed.planting().fill().freeboardMm()))
                    .by(Fact.mm(over))
                    .way(WayKind.LESS_MULCH_BY, Fact.mm(over)));
        }
    }
}
