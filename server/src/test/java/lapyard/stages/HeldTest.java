package lapyard.stages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HeldTest {
    private static final int HORIZON = 60;

    private final Random random = new Random(5);

    /** Bounds are narrowed at random and taken back; against amounts added up anew, unit by unit, on the clock of each task. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void holdsWhatAddingUpAnewGives(long seed) {
        Net net = new Net(StagingJobs.small(7, seed, seed % 2 == 0));
        Held held = new Held(net, 0, net.users(0), HORIZON);
        int[] bound = new int[2 * net.n];
        for (int round = 0; round < 400; round++) {
            for (int i = 0; i < net.n; i++) {
                if (random.nextInt(3) == 0) continue;
                bound[2 * i] = random.nextInt(12);
                bound[2 * i + 1] = -bound[2 * i] - random.nextInt(4);
            }
            held.follow(bound);
            int[] sum = sums(net, bound);
            assertEquals(IntStream.range(0, HORIZON).filter(t -> sum[t] > net.there(0, t)).findFirst().orElse(-1), held.tooFull());
            for (int u = 0; u < held.users.length; u++) assertEquals(free(net, bound, sum, held.users[u]), held.free(u, bound[2 * held.users[u]]));
        }
    }

    /** A place that was looked at needs no look until something is added in it; one that was never looked at does. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void asksForALookWhereSomethingWasAdded(long seed) {
        Net net = new Net(StagingJobs.small(7, seed, false));
        Held held = new Held(net, 0, net.users(0), HORIZON);
        int[] bound = new int[2 * net.n];
        for (int i = 0; i < net.n; i++) bound[2 * i + 1] = -20;
        int[] before = sums(net, bound);
        for (int round = 0; round < 400; round++) {
            held.follow(bound);
            held.look();
            int[] now = sums(net, bound);
            for (int u = 0; u < held.users.length; u++) {
                int task = held.users[u];
                int place = bound[2 * task];
                boolean added = IntStream.range(place, place + net.duration[task]).map(net.hours[task]::clock).anyMatch(t -> now[t] > before[t]);
                if (added) assertTrue(held.needsFirst(u, place) && held.needsLast(u, place));
                held.first(u, place);
                held.last(u, place);
            }
            System.arraycopy(now, 0, before, 0, now.length);
            int moved = random.nextInt(net.n);
            bound[2 * moved] = random.nextInt(12);
            bound[2 * moved + 1] = -bound[2 * moved] - random.nextInt(4);
        }
    }

    private static int[] sums(Net net, int[] bound) {
        int[] sum = new int[HORIZON + 1];
        for (int i = 0; i < net.n; i++) {
            for (int k = -bound[2 * i + 1]; k < bound[2 * i] + net.duration[i]; k++) sum[net.hours[i].clock(k)] += net.amount(i, 0);
        }
        return sum;
    }

    private static boolean free(Net net, int[] bound, int[] sum, int task) {
        int k = bound[2 * task];
        int t = net.hours[task].clock(k);
        boolean own = -bound[2 * task + 1] <= k && k < bound[2 * task] + net.duration[task];
        return sum[t] + (own ? 0 : net.amount(task, 0)) <= net.there(0, t);
    }
}
