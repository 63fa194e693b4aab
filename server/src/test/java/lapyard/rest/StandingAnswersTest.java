package lapyard.rest;

import static lapyard.rest.Served.BED;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
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

    @Test
    void theGardenThatWasChangedLastIsMadeAhead() throws Exception {
        try (Served served = new Served(folder)) {
            served.workAhead(); // there is none yet
            String first = served.created(BED);
            String last = served.created(BED.replace("2400", "3000"));
            served.workAhead();
            assertEquals(List.of("1", "0"), made(served));
            served.get(last + "/job-sheet");
            assertEquals(List.of("1", "1"), made(served));
            served.get(first + "/job-sheet");
            assertEquals(List.of("2", "1"), made(served));
        }
    }

    /** How many answers were made, and how many were found ready. */
    private static List<String> made(Served served) throws Exception {
        String metrics = served.get("/metrics").body();
        return List.of(metrics.replaceAll("(?s).*\nlapyard_output_misses_total ([0-9]+).*", "$1"), metrics.replaceAll("(?s).*\nlapyard_output_hits_total ([0-9]+).*", "$1"));
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
