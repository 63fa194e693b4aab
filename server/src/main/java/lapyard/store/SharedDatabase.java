package lapyard.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.Properties;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.postgresql.PGConnection;
import org.postgresql.PGNotification;

/**
 * A PostgreSQL server that several of ours share: a bounded pool of connections, and one more that listens for what
 * the others saved.
 */
final class SharedDatabase extends GardenStore {
    /** Connections that read and write; the listening one comes on top. */
    static final int MOST_CONNECTIONS = 8;

    private static final int PATIENCE_MS = 3000;
    private static final int STATEMENT_MS = 20_000;
    private static final int LISTEN_MS = 500;
    private static final String CHANNEL = "lapyard_revision";
    /** Any number that our servers agree on. */
    private static final long ALONE = 0x6c617079617264L;

    /** Held so that the level stays: the pool tells of each of its starts and stops. */
    private static final Logger POOL = Logger.getLogger("com.zaxxer.hikari");

    private final HikariDataSource pool;
    private final String url;
    private final Properties login;
    private final Thread listening;
    private volatile boolean closed;

    private SharedDatabase(HikariDataSource pool, String url, Properties login, Clock clock) {
        super(clock);
        this.pool = pool;
        this.url = url;
        this.login = login;
        this.listening = new Thread(this::listen, "lapyard-listen");
        listening.setDaemon(true);
    }

    /**
     * Connects and brings the tables up to date.
     *
     * @param login {@code user} and {@code password} where the address does not hold them
     */
    static SharedDatabase connect(String url, Properties login, Clock clock) throws SQLException, Schema.Unknown {
        Properties all = new Properties();
        all.putAll(login);
        // a server that went away without a word is noticed by these, not by the operating system's patience
        all.putIfAbsent("connectTimeout", "3");
        all.putIfAbsent("socketTimeout", "30");
        all.putIfAbsent("tcpKeepAlive", "true");
        all.putIfAbsent("ApplicationName", "lapyard");
        POOL.setLevel(Level.SEVERE); // that the database does not answer is thrown, and logged under the request's id
        HikariConfig config = new HikariConfig();
        config.setJdbcUrl(url);
        config.setDataSourceProperties(all);
        config.setMaximumPoolSize(MOST_CONNECTIONS);
        config.setMinimumIdle(1);
        config.setConnectionTimeout(PATIENCE_MS);
        config.setValidationTimeout(PATIENCE_MS / 2);
        config.setAutoCommit(false);
        config.setPoolName("lapyard");
        config.setInitializationFailTimeout(-1);
        config.setConnectionInitSql("set statement_timeout = " + STATEMENT_MS);
        try (Connection first = DriverManager.getConnection(url, all)) {
            Schema.POSTGRESQL.bringUp(first, url, all);
        }
        SharedDatabase database = new SharedDatabase(new HikariDataSource(config), url, all, clock);
        database.listening.start();
        return database;
    }

    @Override
    public <T> T write(Work<T> work) {
        try (Connection connection = pool.getConnection()) {
            T result;
            try {
                result = work.on(connection);
            } catch (SQLException | RuntimeException failed) {
                rollBack(connection, failed);
                throw failed;
            }
            try {
                connection.commit();
            } catch (SQLException lost) {
                throw StoreFault.uncertain(lost);
            }
            return result;
        } catch (SQLException failed) {
            throw fault(failed);
        }
    }

    @Override
    public <T> T read(Work<T> work) {
        try (Connection connection = pool.getConnection()) {
            T result = work.on(connection);
            connection.rollback();
            return result;
        } catch (SQLException failed) {
            throw fault(failed);
        }
    }

    private static void rollBack(Connection connection, Exception because) {
        try {
            connection.rollback();
        } catch (SQLException second) {
            because.addSuppressed(second);
        }
    }

    private static StoreFault fault(SQLException failed) {
        boolean full = "53100".equals(failed.getSQLState()); // PostgreSQL, appendix A: disk_full
        return new StoreFault("the database failed: " + failed.getMessage(), full, failed);
    }

    @Override
    public void aloneWith(Connection connection) throws SQLException {
        new Sql(connection, "select pg_advisory_xact_lock(:alone)").with("alone", ALONE).first(row -> true);
    }

    @Override
    public void announce(Connection connection, String garden, long revision) throws SQLException {
        new Sql(connection, "select pg_notify(:channel, :told)").with("channel", CHANNEL).with("told", garden + " " + revision).first(row -> true);
    }

    @Override
    public void probe() {
        boolean readOnly = write(connection -> new Sql(connection, "select current_setting('transaction_read_only') as setting")
                .first(row -> row.text("setting").equals("on")).orElseThrow());
        if (readOnly) throw new StoreFault("the database takes no changes now: it is a standby or set read-only", false, null);
    }

    @Override
    public String kind() {
        return "postgresql";
    }

    /** Runs until it is closed; after every break it says that news may have been missed. */
    private void listen() {
        boolean first = true;
        while (!closed) {
            try (Connection connection = DriverManager.getConnection(url, login);
                    Statement statement = connection.createStatement()) {
                statement.execute("listen " + CHANNEL);
                if (!first) missed();
                first = false;
                PGConnection ears = connection.unwrap(PGConnection.class);
                int quiet = 0;
                while (!closed) {
                    PGNotification[] heard = ears.getNotifications(LISTEN_MS);
                    for (PGNotification one : heard == null ? new PGNotification[0] : heard) pass(one.getParameter());
                    // asks now and then: a connection that broke without a word is silent for ever
                    if (++quiet % 20 == 0) statement.execute("select 1");
                }
            } catch (SQLException gone) {
                first = false;
                pause();
            }
        }
    }

    private void pause() {
        try {
            Thread.sleep(LISTEN_MS);
        } catch (InterruptedException stopping) {
            Thread.currentThread().interrupt();
            closed = true;
        }
    }

    private void pass(String parameter) {
        int space = parameter.indexOf(' ');
        if (space > 0) saved(parameter.substring(0, space), Long.parseLong(parameter.substring(space + 1)));
    }

    @Override
    public void close() {
        closed = true;
        listening.interrupt();
        pool.close();
    }
}
