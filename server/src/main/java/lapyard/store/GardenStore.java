package lapyard.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Properties;
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

    private static final int STAMP_CHARACTERS = 100;

    final Database database;
    private final Rows rows;
    private final Shares shares;
    private final ShelfItems shelf;
    private final Photos photos;

    GardenStore(Database database, Clock exact) {
        Clock clock = Clock.tick(exact, Duration.ofMillis(1)); // finer times are lost on their way out and back
        this.database = database;
        this.rows = new Rows(database, clock);
        this.shares = new Shares(database, clock);
        this.shelf = new ShelfItems(database, clock);
        this.photos = new Photos(database, clock);
    }

    /** Takes the folder for this process alone, makes it where it is missing. */
    public static Opening open(Path folder) {
        return open(folder, Clock.systemUTC());
    }

    static Opening open(Path folder, Clock clock) {
        return DataFolder.hold(folder, clock);
    }

    /**
     * Joins the servers on one PostgreSQL database.
     *
     * @param url   {@code jdbc:postgresql://host/name}
     * @param login {@code user} and {@code password} where the address does not hold them
     */
    public static Opening open(String url, Properties login) {
        String place = "database " + url.replaceAll("\\?.*", ""); // a password may stand behind it
        if (!url.startsWith("jdbc:postgresql:"))
            return new Opening.Unusable(place, "give an address that starts with jdbc:postgresql:");
        try {
            return new Opening.Open(new GardenStore(SharedDatabase.connect(url, login), Clock.systemUTC()));
        } catch (SQLException refused) {
            return new Opening.Unusable(place, refused.getMessage().lines().findFirst().orElse("it does not answer"));
        } catch (Schema.Unknown unknown) {
            return new Opening.Unusable(place, unknown.getMessage());
        }
    }

    public GardenList list(GardenList.Ask ask) {
        return database.read(connection -> rows.list(connection, ask));
    }

    /** What a list shows of one garden; empty where none such stands. */
    public Optional<GardenList.Row> row(String id) {
        return database.read(connection -> rows.row(connection, id));
    }

    /**
     * Puts a garden away from the list, or back on it; nothing else changes. A deleted one is on no list.
     *
     * @return false where no such garden stands
     */
    public boolean archive(String id, boolean away) {
        return database.write(connection -> new Sql(connection, "update garden set archived = :archived where id = :id and deleted = 0")
                .with("archived", away).with("id", id).update() > 0);
    }

    /**
     * A number that is another one after every change to any garden; empty while a change is being made, and where other
     * servers share the database. What was found since a number was told, and while it is still told, stands.
     */
    public OptionalLong moment() {
        return database.moment();
    }

    /** The garden as it now stands, also where it is deleted; empty where there never was one. */
    public Optional<Stored> find(String id) {
        return database.read(connection -> rows.current(connection, id));
    }

    /**
     * Newest first; empty where there never was such a garden.
     *
     * @param limit  lines at most
     * @param before only revisions with a lower number than this
     */
    public List<Revision> history(String id, int limit, long before) {
        return database.read(connection -> rows.history(connection, id, limit, before));
    }

    /** One revision as it was saved. */
    public Optional<Stored> revision(String id, long number) {
        return database.read(connection -> rows.revision(connection, id, number));
    }

    /**
     * Keeps a new garden as revision 1.
     *
     * @throws IllegalArgumentException if there is, or was, a garden of that id
     */
    public Stored create(NewGarden garden) {
        return database.write(connection -> {
            if (rows.current(connection, garden.id()).isPresent())
                throw new IllegalArgumentException("there is a garden " + garden.id() + " already");
            return rows.insert(connection, garden);
        });
    }

    /** Puts these gardens in, all or none, where the store never held one; says whether it did. */
    public boolean fillIfNew(List<NewGarden> gardens) {
        return database.write(connection -> {
            database.aloneWith(connection);
            if (!rows.none(connection)) return false;
            for (NewGarden garden : gardens) rows.insert(connection, garden);
            return true;
        });
    }

    /** True where the store never held a garden. */
    public boolean isNew() {
        return database.read(rows::none);
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
            return rows.add(connection, current, Revision.Kind.SAVED, OptionalLong.empty(), name, document);
        });
    }

    /** Takes the garden off the list; its history stays. */
    public Change delete(String id, long expected) {
        return change(id, (connection, current) -> {
            if (current.deleted()) return new Deleted(current);
            if (current.revision() != expected) return new Stale(current);
            return rows.add(
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
            Optional<Stored> old = rows.revision(connection, id, number);
            if (old.isEmpty()) return new NoSuchRevision(id, number, current.revision());
            return rows.add(
                    connection,
                    current,
                    Revision.Kind.RESTORED,
                    OptionalLong.of(number),
                    old.get().name(),
                    old.get().document());
        });
    }

    /**
     * Gives a revision a name that it keeps, and with it its place in the history; empty text takes the name away.
     *
     * @return false where there is no such revision
     */
    public boolean stamp(String id, long number, String stamp) {
        Optional<String> kept = Optional.of(Rows.shortened(stamp.strip(), STAMP_CHARACTERS)).filter(text -> !text.isEmpty());
        return database.write(connection -> rows.mark(connection, id, number, "stamp", kept.orElse(null)));
    }

    /** Remembers that sheets of this revision were made for printing. */
    public void printed(String id, long number) {
        database.write(connection -> rows.mark(connection, id, number, "printed", 1));
    }

    /** Drops what the rule drops, garden by garden; returns how many revisions went. */
    public int thin(Retention rule) {
        int went = 0;
        for (String id : database.read(connection -> new Sql(connection, "select id from garden order by id").all(row -> row.text("id")))) {
            went += database.write(connection -> {
                List<Long> drop = rule.dropped(rows.history(connection, id, Integer.MAX_VALUE, Long.MAX_VALUE));
                for (long number : drop) {
                    new Sql(connection, "delete from revision where garden = :garden and number = :number and stamp is null and printed = 0")
                            .with("garden", id).with("number", number).update();
                }
                return drop.size();
            });
        }
        return went;
    }

    /** The whole history with its documents, oldest first: what a garden's file holds. */
    public List<KeptRevision> everything(String id) {
        return database.read(connection -> new Sql(connection, "select number, kind, name, saved, stamp, document, refused from revision where garden = :garden order by number")
                .with("garden", id)
                .all(row -> new KeptRevision(row.number("number"), row.kind(), row.text("name"), row.time("saved"), row.textIfAny("stamp"), row.text("document"),
                        row.flag("refused"))));
    }

    /**
     * A garden from a file, under a new id.
     *
     * @param history oldest first, numbers rising from 1 or more; what was deleted in it comes back as saved
     */
    public Stored bringIn(String id, List<KeptRevision> history) {
        if (history.isEmpty()) throw new IllegalArgumentException("a garden has 1 revision or more");
        return database.write(connection -> rows.bringIn(connection, id, history));
    }

    public Shares shares() {
        return shares;
    }

    public ShelfItems shelf() {
        return shelf;
    }

    public Photos photos() {
        return photos;
    }

    /** Hears of every new revision until what comes back is closed. */
    public AutoCloseable listen(NewsListener listener) {
        return database.listen(listener);
    }

    /**
     * Asks whether gardens could be read and changed now.
     *
     * @throws StoreFault where they could not
     */
    public void probe() {
        database.probe();
    }

    /** {@code sqlite} or {@code postgresql}. */
    public String kind() {
        return database.kind();
    }

    /** Waits for the change that is being written, then lets the folder go. */
    @Override
    public void close() {
        database.close();
    }

    private interface Changing {
        Change from(Connection connection, Stored current) throws SQLException;
    }

    private Change change(String id, Changing changing) {
        return database.write(connection -> {
            Optional<Stored> current = rows.current(connection, id);
            if (current.isEmpty()) return new NoSuchGarden(id);
            return changing.from(connection, current.get());
        });
    }
}
