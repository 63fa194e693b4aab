package lapyard.bench;

import com.sun.management.GarbageCollectionNotificationInfo;
import java.io.InputStream;
import java.io.PrintStream;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import javax.management.NotificationEmitter;
import javax.management.openmbean.CompositeData;
import lapyard.answers.GardenDesk;
import lapyard.rest.Binding;
import lapyard.rest.Keys;
import lapyard.rest.Server;
import lapyard.store.GardenStore;
import lapyard.store.NewGarden;
import lapyard.store.Opening;

/**
 * The server under strain, client and server in one process: 60 slips at once, two prints whose readers are gone, 50
 * editors of one garden, 1000 beds of 6 courses, 200 of 20. Arguments: which of {@code parts gone editors beds alike courses}, the
 * first four unless given; {@code editors editors}
 * tells a process that has just begun from one that is warm. Processor time is that of the whole process, the clients too.
 */
public final class ServerStrain {
    private static final PrintStream OUT = System.out;
    private static final HttpClient CLIENT = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private static final AtomicLong mostAfterCollection = new AtomicLong();
    private static final Set<String> HEAP = ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP).map(MemoryPoolMXBean::getName).collect(Collectors.toSet());

    private final URI address;
    private final GardenStore store;

    private ServerStrain(URI address, GardenStore store) {
        this.address = address;
        this.store = store;
    }

    public static void main(String[] args) throws Exception {
        List<String> which = args.length == 0 ? List.of("parts", "gone", "editors", "beds") : List.of(args);
        watchMemory();
        Path folder = Files.createTempDirectory("lapyard-strain");
        try (GardenStore store = ((Opening.Open) GardenStore.open(folder)).store();
                Server server = Server.start(new Binding("127.0.0.1", 0, Keys.NONE), () -> store, new GardenDesk(), ServerStrain.class.getClassLoader())) {
            server.awaitReady();
            ServerStrain strain = new ServerStrain(server.address(), store);
            OUT.printf("heap %d MB, %d cores%n", Runtime.getRuntime().maxMemory() >> 20, Runtime.getRuntime().availableProcessors());
            for (String one : which) {
                long before = processorNanos();
                switch (one) {
                    case "parts" -> strain.parts();
                    case "gone" -> strain.gone();
                    case "editors" -> strain.editors();
                    case "beds" -> strain.beds(1000, 6, true, false);
                    case "alike" -> strain.beds(1000, 6, true);
                    case "courses" -> strain.beds(200, 20, true);
                    default -> throw new IllegalArgumentException("parts, gone, editors, beds, alike or courses, not " + one);
                }
                OUT.printf("  %s took %.1f s of processor%n", one, (processorNanos() - before) / 1e9);
            }
        }
        System.exit(0);
    }

    private static long processorNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
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

    private HttpResponse<byte[]> get(String path) throws Exception {
        return CLIENT.send(HttpRequest.newBuilder(address.resolve(path)).build(), BodyHandlers.ofByteArray());
    }

    private static double seconds(long fromNanos) {
        return (System.nanoTime() - fromNanos) / 1e9;
    }

    /** Sixty gardens of sixty beds are asked for their slip at once, while others ask for short things. */
    private void parts() throws Exception {
        for (int i = 0; i < 60; i++) store.create(new NewGarden("part" + i, "Part " + i, garden(60, 3, 1000 + i, false)));
        long from = System.nanoTime();
        Map<Integer, Integer> answers = new ConcurrentHashMap<>();
        List<Thread> asking = new ArrayList<>();
        List<Double> took = Collections.synchronizedList(new ArrayList<>());
        for (int i = 0; i < 60; i++) {
            String path = "/api/gardens/part" + i + "/job-sheet/slip";
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
                else CLIENT.send(HttpRequest.newBuilder(address.resolve("/api/gardens")).header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(mine)).build(), BodyHandlers.discarding());
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
        for (int i = 0; i < 2; i++) {
            store.create(new NewGarden("gone" + i, "Gone", garden(200, 4, 2000 + i, false)));
            store.create(new NewGarden("small" + i, "Small", garden(4, 3, 2100 + i, false)));
        }
        for (int i = 0; i < 2; i++) {
            try (Socket socket = new Socket("127.0.0.1", address.getPort())) {
                socket.getOutputStream().write(("GET /api/gardens/gone" + i + "/sheets.pdf HTTP/1.1\r\nHost: localhost\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
                Thread.sleep(300);
            }
        }
        long from = System.nanoTime();
        for (int i = 0; i < 2; i++) OUT.printf("after two abandoned prints, job sheet %d: %d after %.2f s%n", i, get("/api/gardens/small" + i + "/job-sheet").statusCode(), seconds(from));
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
        String garden = "shared" + System.nanoTime();
        store.create(new NewGarden(garden, "Shared", document));
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
                    HttpResponse<String> saved = CLIENT.send(HttpRequest.newBuilder(address.resolve("/api/gardens/" + garden + "?merge=true"))
                            .header("Content-Type", "application/json").header("If-Match", tag).PUT(BodyPublishers.ofString(moved)).build(), BodyHandlers.ofString());
                    took.add(seconds(from));
                    sum += seconds(from);
                    answers.merge(saved.statusCode(), 1, Integer::sum);
                    HttpResponse<String> now = CLIENT.send(HttpRequest.newBuilder(address.resolve("/api/gardens/" + garden)).build(), BodyHandlers.ofString());
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

    /** The most that was alive, or not looked at, behind any collection. */
    private static void watchMemory() {
        for (GarbageCollectorMXBean collector : ManagementFactory.getGarbageCollectorMXBeans()) {
            ((NotificationEmitter) collector).addNotificationListener((told, whose) -> {
                if (!(told.getUserData() instanceof CompositeData data)) return;
                long after = GarbageCollectionNotificationInfo.from(data).getGcInfo().getMemoryUsageAfterGc().entrySet().stream()
                        .filter(pool -> HEAP.contains(pool.getKey())).mapToLong(pool -> pool.getValue().getUsed()).sum();
                mostAfterCollection.accumulateAndGet(after, Math::max);
            }, null, null);
        }
    }

    /** Beds of some courses, alike or of many sizes: job sheet and the set of sheets. */
    private void beds(int beds, int courses, boolean... kinds) throws Exception {
        for (boolean alike : kinds) {
            String id = (alike ? "alike-" : "many-sizes-") + beds;
            store.create(new NewGarden(id, id, garden(beds, courses, 3000, alike)));
            for (String form : List.of("job-sheet", "sheets.pdf")) {
                System.gc();
                mostAfterCollection.set(0);
                long processor = processorNanos();
                long from = System.nanoTime();
                HttpResponse<InputStream> answer = CLIENT.send(HttpRequest.newBuilder(address.resolve("/api/gardens/" + id + "/" + form)).build(), BodyHandlers.ofInputStream());
                long bytes = answer.body().transferTo(java.io.OutputStream.nullOutputStream());
                OUT.printf("%d beds of %d courses, %s, %s: %d, %d bytes, %.1f s, %.1f s of processor, heap after a collection at most %d MB%n", beds, courses, id, form,
                        answer.statusCode(), bytes, seconds(from), (processorNanos() - processor) / 1e9, mostAfterCollection.get() >> 20);
            }
        }
    }
}
