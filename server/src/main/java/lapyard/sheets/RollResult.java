package lapyard.sheets;

import java.math.BigDecimal;
import java.util.List;

/** Roll layouts; {@code lowerBound} is proved, {@code proven} only where it equals {@code cost}. */
public record RollResult(
        String name,
        BigDecimal cost,
        BigDecimal lowerBound,
        boolean proven,
        double seconds,
        List<RollLayout> rolls,
        List<Unplaced> unplaced) {
    public RollResult {
        rolls = List.copyOf(rolls);
        unplaced = List.copyOf(unplaced);
    }

    /** One run cut from a roll: used length, the length bought in whole steps, what lies where. */
    public record RollLayout(String roll, double usedMm, double boughtMm, List<Placed> placed) {
        public RollLayout {
            placed = List.copyOf(placed);
        }
    }

    /** x across the roll, y along it; sizes as laid. */
    public record Placed(String id, double x, double y, double widthMm, double heightMm, boolean turned) {}

    public record Unplaced(String id, double widthMm, double heightMm, int count, String why) {}
}
