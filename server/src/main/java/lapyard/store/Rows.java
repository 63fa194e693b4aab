package lapyard.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import lapyard.store.Change.Made;
import lapyard.store.Change.Stale;

/** The rows of gardens and their revisions, in SQL that both databases take. */
final class Rows {
    private static final String CURRENT = "select g.id, g.name, g.revision, g.changed, g.deleted, r.document"
            + " from garden g join revision r on r.garden = g.id and r.number = g.revision where g.id = ?";

    private final Database database;
    private final Clock clock;

    Rows(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    Stored insert(Connection connection, NewGarden garden) throws SQLException {
        String name = shortened(garden.name(), GardenStore.NAME_CHARACTERS);
        Instant now = now();
        try (PreparedStatement insert = connection.prepareStatement(
                "insert into garden (id, name, sort_key, revision, changed, deleted) values (?, ?, ?, 1, ?, 0)")) {
            insert.setString(1, garden.id());
            insert.setString(2, name);
            insert.setString(3, sortKey(name));
            insert.setString(4, now.toString());
            insert.executeUpdate();
        }
        Stored stored = new Stored(garden.id(), name, 1, now, false, garden.document());
        insertRevision(connection, stored, Revision.Kind.CREATED, OptionalLong.empty(), Optional.empty());
        database.announce(connection, stored.id(), 1);
        return stored;
    }

    Change add(
            Connection connection,
            Stored current,
            Revision.Kind kind,
            OptionalLong restored,
            String givenName,
            String document)
            throws SQLException {
        String name = shortened(givenName, GardenStore.NAME_CHARACTERS);
        boolean deleted = kind == Revision.Kind.DELETED;
        Instant saved = latest(now(), current.saved());
        Stored next = new Stored(current.id(), name, current.revision() + 1, saved, deleted, document);
        // the revision in the condition keeps this right where several servers share one database
        try (PreparedStatement update = connection.prepareStatement("update garden set name = ?, sort_key = ?,"
                + " revision = ?, changed = ?, deleted = ? where id = ? and revision = ?")) {
            update.setString(1, name);
            update.setString(2, sortKey(name));
            update.setLong(3, next.revision());
            update.setString(4, next.saved().toString());
            update.setInt(5, deleted ? 1 : 0);
            update.setString(6, next.id());
            update.setLong(7, current.revision());
            if (update.executeUpdate() == 0)
                return new Stale(current(connection, current.id()).orElseThrow());
        }
        insertRevision(connection, next, kind, restored, Optional.empty());
        database.announce(connection, next.id(), next.revision());
        return new Made(next);
    }

    private void insertRevision(
            Connection connection,
            Stored stored,
            Revision.Kind kind,
            OptionalLong restored,
            Optional<String> stamp)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("insert into revision"
                + " (garden, number, kind, restored, name, saved, document, stamp) values (?, ?, ?, ?, ?, ?, ?, ?)")) {
            insert.setString(1, stored.id());
            insert.setLong(2, stored.revision());
            insert.setString(3, kind.name());
            if (restored.isPresent()) insert.setLong(4, restored.getAsLong());
            else insert.setNull(4, Types.BIGINT);
            insert.setString(5, stored.name());
            insert.setString(6, stored.saved().toString());
            insert.setString(7, stored.document());
            insert.setString(8, stamp.orElse(null));
            insert.executeUpdate();
        }
    }

    Optional<Stored> current(Connection connection, String id) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(CURRENT)) {
            select.setString(1, id);
            try (ResultSet row = select.executeQuery()) {
                if (!row.next()) return Optional.empty();
                return Optional.of(new Stored(
                        row.getString(1),
                        row.getString(2),
                        row.getLong(3),
                        Instant.parse(row.getString(4)),
                        row.getInt(5) != 0,
                        row.getString(6)));
            }
        }
    }

    Optional<Stored> revision(Connection connection, String id, long number) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(
                "select name, saved, kind, document from revision where garden = ? and number = ?")) {
            select.setString(1, id);
            select.setLong(2, number);
            try (ResultSet row = select.executeQuery()) {
                if (!row.next()) return Optional.empty();
                boolean deleted = Revision.Kind.valueOf(row.getString(3)) == Revision.Kind.DELETED;
                return Optional.of(new Stored(
                        id, row.getString(1), number, Instant.parse(row.getString(2)), deleted, row.getString(4)));
            }
        }
    }

    long count(Connection connection, boolean deleted) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement("select count(*) from garden where deleted = ?")) {
            select.setInt(1, deleted ? 1 : 0);
            try (ResultSet row = select.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        }
    }

    /** A clock that was put back does not bring the history out of order. */
    private static Instant latest(Instant now, Instant before) {
        return now.isBefore(before) ? before : now;
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }

    /** Signs that no database keeps as text, such as half a pair, become question marks of their own. */
    static String shortened(String text, int characters) {
        StringBuilder kept = new StringBuilder();
        text.codePoints()
                .limit(characters)
                .map(sign -> sign == 0 || sign >= Character.MIN_SURROGATE && sign <= Character.MAX_SURROGATE ? 0xfffd : sign)
                .forEach(kept::appendCodePoint);
        return kept.toString();
    }

    private static String sortKey(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    GardenList list(Connection connection, int limit, Optional<String> after, boolean deleted) throws SQLException {
        long total = count(connection, deleted);
        List<GardenList.Row> rows = new ArrayList<>();
        String from =
                after.isPresent() ? " and (sort_key, id) > (select sort_key, id from garden where id = ?)" : "";
        try (PreparedStatement select = connection.prepareStatement("select id, name, revision, changed from garden"
                + " where deleted = ?" + from + " order by sort_key, id limit ?")) {
            int column = 1;
            select.setInt(column++, deleted ? 1 : 0);
            if (after.isPresent()) select.setString(column++, after.get());
            select.setInt(column, limit + 1);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    rows.add(new GardenList.Row(
                            row.getString(1), row.getString(2), row.getLong(3), Instant.parse(row.getString(4))));
                }
            }
        }
        boolean more = rows.size() > limit;
        List<GardenList.Row> page = more ? rows.subList(0, limit) : rows;
        return new GardenList(
                page, total, more ? Optional.of(page.get(limit - 1).id()) : Optional.empty());
    }

    List<Revision> history(Connection connection, String id, int limit, long before) throws SQLException {
        List<Revision> revisions = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement("select number, kind, restored, name, saved, stamp, printed, refused"
                + " from revision where garden = ? and number < ? order by number desc limit ?")) {
            select.setString(1, id);
            select.setLong(2, before);
            select.setInt(3, limit);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    long number = row.getLong(3);
                    OptionalLong restored = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(number);
                    revisions.add(new Revision(
                            row.getLong(1),
                            Revision.Kind.valueOf(row.getString(2)),
                            restored,
                            row.getString(4),
                            Instant.parse(row.getString(5)),
                            Optional.ofNullable(row.getString(6)),
                            row.getInt(7) != 0,
                            row.getInt(8) != 0));
                }
            }
        }
        return revisions;
    }

    /** A garden from a file, under a new id: its history as it was, the text it was kept from last. */
    Stored bringIn(Connection connection, String id, List<Kept> history) throws SQLException {
        Kept first = history.get(0);
        insert(connection, new NewGarden(id, first.name(), first.document()));
        Kept last = history.get(history.size() - 1);
        try (PreparedStatement drop = connection.prepareStatement("delete from revision where garden = ?")) {
            drop.setString(1, id);
            drop.executeUpdate();
        }
        Instant saved = Instant.MIN;
        for (Kept kept : history) {
            saved = latest(kept.saved(), saved);
            Stored stored = new Stored(id, shortened(kept.name(), GardenStore.NAME_CHARACTERS), kept.number(), saved, false, kept.document());
            insertRevision(connection, stored, kept.kind(), OptionalLong.empty(), kept.stamp());
            if (kept.refused()) mark(connection, id, kept.number(), "refused", 1);
        }
        try (PreparedStatement update = connection.prepareStatement(
                "update garden set name = ?, sort_key = ?, revision = ?, changed = ? where id = ?")) {
            String name = shortened(last.name(), GardenStore.NAME_CHARACTERS);
            update.setString(1, name);
            update.setString(2, sortKey(name));
            update.setLong(3, last.number());
            update.setString(4, saved.toString());
            update.setString(5, id);
            update.executeUpdate();
        }
        return current(connection, id).orElseThrow();
    }

    /** False where there is no such revision. */
    boolean mark(Connection connection, String id, long number, String column, Object value) throws SQLException {
        try (PreparedStatement update = connection.prepareStatement(
                "update revision set " + column + " = ? where garden = ? and number = ?")) {
            update.setObject(1, value);
            update.setString(2, id);
            update.setLong(3, number);
            return update.executeUpdate() > 0;
        }
    }

    void drop(Connection connection, String id, List<Long> numbers) throws SQLException {
        try (PreparedStatement delete =
                connection.prepareStatement("delete from revision where garden = ? and number = ?"
                        + " and stamp is null and printed = 0")) {
            for (long number : numbers) {
                delete.setString(1, id);
                delete.setLong(2, number);
                delete.executeUpdate();
            }
        }
    }

    List<String> everyId(Connection connection) throws SQLException {
        List<String> ids = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement("select id from garden order by id");
                ResultSet row = select.executeQuery()) {
            while (row.next()) ids.add(row.getString(1));
        }
        return ids;
    }

    List<Kept> everything(Connection connection, String id) throws SQLException {
        List<Kept> all = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement("select number, kind, name, saved, stamp, document, refused"
                + " from revision where garden = ? order by number")) {
            select.setString(1, id);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    all.add(new Kept(
                            row.getLong(1),
                            Revision.Kind.valueOf(row.getString(2)),
                            row.getString(3),
                            Instant.parse(row.getString(4)),
                            Optional.ofNullable(row.getString(5)),
                            row.getString(6),
                            row.getInt(7) != 0));
                }
            }
        }
        return all;
    }
}
