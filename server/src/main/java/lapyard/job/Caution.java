package lapyard.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import lapyard.construction.BedWork;
import lapyard.ground.GroundSheet;
import lapyard.geometry.Measure;
import lapyard.plan.BedNames;
import lapyard.plan.Garden;
import lapyard.plan.Preparation;
import lapyard.plan.SurfaceKind;
import lapyard.standing.Standing;

/**
 * What is said beside the work that can hurt someone.
 *
 * @param sheet where it is said: {@code saw}, {@code courses}, {@code base}, {@code finish}, {@code fill}, {@code delivery}
 */
public record Caution(String sheet, String text) {
    static final String LOCAL = " Local codes and licensed practice come first.";

    /** In the order of the sheets; only what this garden has to do with. */
    static List<Caution> of(Garden garden, GroundSheet ground, List<BedWork> works) {
        List<Caution> cautions = new ArrayList<>();
        if (works.isEmpty()) return cautions;
        boolean hardwood = works.stream().anyMatch(work -> work.bed().section().strengthClass()
                .map(timber -> timber.hardwood())
                .orElse(work.bed().section().densityKgM3() >= 900));
        cautions.add(new Caution("saw", "Clamp every piece, never hold short ones by hand; eyes, ears and lungs covered, nobody"
                + " behind the cut." + LOCAL));
        cautions.add(new Caution("saw", "Dust: saw outdoors or with extraction, wear an FFP3 mask."
                + (hardwood ? " Hardwood dust causes cancer." : "")));
        if (!garden.goods().rack().isEmpty()) {
            cautions.add(new Caution("saw", "Old boards: look for nails, grit and bolts before each cut; never saw, sand or burn"
                    + " timber treated with creosote or CCA."));
        }
        cautions.add(new Caution("saw", "Treated timber: gloves, factory ends down, burn none of it."
                + BedNames.sealed("Coat every cut end of", works.stream().map(BedWork::bed))));
        cautions.add(new Caution("delivery", "Over " + limit(garden) + " is not for one person. Use rollers or a sack truck for"
                + " long boards, gloves and toe caps. Set no bags down where a bed goes."));
        if (Set.of(Preparation.Soft.STRIP, Preparation.Soft.PADS).contains(garden.ground().preparation().soft())) {
            cautions.add(new Caution("ground", "Wet concrete burns skin and eyes: gloves, boots, water at hand."));
        }
        cautions.add(new Caution("courses", "Over " + limit(garden)
                + " takes two people or more, or wheels. Bend your knees, keep fingers clear of the joint, wear toe caps."));
        cautions.add(new Caution("courses", "Check for cables, gas and drains before driving anything into the ground."));
        cautions.add(new Caution("courses", Standing.CAUTION));
        if (works.stream().anyMatch(work -> work.bed().inside().base().slatted())) {
            cautions.add(new Caution("base", "Never stand on bare slats: one board breaks under a person. No boards marked MB."));
        }
        if (ground.beds().stream().anyMatch(bed -> bed.kinds().stream().anyMatch(SurfaceKind::paved))) {
            cautions.add(new Caution("base", "Slabs and concrete: cut wet or score and snap, FFP3 mask, others away: the dust scars lungs."));
        }
        if (works.stream().anyMatch(work -> work.bed().making().finish().wanted())) {
            cautions.add(new Caution("finish", "Oily rags catch fire by themselves: dry them flat outdoors. Check that the finish is safe"
                    + " beside food."));
        }
        cautions.add(new Caution("fill", "Barrows: clear, level runs; never beside a wall that is not yet tied. A lined bed must drain:"
                + " standing water drowns small children."));
        return cautions;
    }

    /** What one person lifts. */
    private static String limit(Garden garden) {
        double kg = garden.people().liftLimitKg();
        return Measure.KG.plain(kg, 1, garden.imperial());
    }
}
