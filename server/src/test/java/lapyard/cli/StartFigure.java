package lapyard.cli;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Measures start to first answer: {@code java -cp server/target/test-classes lapyard.cli.StartFigure JAVA-ARGUMENTS},
 * the arguments being those that start the server without its port and data, for example
 * {@code -jar server/target/lapyard.jar serve}. Prints the medians; CPU time and memory come from /proc, so Linux only.
 */
public final class StartFigure {
    private static final int RUNS = Integer.getInteger("runs", 5);
    private static final int TICKS_A_SECOND = 100; // USER_HZ, fixed at 100 for what Linux shows to programs
    private static final int SETTLED_MS = 500;

    private StartFigure() {}

    private record Run(double pageMs, double listMs, double cpuMs, double residentMb) {}

    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("lapyard-start");
        System.out.printf(
                "load average before: %s%n",
                Files.readString(Path.of("/proc/loadavg")).strip());
        List<Run> fresh = new ArrayList<>();
        List<Run> used = new ArrayList<>();
        for (int i = 0; i < RUNS; i++) {
            Path data = folder.resolve("data" + i);
            fresh.add(run(arguments, data));
            used.add(run(arguments, data));
        }
        print("new data folder", fresh);
        print("used data folder", used);
        System.out.printf(
                "load average after: %s%n",
                Files.readString(Path.of("/proc/loadavg")).strip());
        try (Stream<Path> made = Files.walk(folder)) {
            for (Path path : made.sorted(Comparator.reverseOrder()).toList()) Files.delete(path);
        }
    }

    private static void print(String what, List<Run> runs) {
        System.out.printf(
                Locale.ROOT,
                "%s, median of %d: page %.0f ms, list of gardens %.0f ms, CPU to then %.0f ms, resident %.0f MB%n",
                what,
                runs.size(),
                median(runs.stream().mapToDouble(Run::pageMs).toArray()),
                median(runs.stream().mapToDouble(Run::listMs).toArray()),
                median(runs.stream().mapToDouble(Run::cpuMs).toArray()),
                median(runs.stream().mapToDouble(Run::residentMb).toArray()));
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }

    private static Run run(String[] arguments, Path data) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of(arguments));
        int port = freePort();
        command.addAll(List.of("--port", Integer.toString(port), "--data", data.toString()));
        long from = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            double pageMs = answered("/", port, process, from);
            double listMs = answered("/api/gardens", port, process, from);
            double cpuMs = cpuMs(process.pid());
            Thread.sleep(SETTLED_MS);
            return new Run(pageMs, listMs, cpuMs, residentMb(process.pid()));
        } finally {
            process.destroy();
            process.waitFor();
        }
    }

    /** Asks every few milliseconds until it is answered with 200; milliseconds since {@code from}. */
    private static double answered(String path, int port, Process process, long from)
            throws IOException, InterruptedException {
        byte[] request = ("GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII);
        while (process.isAlive()) {
            try (Socket socket = new Socket("127.0.0.1", port)) {
                socket.getOutputStream().write(request);
                String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                if (answer.startsWith("HTTP/1.1 200 ")) return (System.nanoTime() - from) / 1e6;
                throw new IllegalStateException(
                        path + ": " + answer.lines().findFirst().orElse("no answer"));
            } catch (java.net.ConnectException notYet) {
                Thread.sleep(2);
            }
        }
        throw new IllegalStateException("the server ended with " + process.exitValue());
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private static double cpuMs(long pid) throws IOException {
        String stat = Files.readString(Path.of("/proc/" + pid + "/stat"));
        String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
        return (Long.parseLong(fields[11]) + Long.parseLong(fields[12])) * 1000.0 / TICKS_A_SECOND;
    }

    private static double residentMb(long pid) throws IOException {
        for (String line : Files.readAllLines(Path.of("/proc/" + pid + "/status")))
            if (line.startsWith("VmRSS:")) return Integer.parseInt(line.replaceAll("\\D", "")) / 1024.0;
        throw new IllegalStateException("no VmRSS");
    }
}
