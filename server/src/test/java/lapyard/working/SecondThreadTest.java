package lapyard.working;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SecondThreadTest {
    @Test
    void whatIsMadeOfEachStandsInItsOrderHoweverManyThereAre() {
        for (int count = 0; count < 9; count++) {
            List<Integer> numbers = IntStream.range(0, count).boxed().toList();
            assertEquals(numbers.stream().map(number -> "made of " + number).toList(), SecondThread.each(numbers, number -> "made of " + number));
        }
    }

    @Test
    void whatBreaksIsTold() {
        for (int broken : new int[] {0, 9}) {
            IllegalArgumentException told = assertThrows(IllegalArgumentException.class, () -> SecondThread.each(IntStream.range(0, 10).boxed().toList(), number -> {
                if (number == broken) throw new IllegalArgumentException("number " + number);
                return number;
            }));
            assertEquals("number " + broken, told.getMessage());
        }
    }
}
