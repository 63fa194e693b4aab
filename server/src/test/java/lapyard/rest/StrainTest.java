package lapyard.rest;

import static lapyard.rest.Served.BED;
import static lapyard.rest.Served.etag;
import static lapyard.rest.Served.json;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.answers.GardenDesk;
import lapyard.answers.GivenDocument;
import lapyard.answers.PreparedGarden;
import lapyard.working.Look;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A hostile or just busy user: nobody is starved, nothing is worked out for those who are gone, memory is bounded. */
@Timeout(120)
class StrainTest {
    private static final String TOKEN = "editors-token-of-26-signs-a";

    @TempDir
    private Path folder;

    private Served served(SizesDesk desk) throws Exception {
        return new Served(folder, Keys.NONE, StrainTest.class.getClassLoader(), desk);
    }

    private static Socket asking(Served served, String head) throws Exception {
        Socket socket = new Socket("127.0.0.1", served.port());
        socket.setSoTimeout(60_000);
        socket.getOutputStream().write(head.getBytes(StandardCharsets.ISO_8859_1));
        socket.getOutputStream().flush();
        return socket;
    }

    private static String firstLine(Socket socket) throws Exception {
        StringBuilder line = new StringBuilder();
        for (int one = socket.getInputStream().read(); one >= 0 && one != '\r'; one = socket.getInputStream().read()) line.append((char) one);
        return line.toString();
    }

    @Test
    void whatNobodyWaitsForIsStoppedOnceTheLineIsGone() throws Exception {
        HeldDesk desk = new HeldDesk();
        try (Served served = served(desk)) {
            String address = served.created(BED);
            try (Socket gone = asking(served, "GET " + address + "/sheets.pdf HTTP/1.1\r\nHost: localhost\r\n\r\n")) {
                desk.begun.await();
            }
            assertTrue(desk.stopped.await(60, TimeUnit.SECONDS));
            desk.goOn.countDown();
            assertEquals(200, served.get(address + "/sheets.pdf?page=1").statusCode(), "asked again it is worked out");
            // an answer is read before its request is counted as ended
            long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
            while (!served.get("/metrics").body().contains("lapyard_requests_running 1\n")) {
                assertTrue(System.nanoTime() < until, "a request never ends");
                Thread.sleep(10);
            }
        }
    }

    @Test
    void aRequestThatComesBeforeTheAnswerToTheOneBeforeIsAnsweredAfterIt() throws Exception {
        HeldDesk desk = new HeldDesk();
        try (Served served = served(desk)) {
            String address = served.created(BED);
            String get = "GET " + address + "/weekends.csv HTTP/1.1\r\nHost: localhost\r\n";
            try (Socket line = asking(served, get + "\r\n")) {
                desk.begun.await();
                line.getOutputStream().write((get + "Connection: close\r\n\r\n").getBytes(StandardCharsets.ISO_8859_1));
                Thread.sleep(600); // long enough that the line was asked for a byte; the answers are the same if it was not
                desk.goOn.countDown();
                String both = new String(line.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
                assertEquals(3, both.split("HTTP/1.1 200 OK", -1).length, both);
            }
        }
    }

    @Test
    void shortReadsAndSavesAreAnsweredWhileJobSheetsOfManyGardensAreWaitedFor() throws Exception {
        HeldDesk desk = new HeldDesk();
        try (Served served = served(desk)) {
            List<String> gardens = new ArrayList<>();
            for (int i = 0; i < 60; i++) gardens.add(served.created(BED.replace("2400", "" + (2400 + i))));
            String[] forms = {"/job-sheet/take-off", "/plan.dxf", "/garden.xlsx", "/tables/offers.csv"};
            List<CompletableFuture<HttpResponse<String>>> waiting = IntStream.range(0, 60)
                    .mapToObj(i -> CompletableFuture.supplyAsync(() -> got(served, gardens.get(i) + forms[i % forms.length]), task -> new Thread(task).start()))
                    .toList();
            desk.begun.await();
            while (!served.get("/metrics").body().contains("lapyard_solves_waiting 58\n")) Thread.onSpinWait();
            assertEquals(200, served.get("/api/gardens").statusCode());
            assertEquals(200, served.get("/health").statusCode());
            assertEquals(200, served.put(gardens.get(0), BED, "If-Match", "\"1\"").statusCode());
            desk.goOn.countDown();
            for (CompletableFuture<HttpResponse<String>> each : waiting) assertEquals(200, each.get().statusCode());
        }
    }

    private static HttpResponse<String> got(Served served, String path) {
        try {
            return served.get(path);
        } catch (Exception broken) {
            throw new IllegalStateException(broken);
        }
    }

    @Test
    void anotherSitesPageStartsNoWorkAndPinsNoRevision() throws Exception {
        HeldDesk desk = new HeldDesk();
        try (Served served = served(desk)) {
            String address = served.created(BED);
            for (String site : List.of("cross-site", "same-site"))
                problem(403, served.get(address + "/sheets.pdf", "Sec-Fetch-Site", site));
            assertEquals(1, desk.begun.getCount());
            assertFalse(json(served.get(address + "/revisions")).path("revisions").get(0).has("printed"));
        }
    }

    @Test
    void whoHasNoTokenIsToldSoBeforeTheBody() throws Exception {
        try (Served served = new Served(folder, Keys.read(List.of("editor " + TOKEN)), StrainTest.class.getClassLoader())) {
            try (Socket socket = asking(served, "POST /api/gardens HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                    + "Content-Length: 5000000\r\n\r\n{")) {
                assertEquals("HTTP/1.1 401 Unauthorized", firstLine(socket));
            }
        }
    }

    @Test
    void tenUnfinishedBodiesKeepNobodyFromSaving() throws Exception {
        try (Served served = new Served(folder)) {
            List<Socket> unfinished = new ArrayList<>();
            byte[] much = new byte[2 << 20];
            for (int i = 0; i < 10; i++) {
                Socket socket = asking(served, "POST /api/gardens/file HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                        + "Content-Length: " + BodyReader.LONG_LIMIT + "\r\n\r\n");
                socket.getOutputStream().write(much);
                unfinished.add(socket);
            }
            for (int i = 0; i < 5; i++) served.created(BED);
            for (Socket socket : unfinished) socket.close();
        }
    }

    @Test
    void anErrorShowsAHundredFindingsAndHowManyMoreThereAre() throws Exception {
        String unknown = IntStream.range(0, 1500).mapToObj(i -> ",\"field" + i + "\":1").collect(Collectors.joining());
        try (Served served = new Served(folder, Keys.NONE, StrainTest.class.getClassLoader(), new GardenDesk())) {
            HttpResponse<String> refused = served.post("/api/gardens", BED.substring(0, BED.length() - 1) + unknown + "}");
            JsonNode problem = problem(422, refused);
            assertEquals(Problem.MOST_SNAGS, problem.path("snags").size());
            assertEquals(1400, problem.path("moreSnags").asInt());
            String endless = IntStream.range(0, 100_000).mapToObj(i -> ",\"field" + i + "\":1").collect(Collectors.joining());
            HttpResponse<String> more = served.post("/api/gardens", BED.substring(0, BED.length() - 1) + endless + "}");
            assertEquals(1900, problem(422, more).path("moreSnags").asInt(), "reading ends where nobody reads on");
            assertTrue(more.body().length() < 100_000);
        }
    }

    private static String inPieces(Served served, String request) throws Exception {
        try (Socket socket = asking(served, "")) {
            socket.setTcpNoDelay(true);
            for (int i = 0; i < request.length(); i++) socket.getOutputStream().write(request.charAt(i));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }

    @Test
    void headersThatAProxyMightReadOtherwiseAreRefused() throws Exception {
        try (Served served = new Served(folder)) {
            String get = "GET /health HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n";
            assertTrue(served.raw(get + "\r\n").startsWith("HTTP/1.1 200"));
            assertTrue(served.raw(get + "Host: localhost\r\n\r\n").startsWith("HTTP/1.1 400"));
            assertTrue(served.raw(get + "X-Odd: a\0b\r\n\r\n").startsWith("HTTP/1.1 400"));
            for (String odd : List.of("X-Odd: a\r\n b\r\n", "X-Odd: a\r\n\tb \t \r\n", "X-Odd: a\r\n \r\n", "X-Odd: a\n b  \r\n", "X-Odd: a\n \r\n", "X-Odd:\r\n a\r\n",
                    "X-Odd: a\nX-Even: b\r\n", "X-Odd : a\r\n", " X-Odd: a\r\n", "X\0Odd: a\r\n", ": a\r\n")) {
                assertTrue(served.raw(get + odd + "\r\n").startsWith("HTTP/1.1 400"), () -> odd.replace("\r", "CR").replace("\n", "LF"));
                assertTrue(served.raw(get.replace("Connection", odd + "Connection") + "\r\n").startsWith("HTTP/1.1 400"), odd);
            }
            assertTrue(served.raw(get + "\n").startsWith("HTTP/1.1 400"), "the end is LF alone");
            assertTrue(served.raw(get.replaceFirst("\r\n", "\n") + "\r\n").startsWith("HTTP/1.1 400"), "the first line ends in LF alone");
            for (String usual : List.of("X-Odd:\r\n", "X-Odd: \r\n", "X-Odd: a \r\n", "X-Odd:a,\tb\r\n", "Upgrade: h2c\r\nConnection: Upgrade\r\n", "Expect: 100-continue\r\n"))
                assertTrue(served.raw(get + usual + "\r\n").contains("HTTP/1.1 200"), usual);
            assertTrue(inPieces(served, get + "X-Odd: a\r\n b \t \r\n\r\n").startsWith("HTTP/1.1 400"));
            assertTrue(inPieces(served, get + "X-Odd: a \r\n\r\n").startsWith("HTTP/1.1 200"));
            String chunked = "POST /api/gardens HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n"
                    + Integer.toHexString(BED.length()) + "\r\n" + BED + "\r\n0\r\nX-Trailer: a\r\n\r\n";
            assertTrue(served.raw(chunked).startsWith("HTTP/1.1 201"));
            for (String odd : List.of("chunked, chunked", "gzip, chunked", "xchunked", "chunked\r\nTransfer-Encoding: identity", "chunked\r\nContent-Length: 5"))
                assertTrue(served.raw(chunked.replace("chunked", odd)).startsWith("HTTP/1.1 400"), odd);
            String address = served.created(BED);
            problem(415, served.put(address, BED, "If-Match", "\"1\"", "Content-Encoding", "gzip"));
            problem(412, served.put(address, BED.replace("2400", "2500"), "If-Match", "W/\"1\""));
            HttpResponse<String> saved = served.put(address, BED.replace("2400", "2500"), "If-Match", "W/\"7\", \"1\"");
            assertEquals("\"2\"", etag(saved));
            assertEquals("private, no-cache", served.get(address).headers().firstValue("Cache-Control").orElseThrow());
        }
    }

    @Test
    void aHeapThatIsUsedUpEndsTheProcess() throws Exception {
        CompletableFuture<Integer> ended = new CompletableFuture<>();
        IntConsumer before = OutOfMemory.ending;
        OutOfMemory.ending = ended::complete;
        SizesDesk desk = new SizesDesk() {
            @Override
            public PreparedGarden prepare(GivenDocument document, Function<String, Progress> progress, Look look) {
                throw new OutOfMemoryError("made up");
            }
        };
        try (Served served = served(desk)) {
            assertEquals(500, served.get(served.created(BED) + "/job-sheet").statusCode());
            assertEquals(OutOfMemory.EXIT, ended.get(60, TimeUnit.SECONDS));
        } finally {
            OutOfMemory.ending = before;
        }
    }

    @Test
    void aSaveAnswersWithTheJobSheetOfWhatItKept() throws Exception {
        try (Served served = new Served(folder)) {
            String address = served.created(BED);
            JsonNode receipt = json(served.put(address + "?with=job-sheet", BED.replace("2400", "3000"), "If-Match", "\"1\""));
            assertEquals(json(served.get(address + "/job-sheet")), receipt.path("jobSheet"));
            assertEquals(1, served.desk.made.get(), "the job sheet was made once for both");
            JsonNode merged = json(served.patch(address + "?with=job-sheet&merge=true", "{\"name\":\"N\"}", "If-Match", "\"1\""));
            assertEquals(json(served.get(address)), merged.path("document"));
            assertEquals("N", merged.path("jobSheet").path("garden").asText());
            problem(400, served.put(address + "?with=everything", BED, "If-Match", "*"));
        }
    }

    /** With many beds the order is wanted before the rest. */
    @Test
    void aSaveAnswersWithTheOrderAlone() throws Exception {
        try (Served served = new Served(folder, Keys.NONE, StrainTest.class.getClassLoader(), new lapyard.answers.GardenDesk())) {
            String address = served.created(BED);
            JsonNode receipt = json(served.put(address + "?with=order", BED.replace("2400", "3000"), "If-Match", "\"1\""));
            JsonNode sheet = json(served.get(address + "/job-sheet"));
            assertEquals(sheet.path("slip"), receipt.at("/order/slip"));
            assertEquals(sheet.path("snags"), receipt.at("/order/snags"));
            assertTrue(receipt.path("jobSheet").isMissingNode() && receipt.at("/order/beds").isMissingNode());
        }
    }
}
