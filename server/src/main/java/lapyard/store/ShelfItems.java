package lapyard.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import lapyard.plan.GardenState;

/** What is kept once for all gardens of a store, every revision of it, and which gardens use it. */
public record ShelfItems(GardenStore store, Clock clock) {
    /** So many can be kept. */
    public static final int MOST = 1_000;

    private static final String HEAD = "select i.id, i.kind, i.name, i.revision, i.saved, i.deleted";

    /**
     * A garden that uses one.
     *
     * @param uses the revision that it has
     */
    public record Use(String garden, String name, GardenState state, long uses) {}

    /** Without their contents, by name. */
    public List<ShelfItem> list() {
        return store.read(connection -> new Sql(connection, HEAD + ", (select count(*) from shelf_use u join garden g on g.id = u.garden and g.deleted = 0 where u.item = i.id) as gardens"
                        + " from shelf_item i where i.deleted = 0")
                .all(row -> item(row, "", row.number("gardens"))).stream()
                .sorted((a, b) -> Listed.key(a.name()).compareTo(Listed.key(b.name())))
                .toList());
    }

    /** Its newest revision, also where it was taken off; empty where there never was one. */
    public Optional<ShelfItem> find(String id) {
        return store.read(connection -> new Sql(connection, HEAD + ", r.content from shelf_item i join shelf_revision r on r.item = i.id and r.number = i.revision where i.id = :id")
                .with("id", id).first(row -> item(row, row.text("content"), 0)));
    }

    /** One revision as it was kept. */
    public Optional<ShelfItem> revision(String id, long number) {
        return store.read(connection -> new Sql(connection, "select i.id, i.kind, r.name, r.number as revision, r.saved, i.deleted, r.content"
                        + " from shelf_item i join shelf_revision r on r.item = i.id and r.number = :number where i.id = :id")
                .with("id", id).with("number", number).first(row -> item(row, row.text("content"), 0)));
    }

    /**
     * @return its revision 1
     * @throws IllegalArgumentException if {@link #MOST} are kept already
     */
    public ShelfItem add(String id, String kind, String name, String content) {
        return store.write(connection -> {
            room(connection, id);
            ShelfItem item = new ShelfItem(id, kind, shortened(name), 1, clock.instant(), false, content, 0);
            Sql.insert(connection, "shelf_item", "id", id, "kind", kind, "name", item.name(), "revision", 1, "saved", item.saved(), "deleted", false);
            insert(connection, item);
            return item;
        });
    }

    /**
     * Keeps a new revision; one that was taken off is back with it.
     *
     * @param expected the revision that the new one was made from
     * @return empty where that is not the newest, or there is no such piece
     * @throws IllegalArgumentException if it is off and {@link #MOST} are kept already
     */
    public Optional<ShelfItem> save(String id, long expected, String name, String content) {
        return store.write(connection -> {
            room(connection, id);
            Instant saved = clock.instant();
            int changed = new Sql(connection, "update shelf_item set name = :name, revision = revision + 1, saved = :saved, deleted = 0 where id = :id and revision = :expected")
                    .with("name", shortened(name)).with("saved", saved).with("id", id).with("expected", expected).update();
            if (changed == 0) return Optional.empty();
            String kind = new Sql(connection, "select kind from shelf_item where id = :id").with("id", id).first(row -> row.text("kind")).orElseThrow();
            ShelfItem item = new ShelfItem(id, kind, shortened(name), expected + 1, saved, false, content, 0);
            insert(connection, item);
            return Optional.of(item);
        });
    }

    /** Whether one more has room, or this one is kept. */
    private static void room(Connection connection, String id) throws SQLException {
        long others = new Sql(connection, "select count(*) as items from shelf_item where deleted = 0 and not exists (select 1 from shelf_item k where k.id = :id and k.deleted = 0)")
                .with("id", id).first(row -> row.number("items")).orElseThrow();
        if (others >= MOST) throw new IllegalArgumentException("the shelf holds " + MOST + " pieces: take one off first");
    }

    /** Takes it off; its revisions stay, and so does what gardens have of it. False where none is there. */
    public boolean remove(String id) {
        return store.write(connection -> new Sql(connection, "update shelf_item set deleted = 1 where id = :id and deleted = 0").with("id", id).update() > 0);
    }

    /**
     * Gardens that use it, by id; deleted ones are left out.
     *
     * @param after the id behind which it goes on; empty for the first
     */
    public List<Use> uses(String id, String after, int limit) {
        return store.read(connection -> new Sql(connection, "select g.id, g.name, g.state, u.revision from shelf_use u join garden g on g.id = u.garden and g.deleted = 0"
                        + " where u.item = :id and u.garden > :after order by u.garden limit :limit")
                .with("id", id).with("after", after).with("limit", limit)
                .all(row -> new Use(row.text("id"), row.text("name"), GardenState.values()[(int) row.number("state")], row.number("revision"))));
    }

    private static void insert(Connection connection, ShelfItem item) throws SQLException {
        Sql.insert(connection, "shelf_revision",
                "item", item.id(), "number", item.revision(), "name", item.name(), "saved", item.saved(), "content", item.content());
    }

    private static ShelfItem item(Sql.Columns row, String content, long gardens) throws SQLException {
        return new ShelfItem(row.text("id"), row.text("kind"), row.text("name"), row.number("revision"), row.time("saved"), row.flag("deleted"), content, gardens);
    }

    private static String shortened(String name) {
        return Sql.shortened(name, GardenStore.NAME_CHARACTERS);
    }
}
