package lapyard.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;

/** From bytes to a JSON tree, within bounds: UTF-8, one value, no key twice, no nesting without end. */
public final class DocumentText {
    /** No garden of a thousand beds comes near it. */
    public static final int MOST_BYTES = 5_000_000;

    private static final int DEEPEST = 40;

    private static final int MOST_DIGITS = 100;

    private static final String LEAST_GARDEN = "{\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}";

    /** As the library says it. */
    private static final Pattern UNEXPECTED = Pattern.compile("Unexpected character \\('(.)' ");

    static final ObjectMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .maxNumberLength(MOST_DIGITS)
                            .build())
                    .build())
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
            .build();

    private DocumentText() {}

    /** A text without the byte order mark that it may begin with. */
    public static String unmarked(String text) {
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    /**
     * @return the text of a file: UTF-8, with or without a byte order mark
     * @throws CannotAnswer when it is too large, or another encoding, which is named
     */
    public static String decode(byte[] bytes) {
        refuseTooLarge(bytes.length);
        return utf8(bytes);
    }

    /** As {@link #decode}, of any length. */
    public static String utf8(byte[] bytes) {
        if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
            throw new CannotAnswer(fault(FindingKind.DOCUMENT_UTF16).way(WayKind.SAVE_UTF8));
        }
        int from = startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
        ByteBuffer in = ByteBuffer.wrap(bytes, from, bytes.length - from);
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(in)
                    .toString();
        } catch (CharacterCodingException e) {
            throw new CannotAnswer(fault(FindingKind.DOCUMENT_NOT_UTF8).with("byte", new Fact.Plain(in.position(), "")).way(WayKind.SAVE_UTF8));
        }
    }

    /** @throws CannotAnswer above {@link #MOST_BYTES} */
    public static void refuseTooLarge(long bytes) {
        if (bytes > MOST_BYTES) {
            throw new CannotAnswer(fault(FindingKind.DOCUMENT_LARGE).with("size", new Fact.Plain(bytes / 1e6, "MB"))
                    .with("most", new Fact.Plain(MOST_BYTES / 1e6, "MB")).way(WayKind.TAKE_OUT_OTHER));
        }
    }

    /** @throws CannotAnswer with line and column when the text is not one JSON value */
    public static JsonNode parse(String text) {
        refuseTooLarge(text.length());
        return tree(text);
    }

    /** As {@link #parse}, of any length. */
    public static JsonNode tree(String text) {
        if (text.isBlank()) {
            throw new CannotAnswer(fault(FindingKind.DOCUMENT_EMPTY).way(WayKind.LEAST_GARDEN, Fact.name(LEAST_GARDEN)));
        }
        try {
            return MAPPER.readTree(text);
        } catch (StreamConstraintsException e) {
            boolean deep = e.getOriginalMessage().contains("nesting depth");
            throw new CannotAnswer(at(fault(FindingKind.DOCUMENT_DEEP).with(deep ? "most" : "digits",
                    deep ? Fact.count(DEEPEST, "brackets") : Fact.count(MOST_DIGITS, "digits")), e).way(WayKind.TAKE_OUT_OTHER));
        } catch (JsonProcessingException e) {
            boolean twice = e.getOriginalMessage().startsWith("Duplicate field");
            throw new CannotAnswer(twice
                    ? at(fault(FindingKind.DOCUMENT_NAME_TWICE), e).way(WayKind.KEEP_ONE)
                    : at(fault(FindingKind.DOCUMENT_NOT_JSON).with("why", Fact.name(why(e))), e).way(WayKind.LOOK_FOR_COMMA));
        }
    }

    /** In our own words: the library's name its classes. */
    private static String why(JsonProcessingException e) {
        Matcher unexpected = UNEXPECTED.matcher(e.getOriginalMessage());
        if (unexpected.lookingAt()) return "\"" + unexpected.group(1) + "\" does not belong there";
        if (e instanceof JsonEOFException) return "it ends too early";
        return e.getOriginalMessage().startsWith("Trailing token") ? "there is text after its end" : "it cannot be read";
    }

    private static Finding fault(FindingKind kind) {
        return Finding.of(kind, Place.field("document"));
    }

    private static Finding at(Finding fault, JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        return at == null ? fault : fault.with("at", Fact.name("line " + at.getLineNr() + ", column " + at.getColumnNr()));
    }

    private static boolean startsWith(byte[] bytes, int... first) {
        if (bytes.length < first.length) return false;
        for (int i = 0; i < first.length; i++) if ((bytes[i] & 0xFF) != first[i]) return false;
        return true;
    }
}
