package lapyard.catalogue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Goods sold in packs: screws in boxes, oil in tins, soil in bags, edging in lengths.
 *
 * @param item        the name by which quantities ask for it, for example {@code screws} or {@code soil.topsoil}
 * @param label       in words, for the slip
 * @param unit        of need and content: {@code screws}, {@code l}, {@code m3}, {@code m}
 * @param spare       share bought over the need, 0.10 for a tenth more
 * @param loosening   loose cubic metres that make one in place, 1 for what is not compacted
 * @param densityKgM3 of goods sold by the cubic metre, as delivered; empty where not known
 */
public record PackGoods(
        String item, String label, String unit, double spare, double loosening, List<Pack> packs, OptionalDouble densityKgM3) {
    /**
     * Loose over compacted stone: it swells by 15 % and shrinks by 7 %, 1.15 / 0.93. An excavation estimating guide's
     * figures; the guide prints 1.273 for them.
     */
    public static final double STONE_LOOSENING = 1.237;

    /** Of soil and stone: what sticks, spills and sinks; common practice, no source. */
    public static final double LOOSE_GOODS_SPARE = 0.05;

    /** The share bought over the need where the catalogue says nothing. */
    public static double usualSpare(String item) {
        return Goods.of(item).filter(goods -> goods.sold == Goods.Sold.LOOSE).isPresent() ? LOOSE_GOODS_SPARE : 0;
    }

    /** What the catalogue takes where it says nothing of compacting. */
    public static double usualLoosening(String item) {
        return item.equals(Goods.SUB_BASE.item()) ? STONE_LOOSENING : 1;
    }

    public PackGoods {
        packs = List.copyOf(packs);
    }

    /** Ids of those who sell it, in the order of the packs. */
    public List<String> suppliers() {
        return packs.stream().map(Pack::supplier).distinct().toList();
    }

    /** The same goods in fewer packs. */
    public PackGoods only(List<Pack> kept) {
        return new PackGoods(item, label, unit, spare, loosening, kept, densityKgM3);
    }

    /** Weight of one pack as carried; empty where neither the pack nor the density tells. */
    public OptionalDouble massKg(Pack pack) {
        if (pack.massKg().isPresent()) return pack.massKg();
        return densityKgM3.isPresent() && unit.equals("m3")
                ? OptionalDouble.of(pack.content() * densityKgM3.getAsDouble())
                : OptionalDouble.empty();
    }

    /** The packs of one supplier; all of them without a price where that supplier sells none. */
    PackGoods soldBy(String supplier) {
        List<Pack> own = packs.stream().filter(pack -> pack.supplier().equals(supplier)).toList();
        return only(own.isEmpty() ? packs.stream().map(pack -> new Pack(pack.name(), pack.content(), Optional.empty(), "", 1, 1, OptionalDouble.empty())).toList() : own);
    }

    /** The same goods under what they are called in a garden in feet and inches. */
    public PackGoods inFeet() {
        return new PackGoods(item, TradeName.label(label, true), unit, spare, loosening, packs, densityKgM3);
    }
}
