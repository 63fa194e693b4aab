package lapyard.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/** Leaves to read one garden. The store knows only the hashes of their tokens. One that has ended is not there any more. */
public record Shares(GardenStore store, Clock clock) {
    private static final int LABEL_CHARACTERS = 100;
    private static final String COLUMNS = "select id, garden, label, made, ends from share where ";

    /** The time by which shares end. */
    public Instant now() {
        return clock.instant();
    }

    /**
     * @param hash of its token, in hexadecimal
     * @param ends empty for a share that lasts until it is taken back
     */
    public Share add(String id, String garden, String hash, String label, Optional<Instant> ends) {
        Share share = new Share(id, garden, Sql.shortened(label, LABEL_CHARACTERS), now(), ends.map(time -> time.truncatedTo(ChronoUnit.MILLIS)));
        return store.write(connection -> {
            for (Share other : kept(connection, garden)) if (!other.standsAt(share.made())) remove(connection, garden, other.id());
            Sql.insert(connection, "share", "id", id, "garden", garden, "hash", hash, "label", share.label(), "made", share.made(), "ends", share.ends());
            return share;
        });
    }

    /** Those that have not ended, oldest first. */
    public List<Share> of(String garden) {
        Instant now = now();
        return store.read(connection -> kept(connection, garden)).stream().filter(share -> share.standsAt(now)).toList();
    }

    /** Who shows a token of this hash. */
    public Optional<Share> byHash(String hash) {
        Instant now = now();
        return store.read(connection -> new Sql(connection, COLUMNS + "hash = :hash").with("hash", hash).first(Shares::share))
                .filter(share -> share.standsAt(now));
    }

    /** Ends it at once, on every server; false where there is none. */
    public boolean remove(String garden, String id) {
        return store.write(connection -> remove(connection, garden, id));
    }

    private static boolean remove(Connection connection, String garden, String id) throws SQLException {
        return new Sql(connection, "delete from share where garden = :garden and id = :id")
                        .with("garden", garden).with("id", id)
                        .update() > 0;
    }

    private static List<Share> kept(Connection connection, String garden) throws SQLException {
        return new Sql(connection, COLUMNS + "garden = :garden order by made, id").with("garden", garden).all(Shares::share);
    }

    private static Share share(Sql.Columns row) throws SQLException {
        return new Share(row.text("id"), row.text("garden"), row.text("label"), row.time("made"), row.textIfAny("ends").map(Instant::parse));
    }
}
