package lapyard.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.CopyOnWriteArrayList;

/** Where the tables lie: a folder of this machine, or a server that several share. */
abstract class Database implements AutoCloseable {
    private final List<NewsListener> listeners = new CopyOnWriteArrayList<>();

    /** Work on one connection, inside one transaction. */
    interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    /** All of it is on disk when this returns, or none of it. */
    abstract <T> T write(Work<T> work);

    abstract <T> T read(Work<T> work);

    /**
     * A number that is another one after every write; empty while one is going on, and where others write here too. What
     * was read since a number was told, and while it is still told, stands.
     */
    OptionalLong moment() {
        return OptionalLong.empty();
    }

    /** Inside a {@link #write}: until it ends, no other server is at this place. */
    abstract void aloneWith(Connection connection) throws SQLException;

    /** Inside a {@link #write}: told to every listener of every server once the write is on disk, else to none. */
    abstract void announce(Connection connection, String garden, long revision) throws SQLException;

    /** Tells of new revisions until what comes back is closed. */
    final AutoCloseable listen(NewsListener listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    /** Tells the listeners of this process. */
    final void saved(String garden, long revision) {
        for (NewsListener listener : listeners) listener.saved(garden, revision);
    }

    final void missed() {
        for (NewsListener listener : listeners) listener.missed();
    }

    /**
     * Asks whether it could be read and written now.
     *
     * @throws StoreFault where it could not
     */
    abstract void probe();

    /** {@code sqlite} or {@code postgresql}. */
    abstract String kind();

    @Override
    public abstract void close();
}
