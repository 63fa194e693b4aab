package lapyard.rest;

import java.util.Iterator;
import java.util.Optional;
import org.glassfish.grizzly.http.HttpRequestPacket;
import org.glassfish.grizzly.http.util.MimeHeaders;

/**
 * What a header may not hold, as a proxy before this server might read it in another way.
 *
 * @see "RFC 9112, sections 3.2 and 5; RFC 9110, section 5.5"
 */
final class HeaderRules {
    private HeaderRules() {}

    /** What is wrong and how to send it; empty where nothing is. */
    static Optional<String> broken(HttpRequestPacket request) {
        MimeHeaders headers = request.getHeaders();
        int hosts = 0;
        for (int i = 0; i < headers.size(); i++) {
            if (headers.getName(i).toString().equalsIgnoreCase("Host")) hosts++;
            if (holdsControl(headers.getValue(i).toString()) || holdsControl(headers.getName(i).toString()))
                return Optional.of("a header holds a control character: send it without");
        }
        if (hosts > 1) return Optional.of("the request has two Host headers: send one");
        Iterator<String> lengths = headers.values("Content-Length").iterator();
        if (lengths.hasNext() && request.getHeader("Transfer-Encoding") != null)
            return Optional.of("the request has a Content-Length and a Transfer-Encoding: send one of the two");
        return Optional.empty();
    }

    private static boolean holdsControl(String text) {
        return text.chars().anyMatch(sign -> sign < ' ' && sign != '\t' || sign == 127);
    }
}
