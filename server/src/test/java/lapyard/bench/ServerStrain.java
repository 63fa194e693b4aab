package lapyard.bench;

import java.io.InputStream;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.net.Socket;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The server under strain, in a process of its own with 256 MB of heap: 60 slips at once, two prints whose readers are gone, 50
 * editors of one garden, 1000 beds of 6 courses alike and of many sizes, 200 of 20. Arguments: which of {@code parts gone editors
 * beds alike sizes courses}, the first four unless given; {@code beds} is {@code alike} and {@code sizes}, {@code editors editors}
 * tells a process that has just begun from one that is warm. Processor time is the server's.
 */
public final class ServerStrain {
    private static final PrintStream OUT = System.out;
    private static final HttpClient CLIENT = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private final ServerProcess server;

    private ServerStrain(ServerProcess server) {
        this.server = server;
    }

    public static void main(String[] args) throws Exception {
        List<String> which = args.length == 0 ? List.of("parts", "gone", "editors", "beds") : List.of(args);
        try (ServerProcess server = new ServerProcess()) {
            ServerStrain strain = new ServerStrain(server);
            OUT.printf("%d cores%n", Runtime.getRuntime().availableProcessors());
            for (String one : which) {
                double before = server.processorSeconds();
                switch (one) {
                    case "parts" -> strain.parts();
                    case "gone" -> strain.gone();
                    case "editors" -> strain.editors();
                    case "beds" -> strain.beds(1000, 6, true, false);
                    case "alike" -> strain.beds(1000, 6, true);
                    case "sizes" -> strain.beds(1000, 6, false);
                    case "courses" -> strain.beds(200, 20, true, false);
                    default -> throw new IllegalArgumentException("parts, gone, editors, beds, alike, sizes or courses, not " + one);
                }
                OUT.printf("  %s took %.1f s of processor%n", one, server.processorSeconds() - before);
            }
        }
        System.exit(0);
    }

    /** Rectangles of many sizes on a grid. */
    private static String garden(int beds, int courses, long seed, boolean alike) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < beds; i++) {
            int width = alike ? 2400 : 1500 + 50 * random.nextInt(50);
            int depth = alike ? 1200 : 800 + 50 * random.nextInt(14);
            text.append(i == 0 ? "" : ",").append("{\"width\":%d,\"depth\":%d,\"courses\":%d,\"at\":[%d,%d]}"
                    .formatted(width, depth, courses, i % 30 * 5000, i / 30 * 2600));
        }
        return "{\"name\":\"Garden " + seed + "\",\"beds\":[" + text + "]}";
    }

    /** Its address. */
    private String stored(String document) throws Exception {
        HttpResponse<String> answer = CLIENT.send(HttpRequest.newBuilder(server.address.resolve("/api/gardens")).header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(document)).build(), BodyHandlers.ofString());
        return answer.headers().firstValue("Location").orElseThrow(() -> new IllegalStateException(answer.body()));
    }

    private HttpResponse<byte[]> get(String path) throws Exception {
        return CLIENT.send(HttpRequest.newBuilder(server.address.resolve(path)).build(), BodyHandlers.ofByteArray());
    }

    private static double seconds(long fromNanos) {
        return (System.nanoTime() - fromNanos) / 1e9;
    }

    /** Sixty gardens of sixty beds are asked for their slip at once, while others ask for short things. */
    private void parts() throws Exception {
        List<String> gardens = new ArrayList<>();
        for (int i = 0; i < 60; i++) gardens.add(stored(garden(60, 3, 1000 + i, false)));
        long from = System.nanoTime();
        Map<Integer, Integer> answers = new ConcurrentHashMap<>();
        List<Thread> asking = new ArrayList<>();
        List<Double> took = Collections.synchronizedList(new ArrayList<>());
        for (String garden : gardens) {
            String path = garden + "/job-sheet/slip";
            asking.add(started(() -> {
                answers.merge(get(path).statusCode(), 1, Integer::sum);
                took.add(seconds(from));
            }));
        }
        Map<String, List<Double>> others = others(asking);
        Collections.sort(took);
        OUT.printf("60 slips of 60 beds at once: answers %s, half after %.1f s, last after %.1f s%n", new TreeMap<>(answers), took.get(30), took.get(59));
        tell(others);
    }

    private interface Asking {
        void now() throws Exception;
    }

    private static Thread started(Asking asking) {
        Thread thread = new Thread(() -> {
            try {
                asking.now();
            } catch (Exception broken) {
                OUT.println("broken off: " + broken);
            }
        });
        thread.start();
        return thread;
    }

    /** Short requests, one after the other, until those threads have ended. */
    private Map<String, List<Double>> others(List<Thread> until) throws Exception {
        Map<String, List<Double>> took = new TreeMap<>();
        String mine = "{\"name\":\"Mine\",\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}";
        while (until.stream().anyMatch(Thread::isAlive)) {
            for (String path : List.of("/health", "/api/gardens", "a save")) {
                long from = System.nanoTime();
                if (path.startsWith("/")) get(path);
                else stored(mine);
                took.computeIfAbsent(path, key -> new ArrayList<>()).add(seconds(from));
            }
            Thread.sleep(50);
        }
        return took;
    }

    private static void tell(Map<String, List<Double>> took) {
        took.forEach((path, all) -> {
            Collections.sort(all);
            OUT.printf("  meanwhile %s: %d times, half %.3f s, longest %.2f s%n", path, all.size(), all.get(all.size() / 2), all.get(all.size() - 1));
        });
    }

    /** Two prints of 200 beds are asked for by callers who hang up after 0.3 s; then others ask for job sheets. */
    private void gone() throws Exception {
        List<String> large = new ArrayList<>();
        List<String> small = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            large.add(stored(garden(200, 4, 2000 + i, false)));
            small.add(stored(garden(4, 3, 2100 + i, false)));
        }
        for (String garden : large) {
            try (Socket socket = new Socket("127.0.0.1", server.address.getPort())) {
                socket.getOutputStream().write(("GET " + garden + "/sheets.pdf HTTP/1.1\r\nHost: localhost\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
                Thread.sleep(300);
            }
        }
        long from = System.nanoTime();
        for (int i = 0; i < 2; i++) OUT.printf("after two abandoned prints, job sheet %d: %d after %.2f s%n", i, get(small.get(i) + "/job-sheet").statusCode(), seconds(from));
        while (!new String(get("/metrics").body(), StandardCharsets.UTF_8).contains("lapyard_solves_running 0\n")) Thread.sleep(50);
        OUT.printf("  nothing is worked out any more after %.2f s%n", seconds(from));
    }

    /** Fifty editors of one garden of fifty beds, each moving a bed of its own, twenty times each. */
    private void editors() throws Exception {
        int editors = 50;
        int saves = 20;
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < editors; i++) beds.append(i == 0 ? "" : ",").append("{\"id\":\"B%d\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[%d,%d]}".formatted(i, i % 10 * 4000, i / 10 * 3000));
        String document = "{\"name\":\"Shared\",\"beds\":[" + beds + "]}";
        String garden = stored(document);
        List<Double> took = Collections.synchronizedList(new ArrayList<>());
        List<Double> ofEditor = Collections.synchronizedList(new ArrayList<>());
        Map<Integer, Integer> answers = new ConcurrentHashMap<>();
        List<Thread> all = new ArrayList<>();
        for (int i = 0; i < editors; i++) {
            int number = i;
            all.add(started(() -> {
                String text = document;
                String tag = "\"1\"";
                double sum = 0;
                for (int save = 1; save <= saves; save++) {
                    String at = "\"at\":[" + (number % 10 * 4000 + 10 * save) + "," + number / 10 * 3000 + "]";
                    String moved = text.replaceAll("(\"id\":\"B" + number + "\",[^}]*)\"at\":\\[[0-9,]*\\]", "$1" + at);
                    long from = System.nanoTime();
                    HttpResponse<String> saved = CLIENT.send(HttpRequest.newBuilder(server.address.resolve(garden + "?merge=true"))
                            .header("Content-Type", "application/json").header("If-Match", tag).PUT(BodyPublishers.ofString(moved)).build(), BodyHandlers.ofString());
                    took.add(seconds(from));
                    sum += seconds(from);
                    answers.merge(saved.statusCode(), 1, Integer::sum);
                    HttpResponse<String> now = CLIENT.send(HttpRequest.newBuilder(server.address.resolve(garden)).build(), BodyHandlers.ofString());
                    text = now.body();
                    tag = now.headers().firstValue("ETag").orElse(tag);
                }
                ofEditor.add(sum / saves);
            }));
        }
        for (Thread each : all) each.join();
        Collections.sort(took);
        Collections.sort(ofEditor);
        OUT.printf("50 editors, 20 merged saves each: answers %s, p50 %.2f s, p99 %.2f s, longest %.2f s; an editor's mean from %.2f to %.2f s%n", new TreeMap<>(answers),
                took.get(took.size() / 2), took.get(took.size() * 99 / 100), took.get(took.size() - 1), ofEditor.get(0), ofEditor.get(ofEditor.size() - 1));
    }

    /** Beds of some courses, alike or of many sizes: job sheet and the set of sheets. */
    private void beds(int beds, int courses, boolean... kinds) throws Exception {
        for (boolean alike : kinds) {
            String garden = stored(garden(beds, courses, 3000, alike));
            for (String form : List.of("job-sheet", "sheets.pdf")) {
                server.mostAfterCollectionMb();
                double processor = server.processorSeconds();
                long from = System.nanoTime();
                // a run that is broken off tells what it was at: at a load of 10 the set takes minutes
                OUT.printf("%s is asked for at load %.1f%n", form, ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
                HttpResponse<InputStream> answer = CLIENT.send(HttpRequest.newBuilder(server.address.resolve(garden + "/" + form)).build(), BodyHandlers.ofInputStream());
                long bytes = answer.body().transferTo(java.io.OutputStream.nullOutputStream());
                OUT.printf("%d beds of %d courses, %s, %s: %d, %d bytes, %.1f s, %.1f s of processor, heap after a collection at most %d MB%n", beds, courses, alike ? "alike" : "many sizes", form,
                        answer.statusCode(), bytes, seconds(from), server.processorSeconds() - processor, server.mostAfterCollectionMb());
            }
        }
    }
}
