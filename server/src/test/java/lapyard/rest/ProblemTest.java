package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertTrue;

import lapyard.answers.GardenDesk;
import lapyard.answers.GivenDocument;
import org.junit.jupiter.api.Test;

/** What an answer says of a document that cannot be kept. */
class ProblemTest {
    /** 500 mm is 19.685 in, 1 ft 7 11/16 in to the nearest sixteenth. */
    @Test
    void aRefusalSpeaksInTheMeasuresOfItsGarden() {
        assertTrue(refused("imperial").contains("at least 1' 7 11/16\\\" is needed"), refused("imperial"));
        assertTrue(refused("metric").contains("at least 500 mm is needed"), refused("metric"));
    }

    private static String refused(String units) {
        GivenDocument document = GivenDocument.of("{\"units\":\"" + units + "\",\"beds\":[{\"width\":250,\"depth\":1200}]}");
        return new ProblemException(new GardenDesk().check(document).findings(), document.words()).problem().json();
    }
}
