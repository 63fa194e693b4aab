package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Preparation;
import lapyard.plan.StandingRules;
import lapyard.plan.SurfaceKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;
import lapyard.working.Working;

/**
 * What one bed stands on and what is to be done to it.
 *
 * @param surface    the kind of most of its ground; empty where none is drawn
 * @param kinds      of all of it, but for slivers
 * @param way        {@code scribe}, {@code level}, {@code strip}, {@code pads}, {@code none} on a deck; empty where
 *                   neither surface nor levels are known
 * @param scribes    what comes off the bottom course, wall by wall; empty where it stands on level ground
 * @param quantities {@code ground.KIND}, m2; those of {@link BedFall}; {@code strip.length} or {@code pads},
 *                   {@code concrete}, {@code sub-base}, {@code dig}, {@code spoil.loose}, {@code deck.load}
 */
public record BedGround(
        String bed,
        Optional<SurfaceKind> surface,
        Set<SurfaceKind> kinds,
        String way,
        List<BedFall.Scribe> scribes,
        List<Quantity> quantities,
        List<Finding> findings) {
    public BedGround {
        kinds = Set.copyOf(kinds);
        scribes = List.copyOf(scribes);
        quantities = List.copyOf(quantities);
        findings = List.copyOf(findings);
    }

    static BedGround of(Lot lot, Map<SurfaceKind, Double> areas, Optional<Fall> fall, Preparation preparation, StandingRules loads) {
        Bed bed = lot.bed();
        List<Quantity> quantities = new ArrayList<>();
        areas.forEach((kind, area) -> quantities.add(Quantity.of(QuantityKind.GROUND.of(kind.code()), area / 1e6, "m2",
                "outside faces over the surface as drawn", Working.GEOMETRY,
                Working.Input.of("outside faces", lot.area().getArea() / 1e6, "m2"))));
        Optional<SurfaceKind> surface = BySurface.most(areas);
        Preparation.Soft soft = surface.filter(each -> each.dug).isPresent() ? preparation.soft() : Preparation.Soft.SCRIBE;
        Optional<BedFall> bedFall = fall.map(plane -> BedFall.of(bed, plane));
        if (areas.containsKey(SurfaceKind.DECK)) quantities.add(deckLoad(bed, loads));
        if (surface.filter(kind -> kind == SurfaceKind.DECK).isPresent()) return new BedGround(bed.id(), surface, areas.keySet(), "none", List.of(), quantities, List.of());
        if (soft == Preparation.Soft.SCRIBE) {
            bedFall.ifPresent(own -> quantities.addAll(own.quantities()));
            return new BedGround(
                    bed.id(),
                    surface,
                    areas.keySet(),
                    bedFall.isPresent() || surface.isPresent() ? "scribe" : "",
                    bedFall.map(BedFall::scribes).orElse(List.of()),
                    quantities,
                    bedFall.map(BedFall::findings).orElse(List.of()));
        }
        bedFall.ifPresent(own -> own.quantities().stream()
                .filter(quantity -> quantity.is(QuantityKind.LEVEL))
                .forEach(quantities::add));
        double slope = bedFall.map(own -> faceMm2(bed, own) / bed.outline().perimeterMm()).orElse(0.0);
        switch (soft) {
            case LEVEL -> bedFall.ifPresent(own -> levelled(bed, own, preparation, quantities));
            case STRIP -> strip(lot, preparation, slope, quantities);
            default -> pads(bed, preparation, slope, quantities);
        }
        return new BedGround(bed.id(), surface, areas.keySet(), soft.name().toLowerCase(java.util.Locale.ROOT), List.of(), quantities, List.of());
    }

    private static void strip(Lot lot, Preparation preparation, double slopeMm, List<Quantity> quantities) {
        double thickness = lot.bed().section().thicknessMm();
        double lengthMm = Shapes.offset(lot.area(), -thickness / 2).getLength();
        quantities.add(Quantity.of(QuantityKind.STRIP_LENGTH, lengthMm / 1000, "m",
                "along the middle of the walls; P - 4 t where all corners are square", Working.GEOMETRY,
                Working.Input.of("P", lot.area().getLength(), "mm"), Working.Input.of("t", thickness, "mm")));
        works(
                lengthMm * preparation.stripMm(),
                preparation,
                slopeMm,
                "strip length x width",
                quantities,
                Working.Input.of("strip length", lengthMm, "mm"),
                Working.Input.of("width", preparation.stripMm(), "mm"));
    }

    private static void pads(Bed bed, Preparation preparation, double slopeMm, List<Quantity> quantities) {
        double count = 0;
        for (int i = 0; i < bed.outline().sides(); i++) {
            // One at the corner where the wall begins, and those between its corners.
            count += Math.max(1, Whole.up(bed.outline().sideMm(i) / preparation.padEveryMm()));
        }
        quantities.add(Quantity.of(QuantityKind.PADS, count, "pads",
                "sum over walls of ceil(wall / greatest distance)", Working.COMMON_PRACTICE,
                Working.Input.of("walls", bed.outline().sides(), ""), Working.Input.of("greatest distance", preparation.padEveryMm(), "mm")));
        works(
                count * preparation.padMm() * preparation.padMm(),
                preparation,
                slopeMm,
                "pads x side x side",
                quantities,
                Working.Input.of("pads", count, ""),
                Working.Input.of("side", preparation.padMm(), "mm"));
    }

    private static void works(
            double areaMm2,
            Preparation preparation,
            double slopeMm,
            String area,
            List<Quantity> quantities,
            Working.Input... inputs) {
        double concrete = areaMm2 * preparation.depthMm() / 1e9;
        double subBase = areaMm2 * preparation.subBaseMm() / 1e9;
        double dig = concrete + subBase + areaMm2 * slopeMm / 1e9;
        Working.Input depth = Working.Input.of("depth", preparation.depthMm(), "mm");
        Working.Input stone = Working.Input.of("sub-base", preparation.subBaseMm(), "mm");
        quantities.add(Quantity.of(QuantityKind.CONCRETE, concrete, "m3",
                area + " x depth", Working.COMMON_PRACTICE,
                with(inputs, depth)));
        if (subBase > 0) {
            quantities.add(Quantity.of(QuantityKind.SUB_BASE, subBase, "m3",
                    area + " x sub-base, compacted", Working.COMMON_PRACTICE,
                    with(inputs, stone)));
        }
        quantities.add(Quantity.of(QuantityKind.DIG, dig, "m3",
                area + " x (depth + sub-base + mean height over the lowest corner)", Working.GEOMETRY,
                with(inputs, depth, stone, Working.Input.of("mean height over the lowest corner", slopeMm, "mm"))));
        quantities.add(spoil(dig, preparation));
    }

    private static Working.Input[] with(Working.Input[] inputs, Working.Input... more) {
        List<Working.Input> all = new ArrayList<>(List.of(inputs));
        all.addAll(List.of(more));
        return all.toArray(Working.Input[]::new);
    }

    private static Quantity spoil(double dig, Preparation preparation) {
        return Quantity.of(QuantityKind.SPOIL_LOOSE, dig * (1 + preparation.bulking()), "m3",
                "dig x (1 + bulking)", Working.COMMON_PRACTICE,
                Working.Input.of("dig", dig, "m3"), Working.Input.of("bulking", preparation.bulking(), ""));
    }

    /** A trench under the walls down to the level of the lowest corner. */
    private static void levelled(Bed bed, BedFall fall, Preparation preparation, List<Quantity> quantities) {
        double faceMm2 = faceMm2(bed, fall);
        double dig = faceMm2 * preparation.stripMm() / 1e9;
        quantities.add(Quantity.of(QuantityKind.DIG, dig, "m3",
                "sum over walls of length x mean height above the lowest corner, x width of the trench", Working.COMMON_PRACTICE,
                Working.Input.of("face", faceMm2 / 1e6, "m2"), Working.Input.of("width", preparation.stripMm(), "mm")));
        quantities.add(spoil(dig, preparation));
    }

    /** Of the ground under the outer faces, over the bed's lowest corner. */
    private static double faceMm2(Bed bed, BedFall fall) {
        double faceMm2 = 0;
        for (int i = 0; i < fall.scribes().size(); i++) {
            BedFall.Scribe scribe = fall.scribes().get(i);
            faceMm2 += bed.outline().sideMm(i) * (scribe.startMm() + scribe.endMm()) / 2;
        }
        return faceMm2;
    }

    private static Quantity deckLoad(Bed bed, StandingRules loads) {
        double depth = Math.max(0, bed.soilMm());
        return Quantity.of(QuantityKind.DECK_LOAD, depth / 1000 * loads.soilKgM3(), "kg/m2",
                "soil depth x wet soil; timber, people and snow come on top",
                StandingRules.WET_SOURCE,
                Working.Input.of("soil depth", depth, "mm"), Working.Input.of("wet soil", loads.soilKgM3(), "kg/m3"));
    }
}
