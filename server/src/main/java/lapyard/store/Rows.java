package lapyard.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import lapyard.store.Change.Made;
import lapyard.store.Change.Stale;

/** The rows of gardens and their revisions, in SQL that both databases take. */
final class Rows {
    private static final String CURRENT = "select g.id, g.name, g.revision, g.changed, g.deleted, r.document"
            + " from garden g join revision r on r.garden = g.id and r.number = g.revision where g.id = :id";

    private final Database database;
    private final Clock clock;

    Rows(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    Stored insert(Connection connection, NewGarden garden) throws SQLException {
        String name = shortened(garden.name(), GardenStore.NAME_CHARACTERS);
        Instant now = now();
        new Sql(connection, "insert into garden (id, name, sort_key, revision, changed, deleted) values (:id, :name, :sortKey, 1, :changed, 0)")
                .with("id", garden.id()).with("name", name).with("sortKey", sortKey(name)).with("changed", now)
                .update();
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
        int changed = new Sql(connection, "update garden set name = :name, sort_key = :sortKey, revision = :next, changed = :changed,"
                        + " deleted = :deleted where id = :id and revision = :current")
                .with("name", name).with("sortKey", sortKey(name)).with("next", next.revision()).with("changed", next.saved())
                .with("deleted", deleted).with("id", next.id()).with("current", current.revision())
                .update();
        if (changed == 0) return new Stale(current(connection, current.id()).orElseThrow());
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
        new Sql(connection, "insert into revision (garden, number, kind, restored, name, saved, document, stamp)"
                        + " values (:garden, :number, :kind, :restored, :name, :saved, :document, :stamp)")
                .with("garden", stored.id()).with("number", stored.revision()).with("kind", kind.name()).with("restored", restored)
                .with("name", stored.name()).with("saved", stored.saved()).with("document", stored.document()).with("stamp", stamp)
                .update();
    }

    Optional<Stored> current(Connection connection, String id) throws SQLException {
        return new Sql(connection, CURRENT).with("id", id).first(row -> new Stored(
                row.text("id"), row.text("name"), row.number("revision"), row.time("changed"), row.flag("deleted"), row.text("document")));
    }

    Optional<Stored> revision(Connection connection, String id, long number) throws SQLException {
        return new Sql(connection, "select name, saved, kind, document from revision where garden = :garden and number = :number")
                .with("garden", id).with("number", number)
                .first(row -> new Stored(id, row.text("name"), number, row.time("saved"), row.kind() == Revision.Kind.DELETED, row.text("document")));
    }

    long count(Connection connection, boolean deleted) throws SQLException {
        return new Sql(connection, "select count(*) as gardens from garden where deleted = :deleted").with("deleted", deleted)
                .first(row -> row.number("gardens")).orElseThrow();
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
        String from = after.isPresent() ? " and (sort_key, id) > (select sort_key, id from garden where id = :after)" : "";
        List<GardenList.Row> rows = new Sql(connection, "select id, name, revision, changed from garden where deleted = :deleted" + from
                        + " order by sort_key, id limit :limit")
                .with("deleted", deleted).with("after", after).with("limit", limit + 1)
                .all(row -> new GardenList.Row(row.text("id"), row.text("name"), row.number("revision"), row.time("changed")));
        boolean more = rows.size() > limit;
        List<GardenList.Row> page = more ? rows.subList(0, limit) : rows;
        return new GardenList(
                page, total, more ? Optional.of(page.get(limit - 1).id()) : Optional.empty());
    }

    List<Revision> history(Connection connection, String id, int limit, long before) throws SQLException {
        return new Sql(connection, "select number, kind, restored, name, saved, stamp, printed, refused from revision"
                        + " where garden = :garden and number < :before order by number desc limit :limit")
                .with("garden", id).with("before", before).with("limit", limit)
                .all(row -> new Revision(row.number("number"), row.kind(), row.numberIfAny("restored"), row.text("name"), row.time("saved"),
                        row.textIfAny("stamp"), row.flag("printed"), row.flag("refused")));
    }

    /** A garden from a file, under a new id: its history as it was, the text it was kept from last. */
    Stored bringIn(Connection connection, String id, List<KeptRevision> history) throws SQLException {
        KeptRevision first = history.get(0);
        insert(connection, new NewGarden(id, first.name(), first.document()));
        KeptRevision last = history.get(history.size() - 1);
        new Sql(connection, "delete from revision where garden = :garden").with("garden", id).update();
        Instant saved = Instant.MIN;
        for (KeptRevision kept : history) {
            saved = latest(kept.saved(), saved);
            Stored stored = new Stored(id, shortened(kept.name(), GardenStore.NAME_CHARACTERS), kept.number(), saved, false, kept.document());
            insertRevision(connection, stored, kept.kind(), OptionalLong.empty(), kept.stamp());
            if (kept.refused()) mark(connection, id, kept.number(), "refused", 1);
        }
        String name = shortened(last.name(), GardenStore.NAME_CHARACTERS);
        new Sql(connection, "update garden set name = :name, sort_key = :sortKey, revision = :revision, changed = :changed where id = :id")
                .with("name", name).with("sortKey", sortKey(name)).with("revision", last.number()).with("changed", saved).with("id", id)
                .update();
        return current(connection, id).orElseThrow();
    }

    /** False where there is no such revision. */
    boolean mark(Connection connection, String id, long number, String column, Object value) throws SQLException {
        return new Sql(connection, "update revision set " + column + " = :value where garden = :garden and number = :number")
                        .with("value", value).with("garden", id).with("number", number)
                        .update() > 0;
    }

    void drop(Connection connection, String id, List<Long> numbers) throws SQLException {
        for (long number : numbers) {
            new Sql(connection, "delete from revision where garden = :garden and number = :number and stamp is null and printed = 0")
                    .with("garden", id).with("number", number)
                    .update();
        }
    }

    List<String> everyId(Connection connection) throws SQLException {
        return new Sql(connection, "select id from garden order by id").all(row -> row.text("id"));
    }

    List<KeptRevision> everything(Connection connection, String id) throws SQLException {
        return new Sql(connection, "select number, kind, name, saved, stamp, document, refused from revision where garden = :garden order by number")
                .with("garden", id)
                .all(row -> new KeptRevision(row.number("number"), row.kind(), row.text("name"), row.time("saved"), row.textIfAny("stamp"), row.text("document"),
                        row.flag("refused")));
    }
}
