package lapyard.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DataFolderTest {
    @TempDir
    private Path folder;

    private GardenStore open() {
        return assertInstanceOf(Opening.Open.class, GardenStore.open(folder)).store();
    }

    private String whyUnusable() {
        return assertInstanceOf(Opening.Unusable.class, GardenStore.open(folder))
                .why();
    }

    @Test
    void aFolderThatIsHeldIsRefusedAndFreeAgainAfterwards() {
        long self = ProcessHandle.current().pid();
        try (GardenStore first = open()) {
            Opening.InUse inUse = assertInstanceOf(Opening.InUse.class, GardenStore.open(folder));
            assertEquals(OptionalLong.of(self), inUse.process());
            first.create(new NewGarden("a", "A", "{}"));
        }
        try (GardenStore second = open()) {
            assertTrue(second.find("a").isPresent());
        }
    }

    @Test
    void aRefusedSecondOpeningDoesNotLoosenTheFirstLock() throws IOException, InterruptedException {
        try (GardenStore first = open()) {
            assertInstanceOf(Opening.InUse.class, GardenStore.open(folder));
            Process other = StoreWriter.start(folder, 1);
            assertEquals("in use by " + ProcessHandle.current().pid(), StoreWriter.firstLine(other));
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
    }

    @Test
    void aPlaceThatIsNoFolderIsTold() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "x");
        var unusable = assertInstanceOf(Opening.Unusable.class, GardenStore.open(file));
        assertTrue(unusable.why().contains("cannot be made or entered"), unusable.why());
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
        try (Database data = open().database) {
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
