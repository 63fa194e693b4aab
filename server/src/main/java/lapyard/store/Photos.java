package lapyard.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Photos that are kept with a garden, whatever becomes of the documents that name them. */
public record Photos(GardenStore store, Clock clock) {
    /** So many a garden. */
    public static final int MOST = 60;
    /** So many bytes a garden, so that its file can be read in again where memory is small. */
    public static final long MOST_BYTES = 6_000_000;

    static final String COLUMNS = "select id, saved, type, bytes, content from photo where garden = :garden ";

    /**
     * @param id   hash of the bytes, in hexadecimal
     * @param type {@code image/jpeg} or {@code image/png}
     */
    public record Kept(String id, String type, Instant saved, byte[] bytes) {}

    /** One of a list, without its bytes. */
    public record Head(String id, String type, Instant saved, long bytes) {}

    /** Whether a garden may have these. */
    public static boolean fit(List<Long> bytes) {
        return bytes.size() <= MOST && bytes.stream().mapToLong(Long::longValue).sum() <= MOST_BYTES;
    }

    /** Oldest first. */
    public List<Head> list(String garden) {
        return store.read(connection -> heads(connection, garden));
    }

    private static List<Head> heads(Connection connection, String garden) throws SQLException {
        return new Sql(connection, "select id, saved, type, bytes from photo where garden = :garden order by saved, id").with("garden", garden)
                .all(row -> new Head(row.text("id"), row.text("type"), row.time("saved"), row.number("bytes")));
    }

    /** Keeps photos, those that are there already once; false where the garden would have more than fit, and none is kept. */
    public boolean add(String garden, List<Kept> photos) {
        Instant now = clock.instant();
        return store.write(connection -> {
            List<Head> there = heads(connection, garden);
            List<Kept> more = photos.stream().filter(photo -> there.stream().noneMatch(one -> one.id().equals(photo.id()))).toList();
            if (!fit(Stream.concat(there.stream().map(Head::bytes), more.stream().map(photo -> (long) photo.bytes().length)).toList())) return false;
            for (Kept photo : more) {
                Sql.insert(connection, "photo", "garden", garden, "id", photo.id(), "saved", now, "type", photo.type(), "bytes", photo.bytes().length,
                        "content", Base64.getEncoder().encodeToString(photo.bytes()));
            }
            return true;
        });
    }

    public Optional<Kept> find(String garden, String id) {
        return store.read(connection -> new Sql(connection, COLUMNS + "and id = :id").with("garden", garden).with("id", id).first(Photos::kept));
    }

    /** All of a garden, oldest first. */
    public List<Kept> of(String garden) {
        return store.read(connection -> new Sql(connection, COLUMNS + "order by saved, id").with("garden", garden).all(Photos::kept));
    }

    /** False where there is none. */
    public boolean remove(String garden, String id) {
        return store.write(connection -> new Sql(connection, "delete from photo where garden = :garden and id = :id").with("garden", garden).with("id", id).update() > 0);
    }

    static Kept kept(Sql.Columns row) throws SQLException {
        return new Kept(row.text("id"), row.text("type"), row.time("saved"), Base64.getDecoder().decode(row.text("content")));
    }
}
