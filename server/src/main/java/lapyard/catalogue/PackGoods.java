package lapyard.catalogue;

import java.util.List;

/**
 * Goods sold in packs: screws in boxes, oil in tins, soil in bags, edging in lengths.
 *
 * @param item  the name by which quantities ask for it, for example {@code screws} or {@code soil.topsoil}
 * @param label in words, for the slip
 * @param unit  of need and content: {@code screws}, {@code l}, {@code m3}, {@code m}
 * @param spare share bought over the need, 0.10 for a tenth more
 */
public record PackGoods(String item, String label, String unit, double spare, List<Pack> packs) {
    public PackGoods {
        packs = List.copyOf(packs);
    }
}
