package lapyard.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import lapyard.plan.GardenState;
import lapyard.store.Change.Made;
import lapyard.store.Change.Stale;

/** The rows of gardens and their revisions, in SQL that both databases take. */
record Rows(Database database, Clock clock) {
    private static final String CURRENT = "select g.id, g.name, g.revision, g.changed, g.deleted, r.document"
            + " from garden g join revision r on r.garden = g.id and r.number = g.revision where g.id = :id";

    private static final String LISTED = "name = :name, sort_key = :sortKey, client = :client, client_key = :clientKey, state = :state";

    private static final String ROW = "select id, name, client, state, revision, changed";

    Stored insert(Connection connection, NewGarden garden) throws SQLException {
        Listed listed = Listed.of(garden.name(), garden.document());
        Instant now = clock.instant();
        listed.bind(new Sql(connection, "insert into garden (id, name, sort_key, client, client_key, state, revision, changed, deleted)"
                        + " values (:id, :name, :sortKey, :client, :clientKey, :state, 1, :changed, 0)"))
                .with("id", garden.id()).with("changed", now)
                .update();
        Stored stored = new Stored(garden.id(), listed.name(), 1, now, false, garden.document());
        insertRevision(connection, stored, Revision.Kind.CREATED, OptionalLong.empty(), Optional.empty());
        listed.keepUses(connection, garden.id());
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
        Listed listed = Listed.of(givenName, document);
        boolean deleted = kind == Revision.Kind.DELETED;
        Instant saved = latest(clock.instant(), current.saved());
        Stored next = new Stored(current.id(), listed.name(), current.revision() + 1, saved, deleted, document);
        // the revision in the condition keeps this right where several servers share one database
        int changed = listed.bind(new Sql(connection, "update garden set " + LISTED + ", revision = :next, changed = :changed, deleted = :deleted"
                        + (deleted ? ", archived = 0" : "") + " where id = :id and revision = :current"))
                .with("next", next.revision()).with("changed", next.saved())
                .with("deleted", deleted).with("id", next.id()).with("current", current.revision())
                .update();
        if (changed == 0) return new Stale(current(connection, current.id()).orElseThrow());
        insertRevision(connection, next, kind, restored, Optional.empty());
        listed.keepUses(connection, next.id());
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
        Sql.insert(connection, "revision", "garden", stored.id(), "number", stored.revision(), "kind", kind.name(), "restored", restored,
                "name", stored.name(), "saved", stored.saved(), "document", stored.document(), "stamp", stamp);
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

    boolean none(Connection connection) throws SQLException {
        return new Sql(connection, "select id from garden limit 1").first(row -> row.text("id")).isEmpty();
    }

    /** A clock that was put back does not bring the history out of order. */
    private static Instant latest(Instant now, Instant before) {
        return now.isBefore(before) ? before : now;
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

    GardenList list(Connection connection, GardenList.Ask ask) throws SQLException {
        boolean latestFirst = ask.order() == GardenList.Order.CHANGED;
        StringBuilder where = new StringBuilder(" from garden where deleted = :deleted and archived = :archived");
        if (ask.state().isPresent()) where.append(" and state = :state");
        for (int i = 0; i < ask.words().size(); i++)
            where.append(" and (sort_key like :%1$s escape '!' or client_key like :%1$s escape '!')".formatted(word(i)));
        long total = asked(connection, "select count(*) as gardens" + where, ask).first(row -> row.number("gardens")).orElseThrow();
        String columns = ask.order().columns;
        String behind = latestFirst ? "(:time, :after)" : "(select " + columns + " from garden where id = :after)";
        String from = ask.after().isEmpty() ? "" : " and (" + columns + ") " + (latestFirst ? "<" : ">") + " " + behind;
        List<GardenList.Row> rows = asked(connection, ROW + where + from
                        + " order by " + (latestFirst ? "changed desc, id desc" : columns) + " limit :limit", ask)
                .all(Rows::listed);
        boolean more = rows.size() > ask.limit();
        List<GardenList.Row> page = more ? rows.subList(0, ask.limit()) : rows;
        return new GardenList(page, total, more ? Optional.of(end(page.get(ask.limit() - 1), latestFirst)) : Optional.empty());
    }

    Optional<GardenList.Row> row(Connection connection, String id) throws SQLException {
        return new Sql(connection, ROW + " from garden where id = :id and deleted = 0").with("id", id).first(Rows::listed);
    }

    private static GardenList.Row listed(Sql.Columns row) throws SQLException {
        return new GardenList.Row(row.text("id"), row.text("name"), row.text("client"), GardenState.values()[(int) row.number("state")],
                row.number("revision"), row.time("changed"));
    }

    /** A garden that is saved between two pages goes to the top of the latest, so that an end there is a time, not a garden. */
    private static String end(GardenList.Row last, boolean latestFirst) {
        return latestFirst ? last.changed().toEpochMilli() + "-" + last.id() : last.id();
    }

    private static String word(int number) {
        return "word" + (char) ('a' + number);
    }

    private static Sql asked(Connection connection, String text, GardenList.Ask ask) {
        Sql sql = new Sql(connection, text)
                .with("deleted", ask.place() == GardenList.Place.DELETED).with("archived", ask.place() == GardenList.Place.ARCHIVED)
                .with("state", ask.state().map(GardenState::ordinal)).with("limit", ask.limit() + 1);
        for (int i = 0; i < ask.words().size(); i++)
            sql.with(word(i), "%" + Listed.key(ask.words().get(i)).replaceAll("[!%_]", "!$0") + "%");
        String after = ask.after().orElse("");
        int dash = ask.order() == GardenList.Order.CHANGED ? after.indexOf('-') : -1;
        if (dash > 0) sql.with("time", Instant.ofEpochMilli(Long.parseLong(after.substring(0, dash))));
        return sql.with("after", after.substring(dash + 1));
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
        Listed listed = Listed.of(last.name(), last.document());
        listed.keepUses(connection, id);
        listed.bind(new Sql(connection, "update garden set " + LISTED + ", revision = :revision, changed = :changed where id = :id"))
                .with("revision", last.number()).with("changed", saved).with("id", id)
                .update();
        return current(connection, id).orElseThrow();
    }

    /** False where there is no such revision. */
    boolean mark(Connection connection, String id, long number, String column, Object value) throws SQLException {
        return new Sql(connection, "update revision set " + column + " = :value where garden = :garden and number = :number")
                        .with("value", value).with("garden", id).with("number", number)
                        .update() > 0;
    }
}
