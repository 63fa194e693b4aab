package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;
import org.junit.jupiter.api.Test;

class PinsTest {
    @Test
    void aPinnedSectionKeepsAllButTheStockOfOthers() throws Exception {
        Reading.Read read = assertInstanceOf(Reading.Read.class, GardenReader.read("""
                {"catalogue":{"suppliers":[{"id":"a"},{"id":"b"}],"pins":[{"item":"90x190","supplier":"b"}],
                 "sections":[{"id":"90x190","thickness":90,"height":190,"planed":true,"treated":true,"goodFaces":2,"strengthClass":"C24",
                  "stock":[{"length":2400,"price":20,"supplier":"a"},{"length":3000,"price":30,"supplier":"b"}]}]},
                 "beds":[{"width":2400,"depth":1200,"section":"90x190"}]}"""));
        Section pinned = read.garden().goods().catalogue().section("90x190").orElseThrow();
        assertEquals(List.of(3000.0), pinned.stock().stream().map(StockLength::lengthMm).toList());
        assertTrue(pinned.planed() && pinned.treated());
        assertEquals(2, pinned.goodFaces());
        assertEquals("C24", pinned.strength().toString());
    }
}
