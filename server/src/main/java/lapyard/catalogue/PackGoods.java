package lapyard.catalogue;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Goods sold in packs: screws in boxes, oil in tins, soil in bags, edging in lengths.
 *
 * @param item        the name by which quantities ask for it, for example {@code screws} or {@code soil.topsoil}
 * @param label       in words, for the slip
 * @param unit        of need and content: {@code screws}, {@code l}, {@code m3}, {@code m}
 * @param spare       share bought over the need, 0.10 for a tenth more
 * @param densityKgM3 of goods sold by the cubic metre, as delivered; empty where not known
 */
public record PackGoods(
        String item, String label, String unit, double spare, List<Pack> packs, OptionalDouble densityKgM3) {
    public PackGoods {
        packs = List.copyOf(packs);
    }

    public PackGoods(String item, String label, String unit, double spare, List<Pack> packs) {
        this(item, label, unit, spare, packs, OptionalDouble.empty());
    }

    /** Ids of those who sell it, in the order of the packs. */
    public List<String> suppliers() {
        return packs.stream().map(Pack::supplier).distinct().toList();
    }

    /** The same goods in fewer packs. */
    public PackGoods only(List<Pack> kept) {
        return new PackGoods(item, label, unit, spare, kept, densityKgM3);
    }

    /** Weight of one pack as carried; empty where neither the pack nor the density tells. */
    public OptionalDouble massKg(Pack pack) {
        if (pack.massKg().isPresent()) {
            return pack.massKg();
        }
        return densityKgM3.isPresent() && unit.equals("m3")
                ? OptionalDouble.of(pack.content() * densityKgM3.getAsDouble())
                : OptionalDouble.empty();
    }
}
