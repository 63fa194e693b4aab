package lapyard.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapyard.rest.SizesDesk;
import lapyard.store.GardenStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

class ServeCommandTest {
    private static final String BED = "{\"name\":\"Yard\",\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}";
    private static final int ENDED_BY_SIGTERM = 128 + 15;

    @TempDir
    private Path folder;

    private record Ran(int exit, String said) {}

    private static Ran run(Map<String, String> environment, String... arguments) {
        StringWriter said = new StringWriter();
        int exit = new CommandLine(new ServeCommand(new SizesDesk(), environment))
                .setErr(new PrintWriter(said))
                .execute(arguments);
        return new Ran(exit, said.toString());
    }

    private void assertRefused(String reason, Ran ran) {
        assertEquals(2, ran.exit(), ran::said);
        assertTrue(ran.said().contains(reason), ran::said);
        assertEquals(1, ran.said().lines().count(), ran::said);
    }

    @Test
    void anotherAddressThanThisMachinesOwnNeedsATokenBeforeAnythingIsMade() {
        Path data = folder.resolve("data");
        assertRefused("--token-file", run(Map.of(), "--host", "0.0.0.0", "--port", "0", "--data", data.toString()));
        assertTrue(Files.notExists(data));
    }

    @Test
    void aTokenThatIsShortOrCannotBeReadIsRefused() throws IOException {
        String data = folder.resolve("data").toString();
        assertRefused("20 or more", run(Map.of("LAPYARD_TOKEN", "short"), "--port", "0", "--data", data));
        Path empty = Files.createFile(folder.resolve("empty"));
        assertRefused("no editor's token", run(Map.of(), "--token-file", empty.toString(), "--port", "0", "--data", data));
        assertRefused("cannot be read", run(Map.of(), "--token-file", folder + "/none", "--port", "0", "--data", data));
    }

    /** The certificate is made by the tool that comes with Java. */
    @Test
    void aKeyStoreMakesItSpeakTls() throws Exception {
        Path file = folder.resolve("keys.p12");
        Process keytool = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "keytool").toString(), "-genkeypair", "-alias", "lapyard",
                        "-keyalg", "EC", "-dname", "CN=localhost", "-ext", "SAN=dns:localhost,ip:127.0.0.1", "-validity", "2",
                        "-storetype", "PKCS12", "-keystore", file.toString(), "-storepass", "changeit")
                .redirectErrorStream(true)
                .start();
        assertEquals(0, keytool.waitFor());
        java.security.KeyStore trusted = java.security.KeyStore.getInstance(file.toFile(), "changeit".toCharArray());
        java.security.KeyStore authorities = java.security.KeyStore.getInstance("PKCS12");
        authorities.load(null, null);
        authorities.setCertificateEntry("lapyard", trusted.getCertificate("lapyard"));
        var trust = javax.net.ssl.TrustManagerFactory.getInstance(javax.net.ssl.TrustManagerFactory.getDefaultAlgorithm());
        trust.init(authorities);
        javax.net.ssl.SSLContext context = javax.net.ssl.SSLContext.getInstance("TLS");
        context.init(null, trust.getTrustManagers(), null);

        lapyard.rest.Binding binding = new lapyard.rest.Binding(
                "127.0.0.1", 0, lapyard.rest.Keys.NONE, java.util.Optional.of(ServeCommand.certificate(file, "changeit")), java.util.Set.of());
        try (var store = lapyard.store.GardenStore.open(folder.resolve("data"));
                var server = lapyard.rest.Server.start(binding, () -> store, new SizesDesk(), ServeCommandTest.class.getClassLoader(), lapyard.rest.AccessLog.NONE)) {
            assertEquals("https", server.address().getScheme());
            HttpClient client = HttpClient.newBuilder().sslContext(context).build();
            HttpResponse<String> answer = client.send(
                    HttpRequest.newBuilder(server.address().resolve("/api/gardens"))
                            .header("Content-Type", "application/json")
                            .POST(BodyPublishers.ofString(BED))
                            .build(),
                    BodyHandlers.ofString());
            assertEquals(201, answer.statusCode(), answer::body);
            assertEquals("TLSv1.3", answer.sslSession().orElseThrow().getProtocol());
            // RFC 6797, section 6.1: a year, told over TLS only
            assertEquals("max-age=31536000", answer.headers().firstValue("Strict-Transport-Security").orElse(""));
        }
        String data = folder.resolve("data").toString();
        assertRefused("cannot be read", run(Map.of(), "--key-store", file.toString(), "--port", "0", "--data", data));
        assertRefused("cannot be read", run(Map.of(), "--key-store", folder + "/none", "--port", "0", "--data", data));
    }

    @Test
    void optionsThatMakeNoSenseAreRefusedByTheirAmount() {
        String data = folder.resolve("data").toString();
        assertRefused("1 day or more", run(Map.of(), "--thin-after", "0", "--port", "0", "--data", data));
        assertRefused("cannot be written", run(Map.of(), "--access-log", folder.toString(), "--port", "0", "--data", data));
        assertRefused("jdbc:postgresql:", run(Map.of(), "--database", "jdbc:other:x", "--port", "0"));
        assertRefused("cannot be used", run(Map.of(), "--database", "jdbc:postgresql://127.0.0.1:1/x", "--port", "0"));
        assertRefused(
                "no editor's", run(Map.of("LAPYARD_READER_TOKEN", "readers-token-of-26-signs-b"), "--port", "0", "--data", data));
    }

    @Test
    void aHostOrPortThatCannotBeHadIsNamedWithAWayOut() throws IOException {
        String data = folder.resolve("data").toString();
        assertRefused("no address", run(Map.of(), "--host", "no-such-host.invalid", "--port", "0", "--data", data));
        assertRefused("0 to 65535", run(Map.of(), "--port", "70000", "--data", data));
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            String port = Integer.toString(taken.getLocalPort());
            assertRefused("give another with --port", run(Map.of(), "--port", port, "--data", data));
            GardenStore.open(Path.of(data)).close(); // nobody holds it any more
        }
    }

    @Test
    void aDataFolderThatIsNoneIsNamed() throws IOException {
        Path file = Files.createFile(folder.resolve("file"));
        assertRefused("cannot be used", run(Map.of(), "--port", "0", "--data", file.toString()));
    }

    @Test
    void onceAnswersItsOwnRequestsAndSaysWhatWasNotAnswered() {
        Ran ran = run(
                Map.of("LAPYARD_TOKEN", "a-token-of-26-characters-ok"),
                "--once",
                "--port",
                "0",
                "--host",
                "0.0.0.0",
                "--data",
                folder.toString());
        List<String> lines = ran.said().lines().toList();
        assertTrue(lines.get(0).startsWith("Lapyard answers at http://0.0.0.0:"), ran::said);
        assertEquals(lines.size() == 1 ? 0 : 1, ran.exit(), ran::said);
        for (String line : lines.subList(1, lines.size())) assertTrue(line.matches("/\\S* answered \\d+"), ran::said);
    }

    /** A server in a process of its own. */
    private static final class Serving implements AutoCloseable {
        final Process process;
        final URI address;

        Serving(Path data) throws IOException {
            process = start(data);
            String line = reader(process).readLine();
            assertTrue(line != null && line.startsWith("Lapyard answers at http://127.0.0.1:"), line);
            assertTrue(line.endsWith(" with the gardens in " + data), line);
            address = URI.create(line.split(" ")[3]);
        }

        static Process start(Path data) throws IOException {
            return start(data, 0);
        }

        static Process start(Path data, int port) throws IOException {
            List<String> command = new ArrayList<>(List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-XX:TieredStopAtLevel=1",
                    "-XX:+UseSerialGC",
                    "-cp",
                    System.getProperty("java.class.path"),
                    ServeMain.class.getName(),
                    "--port",
                    Integer.toString(port),
                    "--data",
                    data.toString()));
            return new ProcessBuilder(command).start();
        }

        static BufferedReader reader(Process process) {
            return new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8));
        }

        HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
            return HttpClient.newHttpClient().send(request.build(), BodyHandlers.ofString());
        }

        HttpRequest.Builder to(String path) {
            return HttpRequest.newBuilder(address.resolve(path)).header("Content-Type", "application/json");
        }

        @Override
        public void close() {
            process.destroyForcibly();
        }
    }

    @Test
    void theVeryFirstRequestThatGetsThroughIsAnsweredWell() throws Exception {
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        Process process = Serving.start(folder, port);
        try {
            String answer = null;
            while (answer == null && process.isAlive()) {
                try (Socket socket = new Socket("127.0.0.1", port)) {
                    socket.getOutputStream()
                            .write("GET /health HTTP/1.0\r\nHost: localhost\r\n\r\n"
                                    .getBytes(StandardCharsets.US_ASCII));
                    answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
                } catch (ConnectException notOpenYet) {
                    Thread.onSpinWait();
                }
            }
            String first = answer;
            assertTrue(first != null && first.startsWith("HTTP/1.1 200 "), () -> first);
        } finally {
            process.destroyForcibly();
        }
    }

    @Test
    void aStopLetsTheSaveThatIsComingInEndAndTheNextStartHasIt() throws Exception {
        String location;
        try (Serving first = new Serving(folder);
                Socket slow = new Socket("127.0.0.1", first.address.getPort())) {
            HttpResponse<String> created = first.send(first.to("/api/gardens").POST(BodyPublishers.ofString(BED)));
            assertEquals(201, created.statusCode(), created::body);
            location = created.headers().firstValue("Location").orElseThrow();

            String wider = BED.replace("2400", "3000");
            String head = "PUT " + location + " HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\nIf-Match: \"1\"\r\n"
                    + "Expect: 100-continue\r\n"
                    + "Content-Type: application/json\r\nContent-Length: " + wider.length() + "\r\n\r\n";
            slow.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
            BufferedReader answer =
                    new BufferedReader(new InputStreamReader(slow.getInputStream(), StandardCharsets.US_ASCII));
            assertEquals("HTTP/1.1 100 Continue", answer.readLine()); // the request is being answered by now
            first.process.destroy();
            slow.getOutputStream().write(wider.getBytes(StandardCharsets.US_ASCII));
            answer.readLine();
            assertEquals("HTTP/1.1 200 OK", answer.readLine());
            assertEquals(ENDED_BY_SIGTERM, first.process.waitFor());
        }
        try (Serving second = new Serving(folder)) {
            HttpResponse<String> got = second.send(second.to(location));
            assertEquals("\"2\"", got.headers().firstValue("ETag").orElseThrow());
            assertEquals(3000, Integer.parseInt(got.body().replaceAll(".*\"width\":(\\d+).*", "$1")));

            Process third = Serving.start(folder);
            String refusal = Serving.reader(third).readLine();
            assertEquals(
                    "data folder " + folder + " is in use by another Lapyard (process " + second.process.pid()
                            + "): stop that one, or give another folder with --data",
                    refusal);
            assertEquals(2, third.waitFor());
            assertEquals(200, second.send(second.to(location)).statusCode());
        }
    }
}
