package lapyard.sizes;

import java.math.BigDecimal;
import java.util.List;

/**
 * A garden of other sizes, worked out whole.
 *
 * @param changes few before many; none for the garden as it stands
 * @param mm      sum of the changes
 * @param total   of the order
 * @param saved   against the garden as it stands
 * @param boards  of wall timber fewer; below 0 for more
 */
public record SizeAnswer(List<Resize> changes, double mm, BigDecimal total, BigDecimal saved, int boards) {
    public SizeAnswer {
        changes = List.copyOf(changes);
    }

    /** No more changes, no more millimetres and no more money. */
    boolean beatsOrEquals(SizeAnswer other) {
        return changes.size() <= other.changes.size() && mm <= other.mm && total.compareTo(other.total) <= 0;
    }

    /** Answers that save and that no other beats; of two alike the first stays. Few changes, then little money saved, before more. */
    static List<SizeAnswer> front(List<SizeAnswer> answers) {
        List<SizeAnswer> all = answers.stream().filter(one -> one.saved.signum() > 0)
                .sorted(java.util.Comparator.comparingInt((SizeAnswer one) -> one.changes.size())
                        .thenComparing(SizeAnswer::saved).thenComparingDouble(SizeAnswer::mm))
                .toList();
        List<SizeAnswer> front = new java.util.ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            boolean beaten = false;
            for (int j = 0; j < all.size() && !beaten; j++) {
                beaten = i != j && all.get(j).beatsOrEquals(all.get(i)) && (j < i || !all.get(i).beatsOrEquals(all.get(j)));
            }
            if (!beaten) front.add(all.get(i));
        }
        return front;
    }
}
