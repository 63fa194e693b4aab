package lapyard.store;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** Tells the listeners of this process of new revisions. A listener must not wait: it is called by whoever saves. */
final class Feed {
    private final List<NewsListener> listeners = new CopyOnWriteArrayList<>();

    /** Closing what comes back ends it. */
    AutoCloseable add(NewsListener listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    void saved(String garden, long revision) {
        for (NewsListener listener : listeners) listener.saved(garden, revision);
    }

    void missed() {
        for (NewsListener listener : listeners) listener.missed();
    }
}
