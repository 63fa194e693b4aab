package lapyard.store;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/** Leaves to read one garden. The store knows only the hashes of their tokens. */
public final class Shares {
    private static final int LABEL_CHARACTERS = 100;
    private static final String COLUMNS = "select id, garden, label, made from share where ";

    private final Database database;
    private final Clock clock;

    Shares(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /** @param hash of its token, in hexadecimal */
    public Share add(String id, String garden, String hash, String label) {
        Instant made = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        Share share = new Share(id, garden, Rows.shortened(label, LABEL_CHARACTERS), made);
        return database.write(connection -> {
            new Sql(connection, "insert into share (id, garden, hash, label, made) values (:id, :garden, :hash, :label, :made)")
                    .with("id", id).with("garden", garden).with("hash", hash).with("label", share.label()).with("made", made)
                    .update();
            return share;
        });
    }

    /** Oldest first. */
    public List<Share> of(String garden) {
        return database.read(connection ->
                new Sql(connection, COLUMNS + "garden = :garden order by made, id").with("garden", garden).all(Shares::share));
    }

    /** Who shows a token of this hash. */
    public Optional<Share> byHash(String hash) {
        return database.read(connection -> new Sql(connection, COLUMNS + "hash = :hash").with("hash", hash).first(Shares::share));
    }

    /** Ends it at once, on every server; false where there is none. */
    public boolean remove(String garden, String id) {
        return database.write(connection -> new Sql(connection, "delete from share where garden = :garden and id = :id")
                        .with("garden", garden).with("id", id)
                        .update() > 0);
    }

    private static Share share(Sql.Columns row) throws SQLException {
        return new Share(row.text("id"), row.text("garden"), row.text("label"), row.time("made"));
    }
}
