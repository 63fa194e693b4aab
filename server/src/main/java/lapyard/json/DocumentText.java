package lapyard.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** From bytes to a JSON tree, within bounds: UTF-8, one value, no key twice, no nesting without end. */
public final class DocumentText {
    /** No garden of a thousand beds comes near it. */
    public static final int MOST_BYTES = 5_000_000;

    private static final int DEEPEST = 40;

    static final ObjectMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .maxNumberLength(100)
                            .maxStringLength(MOST_BYTES)
                            .build())
                    .build())
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
            .build();

    private DocumentText() {}

    /**
     * @return the text of a file: UTF-8, with or without a byte order mark
     * @throws UnreadableDocument when it is too large, or another encoding, which is named
     */
    public static String decode(byte[] bytes) throws UnreadableDocument {
        refuseTooLarge(bytes.length);
        if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
            throw new UnreadableDocument("This file is UTF-16. Save it again as UTF-8.");
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
            throw new UnreadableDocument("This file is not UTF-8: the byte at " + in.position()
                    + " belongs to no UTF-8 character, as in files saved as ISO-8859-1 or Windows-1252. Save it again as UTF-8.");
        }
    }

    /** @throws UnreadableDocument above {@link #MOST_BYTES} */
    public static void refuseTooLarge(long bytes) throws UnreadableDocument {
        if (bytes > MOST_BYTES) {
            throw new UnreadableDocument("%.1f MB: more than the %.0f MB that a document may hold. Take out what is not a garden."
                    .formatted(bytes / 1e6, MOST_BYTES / 1e6));
        }
    }

    /** @throws UnreadableDocument with line and column when the text is not one JSON value */
    public static JsonNode parse(String text) throws UnreadableDocument {
        refuseTooLarge(text.length());
        if (text.isBlank()) {
            throw new UnreadableDocument("The document is empty. The least garden is {\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}.");
        }
        try {
            return MAPPER.readTree(text);
        } catch (StreamConstraintsException e) {
            throw new UnreadableDocument("The document is nested more than " + DEEPEST
                    + " deep or holds a number of more than 100 digits" + at(e) + ". No garden needs that.");
        } catch (JsonProcessingException e) {
            boolean twice = e.getOriginalMessage().startsWith("Duplicate field");
            throw new UnreadableDocument(
                    twice
                            ? "The document names one field twice" + at(e) + ". Keep one of the two."
                            : "The document is not JSON" + at(e) + ". Look there for a missing comma, quote or bracket.");
        }
    }

    private static String at(JsonProcessingException e) {
        JsonLocation location = e.getLocation();
        return location == null ? "" : ", line " + location.getLineNr() + ", column " + location.getColumnNr();
    }

    private static boolean startsWith(byte[] bytes, int... first) {
        if (bytes.length < first.length) return false;
        for (int i = 0; i < first.length; i++) if ((bytes[i] & 0xFF) != first[i]) return false;
        return true;
    }
}
