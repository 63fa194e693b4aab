package lapyard.store;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
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
            try (PreparedStatement insert = connection.prepareStatement(
                    "insert into share (id, garden, hash, label, made) values (?, ?, ?, ?, ?)")) {
                insert.setString(1, id);
                insert.setString(2, garden);
                insert.setString(3, hash);
                insert.setString(4, share.label());
                insert.setString(5, made.toString());
                insert.executeUpdate();
            }
            return share;
        });
    }

    /** Oldest first. */
    public List<Share> of(String garden) {
        return database.read(connection -> {
            try (PreparedStatement select = connection.prepareStatement(COLUMNS + "garden = ? order by made, id")) {
                select.setString(1, garden);
                return rows(select);
            }
        });
    }

    /** Who shows a token of this hash. */
    public Optional<Share> byHash(String hash) {
        return database.read(connection -> {
            try (PreparedStatement select = connection.prepareStatement(COLUMNS + "hash = ?")) {
                select.setString(1, hash);
                return rows(select).stream().findFirst();
            }
        });
    }

    /** Ends it at once, on every server; false where there is none. */
    public boolean remove(String garden, String id) {
        return database.write(connection -> {
            try (PreparedStatement delete =
                    connection.prepareStatement("delete from share where garden = ? and id = ?")) {
                delete.setString(1, garden);
                delete.setString(2, id);
                return delete.executeUpdate() > 0;
            }
        });
    }

    private static List<Share> rows(PreparedStatement select) throws SQLException {
        List<Share> shares = new ArrayList<>();
        try (ResultSet row = select.executeQuery()) {
            while (row.next())
                shares.add(new Share(
                        row.getString(1), row.getString(2), row.getString(3), Instant.parse(row.getString(4))));
        }
        return shares;
    }
}
