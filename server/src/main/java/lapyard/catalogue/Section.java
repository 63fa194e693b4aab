package lapyard.catalogue;

import java.util.List;
import java.util.Optional;

/**
 * A timber section, thickness across the wall and height up the wall in millimetres as measured.
 *
 * @param densityKgM3 of the wet timber as lifted
 * @param stock       shortest first, no length twice from one supplier
 * @param strengthClass as stamped on the timber; empty where nobody graded it
 * @param treated       against rot, so that every cut opens wood that is not
 * @param goodFaces     how many faces of its boards may be seen, 1 or 2
 * @param planed        smooth all round, so that finish goes further than on sawn timber
 */
public record Section(String id, double thicknessMm, double heightMm, double densityKgM3, List<StockLength> stock,
        Optional<StrengthClass> strengthClass, boolean treated, int goodFaces, boolean planed) {
    public Section {
        stock = List.copyOf(stock);
    }

    /** The class to reckon with: ungraded timber takes the lowest. */
    public StrengthClass strength() {
        return strengthClass.orElse(StrengthClass.LOWEST);
    }

    /** Ids of those who sell it, in the order of the stock. */
    public List<String> suppliers() {
        return stock.stream().map(StockLength::supplier).distinct().toList();
    }

    /** Of a length with square ends. */
    public double massKg(double lengthMm) {
        return lengthMm * thicknessMm * heightMm * densityKgM3 / 1e9;
    }

    /** Whether any of its lengths has a price. */
    public boolean priced() {
        return stock.stream().anyMatch(length -> length.price().isPresent());
    }

    /** The same section once for each who sells it, with that one's stock only. */
    public List<Section> bySeller() {
        return suppliers().size() <= 1 ? List.of(this) : suppliers().stream().map(this::from).toList();
    }

    /** The same section in these stock lengths. */
    public Section sold(List<StockLength> others) {
        return new Section(id, thicknessMm, heightMm, densityKgM3, others, strengthClass, treated, goodFaces, planed);
    }

    /** The same section with one supplier's stock only. */
    public Section from(String supplier) {
        return sold(stock.stream().filter(length -> length.supplier().equals(supplier)).toList());
    }

    /** The lengths that are sold, by nobody and for no price. */
    Section unpriced() {
        return sold(stock.stream().map(StockLength::lengthMm).distinct().map(length -> new StockLength(length, Optional.empty(), "", 1, 1)).toList());
    }
}
