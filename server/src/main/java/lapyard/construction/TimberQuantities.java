package lapyard.construction;

import java.util.List;
import lapyard.plan.Bed;
import lapyard.plan.Lifting;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/** Length, volume and mass of a bed's timber, the area of its cut ends, and the lifts that need two people. */
final class TimberQuantities {
    private TimberQuantities() {}

    static void quantities(Bed bed, List<Piece> pieces, int notches, List<Quantity> quantities) {
        length(bed, pieces, quantities);
        volume(bed, pieces, quantities);
        quantities.add(Quantity.of(QuantityKind.ENDS_AREA, endsM2(bed, pieces.size()), "m2",
                "2 x pieces x thickness x height", Working.GEOMETRY,
                Input.of("pieces", pieces.size(), ""), Input.of("thickness", bed.section().thicknessMm(), "mm"),
                Input.of("height", bed.section().heightMm(), "mm")));
        notches(bed, notches, quantities);
    }

    private static void length(Bed bed, List<Piece> pieces, List<Quantity> quantities) {
        quantities.add(Quantity.of(QuantityKind.TIMBER_LENGTH, pieces.stream().mapToDouble(Piece::lengthMm).sum() / 1000, "m",
                bed.outline().upright() ? "courses x (P - 4t), the sum of all pieces" : "the sum of all pieces, each by its long"
                        + " point; by mean lengths it is courses x (P - t sum tan(turn / 2))", Working.GEOMETRY,
                Input.of("outer perimeter P", bed.outline().perimeterMm(), "mm"),
                Input.of("thickness t", bed.section().thicknessMm(), "mm"), Input.of("courses", bed.courses(), ""),
                Input.of("pieces", pieces.size(), "")));
    }

    private static void volume(Bed bed, List<Piece> pieces, List<Quantity> quantities) {
        double t = bed.section().thicknessMm();
        double h = bed.section().heightMm();
        double metres = pieces.stream().mapToDouble(Piece::meanMm).sum() / 1000;
        double volume = metres * t * h / 1e6;
        quantities.add(Quantity.of(QuantityKind.TIMBER_VOLUME, volume, "m3",
                "length x thickness x height, an angled end counted by its mean", Working.GEOMETRY,
                Input.of("length", metres, "m"), Input.of("thickness", t, "mm"), Input.of("height", h, "mm")));
        quantities.add(Quantity.of(QuantityKind.TIMBER_MASS, volume * bed.section().densityKgM3(), "kg",
                "volume x density of the timber as lifted", Working.COMMON_PRACTICE,
                Input.of("volume", volume, "m3"), Input.of("density", bed.section().densityKgM3(), "kg/m3")));
    }

    private static void notches(Bed bed, int notches, List<Quantity> quantities) {
        double depth = bed.making().notches().depthMm();
        double width = bed.making().notches().widthMm();
        quantities.add(Quantity.of(QuantityKind.NOTCHES, notches, "notches",
                "for each low wall ceil((clear run - 2 x keep) / greatest gap) + 1", Working.COMMON_PRACTICE,
                Input.of("width", width, "mm"), Input.of("depth", depth, "mm"),
                Input.of("greatest gap", bed.making().notches().maxGapMm(), "mm"),
                Input.of("keep from corners and joints", Notching.keepMm(bed), "mm")));
        if (notches > 0) {
            quantities.add(Quantity.of(QuantityKind.NOTCHES_AREA, notchesM2(bed, notches), "m2",
                    "notches x (2 x depth + width) x thickness: faces to seal with the cut ends", Working.GEOMETRY,
                    Input.of("notches", notches, "notches"), Input.of("depth", depth, "mm"), Input.of("width", width, "mm"),
                    Input.of("thickness", bed.section().thicknessMm(), "mm")));
        }
    }

    static double endsM2(Bed bed, int pieces) {
        return 2 * pieces * bed.section().thicknessMm() * bed.section().heightMm() / 1e6;
    }

    static double notchesM2(Bed bed, int notches) {
        return notches * (2 * bed.making().notches().depthMm() + bed.making().notches().widthMm()) * bed.section().thicknessMm() / 1e6;
    }

    /** Pieces over what one person may lift. A guide, not a safe limit. */
    static void lifts(Bed bed, List<Piece> pieces, double limitKg, List<Quantity> quantities) {
        Lifting one = new Lifting(limitKg, 1);
        long heavy = pieces.stream()
                .filter(piece -> one.heavy(bed.section().massKg(piece.meanMm())))
                .count();
        double heaviest = pieces.stream()
                .mapToDouble(piece -> bed.section().massKg(piece.meanMm()))
                .max()
                .orElse(0);
        quantities.add(Quantity.of(QuantityKind.LIFTS_TWO_PEOPLE, heavy, "lifts",
                "pieces with length x thickness x height x density over the limit of one person", Working.COMMON_PRACTICE,
                Input.of("limit", limitKg, "kg"), Input.of("density", bed.section().densityKgM3(), "kg/m3"),
                Input.of("heaviest", heaviest, "kg")));
    }
}
