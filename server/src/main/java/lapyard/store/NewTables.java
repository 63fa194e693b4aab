package lapyard.store;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.zip.CRC32;
import lapyard.working.OwnFile;

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
            for (int i = 0; i < STEPS.size(); i++) step(STEPS.get(i), i + 1, statement);
            connection.commit();
        } catch (SQLException failed) {
            connection.rollback();
            throw failed;
        } finally {
            connection.setAutoCommit(true);
        }
    }

    private static void step(String step, int rank, Statement statement) throws SQLException {
        boolean script = step.endsWith(".sql");
        String[] named = step.replaceFirst(".*\\.V", "V").replace(".sql", "").substring(1).split("__");
        String text = script ? OwnFile.text("lapyard/store/shared/" + step) : "";
        if (script) statement.executeUpdate(text);
        Sql.insert(statement.getConnection(), "flyway_schema_history", "installed_rank", rank, "version", named[0], "description", named[1].replace('_', ' '),
                "type", script ? "SQL" : "JDBC", "script", step, "checksum", script ? checksum(text) : null, "installed_by", "", "execution_time", 0, "success", true);
    }

    /** As the library has it: CRC-32 of the lines without their ends. */
    private static int checksum(String text) {
        CRC32 sum = new CRC32();
        text.lines().forEach(line -> sum.update(line.getBytes(StandardCharsets.UTF_8)));
        return (int) sum.getValue();
    }
}
