package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;
import org.junit.jupiter.api.Test;

class TurnedWordsTest {
    private static Optional<Double> turn(String code, double widthMm, double heightMm) {
        List<Point> bed = new Box(40, 40, 40 + widthMm, 40 + heightMm).corners();
        return new Labels(new Box(0, 0, 200, 200)).within(bed, Words.of(code, 4, true)).map(Plate::turnDeg);
    }

    /** A bed 4.8 high on paper is too low for letters of 4 with their air, 4.98; turned, N would fit and read as Z. */
    @Test
    void codeOfOneLetterIsNotTurnedToFit() {
        assertEquals(Optional.empty(), turn("N", 11, 4.8));
        assertEquals(Optional.of(0.0), turn("N", 11, 5.1));
        assertEquals(Optional.of(90.0), turn("Bed-18", 5.1, 30));
    }
}
