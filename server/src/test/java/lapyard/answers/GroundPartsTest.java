package lapyard.answers;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.junit.jupiter.api.Test;

/** The desk hands out the parts of the ground that are worked out only when asked for. */
class GroundPartsTest {

    @Test
    void pegsSunAndGroundAreParts() throws IOException {
        String garden = "{\"ground\":{\"outline\":[[0,0],[12000,0],[12000,9000],[0,9000]],\"baseline\":{\"from\":[0,0],\"to\":[12000,0]},"
                + "\"sun\":{\"latitude\":52,\"longitude\":0}},\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"at\":[1000,2000]}]}";
        PreparedGarden sheet = new GardenDesk().prepare(GivenDocument.of(garden));
        assertTrue(Forms.part(sheet, "pegs").contains("\"first\":2236.1"));
        assertTrue(Forms.part(sheet, "sun").contains("\"light\":\"full sun\""));
        assertTrue(Forms.part(sheet, "ground").contains("\"clearances\""));
    }
}
