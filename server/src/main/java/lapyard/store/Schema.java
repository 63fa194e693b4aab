package lapyard.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Properties;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/** Brings a database's tables to the form this program knows. */
enum Schema {
    SQLITE(10, "select 1 from sqlite_master where type = 'table' and name = 'flyway_schema_history'", "classpath:lapyard/store/shared"),
    POSTGRESQL(
            10,
            "select 1 where to_regclass('flyway_schema_history') is not null",
            "classpath:lapyard/store/shared",
            "classpath:lapyard/store/postgresql");

    /** Held so that the level stays. */
    private static final Logger MIGRATIONS = Logger.getLogger("org.flywaydb");

    /** The highest number of the {@code V…} files in its places and of the migrations in Java. */
    final int newest;

    private final String historyThere;
    final String[] places;

    Schema(int newest, String historyThere, String... places) {
        this.newest = newest;
        this.historyThere = historyThere;
        this.places = places;
    }

    /** The database was made by something that this program does not know. */
    static final class Unknown extends Exception {
        Unknown(String message) {
            super(message);
        }
    }

    /** Looks first and calls the migration library only where there is work: loading it costs a quarter second. */
    void bringUp(Connection connection, String url, Properties login) throws SQLException, Unknown {
        int version = versionOf(connection);
        if (version > newest)
            throw new Unknown("its tables are version " + version + " and this program knows " + newest
                    + ": a newer Lapyard used it; start that one");
        if (version == 0 && holdsOthersTables(connection))
            throw new Unknown("it holds tables of another program; it was left as it is: name an empty place");
        if (version == 0 && this == SQLITE) NewTables.make(connection);
        else if (version < newest) migrate(url, login);
    }

    private boolean holdsOthersTables(Connection connection) throws SQLException {
        String tables = this == SQLITE
                ? "select 1 from sqlite_master where type = 'table' and name not like 'sqlite_%'"
                : "select 1 from information_schema.tables where table_schema = current_schema()";
        return new Sql(connection, tables + " limit 1").first(row -> true).isPresent();
    }

    private void migrate(String url, Properties login) throws SQLException {
        MIGRATIONS.setLevel(Level.OFF); // what goes wrong is thrown, and said once by whoever catches it
        try {
            ClassLoader loader = Schema.class.getClassLoader();
            Flyway.configure(loader)
                    .dataSource(url, login.getProperty("user"), login.getProperty("password"))
                    .locations(places)
                    .javaMigrations(new V8__ListOfOlderGardens())
                    .load()
                    .migrate();
        } catch (FlywayException failed) {
            throw new SQLException(failed.getMessage().lines().findFirst().orElse("the tables cannot be made"), failed);
        }
    }

    /** 0 for a database without tables of ours. */
    int versionOf(Connection connection) throws SQLException, Unknown {
        if (new Sql(connection, historyThere).first(row -> true).isEmpty()) return 0;
        String done = this == SQLITE ? "success = 1" : "success";
        String version = new Sql(connection, "select version from flyway_schema_history"
                + " where " + done + " and version is not null order by installed_rank desc limit 1").first(row -> row.text("version")).orElse("0");
        if (!version.matches("[0-9]{1,6}")) throw new Unknown("its tables have the unknown version " + version);
        return Integer.parseInt(version);
    }
}
