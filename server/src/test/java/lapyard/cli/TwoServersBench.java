package lapyard.cli;

import java.util.Arrays;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import lapyard.bench.ManyGardensBench;
import lapyard.store.GardenStore;
import lapyard.store.TestPostgres;

/**
 * Two servers, each a process of its own, on one PostgreSQL that holds 10,000 gardens: how long until they answer, how long a page of
 * the list takes at each while the other saves, and how long until a listener at one hears of a save at the other.
 */
public final class TwoServersBench {
    private static final int GARDENS = 10_000;
    private static final int ROUNDS = 60;

    private TwoServersBench() {}

    public static void main(String[] arguments) throws Exception {
        String database = TestPostgres.newStoreDatabase();
        try (GardenStore store = GardenStore.open(database, new Properties())) {
            ManyGardensBench.fill(store, GARDENS);
        }
        long begun = System.nanoTime();
        TwoServersTest.Running first = TwoServersTest.Running.start(database);
        first.send("GET", "/api/gardens?limit=50", "");
        double started = since(begun);
        TwoServersTest.Running second = TwoServersTest.Running.start(database);
        try {
            System.out.printf("one server with %d gardens there, from nothing to its first list: %.0f ms%n", GARDENS, started);
            String made = first.send("POST", "/api/gardens", "{\"name\":\"Shared\",\"beds\":[]}").headers().firstValue("Location").orElseThrow();
            AtomicLong heard = new AtomicLong();
            Thread listener = new Thread(() -> listen(second, made, heard), "listener");
            listener.setDaemon(true);
            listener.start();
            for (String ask : new String[] {"limit=50", "limit=200&order=changed", "limit=50&find=client%2077", "limit=50&state=ordered"}) {
                double[] atFirst = new double[ROUNDS];
                double[] atSecond = new double[ROUNDS];
                for (int i = 0; i < ROUNDS; i++) {
                    // every ask comes after a save at the other server, so that none is answered by what was kept
                    change(second, made);
                    atFirst[i] = timed(first, "/api/gardens?" + ask);
                    change(first, made);
                    atSecond[i] = timed(second, "/api/gardens?" + ask);
                }
                System.out.printf("list ?%s: middle %.1f and %.1f ms, slowest %.1f and %.1f ms%n", ask, middle(atFirst), middle(atSecond), last(atFirst), last(atSecond));
            }
            double[] told = new double[ROUNDS];
            for (int i = 0; i < ROUNDS; i++) {
                long saved = System.nanoTime();
                long revision = change(first, made);
                while (heard.get() < revision) Thread.onSpinWait();
                told[i] = since(saved);
            }
            System.out.printf("from sending a save at one to a listener at the other: middle %.1f ms, slowest %.1f ms%n", middle(told), last(told));
        } finally {
            first.process().destroyForcibly();
            second.process().destroyForcibly();
        }
        System.exit(0); // the database of the test is a process of ours
    }

    private static void listen(TwoServersTest.Running server, String garden, AtomicLong heard) {
        try {
            TwoServersTest.listen(server, garden, heard);
        } catch (Exception ended) {
            Thread.currentThread().interrupt();
        }
    }

    private static int count;

    private static long change(TwoServersTest.Running server, String garden) throws Exception {
        var answer = server.send("PATCH", garden, "{\"notes\":{\"n\":" + ++count + "}}", "If-Match", "*");
        return Long.parseLong(Optional.ofNullable(answer.headers().firstValue("ETag").orElse(null)).orElseThrow(() -> new IllegalStateException(answer.body())).replace("\"", ""));
    }

    private static double timed(TwoServersTest.Running server, String path) throws Exception {
        long begun = System.nanoTime();
        if (server.send("GET", path, "").statusCode() != 200) throw new IllegalStateException(path);
        return since(begun);
    }

    private static double since(long nanos) {
        return (System.nanoTime() - nanos) / (double) TimeUnit.MILLISECONDS.toNanos(1);
    }

    private static double middle(double[] times) {
        double[] sorted = times.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static double last(double[] times) {
        return Arrays.stream(times).max().orElseThrow();
    }
}
