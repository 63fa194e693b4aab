package lapyard.rest;

import java.util.function.LongSupplier;
import lapyard.working.RecentlyUsed;

/** Counts wrong tokens by address: after a few in a minute nothing more from there is even compared until it is over. */
final class Attempts {
    static final int MOST = 10;
    private static final long WINDOW_NANOS = 60_000_000_000L;
    private static final int MOST_ADDRESSES = 10_000;

    private final LongSupplier nanos;
    private final RecentlyUsed<String, Count> counts = new RecentlyUsed<>(MOST_ADDRESSES, count -> 1);

    private static final class Count {
        long fromNanos;
        int wrong;
    }

    Attempts(LongSupplier nanos) {
        this.nanos = nanos;
    }

    /** Seconds until this address may try again; 0 where it may now. */
    synchronized long waitSeconds(String address) {
        Count count = counts.get(address).orElseGet(Count::new);
        if (count.wrong < MOST) return 0;
        long left = WINDOW_NANOS - (nanos.getAsLong() - count.fromNanos);
        return left <= 0 ? 0 : (left + 999_999_999L) / 1_000_000_000L;
    }

    synchronized void wrong(String address) {
        Count count = counts.get(address).orElseGet(Count::new);
        if (count.wrong == 0 || nanos.getAsLong() - count.fromNanos >= WINDOW_NANOS) {
            count.fromNanos = nanos.getAsLong();
            count.wrong = 0;
        }
        count.wrong++;
        counts.put(address, count);
    }
}
