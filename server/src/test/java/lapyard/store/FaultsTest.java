package lapyard.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What the store does when the machine under it fails: it says so, keeps what it has, and goes on once it can. */
class FaultsTest {
    @TempDir
    private Path folder;

    private DataFolder data;

    private GardenStore open() {
        GardenStore store = GardenStore.open(folder);
        data = (DataFolder) store;
        return store;
    }

    private void pragma(String text) {
        data.write(connection -> {
            try (Statement statement = connection.createStatement()) {
                return statement.execute("pragma " + text);
            }
        });
    }

    private static Stored made(Change change) {
        return assertInstanceOf(Change.Made.class, change).stored();
    }

    private static String refused(Path folder) {
        return assertThrows(IllegalArgumentException.class, () -> GardenStore.open(folder)).getMessage();
    }

    private static String document(long number) {
        return "{\"n\":" + number + ",\"text\":\"" + "x".repeat(20_000) + "\"}";
    }

    @Test
    void aFullDiskIsToldAndLosesNothingThatWasAcknowledged() {
        GardenStore store = open();
        store.create(new NewGarden("a", "A", document(1)));
        pragma("max_page_count = 100"); // 400 KB at 4096 bytes a page: what a disk of that size has room for
        long acknowledged = 1;
        StoreFault full = null;
        while (full == null) {
            try {
                acknowledged = made(store.save("a", acknowledged, "A", document(acknowledged + 1))).revision();
            } catch (StoreFault fault) {
                full = fault;
            }
        }
        assertTrue(full.full(), full.getMessage());
        assertTrue(acknowledged > 10, "there was room for " + acknowledged);
        long number = acknowledged;
        pragma("max_page_count = 100");
        assertThrows(StoreFault.class, () -> store.save("a", number, "A", document(number + 1)));
        pragma("max_page_count = 100");
        assertTrue(assertThrows(StoreFault.class, store::probe).full(), "health tells it too");
        assertEquals(document(number), store.find("a").orElseThrow().document());
        assertEquals(number, store.history("a", 1000, Long.MAX_VALUE).size());
        pragma("max_page_count = 100000"); // room was made
        store.probe();
        made(store.save("a", number, "A", document(number + 1)));
        store.close();
        try (GardenStore again = open()) {
            for (long each = 1; each <= number + 1; each++)
                assertEquals(document(each), again.revision("a", each).orElseThrow().document());
        }
    }

    /** While it runs it holds the write lock itself, so that nobody else can: another is there before, or not at all. */
    @Test
    void aDatabaseThatAnotherHoldsIsToldAndServesOnceItIsFree() throws SQLException {
        try (GardenStore store = open()) {
            store.create(new NewGarden("a", "A", document(1)));
            try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve(DataFolder.DATABASE));
                    Statement statement = other.createStatement()) {
                statement.execute("pragma busy_timeout = 50");
                assertThrows(SQLException.class, () -> statement.execute("begin immediate"));
            }
        }
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve(DataFolder.DATABASE));
                Statement statement = other.createStatement()) {
            statement.execute("begin immediate");
            String locked = refused(folder);
            assertTrue(locked.contains("locked by another program") && !locked.contains("SQLITE"), locked);
            statement.execute("rollback");
        }
        try (GardenStore store = open()) {
            assertEquals(2, made(store.save("a", 1, "A", document(2))).revision());
        }
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void aFolderThatNobodyMayWriteIsRefusedByName() {
        for (String readOnly : List.of("/proc/lapyard-none", "/sys/kernel")) {
            String unusable = refused(Path.of(readOnly));
            assertTrue(unusable.contains("data folder " + readOnly + " cannot be used: it cannot be"), unusable);
        }
    }

    /** Saves into a file that was taken away would be lost with the process: the operating system still has it open. */
    @Test
    void aFileThatWasTakenAwayTakesNoMoreSavesUntilItIsBack() throws IOException {
        GardenStore store = open();
        store.create(new NewGarden("a", "A", document(1)));
        Path file = folder.resolve(DataFolder.DATABASE);
        Path away = folder.resolve("away.db");
        Files.move(file, away);
        StoreFault gone = assertThrows(StoreFault.class, () -> store.save("a", 1, "A", document(2)));
        assertTrue(gone.getMessage().contains("taken away"), gone.getMessage());
        assertThrows(StoreFault.class, store::probe);
        Files.move(away, file);
        assertEquals(2, made(store.save("a", 1, "A", document(2))).revision());
        store.close();
        try (GardenStore again = open()) {
            assertEquals(document(2), again.find("a").orElseThrow().document());
        }
    }

    /** Pages in the middle are overwritten, as by a failing disk. */
    private byte[] damaged() throws IOException {
        try (GardenStore store = open()) {
            for (String id : List.of("a", "b", "c")) {
                store.create(new NewGarden(id, "Garden " + id, document(1)));
                for (long revision = 1; revision < 12; revision++)
                    made(store.save(id, revision, "Garden " + id, document(revision + 1)));
            }
        }
        Path file = folder.resolve(DataFolder.DATABASE);
        byte[] noise = new byte[4096];
        new Random(5).nextBytes(noise);
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            long pages = raw.length() / 4096;
            for (long page = pages / 2; page < pages / 2 + 8; page++) {
                raw.seek(page * 4096);
                raw.write(noise);
            }
        }
        return Files.readAllBytes(file);
    }

    @Test
    void aDamagedFileIsToldNeverOverwrittenAndWhatCanBeReadIsTakenOut() throws IOException {
        byte[] before = damaged();
        Path out = folder.resolve("out");
        Rescue.Taken taken = Rescue.from(folder, out, photo -> true, (name, history, photos) -> name + " " + history.size() + "\n"
                + history.get(history.size() - 1).document());
        assertTrue(taken.revisions() >= 20 && taken.revisions() < 36, taken::toString);
        assertTrue(taken.lost() > 0 && taken.revisions() + taken.lost() == 36, taken::toString);
        assertEquals(3, taken.gardens());
        try (var files = Files.list(out)) {
            assertEquals(
                    List.of("a.garden.json", "b.garden.json", "c.garden.json"),
                    files.map(each -> each.getFileName().toString()).sorted().toList());
        }
        assertTrue(Files.readString(out.resolve("a.garden.json")).startsWith("Garden a "));
        assertArrayEquals(before, Files.readAllBytes(folder.resolve(DataFolder.DATABASE)));
        assertThrows(IllegalArgumentException.class, () -> Rescue.from(folder, out, photo -> true, (name, history, photos) -> ""), "out is not empty");
    }

    @Test
    void aDamagedFileTakesNoChangesOnceItIsKnown() throws IOException {
        damaged();
        byte[] before = Files.readAllBytes(folder.resolve(DataFolder.DATABASE));
        GardenStore store = open();
        StoreFault fault = null;
        for (String id : List.of("a", "b", "c"))
            for (long number = 1; number <= 12; number++)
                try {
                    store.revision(id, number);
                } catch (StoreFault damage) {
                    fault = damage;
                }
        assertTrue(fault != null && fault.getMessage().contains("damaged"), String.valueOf(fault));
        StoreFault refused = assertThrows(StoreFault.class, () -> store.create(new NewGarden("d", "D", "{}")));
        assertTrue(refused.getMessage().contains("lapyard rescue"), refused.getMessage());
        assertThrows(StoreFault.class, store::probe);
        store.close();
        assertArrayEquals(before, Files.readAllBytes(folder.resolve(DataFolder.DATABASE)));
    }

    @Test
    void aDamagedFileIsFoundBesideTheWorkAlsoAfterACleanEnd() throws Exception {
        damaged();
        try (GardenStore store = open()) {
            for (Thread one : Thread.getAllStackTraces().keySet()) if (one.getName().equals("lapyard-look")) one.join();
            StoreFault refused = assertThrows(StoreFault.class, data::probe);
            assertTrue(refused.getMessage().contains("damaged"), refused.getMessage());
        }
    }

    @Test
    void aCopyOfARunningStoreIsWholeAndIsPutBack() throws Exception {
        Path copy = folder.resolve("copy.db");
        Path back = folder.resolve("back");
        try (GardenStore store = open()) {
            store.create(new NewGarden("a", "A", document(1)));
            AtomicBoolean enough = new AtomicBoolean();
            AtomicLong acknowledged = new AtomicLong(1);
            CountDownLatch some = new CountDownLatch(20);
            Thread saving = new Thread(() -> {
                while (!enough.get()) {
                    long next = acknowledged.get() + 1;
                    made(store.save("a", next - 1, "A", document(next)));
                    acknowledged.set(next);
                    some.countDown();
                }
            });
            saving.start();
            some.await();
            long least = acknowledged.get();
            StoreCopy.Held held = StoreCopy.make(folder, copy);
            enough.set(true);
            saving.join();
            assertEquals(1, held.gardens());
            assertTrue(held.revisions() >= least, held.revisions() + " of " + least);
            assertThrows(IllegalArgumentException.class, () -> StoreCopy.make(folder, copy), "it is there already");
            assertThrows(IllegalArgumentException.class, () -> StoreCopy.putBack(copy, folder), "a database is there");
            assertEquals(held, StoreCopy.putBack(copy, back));
            try (GardenStore again = GardenStore.open(back)) {
                assertEquals(document(held.revisions()), again.find("a").orElseThrow().document());
            }
        }
        byte[] broken = Files.readAllBytes(copy);
        java.util.Arrays.fill(broken, 8192, Math.min(broken.length, 30_000), (byte) 7);
        Files.write(copy, broken);
        assertThrows(IllegalArgumentException.class, () -> StoreCopy.putBack(copy, folder.resolve("other")));
        assertTrue(Files.notExists(folder.resolve("other").resolve(DataFolder.DATABASE)));
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void nobodyElseReadsTheDatabaseOrWhatIsTakenOutOfIt() throws Exception {
        try (GardenStore store = open()) {
            store.create(new NewGarden("a", "A", document(1)));
            StoreCopy.make(folder, folder.resolve("copy"));
            Rescue.from(folder, folder.resolve("out"), photo -> true, (name, history, photos) -> name);
            for (String file : List.of(DataFolder.DATABASE, DataFolder.DATABASE + "-wal", "copy", "out/a.garden.json"))
                assertEquals("rw-------", java.nio.file.attribute.PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve(file))), file);
        }
    }

    @Test
    void namesOfRevisionsAreTakenOutToo() throws Exception {
        try (GardenStore store = open()) {
            store.create(new NewGarden("a", "A", document(1)));
            store.stamp("a", 1, "for the saw");
        }
        Path out = folder.resolve("out");
        Rescue.from(folder, out, photo -> true, (name, history, photos) -> history.get(0).stamp().orElse("none"));
        assertEquals("for the saw", Files.readString(out.resolve("a.garden.json")));
    }

    /** After an end that was not clean the file is looked through before anything is written. */
    @Test
    void aDamagedFileThatWasLeftWithoutACleanEndIsRefused() throws IOException {
        damaged();
        byte[] before = Files.readAllBytes(folder.resolve(DataFolder.DATABASE));
        Files.createFile(folder.resolve(DataFolder.DATABASE + "-wal"));
        String unusable = refused(folder);
        assertTrue(unusable.contains("damaged") && unusable.contains("lapyard rescue"), unusable);
        assertArrayEquals(before, Files.readAllBytes(folder.resolve(DataFolder.DATABASE)));
    }
}
