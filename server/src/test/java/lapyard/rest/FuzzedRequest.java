package lapyard.rest;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Makes up a request: mostly one that would be right but for a few places, sometimes none at all. */
final class FuzzedRequest {
    static final String GARDEN =
            "{\"format\":1,\"name\":\"Yard\",\"ground\":{\"outline\":[[0,0],[9000,0],[9000,7000],[0,7000]]},"
                    + "\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3,\"at\":[500,500]},"
                    + "{\"id\":\"B\",\"width\":1800,\"depth\":900,\"turn\":90,\"at\":[5000,3000]}],"
                    + "\"saw\":{\"kerf\":4},\"rack\":[{\"id\":\"K1\",\"section\":\"100x200\",\"length\":2750}]}";
    private static final String PROBLEM =
            "{\"name\":\"x\",\"kerf\":4,\"stock\":[{\"id\":\"L\",\"length\":4800,\"price\":36.00}],"
                    + "\"pieces\":[{\"id\":\"a\",\"length\":2900,\"count\":3}]}";
    private static final List<String> METHODS =
            List.of("GET", "GET", "GET", "POST", "POST", "PUT", "PATCH", "DELETE", "HEAD", "OPTIONS", "TRACE", "CONNECT", "get", "FROB");
    private static final List<String> PATHS = List.of(
            "/", "/health", "/metrics", "/openapi.json", "/schema/garden.json", "/api", "/api/gardens", "/api/gardens/g1",
            "/api/gardens/g1/job-sheet", "/api/gardens/g1/job-sheet/slip", "/api/gardens/g1/plan.svg",
            "/api/gardens/g1/slip.csv", "/api/gardens/g1/revisions", "/api/gardens/g1/revisions/1",
            "/api/gardens/g1/revisions/1/restore", "/api/gardens/g1/revisions/1/stamp", "/api/gardens/g1/difference",
            "/api/gardens/g1/copy", "/api/gardens/g1/file", "/api/gardens/file", "/api/gardens/g1/shares",
            "/api/job-sheet", "/api/solve/cutting", "/api/solve/rolls", "/api/solves/x", "/api/samples",
            "/api/samples/village-hall", "/index.html", "/main.js");
    private static final List<String> JUNK = List.of(
            "..", "%2e%2e", "%00", "%", "%zz", "%ff%fe", "\u00e4", "a".repeat(3000), "'", "\"", "<script>", "{}", "${x}", "\\",
            "//", ";a=b", "?", "#", "%0d%0aX:y", "-1", "99999999999999999999", "1e9", "null", "true", "NaN", " ", "\t", "*");
    private static final List<String> QUERIES =
            List.of("limit", "after", "deleted", "before", "scale", "paper", "page", "mono", "revision", "from", "to", "merge", "seconds");
    private static final List<String> HEADERS = List.of(
            "If-Match: *", "If-Match: \"1\"", "If-Match: W/\"1\"", "If-Match: 1", "If-None-Match: \"1\"", "Accept: */*",
            "Accept: application/json", "Accept: text/html;q=x", "Accept: ,,,", "Accept-Encoding: gzip", "Accept-Language: zz-*",
            "Range: bytes=0-1", "Expect: 100-continue", "Content-Type: application/json", "Content-Type: application/merge-patch+json",
            "Content-Type: application/json; charset=utf-16", "Content-Type: multipart/form-data; boundary=x", "Content-Type: ;;;",
            "Content-Type: text/plain", "Content-Encoding: gzip", "Content-Length: 5", "Content-Length: -1",
            "Content-Length: 99999999999999", "Transfer-Encoding: chunked", "Transfer-Encoding: identity, chunked",
            "Origin: null", "Origin: http://localhost", "Sec-Fetch-Site: same-origin", "Cookie: a=b; c", "Upgrade: h2c",
            "Connection: Upgrade, HTTP2-Settings", "Authorization: Bearer x", "Authorization: Basic Og==", "Prefer: respond-async",
            "X-Forwarded-For: 1.2.3.4", "Host: elsewhere.example", "X: " + "y".repeat(2000), ": novalue", "NoColon", "\u00e9: \u00e9");
    private static final List<String> VALUES = List.of(
            "0", "-1", "1e308", "1e999999999", "0.1", "-0", "null", "true", "\"\"", "\"x\"", "[]", "{}", "[[0,0]]", "9007199254740993",
            "\"\\u0000\"", "\"\\ud800\"", "\"" + "z".repeat(5000) + "\"", "[1,2,3,4,5,6,7,8]", "{\"a\":{\"a\":{\"a\":1}}}");

    private FuzzedRequest() {}

    static byte[] next(Random random) {
        if (random.nextInt(40) == 0) return noise(random);
        byte[] body = random.nextInt(3) == 0 ? new byte[0] : body(random);
        StringBuilder head = new StringBuilder();
        head.append(any(random, METHODS)).append(' ').append(address(random)).append(' ');
        head.append(random.nextInt(30) == 0 ? any(random, List.of("HTTP/1.0", "HTTP/2.0", "HTTP/9", "", "http/1.1")) : "HTTP/1.1");
        head.append("\r\n");
        if (random.nextInt(30) > 0) head.append("Host: localhost\r\n");
        head.append("Connection: close\r\n");
        for (int i = random.nextInt(5); i > 0; i--) head.append(any(random, HEADERS)).append("\r\n");
        if (body.length > 0 && random.nextInt(15) > 0) {
            if (random.nextInt(4) > 0) head.append("Content-Type: application/json\r\n");
            if (random.nextInt(8) == 0) {
                head.append("Transfer-Encoding: chunked\r\n");
                body = chunked(random, body);
            } else head.append("Content-Length: ").append(body.length + (random.nextInt(20) == 0 ? 7 : 0)).append("\r\n");
        }
        head.append(random.nextInt(60) == 0 ? "" : "\r\n");
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.writeBytes(head.toString().getBytes(StandardCharsets.ISO_8859_1));
        all.writeBytes(body);
        return all.toByteArray();
    }

    private static String any(Random random, List<String> list) {
        return list.get(random.nextInt(list.size()));
    }

    private static byte[] noise(Random random) {
        byte[] noise = new byte[1 + random.nextInt(400)];
        random.nextBytes(noise);
        return noise;
    }

    private static String address(Random random) {
        String path = any(random, PATHS);
        if (random.nextInt(3) == 0) {
            String[] parts = path.substring(1).split("/");
            parts[random.nextInt(parts.length)] = any(random, JUNK);
            path = "/" + String.join("/", parts);
        }
        if (random.nextInt(3) > 0) return path;
        StringBuilder query = new StringBuilder(path).append('?');
        for (int i = 1 + random.nextInt(3); i > 0; i--) {
            query.append(any(random, QUERIES)).append('=');
            query.append(random.nextBoolean() ? any(random, JUNK) : String.valueOf(random.nextInt(60))).append('&');
        }
        return query.toString().replace(' ', random.nextInt(9) == 0 ? ' ' : '+');
    }

    private static byte[] body(Random random) {
        String text = random.nextInt(4) == 0 ? PROBLEM : GARDEN;
        for (int i = random.nextInt(4); i > 0; i--) text = changed(random, text);
        byte[] bytes = text.getBytes(random.nextInt(40) == 0 ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8);
        if (random.nextInt(10) == 0) bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        if (random.nextInt(12) == 0) bytes = java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
        if (random.nextInt(200) == 0) bytes = java.util.Arrays.copyOf(bytes, BodyReader.LIMIT + 2);
        return random.nextInt(60) == 0 ? packed(bytes) : bytes;
    }

    /** A value, a name or a stretch of the text becomes another. */
    private static String changed(Random random, String text) {
        switch (random.nextInt(5)) {
            case 0:
                int colon = text.indexOf(':', random.nextInt(text.length()));
                int end = colon < 0 ? -1 : text.indexOf(',', colon);
                return end < 0 ? text : text.substring(0, colon + 1) + any(random, VALUES) + text.substring(end);
            case 1:
                return text.replaceFirst("[0-9]+", any(random, VALUES).replace("\\", "\\\\"));
            case 2:
                return "[".repeat(random.nextInt(90)) + text;
            case 3:
                int from = random.nextInt(text.length());
                return text.substring(0, from) + text.substring(Math.min(text.length(), from + random.nextInt(30)));
            default:
                return text.replaceFirst("\"(width|depth|courses|at|id|name|kerf|outline|length)\"", "\"" + any(random, List.of(
                        "width", "outline", "walls", "type", "turn", "mirror", "fill", "base", "liner", "weekend", "none")) + "\"");
        }
    }

    private static byte[] chunked(Random random, byte[] body) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        int half = random.nextInt(body.length + 1);
        for (int[] part : new int[][] {{0, half}, {half, body.length}}) {
            if (part[0] == part[1]) continue;
            all.writeBytes((Integer.toHexString(part[1] - part[0]) + (random.nextInt(9) == 0 ? ";x=y" : "") + "\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            all.write(body, part[0], part[1] - part[0]);
            all.writeBytes("\r\n".getBytes(StandardCharsets.US_ASCII));
        }
        String last = any(random, List.of("0\r\n\r\n", "0\r\n\r\n", "0\r\nT: x\r\n\r\n", "zz\r\n", "", "ffffffffff\r\n"));
        all.writeBytes(last.getBytes(StandardCharsets.US_ASCII));
        return all.toByteArray();
    }

    private static byte[] packed(byte[] bytes) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(all)) {
            zip.write(bytes);
        } catch (IOException neverInMemory) {
            throw new UncheckedIOException(neverInMemory);
        }
        return all.toByteArray();
    }
}
