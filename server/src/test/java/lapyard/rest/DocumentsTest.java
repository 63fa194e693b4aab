package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DocumentsTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    private static JsonNode json(String text) throws JsonProcessingException {
        return MAPPER.readTree(text);
    }

    /** RFC 7396, Appendix A, example test cases, all fifteen. */
    @ParameterizedTest(name = "{0} patched with {1} is {2}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        {"a":"b"}          | {"a":"c"}                      | {"a":"c"}
        {"a":"b"}          | {"b":"c"}                      | {"a":"b","b":"c"}
        {"a":"b"}          | {"a":null}                     | {}
        {"a":"b","b":"c"}  | {"a":null}                     | {"b":"c"}
        {"a":["b"]}        | {"a":"c"}                      | {"a":"c"}
        {"a":"c"}          | {"a":["b"]}                    | {"a":["b"]}
        {"a":{"b":"c"}}    | {"a":{"b":"d","c":null}}       | {"a":{"b":"d"}}
        {"a":[{"b":"c"}]}  | {"a":[1]}                      | {"a":[1]}
        ["a","b"]          | ["c","d"]                      | ["c","d"]
        {"a":"b"}          | ["c"]                          | ["c"]
        {"a":"foo"}        | null                           | null
        {"a":"foo"}        | "bar"                          | "bar"
        {"e":null}         | {"a":1}                        | {"e":null,"a":1}
        [1,2]              | {"a":"b","c":null}             | {"a":"b"}
        {}                 | {"a":{"bb":{"ccc":null}}}      | {"a":{"bb":{}}}
        """)
    void aMergePatchDoesAsItsStandardShows(String target, String patch, String result) throws JsonProcessingException {
        JsonNode before = json(target);
        assertEquals(json(result), Documents.merged(before, json(patch)));
        assertEquals(json(target), before);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        {"beds":[{"width":2400,}]} | "}" does not belong there, line 1, column 24
        {"beds":[{"width" 2400}]}  | "2" does not belong there, line 1, column 19
        {"beds":[{"width":2400}    | it ends too early, line 1, column 24
        """)
    void whatIsNoJsonIsToldWithItsPlaceAndAWayOut(String body, String told) {
        ProblemException refused = assertThrows(ProblemException.class, () -> Documents.object(body));
        assertEquals("The document is not JSON: " + told + ". Look just before it for a comma, quote or bracket that is missing or one too many.", refused.problem().detail());
    }

    @Test
    void whatChangedIsNamedAtTheTopLevel() {
        assertEquals(
                List.of("beds", "name", "new", "old"),
                Documents.changed(
                        Documents.object("{\"name\":\"a\",\"beds\":[{\"width\":1}],\"saw\":{\"kerf\":4},\"old\":1}"),
                        Documents.object(
                                "{\"saw\":{\"kerf\":4},\"beds\":[{\"width\":2}],\"name\":\"b\",\"new\":null}")));
    }

    @Test
    void aGardenWithoutANameIsListedAsSuch() {
        for (String document : List.of(
                "{}",
                "{\"name\":\" \"}",
                "{\"name\":{\"x\":1}}",
                "{\"name\":null}",
                "{\"beds\":[{\"name\":\"inner\"}]}"))
            assertEquals(Documents.UNNAMED, Documents.name(document), document);
        assertEquals("Hof", Documents.name("{\"beds\":[{\"name\":\"inner\"}],\"name\":\" Hof \"}"));
    }

    /** RFC 9110, 5.6.7: Sun, 06 Nov 1994 08:49:37 GMT. */
    @Test
    void aDateIsWrittenAsTheStandardShows() {
        assertEquals("Sun, 06 Nov 1994 08:49:37 GMT", FrontHandler.date(OffsetDateTime.of(1994, 11, 6, 8, 49, 37, 0, ZoneOffset.UTC)));
        assertEquals("Wed, 31 Dec 2025 23:00:09 GMT", FrontHandler.date(OffsetDateTime.of(2025, 12, 31, 23, 0, 9, 0, ZoneOffset.UTC)));
    }
}
