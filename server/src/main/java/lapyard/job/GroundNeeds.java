package lapyard.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Goods;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackGoods;
import lapyard.ground.BedGround;
import lapyard.ground.PathWork;
import lapyard.plan.GardenPath;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/** What ground and paths take beyond geometry: bags of concrete a bed, and the weight of a path. */
final class GroundNeeds {
    private GroundNeeds() {}

    /** The bed's ground with {@code concrete.bags} of the smallest pack, where it takes concrete. */
    static List<Quantity> of(BedGround ground, Catalogue catalogue) {
        List<Quantity> quantities = new ArrayList<>(ground.quantities());
        ground.quantities().stream()
                .filter(quantity -> quantity.is(QuantityKind.CONCRETE))
                .findFirst()
                .ifPresent(concrete -> catalogue.packs(Goods.CONCRETE.item()).ifPresent(goods -> goods.packs().stream()
                        .min(Comparator.comparingDouble(Pack::content))
                        .ifPresent(bag -> quantities.add(bags(concrete.value(), goods.spare(), bag)))));
        return quantities;
    }

    private static Quantity bags(double m3, double spare, Pack bag) {
        return Quantity.of(QuantityKind.CONCRETE_BAGS, Whole.up(m3 * (1 + spare) / bag.content()), "bags",
                "ceil(concrete x (1 + spare) / what a bag makes); the order adds all beds first", Working.COMMON_PRACTICE,
                Input.of("concrete", m3, "m3"), Input.of("spare", spare, ""), Input.of("a bag makes", bag.content(), "m3"));
    }

    /** The path's quantities with {@code path.mass}, where the catalogue knows what each of its layers weighs. */
    static List<Quantity> of(PathWork work, Catalogue catalogue) {
        List<Quantity> quantities = new ArrayList<>(work.quantities());
        List<Input> inputs = new ArrayList<>();
        double kg = 0;
        for (GardenPath.Layer layer : work.path().layers()) {
            double loosening = catalogue.packs(layer.item()).map(PackGoods::loosening).orElse(1.0);
            OptionalDouble density = catalogue.packs(layer.item()).map(PackGoods::densityKgM3).orElse(OptionalDouble.empty());
            if (density.isEmpty()) return quantities;
            double m3 = work.quantities().get(0).value() * layer.depthMm() / 1000 * loosening;
            kg += m3 * density.getAsDouble();
            inputs.add(Input.of(layer.item(), m3, "m3"));
            inputs.add(Input.of(layer.item() + " as delivered", density.getAsDouble(), "kg/m3"));
        }
        if (kg > 0) {
            quantities.add(Quantity.of(QuantityKind.PATH_MASS, kg, "kg",
                    "sum over layers of loose area x depth x weight of a cubic metre, as the catalogue has it", Working.GEOMETRY,
                    inputs.toArray(Input[]::new)));
        }
        return quantities;
    }
}
