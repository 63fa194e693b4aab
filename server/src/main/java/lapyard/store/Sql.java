package lapyard.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** One statement whose values and columns go by name: {@code where id = :id}. */
final class Sql {
    /** Always with three decimals, so that times as text stand in their order. */
    private static final DateTimeFormatter MILLISECONDS = new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

    private static final Pattern NAME = Pattern.compile("(?<!:):([a-zA-Z_]+)");

    /** Signs that no database keeps as text, such as half a pair: they become question marks of their own. */
    private static final Pattern UNKEEPABLE = Pattern.compile("[\\x00\\p{Cs}]");

    private final Connection connection;
    private final String text;
    private final Map<String, Object> values = new HashMap<>();

    Sql(Connection connection, String text) {
        this.connection = connection;
        this.text = text;
    }

    /** @param value text, number, flag (kept as 0 or 1), time (as its text), or an {@code Optional} or {@code OptionalLong} of one; null is null */
    Sql with(String name, Object value) {
        values.put(name, kept(value));
        return this;
    }

    private static Object kept(Object value) {
        if (value instanceof Optional<?> some) return some.map(Sql::kept).orElse(null);
        if (value instanceof OptionalLong some) return some.isPresent() ? some.getAsLong() : null;
        if (value instanceof Boolean flag) return flag ? 1 : 0;
        if (value instanceof String text) return keepable(text);
        return value instanceof Instant time ? MILLISECONDS.format(time) : value;
    }

    private static String keepable(String text) {
        return UNKEEPABLE.matcher(text).replaceAll("\ufffd");
    }

    static String shortened(String text, int characters) {
        String kept = keepable(text);
        return kept.codePointCount(0, kept.length()) <= characters ? kept : kept.substring(0, kept.offsetByCodePoints(0, characters));
    }

    /** Puts a row with these values in, columns and values by turns, the values as {@link #with} takes them. */
    static void insert(Connection connection, String table, Object... row) throws SQLException {
        List<String> columns = IntStream.range(0, row.length / 2).mapToObj(i -> (String) row[2 * i]).toList();
        Sql sql = new Sql(connection, "insert into " + table + " (" + String.join(", ", columns) + ") values (:" + String.join(", :", columns) + ")");
        for (int i = 0; i < row.length; i += 2) sql.with((String) row[i], row[i + 1]);
        sql.update();
    }

    /** How many rows it changed. */
    int update() throws SQLException {
        try (PreparedStatement statement = bound()) {
            return statement.executeUpdate();
        }
    }

    <T> List<T> all(Reader<T> reader) throws SQLException {
        List<T> all = new ArrayList<>();
        try (PreparedStatement statement = bound();
                ResultSet rows = statement.executeQuery()) {
            Columns columns = new Columns(rows);
            while (rows.next()) all.add(reader.read(columns));
        }
        return all;
    }

    <T> Optional<T> first(Reader<T> reader) throws SQLException {
        try (PreparedStatement statement = bound();
                ResultSet rows = statement.executeQuery()) {
            return rows.next() ? Optional.of(reader.read(new Columns(rows))) : Optional.empty();
        }
    }

    private PreparedStatement bound() throws SQLException {
        List<String> names = NAME.matcher(text).results().map((MatchResult found) -> found.group(1)).toList();
        for (String name : names) if (!values.containsKey(name)) throw new IllegalArgumentException("no value for :" + name + " in " + text);
        PreparedStatement statement = connection.prepareStatement(NAME.matcher(text).replaceAll("?"));
        try {
            for (int i = 0; i < names.size(); i++) statement.setObject(i + 1, values.get(names.get(i)));
        } catch (SQLException | RuntimeException failed) {
            statement.close();
            throw failed;
        }
        return statement;
    }

    /** Makes one thing of one row. */
    interface Reader<T> {
        T read(Columns row) throws SQLException;
    }

    /** The columns of the row that is read. */
    record Columns(ResultSet row) {
        String text(String column) throws SQLException {
            return row.getString(column);
        }

        Optional<String> textIfAny(String column) throws SQLException {
            return Optional.ofNullable(text(column));
        }

        long number(String column) throws SQLException {
            return row.getLong(column);
        }

        OptionalLong numberIfAny(String column) throws SQLException {
            long number = number(column);
            return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(number);
        }

        boolean flag(String column) throws SQLException {
            return number(column) != 0;
        }

        Instant time(String column) throws SQLException {
            return Instant.parse(text(column));
        }

        Revision.Kind kind() throws SQLException {
            return Revision.Kind.valueOf(text("kind"));
        }
    }
}
