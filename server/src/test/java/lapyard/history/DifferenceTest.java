package lapyard.history;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import lapyard.geometry.Length;
import lapyard.json.GardenReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DifferenceTest {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();

    static ObjectNode object(String text) {
        try {
            return (ObjectNode) MAPPER.readTree(text.replace('\'', '"'));
        } catch (JsonProcessingException bad) {
            throw new IllegalArgumentException(bad);
        }
    }

    private static List<String> told(String before, String after) {
        return Difference.between(object(before), object(after), GardenReader::isLength, Length::feetAndInches).stream()
                .map(line -> line.where() + " " + line.text())
                .toList();
    }

    @ParameterizedTest(name = "{0} to {1}: {2}")
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '~',
            textBlock = """
            'at':[800,1500]; 'at':[1000,1500]; bed C moved 200 right
            'at':[800,1500]; 'at':[600,1500]; bed C moved 200 left
            'at':[800,1500]; 'at':[1000,1400]; bed C moved 200 right and 100 towards the house
            'at':[800,1500]; 'at':[800,1500.5]; bed C moved 0.5 away from the house
            'width':1; 'width':1,'at':[0,30]; bed C moved 30 away from the house
            'turn':0; 'turn':90; bed C turned 90° counter-clockwise
            'turn':350; 'turn':10; bed C turned 20° counter-clockwise
            'turn':10; 'turn':350; bed C turned 20° clockwise
            'turn':0; 'turn':180; bed C turned 180° counter-clockwise
            'width':2000; 'width':2400; bed C width 2400, was 2000
            'width':2000; 'width':2000.0; bed C width changed
            'courses':3; 'courses':4; bed C courses 4, was 3
            'width':1; 'width':1,'lap':'long-wall'; bed C lap "long-wall", was not given
            'lap':'turning'; 'width':1; bed C width 1, was not given|bed C lap left out, was "turning"
            'fill':{'freeboard':50,'mulch':50}; 'fill':{'freeboard':60,'mulch':50}; bed C, fill freeboard 60, was 50
            'outline':[[0,0],[9,0],[9,9]]; 'outline':[[0,0],[9,0],[8,9]]; bed C, outline corner 3 moved 1 left
            'outline':[[0,0],[9,0],[9,9]]; 'outline':[[0,0],[9,0],[9,9],[0,9]]; bed C outline 4 corners, was 3 corners
            'liner':true; 'liner':false; bed C liner false, was true
            """)
    void aChangeOfABedIsToldInTheGardensWords(String before, String after, String lines) {
        assertEquals(
                List.of(lines.split("\\|")),
                told("{'beds':[{'id':'C'," + before + "}]}", "{'beds':[{'id':'C'," + after + "}]}"));
    }

    @Test
    void bedsThatCameWentOrChangedPlacesAreTold() {
        assertEquals(
                List.of("bed D added, 2400 x 1200, at 100, 200", "bed B taken out"),
                told(
                        "{'beds':[{'id':'A'},{'id':'B'}]}",
                        "{'beds':[{'id':'A'},{'id':'D','width':2400,'depth':1200,'at':[100,200]}]}"));
        assertEquals(
                List.of("garden beds in another order"),
                told("{'beds':[{'id':'A'},{'id':'B'}]}", "{'beds':[{'id':'B'},{'id':'A'}]}"));
        assertEquals(
                List.of("board K1 length 2700, was 2750", "board K2 added, 900 long"),
                told(
                        "{'rack':[{'id':'K1','length':2750}]}",
                        "{'rack':[{'id':'K1','length':2700},{'id':'K2','length':900}]}"));
    }

    /** An inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
    @Test
    void aGardenInFeetIsToldItsChangesInFeet() {
        assertEquals(
                List.of("bed A moved 2' right", "bed A width 8' 6\", was 8'", "bed A courses 4, was 3", "bed D added, 4' x 3', at 10', 1'"),
                told(
                        "{'units':'imperial','beds':[{'id':'A','at':[0,0],'width':2438.4,'courses':3}]}",
                        "{'units':'imperial','beds':[{'id':'A','at':[609.6,0],'width':2590.8,'courses':4},"
                                + "{'id':'D','width':1219.2,'depth':914.4,'at':[3048,304.8]}]}"));
    }

    /** All lengths that the schema knows, and no minutes, shares or angles. 12.7 is 1/2", 600 is 1' 11 5/8", 25.4 is 1". */
    @Test
    void everyLengthOfAGardenInFeetIsToldInFeet() {
        assertEquals(
                List.of("saw endTrim 1/2\", was 1\"", "bed A, notches depth 1/2\", was 1\"", "bed A, fill settlement 12.7, was 25.4", "crew, rates strip 12.7, was 25.4"),
                told(
                        "{'units':'imperial','saw':{'endTrim':25.4},'beds':[{'id':'A','notches':{'depth':25.4},'fill':{'settlement':25.4}}],'crew':{'rates':{'strip':25.4}}}",
                        "{'units':'imperial','saw':{'endTrim':12.7},'beds':[{'id':'A','notches':{'depth':12.7},'fill':{'settlement':12.7}}],'crew':{'rates':{'strip':12.7}}}"));
    }

    @Test
    void aBedWithoutACodeGoesByTheLetterItHasInTheGarden() {
        assertEquals(
                List.of("bed B courses 4, was 3"),
                told("{'beds':[{'id':'A'},{'courses':3}]}", "{'beds':[{'id':'A'},{'courses':4}]}"));
    }

    @Test
    void theYardTheNameAndTheCatalogueAreToldByTheirPlaces() {
        assertEquals(
                List.of(
                        "garden name \"New\", was \"Old\"",
                        "yard, outline corner 2 moved 500 right",
                        "catalogue, sections 100x200 density 620, was 600",
                        "saw kerf 3, was 4"),
                told(
                        "{'name':'Old','ground':{'outline':[[0,0],[9000,0],[0,9000]]},"
                                + "'catalogue':{'sections':[{'id':'100x200','density':600}]},'saw':{'kerf':4}}",
                        "{'name':'New','ground':{'outline':[[0,0],[9500,0],[0,9000]]},"
                                + "'catalogue':{'sections':[{'id':'100x200','density':620}]},'saw':{'kerf':3}}"));
        assertEquals(List.of(), told("{'a':1}", "{'a':1}"));
    }

    @Test
    void aListWithoutCodesIsToldByPlace() {
        assertEquals(
                List.of("yard, levels 2 drop 40, was 30", "yard, levels 3 moved 100 right"),
                told(
                        "{'ground':{'levels':[{'at':[0,0],'drop':0},{'at':[9,0],'drop':30},{'at':[0,9],'drop':5}]}}",
                        "{'ground':{'levels':[{'at':[0,0],'drop':0},{'at':[9,0],'drop':40},{'at':[100,9],'drop':5}]}}"));
        assertEquals(
                List.of("yard levels 2 of them, was 1 of them", "garden accepted 1 of them, was not given"),
                told("{'ground':{'levels':[{'drop':0}]}}", "{'ground':{'levels':[{'drop':0},{'drop':9}]},'accepted':[{'where':'bed A'}]}"));
        assertEquals(
                List.of("yard, levels 5 of 5 changed"),
                told("{'ground':{'levels':[" + "{'drop':1},".repeat(4) + "{'drop':1}]}}", "{'ground':{'levels':[" + "{'drop':2},".repeat(4) + "{'drop':2}]}}"));
    }

    @Test
    void absurdNumbersAndLongTextsDoNotRunAway() {
        assertEquals(
                List.of("garden a 1E+999999, was 1"), told("{'a':1}", "{'a':1E+999999}").stream().map(line -> line.replace("1.0E", "1E")).toList());
        assertEquals(
                true, told("{'a':1}", "{'a':'" + "x".repeat(9000) + "'}").get(0).length() < 120);
    }
}
