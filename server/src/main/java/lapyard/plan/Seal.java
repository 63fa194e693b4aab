package lapyard.plan;

import lapyard.catalogue.Goods;

/**
 * Seal on cut ends and in notches, where rot starts.
 *
 * @param item            its goods in the catalogue
 * @param coats           two liberal brush coats: NHBC Standards 3.3.5 (2025)
 * @param coverM2PerLitre of one coat; saw-textured wood takes 2.4 to 4.9: USDA Forest Products Laboratory, Wood Handbook, ch. 16
 */
public record Seal(boolean wanted, String item, int coats, double coverM2PerLitre) {
    public static final Seal NONE = new Seal(false, Goods.SEAL.item(), 2, 4);
}
