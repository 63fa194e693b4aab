package lapyard.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import lapyard.store.Change.Deleted;
import lapyard.store.Change.Made;
import lapyard.store.Change.NoSuchGarden;
import lapyard.store.Change.NoSuchRevision;
import lapyard.store.Change.Stale;

/**
 * Gardens with every revision they ever had. A change names the revision it was made from and is refused when
 * that is no longer the current one. Safe for many threads; a change that was answered is on disk.
 */
public final class GardenStore implements AutoCloseable {
    /** The longest name that a list keeps, in characters. */
    public static final int NAME_CHARACTERS = 200;

    private static final String CURRENT = "select g.id, g.name, g.revision, g.changed, g.deleted, r.document"
            + " from garden g join revision r on r.garden = g.id and r.number = g.revision where g.id = ?";

    private final DataFolder folder;

    private GardenStore(DataFolder folder) {
        this.folder = folder;
    }

    /** Takes the folder for this process alone, makes it where it is missing. */
    public static Opening open(Path folder) {
        DataFolder.Held held = DataFolder.hold(folder);
        if (held instanceof DataFolder.Held.Folder free) return new Opening.Open(new GardenStore(free.folder()));
        if (held instanceof DataFolder.Held.InUse inUse) return new Opening.InUse(folder, inUse.process());
        if (held instanceof DataFolder.Held.Unusable unusable) return new Opening.Unusable(folder, unusable.why());
        throw new AssertionError(held);
    }

    /**
     * @param limit   rows on the page, 1 or more
     * @param after   the {@code next} of the page before, or an id: the page starts behind that garden
     * @param deleted true for the deleted gardens, false for the others
     */
    public GardenList list(int limit, Optional<String> after, boolean deleted) {
        if (limit < 1) throw new IllegalArgumentException("a page has 1 row or more, was " + limit);
        return folder.read(connection -> {
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
        });
    }

    /** The garden as it now stands, also where it is deleted; empty where there never was one. */
    public Optional<Stored> find(String id) {
        return folder.read(connection -> current(connection, id));
    }

    /**
     * Newest first; empty where there never was such a garden.
     *
     * @param limit  lines at most
     * @param before only revisions with a lower number than this
     */
    public List<Revision> history(String id, int limit, long before) {
        return folder.read(connection -> {
            List<Revision> revisions = new ArrayList<>();
            try (PreparedStatement select = connection.prepareStatement("select number, kind, restored, name, saved"
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
                                Instant.parse(row.getString(5))));
                    }
                }
            }
            return revisions;
        });
    }

    /** One revision as it was saved. */
    public Optional<Stored> revision(String id, long number) {
        return folder.read(connection -> revision(connection, id, number));
    }

    /**
     * Keeps a new garden as revision 1.
     *
     * @throws IllegalArgumentException if there is, or was, a garden of that id
     */
    public Stored create(NewGarden garden) {
        return folder.write(connection -> {
            if (current(connection, garden.id()).isPresent())
                throw new IllegalArgumentException("there is a garden " + garden.id() + " already");
            return insert(connection, garden);
        });
    }

    /** Puts these gardens in, all or none, where the store never held one; says whether it did. */
    public boolean fillIfNew(List<NewGarden> gardens) {
        return folder.write(connection -> {
            if (count(connection, false) + count(connection, true) > 0) return false;
            for (NewGarden garden : gardens) insert(connection, garden);
            return true;
        });
    }

    /** True where the store never held a garden. */
    public boolean isNew() {
        return folder.read(connection -> count(connection, false) + count(connection, true) == 0);
    }

    /**
     * Keeps a new text. Where the current text is the same already, nothing is added and the current revision is
     * the answer: a client that never heard the answer to its save may ask again.
     *
     * @param expected the revision that the new text was made from
     */
    public Change save(String id, long expected, String name, String document) {
        return change(id, (connection, current) -> {
            if (current.deleted()) return new Deleted(current);
            if (current.document().equals(document)) return new Made(current);
            if (current.revision() != expected) return new Stale(current);
            return add(connection, current, Revision.Kind.SAVED, OptionalLong.empty(), name, document);
        });
    }

    /** Takes the garden off the list; its history stays. */
    public Change delete(String id, long expected) {
        return change(id, (connection, current) -> {
            if (current.deleted()) return new Deleted(current);
            if (current.revision() != expected) return new Stale(current);
            return add(
                    connection,
                    current,
                    Revision.Kind.DELETED,
                    OptionalLong.empty(),
                    current.name(),
                    current.document());
        });
    }

    /** Brings an older text back as a new revision; a deleted garden returns to the list. */
    public Change restore(String id, long expected, long number) {
        return change(id, (connection, current) -> {
            if (current.revision() != expected) return new Stale(current);
            Optional<Stored> old = revision(connection, id, number);
            if (old.isEmpty()) return new NoSuchRevision(id, number, current.revision());
            return add(
                    connection,
                    current,
                    Revision.Kind.RESTORED,
                    OptionalLong.of(number),
                    old.get().name(),
                    old.get().document());
        });
    }

    /** Waits for the change that is being written, then lets the folder go. */
    @Override
    public void close() {
        folder.close();
    }

    private interface Changing {
        Change from(Connection connection, Stored current) throws SQLException;
    }

    private Change change(String id, Changing changing) {
        return folder.write(connection -> {
            Optional<Stored> current = current(connection, id);
            if (current.isEmpty()) return new NoSuchGarden(id);
            return changing.from(connection, current.get());
        });
    }

    private Stored insert(Connection connection, NewGarden garden) throws SQLException {
        String name = shortened(garden.name());
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
        insertRevision(connection, stored, Revision.Kind.CREATED, OptionalLong.empty());
        return stored;
    }

    private Change add(
            Connection connection,
            Stored current,
            Revision.Kind kind,
            OptionalLong restored,
            String givenName,
            String document)
            throws SQLException {
        String name = shortened(givenName);
        boolean deleted = kind == Revision.Kind.DELETED;
        Stored next = new Stored(current.id(), name, current.revision() + 1, now(), deleted, document);
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
        insertRevision(connection, next, kind, restored);
        return new Made(next);
    }

    private void insertRevision(Connection connection, Stored stored, Revision.Kind kind, OptionalLong restored)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("insert into revision"
                + " (garden, number, kind, restored, name, saved, document) values (?, ?, ?, ?, ?, ?, ?)")) {
            insert.setString(1, stored.id());
            insert.setLong(2, stored.revision());
            insert.setString(3, kind.name());
            if (restored.isPresent()) insert.setLong(4, restored.getAsLong());
            else insert.setNull(4, java.sql.Types.BIGINT);
            insert.setString(5, stored.name());
            insert.setString(6, stored.saved().toString());
            insert.setString(7, stored.document());
            insert.executeUpdate();
        }
    }

    private static Optional<Stored> current(Connection connection, String id) throws SQLException {
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

    private static Optional<Stored> revision(Connection connection, String id, long number) throws SQLException {
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

    private static long count(Connection connection, boolean deleted) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement("select count(*) from garden where deleted = ?")) {
            select.setInt(1, deleted ? 1 : 0);
            try (ResultSet row = select.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        }
    }

    private static Instant now() {
        return Instant.now().truncatedTo(ChronoUnit.MILLIS);
    }

    private static String shortened(String name) {
        return name.codePointCount(0, name.length()) <= NAME_CHARACTERS
                ? name
                : name.substring(0, name.offsetByCodePoints(0, NAME_CHARACTERS));
    }

    private static String sortKey(String name) {
        return name.toLowerCase(Locale.ROOT);
    }
}
