package lapyard.construction;

import java.util.List;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Finish;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/**
 * Finish on the faces of the stack: outside, inside and the top of the rim, put on before base and liner; and seal on what
 * the saw opens, put on at the bench.
 */
final class Coating {
    private Coating() {}

    static void quantities(Bed bed, Outline inner, List<Quantity> quantities) {
        if (!bed.making().finish().wanted()) return;
        double p = bed.outline().perimeterMm();
        double t = bed.section().thicknessMm();
        double h = bed.heightMm();
        double outside = p * h / 1e6;
        double innerP = inner.perimeterMm();
        double inside = innerP * h / 1e6;
        double top = (bed.outline().areaMm2() - inner.areaMm2()) / 1e6;
        double area = outside + inside + top;
        quantities.add(Quantity.of(QuantityKind.FINISH_AREA, area, "m2",
                bed.outline().upright() ? "outside P H + inside (P - 8t) H + top t (P - 4t)" : "outside P H + inside P' H + top t (P"
                        + " + P') / 2", Working.GEOMETRY,
                Input.of("outer perimeter P", p, "mm"), Input.of("inner perimeter P'", innerP, "mm"), Input.of("wall height H", h, "mm"),
                Input.of("thickness t", t, "mm"), Input.of("outside", outside, "m2"), Input.of("inside", inside, "m2"),
                Input.of("top", top, "m2")));
        quantities.add(Quantity.of(QuantityKind.FINISH_LITRES, litres(area, bed.making().finish()), "l",
                "area x coats x rough factor / cover of a litre", Working.COMMON_PRACTICE,
                Input.of("area", area, "m2"), Input.of("coats", bed.making().finish().coats(), ""),
                Input.of("rough factor", bed.making().finish().rough(), ""),
                Input.of("cover", bed.making().finish().coverM2PerLitre(), "m2/l")));
    }

    /** @param notches in the lowest course */
    static void seal(Bed bed, int pieces, int notches, List<Quantity> quantities) {
        if (!bed.making().seal().wanted()) return;
        double ends = TimberQuantities.endsM2(bed, pieces);
        double faces = TimberQuantities.notchesM2(bed, notches);
        quantities.add(Quantity.of(QuantityKind.SEAL_LITRES,
                (ends + faces) * bed.making().seal().coats() / bed.making().seal().coverM2PerLitre(), "l",
                "(cut ends + faces of notches) x coats / cover of a litre",
                "two coats: NHBC Standards 3.3.5 (2025); cover: Wood Handbook, ch. 16, saw-textured wood",
                Input.of("cut ends", ends, "m2"), Input.of("faces of notches", faces, "m2"),
                Input.of("coats", bed.making().seal().coats(), ""), Input.of("cover", bed.making().seal().coverM2PerLitre(), "m2/l")));
    }

    static double litres(double areaM2, Finish finish) {
        return areaM2 * finish.coats() * finish.rough() / finish.coverM2PerLitre();
    }
}
