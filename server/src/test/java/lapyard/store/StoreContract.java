package lapyard.store;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import lapyard.plan.GardenState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import static lapyard.store.GardenList.Place.ARCHIVED;
import static lapyard.store.GardenList.Place.DELETED;
import static lapyard.store.GardenList.Place.STANDING;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** What a store promises, whichever database is behind it. */
abstract class StoreContract {
    GardenStore store;

    /** Opens the same place each time within one test. */
    abstract GardenStore place(Clock clock);

    private final SetClock clock = new SetClock();

    @BeforeEach
    void open() {
        store = place(clock);
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
        assertEquals(0, store.list(new GardenList.Ask(10, Optional.empty(), STANDING, Optional.empty(), List.of(), GardenList.Order.NAME)).total());
        assertEquals(1, store.list(new GardenList.Ask(10, Optional.empty(), DELETED, Optional.empty(), List.of(), GardenList.Order.NAME)).total());
        assertTrue(store.find("a").orElseThrow().deleted());
        assertInstanceOf(Change.Deleted.class, store.save("a", 2, "A", "{\"v\":2}"));
        assertInstanceOf(Change.Deleted.class, store.delete("a", 2));
        assertEquals(3, made(store.restore("a", 2, 1)).revision());
        assertFalse(store.find("a").orElseThrow().deleted());
        assertEquals(1, store.list(new GardenList.Ask(10, Optional.empty(), STANDING, Optional.empty(), List.of(), GardenList.Order.NAME)).total());
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
            GardenList page = store.list(new GardenList.Ask(3, after, STANDING, Optional.empty(), List.of(), GardenList.Order.NAME));
            assertEquals(7, page.total());
            page.rows().forEach(row -> seen.add(row.name()));
            after = page.next();
        } while (after.isPresent());
        assertEquals(List.of("Apple", "apple", "cherry", "medlar", "pear", "Plum", "quince"), seen);
    }

    @Test
    void aPageGoesOnBehindAGardenThatWasDeletedMeanwhile() {
        for (String id : List.of("a", "b", "c", "d")) store.create(new NewGarden(id, id, "{}"));
        GardenList first = store.list(new GardenList.Ask(2, Optional.empty(), STANDING, Optional.empty(), List.of(), GardenList.Order.NAME));
        made(store.delete("b", 1));
        GardenList second = store.list(new GardenList.Ask(2, first.next(), STANDING, Optional.empty(), List.of(), GardenList.Order.NAME));
        assertEquals(
                List.of("c", "d"),
                second.rows().stream().map(GardenList.Row::id).toList());
    }

    private static String garden(String client, String state) {
        return "{\"beds\":[{\"quote\":{\"client\":\"no\"}}],\"quote\":{\"labour\":[{\"client\":\"no\"}],\"client\":\"" + client + "\"},\"state\":\"" + state + "\"}";
    }

    private List<String> pages(GardenList.Order order, Optional<GardenState> state, String... words) {
        List<String> seen = new ArrayList<>();
        Optional<String> after = Optional.empty();
        do {
            GardenList page = store.list(new GardenList.Ask(2, after, STANDING, state, List.of(words), order));
            page.rows().forEach(row -> seen.add(row.id()));
            after = page.next();
            if (after.isEmpty()) assertEquals(seen.size(), page.total());
        } while (after.isPresent());
        return seen;
    }

    @Test
    void gardensAreFoundByWordStateAndClientInEveryOrder() {
        String[][] all = {{"a", "Upper yard", "Ms Oakes\\n4 Mill Lane", "quoted"}, {"b", "Almshouse", "", "pencilled"}, {"c", "Yard of the school", "School 100%", "done"},
            {"d", "Zigzag", "ms Ash", "building"}, {"e", "back YARD", "School_board", "quoted"}};
        for (int i = 0; i < all.length; i++) {
            clock.set(Instant.parse("2027-01-0" + (1 + i) + "T10:00:00Z"));
            store.create(new NewGarden(all[i][0], all[i][1], garden(all[i][2], all[i][3])));
        }
        clock.set(Instant.parse("2027-02-01T10:00:00Z"));
        made(store.save("b", 1, "Almshouse", garden("", "ordered")));
        assertEquals(List.of("b", "e", "a", "c", "d"), pages(GardenList.Order.NAME, Optional.empty()));
        assertEquals(List.of("b", "e", "d", "c", "a"), pages(GardenList.Order.CHANGED, Optional.empty()));
        assertEquals(List.of("d", "a", "c", "e", "b"), pages(GardenList.Order.CLIENT, Optional.empty()));
        assertEquals(List.of("e", "a", "b", "d", "c"), pages(GardenList.Order.STATE, Optional.empty()));
        assertEquals(List.of("e", "a"), pages(GardenList.Order.STATE, Optional.of(GardenState.QUOTED)));
        assertEquals(List.of("e", "a", "c"), pages(GardenList.Order.NAME, Optional.empty(), "yard"));
        assertEquals(List.of("c"), pages(GardenList.Order.NAME, Optional.empty(), "SCHOOL", "of"));
        assertEquals(List.of("c"), pages(GardenList.Order.NAME, Optional.empty(), "100%"));
        assertEquals(List.of("e"), pages(GardenList.Order.NAME, Optional.empty(), "l_b"));
        assertEquals(List.of(), pages(GardenList.Order.NAME, Optional.empty(), "mill"));
        GardenList.Row row = store.list(new GardenList.Ask(9, Optional.of("e"), STANDING, Optional.empty(), List.of(), GardenList.Order.NAME)).rows().get(0);
        assertEquals("Ms Oakes", row.client());
        assertEquals(GardenState.QUOTED, row.state());
        made(store.restore("b", 2, 1));
        assertEquals(List.of("b"), pages(GardenList.Order.NAME, Optional.of(GardenState.PENCILLED)));
        store.bringIn("f", List.of(new KeptRevision(3, Revision.Kind.SAVED, "F", clock.instant(), Optional.empty(), garden("Nan", "done"), false)));
        assertEquals(List.of("f"), pages(GardenList.Order.NAME, Optional.of(GardenState.DONE), "nan"));
    }

    @Test
    void theLatestAreOneEachAlsoWhereOneIsSavedBetweenTwoPages() {
        for (int i = 0; i < 6; i++) {
            clock.set(Instant.parse("2027-01-01T10:00:00.00" + i + "Z"));
            store.create(new NewGarden("g-" + i, "G", "{}"));
        }
        GardenList first = store.list(new GardenList.Ask(3, Optional.empty(), STANDING, Optional.empty(), List.of(), GardenList.Order.CHANGED));
        clock.set(Instant.parse("2027-01-02T10:00:00Z"));
        made(store.save("g-3", 1, "G", "{\"v\":1}"));
        GardenList second = store.list(new GardenList.Ask(3, first.next(), STANDING, Optional.empty(), List.of(), GardenList.Order.CHANGED));
        assertEquals(List.of("g-2", "g-1", "g-0"), second.rows().stream().map(GardenList.Row::id).toList());
        assertThrows(IllegalArgumentException.class, () -> new GardenList.Ask(3, Optional.of("g-3"), STANDING, Optional.empty(), List.of(), GardenList.Order.CHANGED));
    }

    @Test
    void anArchivedGardenLeavesTheListStaysAsItIsAndComesBack() {
        store.create(new NewGarden("a", "A", "{}"));
        store.create(new NewGarden("b", "B", "{}"));
        assertTrue(store.archive("a", true));
        assertTrue(store.archive("a", true));
        assertFalse(store.archive("none", true));
        reopen();
        assertEquals(List.of("b"), store.list(new GardenList.Ask(9, Optional.empty(), STANDING, Optional.empty(), List.of(), GardenList.Order.NAME)).rows().stream().map(GardenList.Row::id).toList());
        assertEquals(List.of("a"), store.list(new GardenList.Ask(9, Optional.empty(), ARCHIVED, Optional.empty(), List.of(), GardenList.Order.NAME)).rows().stream().map(GardenList.Row::id).toList());
        assertEquals(1, store.find("a").orElseThrow().revision());
        assertEquals(2, made(store.save("a", 1, "A", "{\"v\":1}")).revision());
        assertEquals(1, store.list(new GardenList.Ask(9, Optional.empty(), ARCHIVED, Optional.empty(), List.of(), GardenList.Order.NAME)).total());
        made(store.delete("a", 2));
        assertEquals(1, store.list(new GardenList.Ask(9, Optional.empty(), DELETED, Optional.empty(), List.of(), GardenList.Order.NAME)).total());
        assertFalse(store.archive("a", true));
        made(store.restore("a", 3, 2));
        assertEquals(2, store.list(new GardenList.Ask(9, Optional.empty(), STANDING, Optional.empty(), List.of(), GardenList.Order.NAME)).total());
        assertTrue(store.archive("b", true) && store.archive("b", false));
        assertEquals(0, store.list(new GardenList.Ask(9, Optional.empty(), ARCHIVED, Optional.empty(), List.of(), GardenList.Order.NAME)).total());
    }

    @Test
    void theShelfKeepsEveryRevisionAndKnowsWhichGardensUseIt() {
        ShelfItem first = store.shelf().add("list", "catalogue", "Prices", "{\"v\":1}");
        assertEquals(1, first.revision());
        store.shelf().add("a-crew", "crew", "apprentices", "{}");
        assertEquals(2, store.shelf().save("list", 1, "Prices of May", "{\"v\":2}").orElseThrow().revision());
        assertEquals(Optional.empty(), store.shelf().save("list", 1, "Prices", "{\"v\":3}"));
        assertEquals(Optional.empty(), store.shelf().save("none", 1, "Prices", "{}"));
        String uses = "{\"shelf\":[{\"id\":\"list\",\"kind\":\"catalogue\",\"more\":{\"id\":\"no\"},\"revision\":%d}],\"beds\":[{\"shelf\":[{\"id\":\"a-crew\"}]}]}";
        store.create(new NewGarden("a", "A", uses.formatted(1)));
        store.create(new NewGarden("b", "B", uses.formatted(1)));
        store.create(new NewGarden("c", "C", "{}"));
        made(store.save("a", 1, "A", uses.formatted(2)));
        made(store.delete("b", 1));
        reopen();
        assertEquals(List.of("a-crew 0", "list 1"), store.shelf().list().stream().map(item -> item.id() + " " + item.gardens()).toList());
        assertEquals(List.of("a 2"), store.shelf().uses("list", "", 9).stream().map(use -> use.garden() + " " + use.uses()).toList());
        made(store.restore("b", 2, 1));
        assertEquals(List.of("a 2", "b 1"), store.shelf().uses("list", "", 9).stream().map(use -> use.garden() + " " + use.uses()).toList());
        assertEquals(List.of("b 1"), store.shelf().uses("list", "a", 9).stream().map(use -> use.garden() + " " + use.uses()).toList());
        made(store.restore("a", 2, 1));
        assertEquals(1, store.shelf().uses("list", "", 1).get(0).uses());
        assertEquals("{\"v\":1}", store.shelf().revision("list", 1).orElseThrow().content());
        assertEquals("Prices", store.shelf().revision("list", 1).orElseThrow().name());
        assertEquals(Optional.empty(), store.shelf().revision("list", 3));
        assertTrue(store.shelf().remove("list"));
        assertFalse(store.shelf().remove("list"));
        assertEquals(1, store.shelf().list().size());
        assertTrue(store.shelf().find("list").orElseThrow().deleted());
        assertEquals(3, store.shelf().save("list", 2, "Prices", "{}").orElseThrow().revision());
        assertFalse(store.shelf().find("list").orElseThrow().deleted());
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
        assertEquals(0, store.list(new GardenList.Ask(10, Optional.empty(), STANDING, Optional.empty(), List.of(), GardenList.Order.NAME)).total());
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
                    .map(StoreContract::made)
                    .toList();
            assertEquals(1, kept.size());
            assertEquals(kept.get(0), store.find("a").orElseThrow());
        }
    }

    @Test
    void aClockThatIsPutBackDoesNotBringTheHistoryOutOfOrder() {
        clock.set(Instant.parse("2026-05-02T10:00:00Z"));
        store.create(new NewGarden("a", "A", "{}"));
        for (String jump : List.of("2026-05-02T09:00:00Z", "1999-12-31T23:59:59Z", "2031-01-01T00:00:00Z", "2026-05-02T10:00:01Z")) {
            clock.set(Instant.parse(jump));
            long revision = store.find("a").orElseThrow().revision();
            made(store.save("a", revision, "A", "{\"v\":" + revision + "}"));
        }
        List<String> saved = store.history("a", 10, Long.MAX_VALUE).stream().map(each -> each.saved().toString()).toList();
        assertEquals(
                List.of(
                        "2031-01-01T00:00:00Z",
                        "2031-01-01T00:00:00Z",
                        "2026-05-02T10:00:00Z",
                        "2026-05-02T10:00:00Z",
                        "2026-05-02T10:00:00Z"),
                saved);
    }

    @Test
    void signsThatNoDatabaseKeepsAsTextAreReplacedInNames() {
        store.create(new NewGarden("a", "A\u0000B\ud800C", "{}"));
        assertEquals("A\ufffdB\ufffdC", store.find("a").orElseThrow().name());
    }

    @Test
    void thinningKeepsWhatIsStampedPrintedOrBroughtBack() {
        Instant day = Instant.parse("2026-01-01T08:00:00Z");
        clock.set(day);
        store.create(new NewGarden("a", "A", "{}"));
        for (int revision = 1; revision <= 40; revision++) {
            clock.set(day.plus(Duration.ofHours(6L * revision))); // four a day for ten days
            made(store.save("a", revision, "A", "{\"v\":" + revision + "}"));
        }
        assertTrue(store.stamp("a", 3, " first sketch "));
        assertFalse(store.stamp("a", 99, "none"));
        store.printed("a", 6);
        made(store.restore("a", 41, 9));
        int went = store.thin(new Retention(2, 4));
        List<Revision> left = store.history("a", 100, Long.MAX_VALUE);
        // revision n was saved 6 (n - 1) hours after 08:00 on 1 January; 42 like 41, on 11 January at 08:00
        assertEquals(
                List.of(42L, 41L, 40L, 39L, 38L, 37L, 36L, 35L, 34L, 31L, 27L, 23L, 19L, 15L, 9L, 6L, 3L, 1L),
                left.stream().map(Revision::number).toList());
        assertEquals(42 - left.size(), went);
        assertEquals(Optional.of("first sketch"), left.get(16).stamp());
        assertTrue(left.get(15).printed());
        assertEquals(0, store.thin(new Retention(2, 4)));
        assertEquals(Optional.empty(), store.revision("a", 5));
        assertTrue(store.stamp("a", 3, ""));
        assertEquals(Optional.empty(), store.history("a", 1, 4).get(0).stamp());
    }

    @Test
    void aGardensFileBringsItsWholeHistoryUnderANewId() {
        store.create(new NewGarden("a", "One", "{\"v\":1}"));
        made(store.save("a", 1, "Two", "{\"v\":2}"));
        made(store.delete("a", 2));
        made(store.restore("a", 3, 1));
        store.stamp("a", 2, "for the saw");
        Stored in = store.bringIn("b", store.everything("a"));
        assertEquals(4, in.revision());
        assertEquals("{\"v\":1}", in.document());
        assertEquals(store.everything("a"), store.everything("b"));
        assertEquals(5, made(store.save("b", 4, "B", "{\"v\":5}")).revision());
        assertThrows(IllegalArgumentException.class, () -> store.bringIn("c", List.of()));
    }

    @Test
    void aStampThatComesInWithAFileIsCutAsOneThatIsGiven() {
        String given = "\0" + "long ".repeat(40);
        KeptRevision kept = new KeptRevision(1, Revision.Kind.SAVED, "A", clock.instant(), Optional.of(given), "{}", false);
        store.bringIn("a", List.of(kept));
        store.create(new NewGarden("b", "B", "{}"));
        assertTrue(store.stamp("b", 1, given));
        assertEquals(store.everything("b").get(0).stamp(), store.everything("a").get(0).stamp());
    }

    @Test
    void whatNoTextCanHoldIsTheNameOfNothing() {
        assertEquals(Optional.empty(), store.find("a\0"));
        assertEquals(Optional.empty(), store.shelf().find("\ud800"));
        assertFalse(store.shares().remove("a", "\0"));
        assertEquals(List.of(), pages(GardenList.Order.NAME, Optional.empty(), "\0"));
    }

    @Test
    void everyListenerHearsOfEveryKeptRevisionAndOfNoOther() throws Exception {
        BlockingQueue<String> heard = new LinkedBlockingQueue<>();
        NewsListener listener = new NewsListener() {
            @Override
            public void saved(String garden, long revision) {
                heard.add(garden + " " + revision);
            }

            @Override
            public void missed() {
                heard.add("missed");
            }
        };
        AutoCloseable listening = store.listen(listener);
        awaitEars(heard);
        made(store.save("ears", store.find("ears").orElseThrow().revision(), "E", "{\"v\":1}"));
        store.create(new NewGarden("a", "A", "{}"));
        made(store.save("a", 1, "A", "{\"v\":2}"));
        assertInstanceOf(Change.Stale.class, store.save("a", 1, "A", "{\"v\":3}"));
        made(store.delete("a", 2));
        List<String> all = new ArrayList<>();
        while (!all.contains("a 3")) all.add(heard.poll(10, TimeUnit.SECONDS));
        assertEquals(List.of("a 1", "a 2", "a 3"), all.stream().filter(news -> news.startsWith("a ")).toList());
        listening.close();
        made(store.restore("a", 3, 1));
        assertEquals(null, heard.poll(100, TimeUnit.MILLISECONDS));
    }

    /** A server that was opened just now may not listen yet. */
    private void awaitEars(BlockingQueue<String> heard) throws InterruptedException {
        store.create(new NewGarden("ears", "E", "{}"));
        int tries = 0;
        while (heard.poll(200, TimeUnit.MILLISECONDS) == null) {
            assertTrue(++tries < 50, "nothing was heard");
            made(store.save("ears", tries, "E", "{\"t\":" + tries + "}"));
        }
    }

    @Test
    void aShareIsFoundByItsHashUntilItIsTakenBack() {
        store.create(new NewGarden("a", "A", "{}"));
        Share share = store.shares().add("s1", "a", "00ff", "Neighbour", Optional.empty());
        store.shares().add("s2", "a", "11ee", "Aunt", Optional.empty());
        assertEquals(Optional.of(share), store.shares().byHash("00ff"));
        assertEquals(2, store.shares().of("a").size());
        assertTrue(store.shares().remove("a", "s1"));
        assertFalse(store.shares().remove("a", "s1"));
        assertEquals(Optional.empty(), store.shares().byHash("00ff"));
    }

    @Test
    void aShareThatHasEndedIsAsIfTakenBack() {
        store.create(new NewGarden("a", "A", "{}"));
        clock.set(Instant.parse("2026-03-01T10:00:00Z"));
        Instant ends = clock.instant().plus(Duration.ofDays(90));
        Share share = store.shares().add("s1", "a", "00ff", "Neighbour", Optional.of(ends));
        Share lasting = store.shares().add("s2", "a", "11ee", "Aunt", Optional.empty());
        reopen();
        clock.set(ends.minusMillis(1));
        assertEquals(Optional.of(share), store.shares().byHash("00ff"));
        assertEquals(List.of(share, lasting), store.shares().of("a"));
        clock.set(ends);
        assertEquals(Optional.empty(), store.shares().byHash("00ff"));
        assertEquals(List.of(lasting), store.shares().of("a"));
        store.shares().add("s3", "a", "22dd", "Uncle", Optional.empty());
        assertFalse(store.shares().remove("a", "s1"), "it went when the next was made");
        clock.set(ends.plus(Duration.ofDays(3650)));
        assertEquals(Optional.of(lasting), store.shares().byHash("11ee"));
    }

    @Test
    void theStoreSaysThatItAnswers() {
        store.probe();
        reopen();
        store.probe();
    }
}
