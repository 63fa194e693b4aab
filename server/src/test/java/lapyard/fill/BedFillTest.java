package lapyard.fill;

import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;

import lapyard.construction.Beds;
import lapyard.plan.Lap;
import org.junit.jupiter.api.Test;

class BedFillTest {
    /** Depth 600 - 45 - 50 - 50 = 455; 5.08 x 0.455 = 2.3114; / 0.85 = 2.7193; 60/30/10; x 1.2 t; / 0.06 = 45.3; 5.08 x 0.05. */
    @Test
    void theWorkedLTakesItsWorkedSoil() {
        BedFill fill = BedFill.of(Beds.built(Beds.m(Lap.TURNING)));
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
    }
}
