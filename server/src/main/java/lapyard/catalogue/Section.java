package lapyard.catalogue;

import java.util.List;

/**
 * A timber section, thickness across the wall and height up the wall in millimetres as measured.
 *
 * @param densityKgM3 of the wet timber as lifted
 * @param stock       shortest first, no length twice
 */
public record Section(String id, double thicknessMm, double heightMm, double densityKgM3, List<StockLength> stock) {
    public Section {
        stock = List.copyOf(stock);
    }
}
