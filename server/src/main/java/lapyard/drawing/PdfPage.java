package lapyard.drawing;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import lapyard.working.BrokenRule.Rule;

/**
 * The first page of somebody's PDF as a picture. It is painted by a process of its own with little memory and time, so that no
 * file, however it is made, takes more of this one.
 */
public final class PdfPage {
    /** The longest PDF that is painted, bytes. */
    public static final int MOST_BYTES = 3_600_000;

    /** The picture's longer side, pixels. */
    static final int LONG_SIDE_PX = 1600;

    private static final int MOST_SECONDS = 20;
    private static final String MEMORY = "-Xmx192m";

    private PdfPage() {}

    /** What came of it. */
    public sealed interface Result {
        /** @param png the page on white, its longer side {@link #LONG_SIDE_PX} */
        record Painted(byte[] png) implements Result {}

        record Refused(Rule rule) implements Result {}
    }

    /** Why the painting process ended without a picture, as its exit status. */
    enum Trouble {
        LOCKED(Rule.PDF_LOCKED),
        NO_PAGE(Rule.PDF_NO_PAGE),
        UNREADABLE(Rule.PDF_UNREADABLE),
        TOO_MUCH(Rule.PDF_HEAVY);

        private static final int FIRST_STATUS = 41;
        private final Rule rule;

        Trouble(Rule rule) {
            this.rule = rule;
        }

        int status() {
            return FIRST_STATUS + ordinal();
        }

        static Result of(int status) {
            int index = status - FIRST_STATUS;
            // a process that was ended from outside or by the lack of memory has a status of its own
            return new Result.Refused((index >= 0 && index < values().length ? values()[index] : TOO_MUCH).rule);
        }
    }

    /**
     * @throws IllegalArgumentException if it is over {@link #MOST_BYTES}
     * @throws IOException if no process can be started
     */
    public static Result paint(byte[] pdf) throws IOException {
        return paint(pdf, MOST_SECONDS);
    }

    static Result paint(byte[] pdf, int mostSeconds) throws IOException {
        if (pdf.length > MOST_BYTES) throw new IllegalArgumentException("the PDF has " + pdf.length + " bytes, the most are " + MOST_BYTES);
        Path folder = Files.createTempDirectory("lapyard-pdf");
        try {
            return painted(pdf, folder, mostSeconds);
        } finally {
            try (var files = Files.walk(folder)) {
                files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
            }
        }
    }

    private static Result painted(byte[] pdf, Path folder, int mostSeconds) throws IOException {
        String classes = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(one -> Path.of(one).toAbsolutePath().toString()).collect(Collectors.joining(File.pathSeparator));
        Path out = folder.resolve("page.png");
        Process process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(), MEMORY, "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1",
                        "-XX:+ExitOnOutOfMemoryError", "-Xss512k", "-Djava.awt.headless=true", "-Djava.io.tmpdir=" + folder, "-Dpdfbox.fontcache=" + folder,
                        "-cp", classes, PdfPageProgram.class.getName()))
                .directory(folder.toFile())
                .redirectOutput(out.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            CompletableFuture.runAsync(() -> {
                try (OutputStream in = process.getOutputStream()) {
                    in.write(pdf);
                } catch (IOException ended) {
                    // it ended before it had read all: its status says why
                }
            });
            if (!process.waitFor(mostSeconds, TimeUnit.SECONDS)) return new Result.Refused(Rule.PDF_SLOW);
            return process.exitValue() == 0 ? new Result.Painted(Files.readAllBytes(out)) : Trouble.of(process.exitValue());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IOException("stopped while a PDF was painted", stopped);
        } finally {
            process.destroyForcibly();
        }
    }
}
