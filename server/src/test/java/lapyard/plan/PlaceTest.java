package lapyard.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class PlaceTest {
    /** What stored gardens accept stays as it was written; people read what the names share once. */
    @Test
    void fieldsThatBeginAlikeSayThatOnce() {
        Place both = Place.ofAll(List.of(Place.field("delivery, Hill sawmill, bulk bag"), Place.field("delivery, Hill sawmill, loose load")));
        assertEquals("delivery, Hill sawmill, bulk bag, delivery, Hill sawmill, loose load", both.key());
        assertEquals("delivery, Hill sawmill, bulk bag and loose load", both.words());
        assertEquals("liner, membrane", Place.ofAll(List.of(Place.field("liner"), Place.field("membrane"))).words());
    }
}
