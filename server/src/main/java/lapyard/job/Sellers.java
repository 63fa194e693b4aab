package lapyard.job;

import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;

/** The same pieces from each of those who sell what they are cut from. */
final class Sellers {
    private Sellers() {}

    /** Those who serve as many pieces as any, by the kinds of pieces that they leave out. */
    static <T> List<T> serving(List<T> sellers, ToIntFunction<T> unplaced) {
        int fewest = sellers.stream().mapToInt(unplaced).min().orElse(0);
        return sellers.stream().filter(one -> unplaced.applyAsInt(one) == fewest).toList();
    }

    /** The one whom the slip names; the first where it names none. */
    static <T> T chosen(List<T> sellers, Predicate<T> named) {
        return sellers.stream().filter(named).findFirst().orElse(sellers.get(0));
    }
}
