package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Lap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which walls are low and which way the water goes; by plane trigonometry. Common practice, no source. */
class LowSideTest {
    /** A at the front looks to -y, B to +x, C to +y, D to -x. */
    private static final Bed BED = Beds.bed("K", Outline.rectangle(3000, 1000), 2, Lap.TURNING);

    private static final Optional<Point> NOT_KNOWN = Optional.empty();

    private static Optional<Point> downhill(double degrees, double slope) {
        double angle = Math.toRadians(degrees);
        return Optional.of(new Point(slope * Math.cos(angle), slope * Math.sin(angle)));
    }

    /** Degrees counter-clockwise from x. On the diagonal both walls are low. */
    @ParameterizedTest(name = "fall towards {0} degrees: walls {1}")
    @CsvSource({"0, 1", "44, 1", "45, 1 2", "46, 2", "90, 2", "135, 2 3", "180, 3", "225, 0 3", "270, 0", "315, 0 1"})
    void aWallIsLowWithin45DegreesOfTheFall(double degrees, String walls) {
        LowSide low = LowSide.of(BED, downhill(degrees, 1.0 / 80));
        assertEquals(walls, String.join(" ", low.walls().stream().map(String::valueOf).toList()));
        assertEquals(downhill(degrees, 1.0 / 80), low.toward());
    }

    /** 1 in a million is the limit of the readings: 2 in a million falls, half of it and the whole of it do not. */
    @Test
    void aFallUnderTheReadingsIsLevel() {
        assertEquals(List.of(1), LowSide.of(BED, downhill(0, 2e-6)).walls());
        for (double level : new double[] {0.5e-6, 1e-6}) assertEquals(new LowSide(Optional.empty(), List.of()), LowSide.of(BED, downhill(0, level)));
        assertEquals(new LowSide(Optional.empty(), List.of()), LowSide.of(BED, NOT_KNOWN));
    }

    /** A of 3000 looks to -y, B of 1000 to +x: together they look towards (1000, -3000). */
    @Test
    void namedWallsTurnTheWaterAsFarAsTheyAreLong() {
        LowSide low = LowSide.of(Beds.low(BED, "A", "B"), downhill(90, 1.0 / 80));
        assertEquals(List.of(0, 1), low.walls());
        assertEquals(1000, low.toward().orElseThrow().x(), 1e-6);
        assertEquals(-3000, low.toward().orElseThrow().y(), 1e-6);
        assertEquals(new Point(-1000, 0), LowSide.of(Beds.low(BED, "D"), NOT_KNOWN).toward().map(p -> new Point(p.x(), p.y() + 0.0)).orElseThrow());
    }

    @Test
    void namedWallsThatFaceEachOtherLeaveTheDirectionToTheFall() {
        assertEquals(new LowSide(downhill(0, 1.0 / 80), List.of(0, 2)), LowSide.of(Beds.low(BED, "A", "C"), downhill(0, 1.0 / 80)));
        assertEquals(new LowSide(Optional.empty(), List.of(0, 2)), LowSide.of(Beds.low(BED, "A", "C"), NOT_KNOWN));
    }

    /**
     * An even-sided triangle with its point to the rear: B looks to 30 degrees, C to 150. A fall to 90 is 60 off both, so both
     * take it alike; a fall to 80 is 50 off B and 70 off C, so B alone takes it.
     */
    @Test
    void aPointDownhillDrainsThroughTheWallsThatLookDownMost() {
        Bed bed = Beds.bed("T", Beds.outline(0, 0, 3000, 0, 1500, 2598.076211), 2, Lap.TURNING);
        assertEquals(List.of(1, 2), LowSide.of(bed, downhill(90, 1.0 / 80)).walls());
        assertEquals(List.of(1), LowSide.of(bed, downhill(80, 1.0 / 80)).walls());
        assertEquals(List.of(2), LowSide.of(bed, downhill(100, 1.0 / 80)).walls());
        assertTrue(LowSide.of(bed, NOT_KNOWN).walls().isEmpty());
    }

    /** The rear right corner is cut off: B looks to 0 degrees, the slant C to 45, D to 90. A fall to 30 is 30, 15 and 60 off them. */
    @Test
    void everyWallWithin45DegreesIsLowNotOnlyTheSteepest() {
        Bed bed = Beds.bed("K", AngledCornersTest.CUT, 2, Lap.TURNING);
        assertEquals(List.of(1, 2), LowSide.of(bed, downhill(30, 1.0 / 80)).walls());
    }
}
