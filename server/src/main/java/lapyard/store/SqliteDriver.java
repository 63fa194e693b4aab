package lapyard.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import java.util.Properties;
import org.sqlite.JDBC;
import org.sqlite.SQLiteJDBCLoader;

/**
 * Opens SQLite files. The driver unpacks its native library, compares the copy byte by byte and starts a process to learn the
 * system's name, which takes a tenth of the server's start: where the right library is known without that, it is loaded here.
 */
final class SqliteDriver {
    private static final String PATH = "org.sqlite.lib.path";
    private static final String NAME = "org.sqlite.lib.name";
    private static final String LIBRARY = "libsqlitejdbc.so";
    /** The driver's folders by the Java's name of the machine. */
    private static final Map<String, String> FOLDERS = Map.of("amd64", "x86_64", "aarch64", "aarch64");

    private static boolean loaded;

    private SqliteDriver() {}

    /** @param url {@code jdbc:sqlite:FILE} */
    static Connection open(String url) throws SQLException {
        load();
        return JDBC.createConnection(url, new Properties());
    }

    private static synchronized void load() {
        if (loaded) return;
        loaded = true;
        String folder = FOLDERS.get(System.getProperty("os.arch"));
        boolean known = System.getProperty("os.name").equals("Linux") && folder != null && System.getProperty(PATH) == null;
        // a machine with the C library of Alpine takes other files
        if (!known || Files.exists(Path.of("/lib/ld-musl-" + folder + ".so.1"))) return;
        try (InputStream packed = JDBC.class.getResourceAsStream("native/Linux/" + folder + "/" + LIBRARY)) {
            Path file = Files.createTempFile("lapyard-", LIBRARY);
            try {
                Files.copy(packed, file, StandardCopyOption.REPLACE_EXISTING);
                System.setProperty(PATH, file.getParent().toString());
                System.setProperty(NAME, file.getFileName().toString());
                SQLiteJDBCLoader.initialize();
            } finally {
                System.clearProperty(PATH);
                System.clearProperty(NAME);
                Files.deleteIfExists(file); // the system keeps what it has loaded
            }
        } catch (IOException noRoom) {
            // the driver tries by itself and says what it lacks
        } catch (Exception unusable) {
            throw new IllegalStateException("SQLite's library cannot be loaded", unusable);
        }
    }
}
