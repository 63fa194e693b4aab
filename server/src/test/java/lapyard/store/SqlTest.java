package lapyard.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class SqlTest {
    private record Line(String text, OptionalLong number, boolean flag, Instant time, Optional<String> note) {}

    @Test
    void valuesAndColumnsGoByNameInWhateverOrder() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite::memory:")) {
            new Sql(connection, "create table line (a text, b integer, c integer, d text, e text)").update();
            Instant time = Instant.parse("2026-03-01T10:00:00Z");
            String insert = "insert into line (b, a, c, e, d) values (:number, :text, :flag, :note, :time)";
            int made = new Sql(connection, insert).with("text", ":number ?").with("flag", true).with("number", OptionalLong.of(7)).with("time", time)
                    .with("note", Optional.of("kept")).update();
            new Sql(connection, insert).with("text", "second").with("flag", false).with("number", OptionalLong.empty()).with("time", time)
                    .with("note", Optional.empty()).update();
            assertEquals(1, made);
            Sql.Reader<Line> reader = row -> new Line(row.text("a"), row.numberIfAny("b"), row.flag("c"), row.time("d"), row.textIfAny("e"));
            assertEquals(List.of(new Line(":number ?", OptionalLong.of(7), true, time, Optional.of("kept")),
                            new Line("second", OptionalLong.empty(), false, time, Optional.empty())),
                    new Sql(connection, "select * from line order by a").all(reader));
            // the same value twice, and one that this text does not ask for
            assertEquals(Optional.of("second"), new Sql(connection, "select a from line where a = :a or d = :a").with("a", "second").with("more", 1)
                    .first(row -> row.text("a")));
            assertEquals(Optional.empty(), new Sql(connection, "select a from line where b = :b").with("b", 8).first(row -> row.text("a")));
        }
    }

    @Test
    void aValueThatNobodyGaveIsRefusedByName() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite::memory:")) {
            String said = assertThrows(IllegalArgumentException.class, () -> new Sql(connection, "select :a, :b").with("a", 1).update()).getMessage();
            assertEquals("no value for :b in select :a, :b", said);
        }
    }
}
