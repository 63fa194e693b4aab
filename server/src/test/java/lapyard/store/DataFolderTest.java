package lapyard.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

class DataFolderTest {
    @TempDir
    private Path folder;

    private GardenStore open() {
        return GardenStore.open(folder);
    }

    private String whyUnusable() {
        return refused(folder);
    }

    private static String refused(Path folder) {
        return assertThrows(IllegalArgumentException.class, () -> GardenStore.open(folder)).getMessage();
    }

    /** A copy in the making has a name that nobody knows. */
    private String notCopied() {
        return assertThrows(IllegalArgumentException.class, () -> StoreCopy.make(folder, folder.resolve("copy"))).getMessage();
    }

    private String inUseBy(long process) {
        return "data folder " + folder + " is in use by another Lapyard (process " + process + "): stop that one, or give another folder with --data";
    }

    @Test
    void aFolderThatIsHeldIsRefusedAndFreeAgainAfterwards() {
        long self = ProcessHandle.current().pid();
        try (GardenStore first = open()) {
            assertEquals(inUseBy(self), refused(folder));
            first.create(new NewGarden("a", "A", "{}"));
        }
        try (GardenStore second = open()) {
            assertTrue(second.find("a").isPresent());
        }
    }

    @Test
    void aRefusedSecondOpeningDoesNotLoosenTheFirstLock() throws IOException, InterruptedException {
        try (GardenStore first = open()) {
            assertEquals(inUseBy(ProcessHandle.current().pid()), refused(folder));
            Process other = StoreWriter.start(folder, 1);
            assertEquals(inUseBy(ProcessHandle.current().pid()), StoreWriter.firstLine(other));
            assertEquals(3, other.waitFor());
            assertTrue(first.isNew());
        }
    }

    @Test
    void aFileThatIsNoDatabaseIsToldAndLeftAsItIs() throws IOException {
        byte[] noise = new byte[5000];
        new Random(7).nextBytes(noise);
        Path database = folder.resolve(DataFolder.DATABASE);
        Files.write(database, noise);
        assertTrue(whyUnusable().contains("left as it is"), whyUnusable());
        assertArrayEquals(noise, Files.readAllBytes(database));
    }

    @Test
    void somebodyElsesDatabaseIsToldAndLeftAsItIs() throws SQLException {
        String url = "jdbc:sqlite:" + folder.resolve(DataFolder.DATABASE);
        try (var connection = DriverManager.getConnection(url);
                var statement = connection.createStatement()) {
            statement.execute("create table bees (hive integer)");
        }
        assertTrue(whyUnusable().contains("tables of another program; it was left as it is"), whyUnusable());
        assertEquals(folder.resolve(DataFolder.DATABASE) + " holds no gardens: name the folder of the gardens with --data", notCopied());
        try (var connection = DriverManager.getConnection(url);
                var statement = connection.createStatement();
                var tables = statement.executeQuery("select name from sqlite_master where name <> 'bees'")) {
            assertTrue(!tables.next());
        }
    }

    @Test
    void aStoreOfANewerProgramIsToldAndLeftAsItIs() throws SQLException {
        open().close();
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve(DataFolder.DATABASE));
                var statement = connection.createStatement()) {
            statement.execute("insert into flyway_schema_history (installed_rank, version, description, type, script,"
                    + " checksum, installed_by, execution_time, success)"
                    + " values (99, '999', 'later', 'SQL', 'V999__later.sql', 1, 'me', 1, 1)");
        }
        assertTrue(whyUnusable().contains("version 999"), whyUnusable());
        assertEquals(folder.resolve(DataFolder.DATABASE) + " is of a newer Lapyard: use that one", notCopied());
    }

    @Test
    void aPlaceThatIsNoFolderIsTold() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "x");
        assertTrue(refused(file).contains("cannot be made or entered") && refused(file).endsWith(": let this user write there, or give another folder with --data"), refused(file));
    }

    @Test
    void theDatabaseWritesAheadAndSyncsEverything() throws SQLException {
        try (GardenStore store = open();
                var connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve(DataFolder.DATABASE));
                var statement = connection.createStatement();
                var mode = statement.executeQuery("pragma journal_mode")) {
            assertTrue(store.isNew());
            assertEquals("wal", mode.getString(1));
        }
        try (GardenStore data = open()) {
            int full = 2; // SQLite, "PRAGMA synchronous": 0 OFF, 1 NORMAL, 2 FULL, 3 EXTRA
            assertEquals(full, (int) data.write(connection -> {
                try (var statement = connection.createStatement();
                        var level = statement.executeQuery("pragma synchronous")) {
                    return level.getInt(1);
                }
            }));
        }
    }
}
