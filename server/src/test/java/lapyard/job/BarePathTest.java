package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

/** A path that is drawn and made of nothing is told of: it costs nothing on the slip. Common practice, no source. */
class BarePathTest {
    @Test
    void aPathWithoutLayersSaysThatTheOrderHoldsNoneForIt() {
        String two = "{\"paths\":[{\"id\":\"P1\",\"line\":[[0,5000],[4000,5000]]},"
                + "{\"id\":\"P2\",\"line\":[[0,7000],[4000,7000]],\"layers\":[{\"material\":\"bark\",\"depth\":60}]}]}";
        List<String> told = Gardens.sheet(two).snags().stream()
                .filter(snag -> snag.where().startsWith("path") && Told.text(snag).contains("no layers"))
                .map(snag -> snag.weight() + " " + snag.where())
                .toList();
        assertEquals(List.of(Weight.NOTE + " path P1"), told);
    }
}
