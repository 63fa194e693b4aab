package lapyard.rest;

import static lapyard.rest.Served.BED;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import lapyard.answers.AnswerService;
import lapyard.answers.GardenDesk;
import lapyard.answers.GivenDocument;
import lapyard.answers.PreparedGarden;
import lapyard.json.SheetAsk;
import lapyard.store.GardenStore;
import lapyard.store.NewGarden;
import lapyard.working.Look;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An answer that is handed out again is the resource's own, and never an old one. */
class StandingAnswersTest {
    /** As browsers ask: the resources answer it, never the ready ones. */
    private static final String[] WITH_THOUGHT = {"Accept", "text/html, */*;q=0.8"};

    @TempDir
    private Path folder;

    private static Map<String, List<String>> headers(HttpResponse<String> answer) {
        Map<String, List<String>> headers = new TreeMap<>(answer.headers().map());
        headers.keySet().removeAll(List.of("date", "x-request-id"));
        return headers;
    }

    @Test
    void itIsWhatTheResourceWouldSay() throws Exception {
        try (Served served = new Served(folder)) {
            String address = served.created(BED);
            for (String path : List.of("", "/job-sheet", "/plan.svg")) {
                HttpResponse<String> first = served.get(address + path);
                HttpResponse<String> again = served.get(address + path);
                HttpResponse<String> slow = served.get(address + path, WITH_THOUGHT);
                assertEquals(200, again.statusCode());
                assertEquals(first.body(), again.body());
                assertEquals(slow.body(), again.body());
                assertEquals(headers(first), headers(again), path);
                assertEquals(headers(slow), headers(again), path);
                String tag = again.headers().firstValue("ETag").orElseThrow();
                HttpResponse<String> have = served.get(address + path, "If-None-Match", tag);
                assertEquals(304, have.statusCode());
                assertEquals(headers(served.get(address + path, "If-None-Match", tag, "Accept", WITH_THOUGHT[1])), headers(have), path);
                HttpResponse<String> head = served.send("HEAD", address + path, BodyPublishers.noBody());
                assertEquals("", head.body());
                assertEquals(headers(again).get("content-length"), headers(head).get("content-length"));
            }
        }
    }

    /** Before the resources are made a server of its own is asked for each, which answers with what resources answer later. */
    @Test
    void beforeTheResourcesAreMadeItIsWhatTheyWouldSay() throws Exception {
        try (GardenStore store = GardenStore.open(folder)) {
            store.create(new NewGarden("yard", "Yard", BED));
        }
        for (String path : List.of("", "/job-sheet", "/job-sheet?parts=yard&bed=A", "/job-sheet?bed=Q", "/job-sheet?look=first", "/job-sheet?parts=none", "/none")) {
            try (Served served = new Served(folder)) {
                HttpResponse<String> early = served.get("/api/gardens/yard" + path);
                if (path.contains("first")) served.get("/api/gardens/yard/job-sheet");
                HttpResponse<String> later = served.get("/api/gardens/yard" + path, WITH_THOUGHT);
                assertEquals(later.statusCode(), early.statusCode(), path);
                if (path.contains("first")) assertEquals("first", Served.json(early).path("look").asText());
                else if (early.statusCode() == 200) assertEquals(later.body(), early.body(), path);
                if (!path.contains("first")) assertEquals(headers(later), headers(early), path);
            }
        }
    }

    /** The page looks once more as it begins to listen for news: that shall not take the processor from its first look. */
    @Test
    void whoHasItAlreadyIsToldSoBeforeTheResourcesAreMade() throws Exception {
        try (Served served = new Served(folder)) {
            served.store.create(new NewGarden("yard", "Yard", BED));
            Map<String, Map<String, List<String>>> have = new TreeMap<>();
            for (String path : List.of("", "/job-sheet")) {
                String tag = served.get("/api/gardens/yard" + path).headers().firstValue("ETag").orElseThrow();
                HttpResponse<String> early = served.get("/api/gardens/yard" + path, "If-None-Match", tag);
                assertFalse(served.hasResources(), path);
                assertEquals(304, early.statusCode());
                have.put(path, headers(early));
            }
            for (Map.Entry<String, Map<String, List<String>>> each : have.entrySet()) {
                String tag = each.getValue().get("etag").get(0);
                assertEquals(headers(served.get("/api/gardens/yard" + each.getKey(), "If-None-Match", tag, "Accept", WITH_THOUGHT[1])), each.getValue());
            }
            assertTrue(served.hasResources());
        }
    }

    @Test
    void theGardenThatWasChangedLastIsMadeAhead() throws Exception {
        try (Served served = new Served(folder)) {
            served.workAhead(); // there is none yet
            String first = served.created(BED);
            String last = served.created(BED.replace("2400", "3000"));
            served.workAhead();
            while (!made(served).equals("1")) Thread.onSpinWait(); // the whole behind the look
            served.get(last + "/job-sheet");
            assertEquals("1", made(served));
            served.get(first + "/job-sheet");
            assertEquals("2", made(served));
        }
    }

    /** So that making the resources does not take the processor from whoever asked. */
    @Test
    void whatIsMadeAheadTellsWhereItGaveWay() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch answered = new CountDownLatch(1);
        String held = BED.replace("2400", "3000");
        AnswerService answers = new AnswerService(new GardenDesk() {
            @Override
            public PreparedGarden prepare(GivenDocument document, Function<String, Progress> progress, Look look) {
                try {
                    begun.countDown();
                    if (document.text().equals(held)) answered.await();
                } catch (InterruptedException gaveWay) {
                    Thread.currentThread().interrupt();
                }
                return super.prepare(document, progress, look);
            }
        });
        ExecutorService starting = Executors.newSingleThreadExecutor();
        try (GardenStore store = GardenStore.open(folder)) {
            StandingAnswers standing = new StandingAnswers(() -> store, answers);
            assertTrue(standing.makeAhead(), "nothing to make");
            store.create(new NewGarden("last", "Last", held));
            Future<Boolean> ahead = starting.submit(standing::makeAhead);
            begun.await();
            answers.jobSheet(GivenDocument.of(BED, "other"), SheetAsk.WHOLE.at(Look.FIRST));
            assertFalse(ahead.get());
        } finally {
            answered.countDown();
            starting.shutdown();
        }
    }

    /** How many answers were made. */
    private static String made(Served served) throws Exception {
        return served.get("/metrics").body().replaceAll("(?s).*\nlapyard_output_misses_total ([0-9]+).*", "$1");
    }

    @Test
    void aFirstLookIsNeverHandedOutAsTheWhole() throws Exception {
        try (Served served = new Served(folder)) {
            String address = served.created(BED) + "/job-sheet";
            HttpResponse<String> first = served.get(address + "?look=first");
            assertEquals("first", Served.json(first).path("look").asText());
            HttpResponse<String> whole = served.get(address);
            assertTrue(Served.json(whole).path("look").isMissingNode(), whole.body());
            assertTrue(!Served.etag(first).equals(Served.etag(whole)));
            assertEquals(whole.body(), served.get(address, "If-None-Match", Served.etag(first)).body());
            assertEquals(304, served.get(address + "?look=first", "If-None-Match", Served.etag(whole)).statusCode(), "what is known is handed out whole");
            assertEquals(whole.body(), served.get(address + "?look=whole").body());
            problem(400, served.get(address + "?look=second"));
        }
    }

    @Test
    void aSaveAnswersWithAFirstLookWhereThatIsEnough() throws Exception {
        try (Served served = new Served(folder)) {
            String address = served.created(BED);
            HttpResponse<String> saved = served.put(address + "?with=job-sheet&look=first", BED.replace("2400", "3000"), "If-Match", "\"1\"");
            assertEquals("first", Served.json(saved).path("jobSheet").path("look").asText());
            saved = served.put(address + "?with=job-sheet", BED.replace("2400", "3100"), "If-Match", "\"2\"");
            assertTrue(Served.json(saved).path("jobSheet").path("look").isMissingNode());
            problem(400, served.put(address + "?with=job-sheet&look=short", BED, "If-Match", "\"3\""));
            assertEquals("first", Served.json(served.post("/api/job-sheet?look=first", BED.replace("2400", "3200"))).path("look").asText());
        }
    }

    @Test
    void whatWasSavedIsSeenAtOnceByEveryReader() throws Exception {
        ExecutorService readers = Executors.newFixedThreadPool(3);
        try (Served served = new Served(folder)) {
            String address = served.created(BED);
            AtomicInteger acknowledged = new AtomicInteger(1);
            List<Future<Integer>> reading = java.util.stream.IntStream.range(0, 3).mapToObj(reader -> readers.submit(() -> {
                int reads = 0;
                while (acknowledged.get() < 150) {
                    int least = acknowledged.get();
                    int seen = Integer.parseInt(Served.etag(served.get(address)).replace("\"", ""));
                    assertTrue(seen >= least, seen + " was read after " + least + " was acknowledged");
                    reads++;
                }
                return reads;
            })).toList();
            for (int revision = 1; revision < 150; revision++) {
                String text = BED.replace("2400", Integer.toString(2400 + revision));
                assertEquals(200, served.put(address, text, "If-Match", "\"" + revision + "\"").statusCode());
                acknowledged.set(revision + 1);
            }
            for (Future<Integer> one : reading) assertTrue(one.get() > 0);
        } finally {
            readers.shutdownNow();
        }
    }

    @Test
    void otherGardensSavesTakeNothingAwayAndADeletedGardenIsGone() throws Exception {
        try (Served served = new Served(folder)) {
            String address = served.created(BED);
            String other = served.created(BED);
            String sheet = served.get(address + "/job-sheet").body();
            assertEquals(200, served.put(other, BED.replace("2400", "3000"), "If-Match", "*").statusCode());
            assertEquals(sheet, served.get(address + "/job-sheet").body());
            served.get(address);
            assertEquals(200, served.delete(address, "If-Match", "*").statusCode());
            problem(410, served.get(address));
            problem(410, served.get(address + "/job-sheet"));
        }
    }

    @Test
    void whoHasNoTokenIsToldNothingThatIsReady() throws Exception {
        String editor = "editors-token-of-26-signs-a";
        String[] as = {"Authorization", "Bearer " + editor};
        try (Served served = new Served(folder, Keys.read(List.of("editor " + editor)), StandingAnswersTest.class.getClassLoader())) {
            String address = served.post("/api/gardens", BED, as).headers().firstValue("Location").orElseThrow();
            for (int time = 0; time < 2; time++) assertEquals(200, served.get(address + "/job-sheet", as).statusCode());
            problem(401, served.get(address + "/job-sheet"));
        }
    }
}
