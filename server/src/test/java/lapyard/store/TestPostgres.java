package lapyard.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Properties;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * A real PostgreSQL for tests, one for all of them: the one that {@code -Dlapyard.test.database} names (its user may
 * make databases), else one that is started here.
 */
public final class TestPostgres {
    private static final AtomicInteger COUNT = new AtomicInteger();
    /** Held so that the levels stay: its first start is told in 30 lines. */
    private static final List<Logger> QUIET = List.of(
            Logger.getLogger("io.zonky.test.db.postgres.embedded"), Logger.getLogger("init-" + EmbeddedPostgres.class.getName()));

    private static String maintenance;
    private static String withTables;

    private TestPostgres() {}

    /** The address of an empty database of its own. */
    public static String newDatabase() {
        return newDatabase("template1");
    }

    /** As {@link #newDatabase()}, with our tables in it. */
    public static synchronized String newStoreDatabase() {
        if (withTables == null) {
            String url = newDatabase();
            try {
                SharedDatabase.connect(url, new Properties(), java.time.Clock.systemUTC()).close();
            } catch (SQLException | Schema.Unknown refused) {
                throw new IllegalStateException(refused);
            }
            withTables = url.replaceAll("^.*/([^/?]*).*$", "$1");
        }
        return newDatabase(withTables);
    }

    private static String newDatabase(String like) {
        String name = "lapyard_test_" + ProcessHandle.current().pid() + "_" + COUNT.incrementAndGet();
        String server = server();
        try (Connection connection = DriverManager.getConnection(server);
                Statement statement = connection.createStatement()) {
            statement.execute("create database " + name + " template " + like);
        } catch (SQLException refused) {
            throw new IllegalStateException(refused);
        }
        return server.replaceFirst("/[^/?]*(\\?|$)", "/" + name + "$1");
    }

    static int portOf(String url) {
        return Integer.parseInt(url.replaceAll("^.*:([0-9]+)/.*$", "$1"));
    }

    static String onPort(String url, int port) {
        return url.replaceAll(":[0-9]+/", ":" + port + "/");
    }

    private static synchronized String server() {
        if (maintenance == null) maintenance = System.getProperty("lapyard.test.database");
        if (maintenance == null) {
            QUIET.forEach(logger -> logger.setLevel(Level.WARNING));
            try {
                EmbeddedPostgres started = EmbeddedPostgres.builder().setLocaleConfig("locale", "C").start();
                maintenance = started.getJdbcUrl("postgres", "postgres");
            } catch (IOException cannot) {
                throw new UncheckedIOException(cannot);
            }
        }
        return maintenance;
    }
}
