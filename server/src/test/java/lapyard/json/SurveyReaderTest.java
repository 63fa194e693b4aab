package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapyard.geometry.Outline;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.Preparation;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurveyReaderTest {
    private static Garden read(String ground) throws Exception {
        return assertInstanceOf(Reading.Read.class, GardenReader.read("{\"ground\":" + ground + "}")).garden();
    }

    private static List<Finding> refused(String ground) throws Exception {
        return assertInstanceOf(Reading.Refused.class, GardenReader.read("{\"ground\":" + ground + "}")).findings();
    }

    @Test
    void threeWaysOfTapingGiveOneYard() throws Exception {
        Outline drawn = read("{\"outline\":[[0,0],[6000,0],[6000,4000],[0,4000]]}").ground().outline().get(0);
        String taped = """
                {"survey":{"base":{"to":[6000,0]},"corners":[{"along":0,"off":0},{"along":6000},
                 {"first":7211.1,"second":4000},{"first":4000,"second":7211.1}]}}""";
        String walked = """
                {"survey":{"walk":[{"length":6000},{"length":4000},{"length":6000},{"length":4000}]}}""";
        for (String way : List.of(taped, walked)) {
            Outline yard = read(way).ground().outline().get(0);
            for (int i = 0; i < 4; i++) {
                assertEquals(0, yard.corner(i).distanceMm(drawn.corner(i)), 0.1, way);
            }
        }
    }

    /** As it shall be said: worked by hand. */
    @Test
    void tapesThatCannotMeetStopTheDocument() throws Exception {
        List<Finding> found = refused("""
                {"survey":{"base":{"to":[6000,0]},"corners":[{"along":0},{"along":6000},{"first":3100,"second":2400}]}}""");
        assertEquals("survey, corner 3", found.get(0).where());
        assertEquals("The tapes cannot meet: 3100 mm and 2400 mm from marks 6000 mm apart are 500 mm short.", Told.text(found.get(0)));
        assertEquals(500, found.get(0).amount().orElseThrow().value());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {"outline":[[0,0],[9,0],[9,9]],"survey":{"walk":[{"length":9},{"length":9},{"length":9}]}} | Give "survey" or "outline", not both.
            {"survey":{}} | "corners" or "walk" is needed here.
            {"survey":{"walk":[{"length":9},{"length":9}]}} | "walk" has 2 sides; at least 3 sides are needed.
            {"survey":{"corners":[{"along":0},{"along":9},{"first":9,"second":9}]}} | Two tapes need a second mark, and "base" has no "to".
            {"survey":{"corners":[{"along":0},{"along":9},{}]}} | "first" and "second" are needed here.
            {"survey":{"base":{"to":[0,0]},"walk":[{"length":9},{"length":9},{"length":9}]}} | The two marks are 0 mm apart; at least 100 mm is needed.
            {"survey":{"walk":[{"length":900,"fall":901},{"length":900},{"length":900}]}} | "fall" is 901 mm, but "length" is only 900 mm.
            {"baseline":{"from":[0,0],"to":[50,0]}} | The two marks are 50 mm apart; at least 100 mm is needed.
            {"baseline":{"from":[0,0]}} | "from" and "to" are needed here.
            {"rims":[{"beds":["A"]}]} | "beds" has 1 bed; at least 2 beds are needed.
            {"tall":[{"height":1800}]} | "at" or "line" is needed here.
            {"tall":[{"at":[0,0],"height":1800,"stem":1800}]} | "stem" is 1800 mm, but "height" is only 1800 mm.
            {"sun":{"latitude":52,"longitude":0,"zone":"Nowhere/Land"}} | "zone" must be a time zone by its IANA name, not the text "Nowhere/Land".
            {"sun":{"latitude":52,"longitude":0,"day":"21 June"}} | "day" must be a date from 1970 to 2200, not the text "21 June".
            {"access":{"standard":"mine"}} | "standard" is "mine", which is not known here
            """)
    void badInputIsNamed(String ground, String words) throws Exception {
        List<Finding> found = refused(ground);
        assertTrue(found.stream().anyMatch(f -> Told.text(f).contains(words)), () -> found.toString());
        assertTrue(found.stream().allMatch(f -> !Told.ways(f).isEmpty()), () -> found.toString());
    }

    @Test
    void whatIsLeftOutTakesItsDefault() throws Exception {
        Garden garden = read("{}");
        assertEquals(Preparation.USUAL, garden.ground().preparation());
        assertTrue(!garden.ground().access().named());
        assertEquals(915, read("{\"access\":{\"standard\":\"ada-2010\"}}").ground().access().walking().pathMm());
        assertEquals(1000, read("{\"access\":{\"standard\":\"ada-2010\",\"path\":1000}}").ground().access().walking().pathMm());
        assertEquals(600, read("{\"access\":{\"rim\":\"seated\"}}").ground().access().height().rimLeastMm());
        assertTrue(read("{\"access\":{}}").ground().access().named(), "naming it asks for it");
    }
}
