package lapyard.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GardenStoreTest {
    @TempDir
    private Path folder;

    private GardenStore store;

    @BeforeEach
    void open() {
        store = assertInstanceOf(Opening.Open.class, GardenStore.open(folder)).store();
    }

    @AfterEach
    void close() {
        store.close();
    }

    private void reopen() {
        store.close();
        open();
    }

    private static Stored made(Change change) {
        return assertInstanceOf(Change.Made.class, change).stored();
    }

    @Test
    void aDocumentComesBackAsTheTextThatWasGiven() {
        String text = "\n{ \"name\" : \"Sch\u00f6ner Hof\", \"x\":1.10,\t\"y\":\"\ud83c\udf31\" }\r\n";
        store.create(new NewGarden("hof", "Schöner Hof", text));
        reopen();
        Stored stored = store.find("hof").orElseThrow();
        assertEquals(text, stored.document());
        assertEquals(1, stored.revision());
        assertEquals("Schöner Hof", stored.name());
    }

    @Test
    void aSaveFromTheCurrentRevisionIsKeptAndOneFromAnOlderIsNot() {
        store.create(new NewGarden("a", "A", "{\"v\":1}"));
        assertEquals(2, made(store.save("a", 1, "A", "{\"v\":2}")).revision());
        Change.Stale stale = assertInstanceOf(Change.Stale.class, store.save("a", 1, "A", "{\"v\":3}"));
        assertEquals(2, stale.current().revision());
        assertEquals("{\"v\":2}", stale.current().document());
        assertEquals("{\"v\":2}", store.find("a").orElseThrow().document());
        assertEquals(2, store.history("a", 10, Long.MAX_VALUE).size());
    }

    /** RFC 9110, 13.1.1: a server may answer well where the change asked for has been made already. */
    @Test
    void askingAgainForASaveThatWasMadeAddsNothing() {
        store.create(new NewGarden("a", "A", "{\"v\":1}"));
        made(store.save("a", 1, "A", "{\"v\":2}"));
        assertEquals(2, made(store.save("a", 1, "A", "{\"v\":2}")).revision());
        assertEquals(2, store.history("a", 10, Long.MAX_VALUE).size());
    }

    @Test
    void everyRevisionStaysAndCanBeBroughtBack() {
        store.create(new NewGarden("a", "One", "{\"v\":1}"));
        made(store.save("a", 1, "Two", "{\"v\":2}"));
        made(store.save("a", 2, "Three", "{\"v\":3}"));
        Stored back = made(store.restore("a", 3, 1));
        assertEquals(4, back.revision());
        assertEquals("{\"v\":1}", back.document());
        assertEquals("One", back.name());
        reopen();
        List<String> lines = new ArrayList<>();
        for (Revision revision : store.history("a", 10, Long.MAX_VALUE))
            lines.add(revision.number() + " " + revision.kind() + " " + revision.name() + " " + revision.restored());
        assertEquals(
                List.of(
                        "4 RESTORED One " + OptionalLong.of(1),
                        "3 SAVED Three " + OptionalLong.empty(),
                        "2 SAVED Two " + OptionalLong.empty(),
                        "1 CREATED One " + OptionalLong.empty()),
                lines);
        assertEquals("{\"v\":3}", store.revision("a", 3).orElseThrow().document());
        assertEquals(Optional.empty(), store.revision("a", 5));
    }

    @Test
    void historyIsHandedOutInParts() {
        store.create(new NewGarden("a", "A", "{}"));
        for (int revision = 1; revision < 7; revision++)
            made(store.save("a", revision, "A", "{\"v\":" + revision + "}"));
        assertEquals(List.of(7L, 6L, 5L), numbers(store.history("a", 3, Long.MAX_VALUE)));
        assertEquals(List.of(4L, 3L, 2L), numbers(store.history("a", 3, 5)));
        assertEquals(List.of(1L), numbers(store.history("a", 3, 2)));
    }

    private static List<Long> numbers(List<Revision> history) {
        return history.stream().map(Revision::number).toList();
    }

    @Test
    void aDeletedGardenLeavesTheListAndComesBackByRestoring() {
        store.create(new NewGarden("a", "A", "{\"v\":1}"));
        assertInstanceOf(Change.Stale.class, store.delete("a", 9));
        assertEquals(2, made(store.delete("a", 1)).revision());
        assertEquals(0, store.list(10, Optional.empty(), false).total());
        assertEquals(1, store.list(10, Optional.empty(), true).total());
        assertTrue(store.find("a").orElseThrow().deleted());
        assertInstanceOf(Change.Deleted.class, store.save("a", 2, "A", "{\"v\":2}"));
        assertInstanceOf(Change.Deleted.class, store.delete("a", 2));
        assertEquals(3, made(store.restore("a", 2, 1)).revision());
        assertFalse(store.find("a").orElseThrow().deleted());
        assertEquals(1, store.list(10, Optional.empty(), false).total());
    }

    @Test
    void changesToWhatIsNotThereSaySo() {
        assertInstanceOf(Change.NoSuchGarden.class, store.save("none", 1, "A", "{}"));
        assertInstanceOf(Change.NoSuchGarden.class, store.delete("none", 1));
        store.create(new NewGarden("a", "A", "{}"));
        Change.NoSuchRevision none = assertInstanceOf(Change.NoSuchRevision.class, store.restore("a", 1, 8));
        assertEquals(1, none.newest());
        assertThrows(IllegalArgumentException.class, () -> store.create(new NewGarden("a", "B", "{}")));
        assertEquals("A", store.find("a").orElseThrow().name());
    }

    @Test
    void idsThatCouldBePathsAreRefused() {
        for (String id : List.of("", "../a", "a/b", "A", "a b", "-a", "a".repeat(41)))
            assertThrows(IllegalArgumentException.class, () -> new NewGarden(id, "A", "{}"), id);
    }

    @Test
    void thePagesOfTheListHoldEveryGardenOnceInOrderOfName() {
        List<String> names = List.of("pear", "Apple", "quince", "apple", "medlar", "Plum", "cherry");
        for (int i = 0; i < names.size(); i++) store.create(new NewGarden("g" + i, names.get(i), "{}"));
        List<String> seen = new ArrayList<>();
        Optional<String> after = Optional.empty();
        do {
            GardenList page = store.list(3, after, false);
            assertEquals(7, page.total());
            page.rows().forEach(row -> seen.add(row.name()));
            after = page.next();
        } while (after.isPresent());
        assertEquals(List.of("Apple", "apple", "cherry", "medlar", "pear", "Plum", "quince"), seen);
    }

    @Test
    void aPageGoesOnBehindAGardenThatWasDeletedMeanwhile() {
        for (String id : List.of("a", "b", "c", "d")) store.create(new NewGarden(id, id, "{}"));
        GardenList first = store.list(2, Optional.empty(), false);
        made(store.delete("b", 1));
        GardenList second = store.list(2, first.next(), false);
        assertEquals(
                List.of("c", "d"),
                second.rows().stream().map(GardenList.Row::id).toList());
    }

    @Test
    void aLongNameIsShortenedBetweenCharacters() {
        store.create(new NewGarden("a", "\ud83c\udf31".repeat(300), "{}"));
        assertEquals("\ud83c\udf31".repeat(200), store.find("a").orElseThrow().name());
    }

    @Test
    void whatComesWithTheProgramGoesOnlyIntoAStoreThatNeverHeldAGarden() {
        List<NewGarden> shipped = List.of(new NewGarden("a", "A", "{}"), new NewGarden("b", "B", "{}"));
        assertTrue(store.isNew());
        assertTrue(store.fillIfNew(shipped));
        made(store.delete("a", 1));
        made(store.delete("b", 1));
        reopen();
        assertFalse(store.isNew());
        assertFalse(store.fillIfNew(shipped));
        assertEquals(0, store.list(10, Optional.empty(), false).total());
    }

    @Test
    void ofManyWhoSaveFromOneRevisionExactlyOneIsKept() throws InterruptedException {
        store.create(new NewGarden("a", "A", "{}"));
        for (int round = 1; round <= 20; round++) {
            int expected = round;
            List<Change> answers = java.util.Collections.synchronizedList(new ArrayList<>());
            List<Thread> threads = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                String text = "{\"by\":" + i + ",\"round\":" + round + "}";
                threads.add(new Thread(() -> answers.add(store.save("a", expected, "A", text))));
            }
            threads.forEach(Thread::start);
            for (Thread thread : threads) thread.join();
            List<Stored> kept = answers.stream()
                    .filter(Change.Made.class::isInstance)
                    .map(GardenStoreTest::made)
                    .toList();
            assertEquals(1, kept.size());
            assertEquals(kept.get(0), store.find("a").orElseThrow());
        }
    }

    @Test
    void theMigrationFilesEndAtTheVersionThatTheProgramLooksFor() {
        ClassLoader loader = Schema.class.getClassLoader();
        assertTrue(resources(loader, Schema.NEWEST));
        assertFalse(resources(loader, Schema.NEWEST + 1));
    }

    private static boolean resources(ClassLoader loader, int version) {
        var folder = loader.getResource("lapyard/store/V1__gardens.sql");
        String[] files = new java.io.File(java.net.URI.create(folder.toString()))
                .getParentFile()
                .list();
        return List.of(files).stream().anyMatch(file -> file.startsWith("V" + version + "__"));
    }
}
