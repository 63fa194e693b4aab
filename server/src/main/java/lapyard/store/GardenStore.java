package lapyard.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Properties;
import java.util.concurrent.CopyOnWriteArrayList;
import lapyard.plan.GardenState;
import lapyard.store.Change.Deleted;
import lapyard.store.Change.Made;
import lapyard.store.Change.NoSuchGarden;
import lapyard.store.Change.NoSuchRevision;
import lapyard.store.Change.Stale;

/**
 * Gardens with every revision they ever had. A change names the revision it was made from and is refused when
 * that is no longer the current one. Safe for many threads; a change that was answered is on disk.
 * Where the tables lie is said by its kinds: a folder of this machine, or a server that several share.
 */
public abstract class GardenStore implements AutoCloseable {
    /** The longest name that a list keeps, in characters. */
    public static final int NAME_CHARACTERS = 200;

    private static final int STAMP_CHARACTERS = 100;

    private static final String CURRENT = "select g.id, g.name, g.revision, g.changed, g.deleted, r.document"
            + " from garden g join revision r on r.garden = g.id and r.number = g.revision where g.id = :id";

    private static final String LISTED = "name = :name, sort_key = :sortKey, client = :client, client_key = :clientKey, state = :state";

    private static final String LOGIN_BEFORE_HOST = "//[^?]*@";

    private static final String LOGIN = "give user and password by LAPYARD_DATABASE_USER and LAPYARD_DATABASE_PASSWORD";

    private static final String ROW = "select id, name, client, state, revision, changed";

    private final List<NewsListener> listeners = new CopyOnWriteArrayList<>();
    private final Clock clock;
    private final Shares shares;
    private final ShelfItems shelf;
    private final Photos photos;

    GardenStore(Clock exact) {
        this.clock = Clock.tick(exact, Duration.ofMillis(1)); // finer times are lost on their way out and back
        this.shares = new Shares(this, clock);
        this.shelf = new ShelfItems(this, clock);
        this.photos = new Photos(this, clock);
    }

    /**
     * Takes the folder for this process alone, makes it where it is missing.
     *
     * @throws IllegalArgumentException with what to do where it cannot be used; it was left as it was then
     */
    public static GardenStore open(Path folder) {
        return open(folder, Clock.systemUTC());
    }

    static GardenStore open(Path folder, Clock clock) {
        return DataFolder.hold(folder, clock);
    }

    /**
     * Joins the servers on one PostgreSQL database.
     *
     * @param url   {@code jdbc:postgresql://host/name}
     * @param login {@code user} and {@code password} where the address does not hold them
     * @throws IllegalArgumentException where it cannot be used
     */
    public static GardenStore open(String url, Properties login) {
        String place = place(url);
        if (!url.startsWith("jdbc:postgresql:"))
            throw unusable(place, "give an address that starts with jdbc:postgresql:");
        if (url.matches("[^?]*" + LOGIN_BEFORE_HOST + ".*")) throw unusable(place, "its address holds a log-in before the host: " + LOGIN);
        try {
            return SharedDatabase.connect(url, login, Clock.systemUTC());
        } catch (SQLException refused) {
            throw unusable(place, refused.getMessage().lines().findFirst().orElse("it does not answer") + wayOut(refused.getSQLState()));
        } catch (Schema.Unknown unknown) {
            throw unusable(place, unknown.getMessage());
        }
    }

    /** A database as it is told to people: its address without a log-in. */
    public static String place(String url) {
        return "database " + url.replaceAll("\\?.*", "").replaceFirst(LOGIN_BEFORE_HOST, "//");
    }

    /** What the driver does not say. @param state PostgreSQL, appendix A: 28 invalid authorization, 3D000 no such database, 08004 connection rejected */
    private static String wayOut(String state) {
        if (state == null) return "";
        return state.startsWith("28") || state.equals("08004") ? ": " + LOGIN : state.equals("3D000") ? ": make it first, or name another" : "";
    }

    static IllegalArgumentException unusable(String place, String why) {
        return new IllegalArgumentException(place + " cannot be used: " + why);
    }

    public GardenList list(GardenList.Ask ask) {
        return read(connection -> {
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
                    .all(GardenStore::listed);
            boolean more = rows.size() > ask.limit();
            List<GardenList.Row> page = more ? rows.subList(0, ask.limit()) : rows;
            return new GardenList(page, total, more ? Optional.of(end(page.get(ask.limit() - 1), latestFirst)) : Optional.empty());
        });
    }

    /** What a list shows of one garden; empty where none such stands. */
    public Optional<GardenList.Row> row(String id) {
        return read(connection -> new Sql(connection, ROW + " from garden where id = :id and deleted = 0").with("id", id).first(GardenStore::listed));
    }

    /**
     * Puts a garden away from the list, or back on it; nothing else changes. A deleted one is on no list.
     *
     * @return false where no such garden stands
     */
    public boolean archive(String id, boolean away) {
        return write(connection -> new Sql(connection, "update garden set archived = :archived where id = :id and deleted = 0")
                .with("archived", away).with("id", id).update() > 0);
    }

    /**
     * A number that is another one after every change to any garden; empty while a change is being made, and where other
     * servers share the database. What was found since a number was told, and while it is still told, stands.
     */
    public OptionalLong moment() {
        return OptionalLong.empty();
    }

    /** The garden as it now stands, also where it is deleted; empty where there never was one. */
    public Optional<Stored> find(String id) {
        return read(connection -> current(connection, id));
    }

    /**
     * Newest first; empty where there never was such a garden.
     *
     * @param limit  lines at most
     * @param before only revisions with a lower number than this
     */
    public List<Revision> history(String id, int limit, long before) {
        return read(connection -> history(connection, id, limit, before));
    }

    /** One revision as it was saved. */
    public Optional<Stored> revision(String id, long number) {
        return read(connection -> revision(connection, id, number));
    }

    /**
     * Keeps a new garden as revision 1.
     *
     * @throws IllegalArgumentException if there is, or was, a garden of that id
     */
    public Stored create(NewGarden garden) {
        return write(connection -> {
            if (current(connection, garden.id()).isPresent())
                throw new IllegalArgumentException("there is a garden " + garden.id() + " already");
            return insert(connection, garden);
        });
    }

    /** Puts these gardens in, all or none, where the store never held one; says whether it did. */
    public boolean fillIfNew(List<NewGarden> gardens) {
        return write(connection -> {
            aloneWith(connection);
            if (!none(connection)) return false;
            for (NewGarden garden : gardens) insert(connection, garden);
            return true;
        });
    }

    /** True where the store never held a garden. */
    public boolean isNew() {
        return read(this::none);
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

    /**
     * Gives a revision a name that it keeps, and with it its place in the history; empty text takes the name away.
     *
     * @return false where there is no such revision
     */
    public boolean stamp(String id, long number, String stamp) {
        return write(connection -> mark(connection, id, number, "stamp", kept(stamp)));
    }

    private static Optional<String> kept(String stamp) {
        return Optional.of(Sql.shortened(stamp.strip(), STAMP_CHARACTERS)).filter(text -> !text.isEmpty());
    }

    /** Remembers that sheets of this revision were made for printing. */
    public void printed(String id, long number) {
        write(connection -> mark(connection, id, number, "printed", 1));
    }

    /** Drops what the rule drops, garden by garden; returns how many revisions went. */
    public int thin(Retention rule) {
        int went = 0;
        for (String id : read(connection -> new Sql(connection, "select id from garden order by id").all(row -> row.text("id")))) {
            went += write(connection -> {
                List<Long> drop = rule.dropped(history(connection, id, Integer.MAX_VALUE, Long.MAX_VALUE));
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
        return read(connection -> new Sql(connection, "select number, kind, name, saved, stamp, document, refused from revision where garden = :garden order by number")
                .with("garden", id)
                .all(row -> new KeptRevision(row.number("number"), row.kind(), row.text("name"), row.time("saved"), row.textIfAny("stamp"), row.text("document"),
                        row.flag("refused"))));
    }

    /**
     * A garden from a file, under a new id.
     *
     * @param history oldest first, numbers rising from 1 or more; where the last one deleted it, it stands again
     */
    public Stored bringIn(String id, List<KeptRevision> history) {
        if (history.isEmpty()) throw new IllegalArgumentException("a garden has 1 revision or more");
        return write(connection -> {
            KeptRevision first = history.get(0);
            insert(connection, new NewGarden(id, first.name(), first.document()));
            KeptRevision last = history.get(history.size() - 1);
            new Sql(connection, "delete from revision where garden = :garden").with("garden", id).update();
            Instant saved = Instant.MIN;
            for (KeptRevision kept : history) {
                saved = latest(kept.saved(), saved);
                Stored stored = new Stored(id, Sql.shortened(kept.name(), NAME_CHARACTERS), kept.number(), saved, false, kept.document());
                insertRevision(connection, stored, kept.kind(), OptionalLong.empty(), kept.stamp().flatMap(GardenStore::kept));
                if (kept.refused()) mark(connection, id, kept.number(), "refused", 1);
            }
            Listed listed = Listed.of(last.name(), last.document());
            listed.keepUses(connection, id);
            listed.bind(new Sql(connection, "update garden set " + LISTED + ", revision = :revision, changed = :changed where id = :id"))
                    .with("revision", last.number()).with("changed", saved).with("id", id)
                    .update();
            return current(connection, id).orElseThrow();
        });
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

    /** Tells of new revisions until what comes back is closed. */
    public final AutoCloseable listen(NewsListener listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    /** Tells the listeners of this process. */
    final void saved(String garden, long revision) {
        for (NewsListener listener : listeners) listener.saved(garden, revision);
    }

    final void missed() {
        for (NewsListener listener : listeners) listener.missed();
    }

    /**
     * Asks whether gardens could be read and changed now.
     *
     * @throws StoreFault where they could not
     */
    public abstract void probe();

    /** {@code sqlite} or {@code postgresql}. */
    public abstract String kind();

    /** Waits for the change that is being written, then lets the folder or database go. */
    @Override
    public abstract void close();

    /** Work on one connection, inside one transaction. */
    interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    /** All of it is on disk when this returns, or none of it. */
    abstract <T> T write(Work<T> work);

    abstract <T> T read(Work<T> work);

    /** Inside a {@link #write}: until it ends, no other server is at this place. */
    abstract void aloneWith(Connection connection) throws SQLException;

    /** Inside a {@link #write}: told to every listener of every server once the write is on disk, else to none. */
    abstract void announce(Connection connection, String garden, long revision) throws SQLException;

    private interface Changing {
        Change from(Connection connection, Stored current) throws SQLException;
    }

    private Change change(String id, Changing changing) {
        return write(connection -> {
            Optional<Stored> current = current(connection, id);
            if (current.isEmpty()) return new NoSuchGarden(id);
            return changing.from(connection, current.get());
        });
    }

    private Stored insert(Connection connection, NewGarden garden) throws SQLException {
        Listed listed = Listed.of(garden.name(), garden.document());
        Instant now = clock.instant();
        listed.bind(new Sql(connection, "insert into garden (id, name, sort_key, client, client_key, state, revision, changed, deleted)"
                        + " values (:id, :name, :sortKey, :client, :clientKey, :state, 1, :changed, 0)"))
                .with("id", garden.id()).with("changed", now)
                .update();
        Stored stored = new Stored(garden.id(), listed.name(), 1, now, false, garden.document());
        insertRevision(connection, stored, Revision.Kind.CREATED, OptionalLong.empty(), Optional.empty());
        listed.keepUses(connection, garden.id());
        announce(connection, stored.id(), 1);
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
        announce(connection, next.id(), next.revision());
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

    private Optional<Stored> current(Connection connection, String id) throws SQLException {
        return new Sql(connection, CURRENT).with("id", id).first(row -> new Stored(
                row.text("id"), row.text("name"), row.number("revision"), row.time("changed"), row.flag("deleted"), row.text("document")));
    }

    private Optional<Stored> revision(Connection connection, String id, long number) throws SQLException {
        return new Sql(connection, "select name, saved, kind, document from revision where garden = :garden and number = :number")
                .with("garden", id).with("number", number)
                .first(row -> new Stored(id, row.text("name"), number, row.time("saved"), row.kind() == Revision.Kind.DELETED, row.text("document")));
    }

    private boolean none(Connection connection) throws SQLException {
        return new Sql(connection, "select id from garden limit 1").first(row -> row.text("id")).isEmpty();
    }

    /** A clock that was put back does not bring the history out of order. */
    private static Instant latest(Instant now, Instant before) {
        return now.isBefore(before) ? before : now;
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

    private List<Revision> history(Connection connection, String id, int limit, long before) throws SQLException {
        return new Sql(connection, "select number, kind, restored, name, saved, stamp, printed, refused from revision"
                        + " where garden = :garden and number < :before order by number desc limit :limit")
                .with("garden", id).with("before", before).with("limit", limit)
                .all(row -> new Revision(row.number("number"), row.kind(), row.numberIfAny("restored"), row.text("name"), row.time("saved"),
                        row.textIfAny("stamp"), row.flag("printed"), row.flag("refused")));
    }

    /** False where there is no such revision. */
    private boolean mark(Connection connection, String id, long number, String column, Object value) throws SQLException {
        return new Sql(connection, "update revision set " + column + " = :value where garden = :garden and number = :number")
                        .with("value", value).with("garden", id).with("number", number)
                        .update() > 0;
    }
}
