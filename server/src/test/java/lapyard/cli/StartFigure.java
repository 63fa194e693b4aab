package lapyard.cli;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * Measures start to first answers: {@code java -cp server/target/test-classes lapyard.cli.StartFigure COMMAND}, the command
 * being one that starts the server without its port and data, for example {@code server/target/lapyard/bin/lapyard serve}: until
 * the page and the list of gardens answer, then the first job sheet of a sample ({@code -Dgarden=village-hall}), asked at once after the list.
 * Prints medians, least and most; CPU time and memory come from /proc, so Linux only.
 */
public final class StartFigure {
    private static final int RUNS = Integer.getInteger("runs", 5);
    private static final String GARDEN = System.getProperty("garden", "village-hall");
    private static final int TICKS_A_SECOND = 100; // USER_HZ, fixed at 100 for what Linux shows to programs

    private StartFigure() {}

    private record Run(double pageMs, double listMs, double listCpuMs, double lookMs, double lookCpuMs, double residentMb) {}

    public static void main(String[] command) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("lapyard-start");
        System.out.printf("load average before: %s%n", Files.readString(Path.of("/proc/loadavg")).strip());
        List<Run> fresh = new ArrayList<>();
        List<Run> used = new ArrayList<>();
        for (int i = 0; i < RUNS; i++) {
            Path data = folder.resolve("data" + i);
            fresh.add(run(command, data));
            used.add(run(command, data));
        }
        print("new data folder", fresh);
        print("used data folder", used);
        System.out.printf("load average after: %s%n", Files.readString(Path.of("/proc/loadavg")).strip());
        try (Stream<Path> made = Files.walk(folder)) {
            for (Path path : made.sorted(Comparator.reverseOrder()).toList()) Files.delete(path);
        }
    }

    private static void print(String what, List<Run> runs) {
        System.out.printf("%s, median (least to most) of %d:%n", what, runs.size());
        print("start to page, ms", runs, Run::pageMs);
        print("start to list, ms", runs, Run::listMs);
        print("CPU to then, ms", runs, Run::listCpuMs);
        print("list to first job sheet, ms", runs, Run::lookMs);
        print("CPU from the start, ms", runs, Run::lookCpuMs);
        print("resident then, MB", runs, Run::residentMb);
    }

    private static void print(String what, List<Run> runs, ToDoubleFunction<Run> figure) {
        double[] values = runs.stream().mapToDouble(figure).sorted().toArray();
        System.out.printf(Locale.ROOT, "  %s: %.0f (%.0f to %.0f)%n", what, values[values.length / 2], values[0], values[values.length - 1]);
    }

    private static Run run(String[] asked, Path data) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(asked));
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
            double listCpuMs = cpuMs(process.pid());
            double lookMs = answered("/api/gardens/" + GARDEN + "/job-sheet", port, process, System.nanoTime());
            return new Run(pageMs, listMs, listCpuMs, lookMs, cpuMs(process.pid()), residentMb(process.pid()));
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
