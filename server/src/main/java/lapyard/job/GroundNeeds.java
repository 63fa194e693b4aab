package lapyard.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Pack;
import lapyard.ground.BedGround;
import lapyard.working.Quantity;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/** What the ground under a bed takes, with the bags of concrete for that bed alone. */
final class GroundNeeds {
    private GroundNeeds() {}

    /** The bed's ground with {@code concrete.bags} of the smallest pack, where it takes concrete. */
    static List<Quantity> of(BedGround ground, Catalogue catalogue) {
        List<Quantity> quantities = new ArrayList<>(ground.quantities());
        ground.quantities().stream()
                .filter(quantity -> quantity.key().equals("concrete"))
                .findFirst()
                .ifPresent(concrete -> catalogue.packs("concrete").ifPresent(goods -> goods.packs().stream()
                        .min(Comparator.comparingDouble(Pack::content))
                        .ifPresent(bag -> quantities.add(bags(concrete.value(), goods.spare(), bag)))));
        return quantities;
    }

    private static Quantity bags(double m3, double spare, Pack bag) {
        return new Quantity(
                "concrete.bags",
                Math.ceil(m3 * (1 + spare) / bag.content() - 1e-9),
                "bags",
                Working.of(
                        "ceil(concrete x (1 + spare) / what a bag makes); the order adds all beds first",
                        Working.COMMON_PRACTICE,
                        Input.of("concrete", m3, "m3"),
                        Input.of("spare", spare, ""),
                        Input.of("a bag makes", bag.content(), "m3")));
    }
}
