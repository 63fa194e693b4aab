package lapyard.plan;

import java.util.List;
import lapyard.catalogue.Goods;

/**
 * What goes into a bed.
 *
 * @param freeboardMm from the rim down to the mulch
 * @param mulchMm     depth of mulch on the soil
 * @param settlement  share of the loose volume lost, 0.15 for 15 %
 * @param layers      of soil, bottom first, shares adding to 1
 */
public record Fill(double freeboardMm, double mulchMm, double settlement, List<Layer> layers) {
    public Fill {
        layers = List.copyOf(layers);
    }

    /** Soil as it is barrowed, before it settles; common practice, no source. */
    public static final double LOOSE_KG_M3 = 1200;

    /** The usual material of a layer. */
    public static final String TOPSOIL = Goods.SOIL.item("topsoil");

    /** {@code item} as the catalogue sells it, {@code soil.topsoil}; share 0 to 1 of the soil. */
    public record Layer(String item, double share) {}

    public static final Fill USUAL = new Fill(
            50,
            50,
            0.15,
            List.of(new Layer(TOPSOIL, 0.6), new Layer(Goods.SOIL.item("compost"), 0.3), new Layer(Goods.SOIL.item("grit"), 0.1)));
}
