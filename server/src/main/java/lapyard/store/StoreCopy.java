package lapyard.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Comparator;
import java.util.stream.Stream;

/** A data folder's database as one file: copied while a server may be writing to it, and put back into an empty folder. */
public final class StoreCopy {
    private StoreCopy() {}

    /** What a copy holds. */
    public record Held(long gardens, long revisions) {}

    /**
     * Copies the database as it stands at one moment, with what stands in its log; saves go on meanwhile. The copy is
     * looked through before it gets its name.
     *
     * @param out a file that is not there yet
     * @throws IllegalArgumentException if the folder holds no database of ours, {@code out} is there, or the copy is damaged
     */
    public static Held make(Path folder, Path out) throws IOException {
        Path database = DataFolder.databaseIn(folder);
        if (Files.exists(out)) throw new IllegalArgumentException(out + " is there already: give a new name");
        Path part = part(out);
        Files.deleteIfExists(part);
        try {
            DataFolder.forOwnerOnly(part); // before it holds anything
            try (Connection connection = SqliteDriver.open(url(database));
                    Statement statement = connection.createStatement()) {
                statement.execute("pragma busy_timeout = 10000");
                statement.execute("vacuum into '" + part.toString().replace("'", "''") + "'");
            } catch (SQLException failed) {
                throw new IllegalArgumentException(database + " cannot be copied: " + DataFolder.inOurWords(failed), failed);
            }
            Held held = lookedThrough(part, database, "name the folder of the gardens with --data");
            force(part);
            Files.move(part, out, StandardCopyOption.ATOMIC_MOVE);
            return held;
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /**
     * Puts a copy into a folder that holds no database; a server may be started on it then.
     *
     * @throws IllegalArgumentException if the file is no whole copy of ours, or the folder holds a database
     */
    public static Held putBack(Path copy, Path folder) throws IOException {
        if (!Files.isRegularFile(copy)) throw new IllegalArgumentException(copy + " is not there");
        Held held = lookedThrough(copy, copy, "give a file that lapyard backup made");
        Files.createDirectories(folder);
        Path database = folder.resolve(DataFolder.DATABASE);
        for (String ending : new String[] {"", "-wal"})
            if (Files.exists(folder.resolve(DataFolder.DATABASE + ending)))
                throw new IllegalArgumentException(folder + " holds a database already: move it away, or name another folder");
        Path part = part(database);
        try {
            Files.copy(copy, part, StandardCopyOption.REPLACE_EXISTING);
            DataFolder.forOwnerOnly(part);
            force(part);
            Files.move(part, database, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
        return held;
    }

    /** @param told the file that a person knows @param way out where it holds no gardens */
    private static Held lookedThrough(Path file, Path told, String way) {
        try (Connection connection = SqliteDriver.open(url(file))) {
            if (!new Sql(connection, "pragma integrity_check(1)").first(row -> row.text("integrity_check").equals("ok")).orElse(false))
                throw new IllegalArgumentException(told + " is damaged: use an older copy, or lapyard rescue");
            int version = Schema.SQLITE.versionOf(connection);
            if (version == 0) throw new IllegalArgumentException(told + " holds no gardens: " + way);
            if (version > Schema.SQLITE.newest) throw new IllegalArgumentException(told + " is of a newer Lapyard: use that one");
            return new Held(count(connection, "garden where deleted = 0"), count(connection, "revision"));
        } catch (SQLException | Schema.Unknown failed) {
            throw new IllegalArgumentException(told + " cannot be read as a store of gardens: "
                    + (failed instanceof SQLException sql ? DataFolder.inOurWords(sql) : failed.getMessage()), failed);
        }
    }

    /** Removes a folder with all that lies in it. */
    public static void remove(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) Files.delete(file);
        }
    }

    private static long count(Connection connection, String what) throws SQLException {
        return new Sql(connection, "select count(*) as there from " + what).first(row -> row.number("there")).orElseThrow();
    }

    private static String url(Path file) {
        return "jdbc:sqlite:" + file.toAbsolutePath();
    }

    private static Path part(Path file) {
        return file.toAbsolutePath().resolveSibling("." + file.getFileName() + ".part");
    }

    private static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }
}
