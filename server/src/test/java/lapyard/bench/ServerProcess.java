package lapyard.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A server in a process of its own, with the documented heap of 256 MB and a new data folder. */
final class ServerProcess implements AutoCloseable {
    private static final Pattern COLLECTED = Pattern.compile("Pause \\w+.*->(\\d+)M\\(");

    final URI address;
    private final Process process;
    private final Path collections;
    private int told;

    ServerProcess() throws IOException {
        Path folder = Files.createTempDirectory("lapyard-strain");
        collections = folder.resolve("collections.txt");
        process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx256m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1",
                        "-Djava.awt.headless=true", "-Xlog:gc:file=" + collections, "-cp", System.getProperty("java.class.path"),
                        "lapyard.cli.Lapyard", "serve", "--port", "0", "--data", folder.resolve("gardens").toString())
                .redirectErrorStream(true)
                .start();
        BufferedReader lines = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        String first = lines.readLine();
        if (first == null || !first.startsWith("Lapyard answers at ")) throw new IllegalStateException("the server says " + first);
        address = URI.create(first.split(" ")[3]);
        Thread saying = new Thread(() -> lines.lines().forEach(line -> System.err.println("server: " + line)));
        saying.setDaemon(true);
        saying.start();
    }

    /** Processor time of all its threads so far, s. */
    double processorSeconds() {
        return process.info().totalCpuDuration().orElseThrow().toMillis() / 1000.0;
    }

    /** The most that was alive, or not looked at, behind any collection since the last call, MB; 0 where there was none. */
    int mostAfterCollectionMb() throws IOException {
        List<String> all = Files.readAllLines(collections);
        int most = 0;
        for (String line : all.subList(told, all.size())) {
            Matcher pause = COLLECTED.matcher(line);
            if (pause.find()) most = Math.max(most, Integer.parseInt(pause.group(1)));
        }
        told = all.size();
        return most;
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(10, TimeUnit.SECONDS)) process.destroyForcibly();
        } catch (InterruptedException stopped) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
