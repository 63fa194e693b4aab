package lapyard.fill;

import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapyard.construction.Beds;
import lapyard.geometry.Outline;
import lapyard.plan.Base;
import lapyard.plan.Fill;
import lapyard.plan.Finding;
import lapyard.plan.Finish;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

class BedFillTest {
    /**
     * Depth 600 - 45 - 50 - 50 = 455; 5.08 x 0.455 = 2.3114; / 0.85 = 2.7193; 60/30/10; x 1.2 t; / 0.06 = 45.3; 5.08
     * x 0.05.
     */
    @Test
    void theWorkedLTakesItsWorkedSoil() {
        BedFill fill = BedFill.of(Beds.built(Beds.m(Lap.TURNING)), 60);
        assertEquals(455, value(fill.quantities(), "soil.depth"));
        assertEquals(2.3114, value(fill.quantities(), "soil.settled"), 1e-9);
        assertEquals(2.719, value(fill.quantities(), "soil.loose"), 5e-4);
        assertEquals(1.632, value(fill.quantities(), "soil.topsoil"), 5e-4);
        assertEquals(0.816, value(fill.quantities(), "soil.compost"), 5e-4);
        assertEquals(0.272, value(fill.quantities(), "soil.grit"), 5e-4);
        assertEquals(3263, value(fill.quantities(), "soil.mass"), 0.5);
        assertEquals(46, value(fill.quantities(), "barrows"));
        assertEquals(0.254, value(fill.quantities(), "mulch"), 1e-9);
        assertEquals(0, fill.findings().size());
        assertTrue(fill.quantities().stream().allMatch(quantity -> quantity.working().inputs().size() > 1));
    }

    private static BedFill filled(int courses, Base base, Fill fill) {
        return BedFill.of(Beds.built(Beds.filled(
                Beds.bed("K", Outline.rectangle(2400, 1200), courses, Lap.TURNING),
                base,
                Liner.USUAL,
                fill,
                Finish.USUAL)), 60);
    }

    /** 400 - 45 - 50 - 50 = 255: 45 under 300. */
    @Test
    void aShallowBedIsANoteUntilAStandardIsNamed() {
        Finding note = filled(2, Base.USUAL, Fill.USUAL).findings().get(0);
        assertEquals(Finding.Weight.NOTE, note.weight());
        assertTrue(Told.text(note).equals("Bed K holds 255 mm of soil; 300 mm is usual."), Told.text(note));
        assertEquals(0, filled(2, Base.OPEN, Fill.USUAL).findings().size());
    }

    /** 200 - 45 - 100 - 80 = -25. */
    @Test
    void aBedWithoutRoomForSoilLeavesTheFillOut() {
        BedFill fill = filled(1, Base.USUAL, new Fill(100, 80, 0.15, Fill.USUAL.layers()));
        assertEquals(List.of(), fill.quantities());
        assertEquals(Finding.Weight.SNAG, fill.findings().get(0).weight());
        assertTrue(
                Told.text(fill.findings().get(0)).contains("25 mm too low to hold soil"),
                Told.text(fill.findings().get(0)));
    }

    @Test
    void mulchFarOverTheFreeboardIsASnag() {
        BedFill fill = filled(3, Base.USUAL, new Fill(20, 130, 0.15, Fill.USUAL.layers()));
        assertEquals(List.of("Lay 10 mm less mulch"), Told.ways(fill.findings().get(0)));
    }

    @Test
    void layersOfOneItemAreOneNeedAndNoMulchIsNoNeed() {
        BedFill fill = filled(
                3,
                Base.USUAL,
                new Fill(
                        50,
                        0,
                        0,
                        List.of(
                                new Fill.Layer("soil.topsoil", 0.5),
                                new Fill.Layer("soil.compost", 0.2),
                                new Fill.Layer("soil.topsoil", 0.3))));
        // 2.2 x 1.0 x 0.505 = 1.111 m3, 0.8 of it topsoil.
        assertEquals(0.8 * 1.111, value(fill.quantities(), "soil.topsoil"), 1e-9);
        assertEquals(
                1,
                fill.quantities().stream()
                        .filter(quantity -> quantity.key().toString().equals("soil.topsoil"))
                        .count());
        assertFalse(Beds.has(fill.quantities(), "mulch"));
    }
}
