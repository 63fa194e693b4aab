package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpreadTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void numbersStandInOrderApartAndWithinTheSheet(long seed) {
        Random random = new Random(seed);
        TreeSet<Double> all = new TreeSet<>(List.of(0.0, 100.0));
        int many = random.nextInt(60);
        for (int i = 0; i < many; i++) all.add(Math.rint(random.nextDouble() * 1000) / 10);
        Spread spread = Spread.of(List.copyOf(all), mark -> mark, 15, 115);
        assertEquals(Math.min(all.size(), 31), spread.marks().size(), "130 mm have room for 31 numbers 4.2 mm apart");
        assertTrue(all.containsAll(spread.marks()));
        assertEquals(List.of(0.0, 100.0), List.of(spread.marks().get(0), spread.marks().get(spread.marks().size() - 1)));
        assertEquals(List.copyOf(new TreeSet<>(spread.marks())), spread.marks());
        double last = -15 - Spread.PITCH;
        boolean loose = true;
        for (int i = 0; i < spread.marks().size(); i++) {
            double here = spread.beside().get(i);
            assertTrue(here >= last + Spread.PITCH - 1e-9 && here <= 115 + 1e-9, () -> spread.toString());
            loose &= i == 0 || spread.marks().get(i) - spread.marks().get(i - 1) >= Spread.PITCH;
            last = here;
        }
        if (loose) assertEquals(spread.marks(), spread.beside(), "with room for all each stands at its mark");
    }
}
