package lapyard.catalogue;

import java.util.Locale;
import java.util.Optional;

/** What boards of a section are bought for. Their items in orders and tallies are such a word and the section: {@code timber 75x200}. */
public enum SectionGoods {
    /** Walls. */
    TIMBER,
    /** Strips under a floor. */
    BEARERS;

    /** @param section its id, or its name in the garden's measures */
    public String item(String section) {
        return name().toLowerCase(Locale.ROOT) + " " + section;
    }

    /** The id of the section that an item is of; empty for goods that are no boards. */
    public static Optional<String> section(String item) {
        for (SectionGoods goods : values()) if (item.startsWith(goods.item(""))) return Optional.of(item.substring(goods.item("").length()));
        return Optional.empty();
    }
}
