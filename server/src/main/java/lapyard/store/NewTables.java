package lapyard.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.List;
import java.util.zip.CRC32;

/**
 * Makes the tables of a new data folder from the same files as the migration library and with the same history, so that the
 * library goes on from there: loading it takes a third of the start.
 */
final class NewTables {
    /** Of SQLite, in their order. The step in Java is about gardens that are there already. */
    private static final List<String> STEPS = List.of(
            "V1__gardens.sql", "V2__stamps_and_shares.sql", "V4__revisions_that_cannot_be_restored.sql", "V5__shares_end.sql",
            "V6__what_a_list_shows.sql", V8__ListOfOlderGardens.class.getName(), "V9__shelf.sql", "V10__photos.sql");

    private static final String HISTORY = """
            CREATE TABLE "flyway_schema_history" (
                "installed_rank" INT NOT NULL PRIMARY KEY,
                "version" VARCHAR(50),
                "description" VARCHAR(200) NOT NULL,
                "type" VARCHAR(20) NOT NULL,
                "script" VARCHAR(1000) NOT NULL,
                "checksum" INT,
                "installed_by" VARCHAR(100) NOT NULL,
                "installed_on" TEXT NOT NULL DEFAULT (strftime('%Y-%m-%d %H:%M:%f','now')),
                "execution_time" INT NOT NULL,
                "success" BOOLEAN NOT NULL
            );
            CREATE INDEX "flyway_schema_history_s_idx" ON "flyway_schema_history" ("success")""";

    private NewTables() {}

    /** All of them or, where it fails, none. */
    static void make(Connection connection) throws SQLException {
        connection.setAutoCommit(false);
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(HISTORY);
            try (PreparedStatement history = connection.prepareStatement("insert into flyway_schema_history (installed_rank, version, description,"
                    + " type, script, checksum, installed_by, execution_time, success) values (?, ?, ?, ?, ?, ?, '', 0, 1)")) {
                for (int i = 0; i < STEPS.size(); i++) step(STEPS.get(i), i + 1, statement, history);
            }
            connection.commit();
        } catch (SQLException failed) {
            connection.rollback();
            throw failed;
        } finally {
            connection.setAutoCommit(true);
        }
    }

    private static void step(String step, int rank, Statement statement, PreparedStatement history) throws SQLException {
        boolean script = step.endsWith(".sql");
        String[] named = step.replaceFirst(".*\\.V", "V").replace(".sql", "").substring(1).split("__");
        history.setInt(1, rank);
        history.setString(2, named[0]);
        history.setString(3, named[1].replace('_', ' '));
        history.setString(4, script ? "SQL" : "JDBC");
        history.setString(5, step);
        history.setNull(6, Types.INTEGER);
        if (script) {
            String text = text(step);
            statement.executeUpdate(text);
            history.setInt(6, checksum(text));
        }
        history.executeUpdate();
    }

    private static String text(String script) {
        try (InputStream file = NewTables.class.getResourceAsStream("shared/" + script)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException packed) {
            throw new IllegalStateException("the program's own file " + script + " cannot be read", packed);
        }
    }

    /** As the library has it: CRC-32 of the lines without their ends. */
    private static int checksum(String text) {
        CRC32 sum = new CRC32();
        text.lines().forEach(line -> sum.update(line.getBytes(StandardCharsets.UTF_8)));
        return (int) sum.getValue();
    }
}
