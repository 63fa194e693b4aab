package lapyard.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Takes out of a damaged database what can be read, revision by revision. It works on a copy beside the files that it
 * writes: the database itself is only read.
 */
public final class Rescue {
    private Rescue() {}

    /** @param lost revisions and {@code photosLost} photos that the file should hold and that could not be read, as far as it still tells */
    public record Taken(int gardens, int revisions, int lost, int photos, int photosLost) {}

    /** A garden's file from what could be read of it. */
    public interface Writing {
        String text(String name, List<KeptRevision> history, List<Photos.Kept> photos);
    }

    /**
     * @param out  an empty folder, or one that is made
     * @param whole whether a photo is still the one that was kept
     * @throws IllegalArgumentException if there is no database, it opens not at all, or {@code out} holds something
     */
    public static Taken from(Path folder, Path out, Predicate<Photos.Kept> whole, Writing file) throws IOException {
        Path database = DataFolder.databaseIn(folder);
        Files.createDirectories(out);
        try (Stream<Path> there = Files.list(out)) {
            if (there.findAny().isPresent()) throw new IllegalArgumentException(out + " is not empty: give a new folder");
        }
        Path copies = Files.createTempDirectory(out, "copy");
        try {
            for (String ending : List.of("", "-wal")) {
                Path from = folder.resolve(DataFolder.DATABASE + ending);
                if (Files.exists(from))
                    Files.copy(from, copies.resolve(DataFolder.DATABASE + ending), StandardCopyOption.COPY_ATTRIBUTES);
            }
            try (Connection connection = SqliteDriver.open("jdbc:sqlite:" + copies.resolve(DataFolder.DATABASE))) {
                return take(connection, out, whole, file);
            } catch (SQLException hopeless) {
                throw new IllegalArgumentException(
                        database + " cannot be opened at all (" + hopeless.getMessage() + "); it was left as it is", hopeless);
            }
        } finally {
            StoreCopy.remove(copies);
        }
    }

    private static Taken take(Connection connection, Path out, Predicate<Photos.Kept> whole, Writing file)
            throws SQLException, IOException {
        Map<String, Set<Long>> named = named(connection);
        int revisions = 0;
        int lost = 0;
        int gardens = 0;
        int taken = 0;
        int photosLost = 0;
        for (Map.Entry<String, Set<Long>> garden : named.entrySet()) {
            List<KeptRevision> history = new ArrayList<>();
            for (long number : garden.getValue()) {
                Optional<KeptRevision> kept = one(connection, garden.getKey(), number);
                if (kept.isPresent()) history.add(kept.get());
                else lost++;
            }
            if (history.isEmpty()) continue;
            gardens++;
            revisions += history.size();
            Set<String> ids = photos(connection, garden.getKey());
            List<Photos.Kept> photos = ids.stream().flatMap(id -> photo(connection, garden.getKey(), id).filter(whole).stream()).toList();
            taken += photos.size();
            photosLost += ids.size() - photos.size();
            String name = history.get(history.size() - 1).name();
            Files.write(DataFolder.forOwnerOnly(out.resolve(garden.getKey() + ".garden.json")), file.text(name, history, photos).getBytes(StandardCharsets.UTF_8));
        }
        return new Taken(gardens, revisions, lost, taken, photosLost);
    }

    /** What the file still says it holds: from its lists, and up to the newest number where a list breaks off. */
    private static Map<String, Set<Long>> named(Connection connection) {
        Map<String, Set<Long>> named = new TreeMap<>();
        for (String query : List.of(
                "select garden, number from revision indexed by sqlite_autoindex_revision_1 order by garden, number",
                "select garden, number from revision indexed by sqlite_autoindex_revision_1 order by garden desc, number desc",
                "select garden, number from revision not indexed",
                "select id, revision from garden")) {
            try (Statement statement = connection.createStatement();
                    ResultSet row = statement.executeQuery(query)) {
                while (row.next()) {
                    String id = row.getString(1);
                    // ids that we never gave come from damaged pages, and none becomes the name of a file
                    if (id != null && id.matches("[a-z0-9][a-z0-9-]{0,39}") && row.getLong(2) > 0)
                        named.computeIfAbsent(id, key -> new TreeSet<>()).add(row.getLong(2));
                }
            } catch (SQLException brokenOff) {
                continue; // the other ways may lead further
            }
        }
        return named;
    }

    /** None where the file is from before there were photos. */
    private static Set<String> photos(Connection connection, String garden) {
        Set<String> ids = new TreeSet<>();
        for (String how : List.of("indexed by sqlite_autoindex_photo_1", "not indexed")) {
            try {
                new Sql(connection, "select id from photo " + how + " where garden = :garden").with("garden", garden).all(row -> ids.add(row.text("id")));
            } catch (SQLException brokenOff) {
                continue; // the other way may lead further
            }
        }
        ids.removeIf(id -> !id.matches("[0-9a-f]{64}"));
        return ids;
    }

    private static Optional<Photos.Kept> photo(Connection connection, String garden, String id) {
        try {
            return new Sql(connection, Photos.COLUMNS + "and id = :id").with("garden", garden).with("id", id).first(Photos::kept);
        } catch (SQLException | IllegalArgumentException | DateTimeException | NullPointerException damaged) {
            return Optional.empty();
        }
    }

    private static Optional<KeptRevision> one(Connection connection, String id, long number) {
        for (String stamp : List.of("stamp", "null as stamp")) {
            try {
                return new Sql(connection, "select kind, name, saved, document, " + stamp + " from revision where garden = :garden and number = :number")
                        .with("garden", id).with("number", number)
                        .first(row -> new KeptRevision(number, row.kind(), row.text("name"), row.time("saved"), row.textIfAny("stamp"), row.text("document"), false));
            } catch (SQLException | IllegalArgumentException | DateTimeException | NullPointerException damaged) {
                continue; // a file from before there were stamps has none
            }
        }
        return Optional.empty();
    }
}
