package lapyard.working;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;

/**
 * Values by key, up to a number of bytes together; the least lately used go first. A value of more than a quarter of
 * them is not taken, as it would push out all others. Safe for many threads.
 */
public final class RecentlyUsed<K, V> {
    private static final int LARGEST_SHARE = 4;

    private final long limitBytes;
    private final ToLongFunction<V> size;
    private final Map<K, V> kept = new LinkedHashMap<>(64, 0.75f, true);
    private long bytes;

    /** @param size bytes that a value takes in memory, as well as they can be told; always the same for one value */
    public RecentlyUsed(long limitBytes, ToLongFunction<V> size) {
        if (limitBytes < 0) throw new IllegalArgumentException("a limit is 0 bytes or more, was " + limitBytes);
        this.limitBytes = limitBytes;
        this.size = size;
    }

    public synchronized Optional<V> get(K key) {
        return Optional.ofNullable(kept.get(key));
    }

    /** @return whether it was taken */
    public synchronized boolean put(K key, V value) {
        long added = size.applyAsLong(value);
        if (added > limitBytes / LARGEST_SHARE) return false;
        V before = kept.put(key, value);
        bytes += added - (before == null ? 0 : size.applyAsLong(before));
        var eldest = kept.values().iterator();
        while (bytes > limitBytes) {
            bytes -= size.applyAsLong(eldest.next());
            eldest.remove();
        }
        return true;
    }

    public synchronized void remove(K key) {
        V gone = kept.remove(key);
        if (gone != null) bytes -= size.applyAsLong(gone);
    }

    /** Of all values together. */
    public synchronized long bytes() {
        return bytes;
    }
}
