package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Finish;
import lapyard.plan.Lap;
import lapyard.plan.Seal;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import org.junit.jupiter.api.Test;

/** A bed of 2400 x 1200, timber 100 x 200, two courses, worked by hand. Covers: USDA Wood Handbook, ch. 16, as the garden states them. */
class CoatingTest {
    private static Bed coated(Finish finish, Seal seal, Outline outline) {
        Bed bed = Beds.bed("K", outline, 2, Lap.TURNING);
        Bed.Making making = bed.making();
        return bed.withMaking(new Bed.Making(making.screws(), making.notches(), making.ties(), finish, seal));
    }

    /**
     * Outside 7.2 x 0.4 = 2.88, inside 2 x (2.2 + 1.0) x 0.4 = 2.56, top 2.88 - 2.2 = 0.68: 6.12 m2. Three coats of it at 5 m2 a
     * litre on timber that takes 1.5 times as much: 6.12 x 3 x 1.5 / 5 = 5.508 l.
     */
    @Test
    void threeCoatsOnRoughTimber() {
        BedWork work = Beds.built(coated(new Finish(true, 3, 5, 1.5), Seal.NONE, Outline.rectangle(2400, 1200)));
        assertEquals(6.12, Beds.value(work.quantities(), "finish.area"), 1e-9);
        assertEquals(5.508, Beds.value(work.quantities(), "finish.litres"), 1e-9);
        assertEquals("outside P H + inside (P - 8t) H + top t (P - 4t)", Beds.quantity(work.quantities(), "finish.area").working().formula());
        BedWork six = Beds.built(coated(Finish.USUAL, Seal.NONE, AngledCornersTest.SIX));
        assertEquals("outside P H + inside P' H + top t (P + P') / 2", Beds.quantity(six.quantities(), "finish.area").working().formula());
        assertFalse(Beds.has(Beds.built(coated(Finish.NONE, Seal.NONE, AngledCornersTest.SIX)).quantities(), "finish.area"));
    }

    /**
     * Eight pieces have 16 ends of 0.1 x 0.2: 0.32 m2. Three notches of 25 x 50: 3 x (2 x 50 + 25) x 100 = 0.0375 m2. Two coats at
     * 4 m2 a litre: 0.3575 x 2 / 4 = 0.17875 l.
     */
    @Test
    void endsAndNotchesAreSealedTwice() {
        List<Quantity> sealed = new ArrayList<>();
        Seal seal = new Seal(true, Seal.NONE.item(), 2, 4);
        Coating.seal(coated(Finish.NONE, seal, Outline.rectangle(2400, 1200)), 8, 3, sealed);
        assertEquals(0.17875, sealed.get(0).value(), 1e-9);
        Coating.seal(coated(Finish.NONE, Seal.NONE, Outline.rectangle(2400, 1200)), 8, 3, sealed);
        assertEquals(1, sealed.size());
        assertTrue(Beds.built(coated(Finish.NONE, seal, Outline.rectangle(2400, 1200))).quantities().stream().anyMatch(one -> one.is(QuantityKind.SEAL_LITRES)));
    }
}
