package lapyard.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Mixed work, as of an hour, at the whole program in a heap of 256 MB. Few rounds by default; {@code -Dlapyard.soak=100000}
 * for as many as five minutes hold.
 */
class SoakTest {
    private static final int ROUNDS = Integer.getInteger("lapyard.soak", 12);
    private static final Duration LONGEST = Duration.ofMinutes(5);
    private static final int WORKERS = 4;
    private static final long GROWTH_BYTES = 40L << 20;
    private static final HttpClient CLIENT =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    @TempDir
    private Path folder;

    @Test
    void mixedWorkLeavesTheMemoryWhereItWas() throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx256m",
                        "-XX:+UseSerialGC",
                        "-Djava.awt.headless=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Lapyard.class.getName(),
                        "serve",
                        "--port",
                        "0",
                        "--data",
                        folder.toString())
                .redirectErrorStream(true)
                .start();
        ExecutorService threads = Executors.newFixedThreadPool(WORKERS + 1);
        try {
            BufferedReader lines = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
            String line = lines.readLine();
            assertTrue(line.startsWith("Lapyard answers at "), line);
            URI address = URI.create(line.split(" ")[3]);
            List<String> said = new ArrayList<>();
            threads.submit(() -> lines.lines().forEach(said::add));

            String document = Files.readString(Path.of("../samples/village-hall.json"));
            Map<Integer, AtomicInteger> statuses = new ConcurrentHashMap<>();
            Instant end = Instant.now().plus(LONGEST);
            List<Long> floors = new ArrayList<>();
            AtomicInteger round = new AtomicInteger();
            List<Future<?>> workers = new ArrayList<>();
            for (int worker = 0; worker < WORKERS; worker++) {
                long seed = worker;
                workers.add(threads.submit(() -> {
                    Random random = new Random(seed);
                    while (round.getAndIncrement() < ROUNDS && Instant.now().isBefore(end)) work(address, document, random, statuses);
                    return null;
                }));
            }
            long lowest = Long.MAX_VALUE;
            int window = Math.max(1, ROUNDS / 20);
            int next = window;
            while (workers.stream().anyMatch(each -> !each.isDone())) {
                lowest = Math.min(lowest, heap(address));
                if (round.get() >= next || Instant.now().isAfter(end)) {
                    floors.add(lowest);
                    lowest = Long.MAX_VALUE;
                    next += window;
                }
                Thread.sleep(50);
            }
            for (Future<?> each : workers) each.get();
            assertTrue(process.isAlive());
            assertEquals(List.of(), said);
            assertTrue(statuses.keySet().stream().allMatch(status -> status < 500 || status == 503), statuses::toString);
            // a few rounds only fill what is kept and loaded once
            if (ROUNDS >= 1000 && floors.size() >= 10) {
                long early = floors.subList(floors.size() / 4, floors.size() / 2).stream().mapToLong(Long::longValue).min().orElseThrow();
                long late = floors.subList(floors.size() / 2, floors.size()).stream().mapToLong(Long::longValue).min().orElseThrow();
                assertTrue(late <= early + GROWTH_BYTES, "heap after collections, each twentieth: " + floors);
            }
            Files.writeString(
                    Path.of("target/soak.txt"), new TreeMap<>(statuses) + " heap floors " + floors + "\n");
        } finally {
            process.destroy();
            threads.shutdownNow();
        }
    }

    private static long heap(URI address) throws Exception {
        String metrics = CLIENT.send(HttpRequest.newBuilder(address.resolve("/metrics")).build(), BodyHandlers.ofString()).body();
        String used = metrics.replaceAll("(?s).*\nlapyard_heap_used_bytes ([0-9.Ee+]+)\n.*", "$1");
        return (long) Double.parseDouble(used);
    }

    /** A person's visit: makes or opens a garden, looks, changes, prints. */
    private static void work(URI address, String document, Random random, Map<Integer, AtomicInteger> statuses) throws Exception {
        HttpResponse<String> made = send(statuses, address, "POST", "/api/gardens", document.replaceFirst("\"name\": *\"[^\"]*\"", "\"name\":\"g" + random.nextInt() + "\""));
        String garden = made.headers().firstValue("Location").orElseThrow();
        for (String path : List.of("/api/gardens", garden, garden + "/job-sheet", garden + "/plan.svg", "/", "/main.js", garden + "/slip.csv"))
            send(statuses, address, "GET", path, "");
        for (int edit = 0; edit < 5; edit++) {
            send(statuses, address, "PATCH", garden, "{\"name\":\"n" + random.nextInt() + "\"}", "If-Match", "*");
            send(statuses, address, "GET", garden + "/job-sheet/slip", "");
        }
        send(statuses, address, "GET", garden + "/difference?from=1", "");
        send(statuses, address, "PUT", garden, "{\"beds\":[{\"width\":0}]}", "If-Match", "*");
        if (random.nextInt(4) == 0) send(statuses, address, "GET", garden + "/plan.pdf", "");
        send(statuses, address, "DELETE", garden, "", "If-Match", "*");
    }

    private static HttpResponse<String> send(
            Map<Integer, AtomicInteger> statuses, URI address, String method, String path, String body, String... headers)
            throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(address.resolve(path)).method(method, BodyPublishers.ofString(body));
        if (!body.isEmpty()) request.header("Content-Type", method.equals("PATCH") ? "application/merge-patch+json" : "application/json");
        if (headers.length > 0) request.headers(headers);
        HttpResponse<String> answer = CLIENT.send(request.build(), BodyHandlers.ofString());
        statuses.computeIfAbsent(answer.statusCode(), key -> new AtomicInteger()).incrementAndGet();
        return answer;
    }
}
