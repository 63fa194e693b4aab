package lapyard.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.OptionalLong;

/** Where the tables lie: a folder of this machine, or a server that several share. */
interface Database extends AutoCloseable {
    /** Work on one connection, inside one transaction. */
    interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    /** All of it is on disk when this returns, or none of it. */
    <T> T write(Work<T> work);

    <T> T read(Work<T> work);

    /**
     * A number that is another one after every write; empty while one is going on, and where others write here too. What
     * was read since a number was told, and while it is still told, stands.
     */
    default OptionalLong moment() {
        return OptionalLong.empty();
    }

    /** Inside a {@link #write}: until it ends, no other server is at this place. */
    void aloneWith(Connection connection) throws SQLException;

    /** Inside a {@link #write}: told to every listener of every server once the write is on disk, else to none. */
    void announce(Connection connection, String garden, long revision) throws SQLException;

    /** The listeners of this process. */
    Feed feed();

    /**
     * Asks whether it could be read and written now.
     *
     * @throws StoreFault where it could not
     */
    void probe();

    /** {@code sqlite} or {@code postgresql}. */
    String kind();

    @Override
    void close();
}
