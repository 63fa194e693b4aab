package lapyard.plan;

/**
 * Slat or pallet boards on hand, all alike.
 *
 * @param lengthMm  what of each can be used
 * @param treatment as far as anybody knows
 */
public record SlatBoards(
        String id, double widthMm, double thicknessMm, double lengthMm, int count, Treatment treatment) {}
