package lapyard.answers;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Who asks and waits. One who leaves waits no more; work that nobody waits for is stopped. Safe for many threads.
 */
public final class Caller {
    private static final ThreadLocal<Caller> NOW = new ThreadLocal<>();

    private final String name;
    private final Set<Runnable> waits = new LinkedHashSet<>();
    private boolean left;

    /** @param name by which turns are shared out fairly, such as an address */
    public Caller(String name) {
        this.name = name;
    }

    String name() {
        return name;
    }

    /** From now on this thread works for that caller. */
    public void begin() {
        NOW.set(this);
    }

    public static void end() {
        NOW.remove();
    }

    /** The one for whom this thread asks; one without a name, who never leaves, where nobody was named. */
    static Caller now() {
        Caller now = NOW.get();
        return now == null ? new Caller("") : now;
    }

    /** Ends every wait of this caller, now and later. */
    public void leave() {
        List<Runnable> all;
        synchronized (this) {
            left = true;
            all = List.copyOf(waits);
        }
        all.forEach(Runnable::run);
    }

    public synchronized boolean hasLeft() {
        return left;
    }

    /** @param ended told once the caller leaves; at once where that has happened */
    void waitsFor(Runnable ended) {
        boolean gone;
        synchronized (this) {
            gone = left;
            waits.add(ended);
        }
        if (gone) ended.run();
    }

    synchronized void waitsNoMoreFor(Runnable ended) {
        waits.remove(ended);
    }
}
