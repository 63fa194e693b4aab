package lapyard.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import lapyard.plan.GardenState;
import lapyard.store.GardenList;
import lapyard.store.GardenStore;
import lapyard.store.NewGarden;
import lapyard.store.TestPostgres;

/** A store of 10,000 gardens: how long it takes to open, and to hand out a page of the list in each order, with and without words. */
public final class ManyGardensBench {
    private static final int GARDENS = 10_000;
    private static final int ROUNDS = 40;

    private ManyGardensBench() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createTempDirectory("many-gardens");
        String empty = Files.createTempDirectory("no-gardens").toString();
        time("SQLite, empty", () -> GardenStore.open(Path.of(empty)), 0);
        time("SQLite", () -> GardenStore.open(folder), GARDENS);
        if (arguments.length > 0 && arguments[0].equals("postgresql")) {
            String url = TestPostgres.newStoreDatabase();
            time("PostgreSQL", () -> GardenStore.open(url, new Properties()), GARDENS);
        }
    }

    private interface Place {
        GardenStore open();
    }

    private static void time(String database, Place place, int gardens) throws Exception {
        try (GardenStore store = place.open()) {
            fill(store, gardens);
        }
        double[] opened = new double[ROUNDS / 4];
        for (int i = 0; i < opened.length; i++) {
            long begun = System.nanoTime();
            GardenStore store = place.open();
            store.isNew();
            opened[i] = (System.nanoTime() - begun) / (double) TimeUnit.MILLISECONDS.toNanos(1);
            store.close();
        }
        System.out.printf("%s, %d gardens: open and asked whether it is new in %.1f ms%n", database, gardens, middle(opened));
        if (gardens == 0) return;
        try (GardenStore store = place.open()) {
            for (GardenList.Order order : GardenList.Order.values()) {
                Optional<String> middle = Optional.empty();
                for (int page = 0; page < 25; page++) middle = store.list(ask(middle, order, Optional.empty())).next();
                Optional<String> behind = middle;
                System.out.printf("  %s: first page %.2f ms, page 26 %.2f ms, of a state %.2f ms, with a word %.2f ms, with two that few have %.2f ms%n", order,
                        median(ROUNDS, () -> store.list(ask(Optional.empty(), order, Optional.empty()))),
                        median(ROUNDS, () -> store.list(ask(behind, order, Optional.empty()))),
                        median(ROUNDS, () -> store.list(ask(Optional.empty(), order, Optional.of(GardenState.ORDERED)))),
                        median(ROUNDS, () -> store.list(ask(Optional.empty(), order, Optional.empty(), "yard"))),
                        median(ROUNDS, () -> store.list(ask(Optional.empty(), order, Optional.empty(), "client 77", "99"))));
            }
        }
    }

    private static GardenList.Ask ask(Optional<String> after, GardenList.Order order, Optional<GardenState> state, String... words) {
        return new GardenList.Ask(200, after, GardenList.Place.STANDING, state, List.of(words), order);
    }

    /** Gardens of twelve beds, with clients, in all states. */
    public static void fill(GardenStore store, int gardens) {
        Random random = new Random(23);
        String bed = "{\"id\":\"%s\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[1000,2000]}";
        String beds = String.join(",", IntStream.range(0, 12).mapToObj(i -> bed.formatted("B" + i)).toList());
        store.fillIfNew(IntStream.range(0, gardens).mapToObj(i -> {
            int client = random.nextInt(2_000);
            String state = GardenState.values()[random.nextInt(5)].code();
            return new NewGarden("g" + i, "Garden " + random.nextInt(100_000) + (i % 3 == 0 ? " yard" : ""),
                    "{\"state\":\"" + state + "\",\"quote\":{\"client\":\"Client " + client + "\"},\"beds\":[" + beds + "]}");
        }).toList());
    }

    private static double median(int rounds, Runnable work) {
        for (int i = 0; i < rounds / 4; i++) work.run();
        double[] ms = new double[rounds];
        for (int i = 0; i < rounds; i++) {
            long begun = System.nanoTime();
            work.run();
            ms[i] = (System.nanoTime() - begun) / (double) TimeUnit.MILLISECONDS.toNanos(1);
        }
        return middle(ms);
    }

    private static double middle(double[] ms) {
        Arrays.sort(ms);
        return ms[ms.length / 2];
    }
}
