package lapyard.rest;

import java.util.Iterator;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import org.glassfish.grizzly.Buffer;
import org.glassfish.grizzly.http.HttpRequestPacket;
import org.glassfish.grizzly.http.util.DataChunk;
import org.glassfish.grizzly.http.util.MimeHeaders;

/**
 * What a header may not hold, as a proxy before this server might read it in another way.
 *
 * @see "RFC 9112, sections 2.2, 3.2 and 5; RFC 9110, section 5.5"
 */
final class HeaderRules {
    private static final String MARKS_OF_NAMES = "!#$%&'*+-.^_`|~";

    private HeaderRules() {}

    /** What is wrong and how to send it; empty where nothing is. */
    static Optional<String> broken(HttpRequestPacket request) {
        MimeHeaders headers = request.getHeaders();
        int count = headers.size() - headers.trailerSize();
        int hosts = 0;
        for (int i = 0; i < count; i++) {
            String name = headers.getName(i).toString();
            if (name.equalsIgnoreCase("Host")) hosts++;
            if (!isName(name))
                return Optional.of("the name of a header may hold letters, digits and " + MARKS_OF_NAMES + ", and the colon stands behind it without a space");
            if (holdsControl(headers.getValue(i).toString()))
                return Optional.of("a header holds a control character: send it without");
            boolean first = i > 0 || endsALineBefore(headers.getName(i));
            if (!first || !endsItsLine(headers.getValue(i), i == count - 1))
                return Optional.of("a header is folded, ends in spaces or has no CR LF behind it: send each as one line that ends in CR LF");
        }
        if (hosts > 1) return Optional.of("the request has two Host headers: send one");
        Iterator<String> encodings = headers.values("Transfer-Encoding").iterator();
        if (!encodings.hasNext()) return Optional.empty();
        if (request.getHeader("Content-Length") != null)
            return Optional.of("the request has a Content-Length and a Transfer-Encoding: send one of the two");
        return encodings.next().equalsIgnoreCase("chunked") && !encodings.hasNext()
                ? Optional.empty()
                : Optional.of("Transfer-Encoding may be chunked and nothing else: send the body so, or with a Content-Length");
    }

    /** A loop, as every request passes here. */
    private static boolean isName(String text) {
        for (int i = 0; i < text.length(); i++) {
            char sign = text.charAt(i);
            boolean usual = sign >= 'a' && sign <= 'z' || sign >= 'A' && sign <= 'Z' || sign == '-' || sign >= '0' && sign <= '9';
            if (!usual && MARKS_OF_NAMES.indexOf(sign) < 0) return false;
        }
        return !text.isEmpty();
    }

    private static boolean holdsControl(String text) {
        for (int i = 0; i < text.length(); i++) {
            char sign = text.charAt(i);
            if (sign < ' ' && sign != '\t' || sign == 127) return true;
        }
        return false;
    }

    /** The bytes around a name or value; empty where the library holds it as text. */
    private static Optional<IntUnaryOperator> bytes(DataChunk chunk) {
        switch (chunk.getType()) {
            case Bytes -> {
                byte[] bytes = chunk.getByteChunk().getBuffer();
                return Optional.of(i -> bytes[i]);
            }
            case Buffer -> {
                Buffer buffer = chunk.getBufferChunk().getBuffer();
                return Optional.of(buffer::get);
            }
            default -> {
                return Optional.empty();
            }
        }
    }

    private static boolean endsALineBefore(DataChunk name) {
        return bytes(name).map(at -> isEnd(at, name.getStart() - 2)).orElse(true);
    }

    /**
     * The library unfolds a value in place: what lies between its end and its line's is left over then. One space at most
     * may stand there, which no fold leaves.
     */
    private static boolean endsItsLine(DataChunk value, boolean last) {
        return bytes(value).map(at -> {
            int end = value.getEnd();
            if (at.applyAsInt(end) == ' ' || at.applyAsInt(end) == '\t') end++;
            return isEnd(at, end) && (!last || isEnd(at, end + 2));
        }).orElse(true);
    }

    private static boolean isEnd(IntUnaryOperator at, int index) {
        return at.applyAsInt(index) == '\r' && at.applyAsInt(index + 1) == '\n';
    }
}
