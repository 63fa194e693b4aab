package lapyard.construction;

import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.fill.BedFill;
import lapyard.geometry.Outline;
import lapyard.plan.Finding;
import lapyard.plan.Lap;
import lapyard.plan.Saw;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A worked rectangle: 1800 x 900, 100 x 200 timber, three courses, freestanding. */
class BedNTest {
    private final BedWork work =
            Beds.work(Beds.bed("N", Beds.N, 3, Lap.TURNING), Saw.USUAL, Beds.LONGEST, Map.of(), Optional.empty(), 2400, 25);

    /** 1800 - 100 and 900 - 100, twice a course; 3 x 5000 = 15000 = 3 x (5400 - 400). */
    @Test
    void sixOf1700AndSixOf800() {
        List<Double> lengths = work.pieces().stream().map(Piece::lengthMm).toList();
        assertEquals(6, lengths.stream().filter(length -> length == 1700).count());
        assertEquals(6, lengths.stream().filter(length -> length == 800).count());
        assertEquals(15.0, value(work.quantities(), "timber.length"), 1e-9);
    }

    /**
     * Inner 1600 x 700 = 1.12 m2. Screws 4 x 3 x 2. Staples 2 x (17 + 8) + 4 x 6. Finish 5.4 x 0.6 + 4.6 x 0.6 +
     * 0.1 x 5.0 = 3.24 + 2.76 + 0.50. Liner 1600 + 1160, 700 + 1160. Bearers ceil(1600/400) + 1 = 5 of 700 - 30.
     */
    @Test
    void quantitiesComeOutAsWorked() {
        assertEquals(1.12, value(work.quantities(), "inner.area"), 1e-9);
        assertEquals(24, value(work.quantities(), "screws"));
        assertEquals(74, value(work.quantities(), "staples"));
        assertEquals(6.50, value(work.quantities(), "finish.area"), 1e-9);
        assertEquals(1.0833, value(work.quantities(), "finish.litres"), 5e-5);
        assertEquals(1, work.liner().size());
        assertEquals(2760, work.liner().get(0).widthMm());
        assertEquals(1860, work.liner().get(0).heightMm());
        assertEquals(
                List.of(670.0, 670.0, 670.0, 670.0, 670.0),
                work.bottom().strips().stream().map(Strip::lengthMm).toList());
        assertEquals(3.35, value(work.quantities(), "base.bearers"), 1e-9);
        // Slats along: ceil(715/110) = 7 rows of 1200 + 395: 7 + ceil(7/3) = 10 boards.
        assertEquals(10, value(work.quantities(), "base.slats"));
    }

    /** 1.12 x 0.455 = 0.5096 settled, / 0.85 = 0.5995 loose. */
    @Test
    void soilComesOutAsWorked() {
        BedFill fill = BedFill.of(work, 60, false);
        assertEquals(0.5096, value(fill.quantities(), "soil.settled"), 1e-9);
        assertEquals(0.5995, value(fill.quantities(), "soil.loose"), 5e-5);
        assertEquals(0.056, value(fill.quantities(), "mulch"), 1e-9);
    }

    @Test
    void withoutLevelsThereAreNoNotchesAndANoteAsksForTheLowSide() {
        assertEquals(0, value(work.quantities(), "notches"));
        Finding note = work.findings().get(0);
        assertEquals(Finding.Weight.NOTE, note.weight());
        assertEquals(List.of("Take three level readings", "Name the low walls"), Told.ways(note));
    }

    /** 2400 x 1200 x 3 courses is 6 of 2300 and 6 of 1100: sixty such beds take 360 of each. */
    @ParameterizedTest(name = "turned by {0}")
    @ValueSource(ints = {0, 90})
    void aBedOf2400By1200TakesSixOf2300AndSixOf1100(int turned) {
        Outline outline = turned == 0 ? Outline.rectangle(2400, 1200) : Outline.rectangle(1200, 2400);
        List<Piece> pieces = Beds.built(Beds.bed("B", outline, 3, Lap.TURNING)).pieces();
        assertEquals(
                6, pieces.stream().filter(piece -> piece.lengthMm() == 2300).count());
        assertEquals(
                6, pieces.stream().filter(piece -> piece.lengthMm() == 1100).count());
    }

    @Test
    void theSameBedIsAlwaysBuiltTheSame() {
        assertEquals(
                work,
                Beds.work(Beds.bed("N", Beds.N, 3, Lap.TURNING), Saw.USUAL, Beds.LONGEST, Map.of(), Optional.empty(), 2400, 25));
    }
}
