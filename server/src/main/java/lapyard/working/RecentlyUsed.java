package lapyard.working;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;

/**
 * Values by key, up to a size together, bytes or a count; the least lately used go first. A value of more than a quarter of
 * that is not taken, as it would push out all others. Safe for many threads.
 */
public final class RecentlyUsed<K, V> {
    private static final int LARGEST_SHARE = 4;

    private final long limit;
    private final ToLongFunction<V> size;
    private final Map<K, V> kept = new LinkedHashMap<>(64, 0.75f, true);
    private long taken;

    /** @param size of a value, such as the bytes that it takes in memory, as well as they can be told; always the same for one value */
    public RecentlyUsed(long limit, ToLongFunction<V> size) {
        if (limit < 0) throw new IllegalArgumentException("a limit is 0 or more, was " + limit);
        this.limit = limit;
        this.size = size;
    }

    public synchronized Optional<V> get(K key) {
        return Optional.ofNullable(kept.get(key));
    }

    /** @return whether it was taken */
    public synchronized boolean put(K key, V value) {
        long added = size.applyAsLong(value);
        if (added > limit / LARGEST_SHARE) return false;
        V before = kept.put(key, value);
        taken += added - (before == null ? 0 : size.applyAsLong(before));
        var eldest = kept.values().iterator();
        while (taken > limit) {
            taken -= size.applyAsLong(eldest.next());
            eldest.remove();
        }
        return true;
    }

    public synchronized void remove(K key) {
        V gone = kept.remove(key);
        if (gone != null) taken -= size.applyAsLong(gone);
    }

    /** Of all values together. */
    public synchronized long taken() {
        return taken;
    }
}
