package lapyard.store;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/** Brings a database's tables to the form this program knows. */
final class Schema {
    /** The number of the highest {@code V…} file beside this class. */
    static final int NEWEST = 1;

    /** Held so that the level stays. */
    private static final Logger MIGRATIONS = Logger.getLogger("org.flywaydb");

    private Schema() {}

    /** The database was made by something that this program does not know. */
    static final class Unknown extends Exception {
        Unknown(String message) {
            super(message);
        }
    }

    /** Looks first and calls the migration library only where there is work: loading it costs a quarter second. */
    static void bringUp(String url) throws SQLException, Unknown {
        int version = versionOf(url);
        if (version > NEWEST)
            throw new Unknown("its tables are version " + version + " and this program knows " + NEWEST
                    + ": a newer Lapyard used it; start that one");
        if (version < NEWEST) migrate(url);
    }

    private static void migrate(String url) throws SQLException {
        MIGRATIONS.setLevel(Level.OFF); // what goes wrong is thrown, and said once by whoever catches it
        try {
            Flyway.configure()
                    .dataSource(url, null, null)
                    .locations("classpath:lapyard/store")
                    .load()
                    .migrate();
        } catch (FlywayException failed) {
            throw new SQLException(failed.getMessage().lines().findFirst().orElse("the tables cannot be made"), failed);
        }
    }

    /** 0 for a database without tables of ours. */
    private static int versionOf(String url) throws SQLException, Unknown {
        try (Connection connection = DriverManager.getConnection(url);
                Statement statement = connection.createStatement()) {
            try (ResultSet table = statement.executeQuery(
                    "select 1 from sqlite_master where type = 'table' and name = 'flyway_schema_history'")) {
                if (!table.next()) return 0;
            }
            try (ResultSet row = statement.executeQuery("select version from flyway_schema_history"
                    + " where success = 1 and version is not null order by installed_rank desc limit 1")) {
                if (!row.next()) return 0;
                String version = row.getString(1);
                if (!version.matches("[0-9]{1,6}")) throw new Unknown("its tables have the unknown version " + version);
                return Integer.parseInt(version);
            }
        }
    }
}
