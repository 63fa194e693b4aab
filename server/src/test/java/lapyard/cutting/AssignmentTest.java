package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AssignmentTest {
    /** Largest with smallest is cheapest for products (rearrangement inequality): courses 1, 2, 3 and 33.1, 38.4, 35.0 kg. */
    @Test
    void theHeaviestGoesLowest() {
        int[] kg = {331, 384, 350};
        long[][] cost = new long[3][3];
        for (int course = 1; course <= 3; course++) {
            for (int j = 0; j < 3; j++) {
                cost[course - 1][j] = (long) course * kg[j];
            }
        }
        assertArrayEquals(
                new int[][] {{0, 1, 0}, {0, 0, 1}, {1, 0, 0}},
                Assignment.cheapest(new int[] {1, 1, 1}, new int[] {1, 1, 1}, cost));
    }

    @Test
    void noOtherPlacingCostsLess() {
        Random random = new Random(5);
        for (int round = 0; round < 300; round++) {
            int kinds = 1 + random.nextInt(4);
            int places = 1 + random.nextInt(4);
            int[] there = new int[kinds];
            int[] free = new int[places];
            for (int n = random.nextInt(7); n > 0; n--) {
                there[random.nextInt(kinds)]++;
                free[random.nextInt(places)]++;
            }
            long[][] cost = new long[kinds][places];
            for (long[] row : cost) {
                for (int j = 0; j < places; j++) {
                    row[j] = random.nextInt(40) - 10;
                }
            }
            int[][] flow = Assignment.cheapest(there, free, cost);
            long sum = 0;
            for (int i = 0; i < kinds; i++) {
                assertEquals(there[i], Arrays.stream(flow[i]).sum());
                for (int j = 0; j < places; j++) {
                    sum += flow[i][j] * cost[i][j];
                }
            }
            assertEquals(least(there.clone(), free.clone(), cost), sum, "round " + round);
        }
    }

    /** Every way to place what is there, one by one. */
    private static long least(int[] there, int[] free, long[][] cost) {
        int i = 0;
        while (i < there.length && there[i] == 0) {
            i++;
        }
        if (i == there.length) {
            return 0;
        }
        long least = Long.MAX_VALUE;
        there[i]--;
        for (int j = 0; j < free.length; j++) {
            if (free[j] > 0) {
                free[j]--;
                least = Math.min(least, cost[i][j] + least(there, free, cost));
                free[j]++;
            }
        }
        there[i]++;
        return least;
    }

    @Test
    void forbiddenPairsAreNeverMade() {
        long[][] cost = {{1, Assignment.NEVER}, {0, 5}};
        assertArrayEquals(
                new int[][] {{1, 0}, {0, 1}}, Assignment.cheapest(new int[] {1, 1}, new int[] {1, 1}, cost));
        assertThrows(
                IllegalArgumentException.class,
                () -> Assignment.cheapest(new int[] {1}, new int[] {1}, new long[][] {{Assignment.NEVER}}));
        assertThrows(
                IllegalArgumentException.class,
                () -> Assignment.cheapest(new int[] {2}, new int[] {1}, new long[][] {{1}}));
    }
}
