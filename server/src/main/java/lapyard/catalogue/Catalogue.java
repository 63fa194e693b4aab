package lapyard.catalogue;

import java.util.List;
import java.util.Optional;

/**
 * All that can be bought for a garden. Each list keeps the order in which it was given.
 *
 * @param suppliers     empty where one merchant sells everything
 * @param examplePrices true while any price is an example of ours and not the gardener's own
 */
public record Catalogue(
        List<Supplier> suppliers,
        List<Section> sections,
        List<Roll> rolls,
        List<PackGoods> packs,
        boolean examplePrices) {
    public Catalogue {
        suppliers = List.copyOf(suppliers);
        sections = List.copyOf(sections);
        rolls = List.copyOf(rolls);
        packs = List.copyOf(packs);
    }

    public Optional<Section> section(String id) {
        return sections.stream().filter(section -> section.id().equals(id)).findFirst();
    }

    public List<Roll> rolls(String material) {
        return rolls.stream().filter(roll -> roll.material().equals(material)).toList();
    }

    public Optional<PackGoods> packs(String item) {
        return packs.stream().filter(goods -> goods.item().equals(item)).findFirst();
    }

    /** With only one supplier's prices; what that supplier does not sell stays in its place, without a price. */
    public Catalogue soldBy(String supplier) {
        return new Catalogue(
                suppliers.stream().filter(one -> one.id().equals(supplier)).toList(),
                sections.stream().map(section -> section.suppliers().contains(supplier) ? section.from(supplier) : section.unpriced()).toList(),
                rolls.stream()
                        .filter(roll -> roll.supplier().equals(supplier) || rolls(roll.material()).stream().noneMatch(other -> other.supplier().equals(supplier)))
                        .map(roll -> roll.supplier().equals(supplier) ? roll : roll.unpriced())
                        .toList(),
                packs.stream().map(goods -> goods.soldBy(supplier)).toList(),
                examplePrices);
    }
}
