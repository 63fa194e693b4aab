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

        /** @param why a full sentence with what to do */
        record Refused(String why) implements Result {}
    }

    /** Why the painting process ended without a picture, as its exit status. */
    enum Trouble {
        LOCKED("The PDF is locked with a password. Save it without one."),
        NO_PAGE("The PDF has no page that could be shown. Save the page with the plan as a PDF of its own."),
        UNREADABLE("The file cannot be read as a PDF. Open it, and save or print it as a PDF again."),
        TOO_MUCH("The PDF's first page needs more memory than there is for it. Save that page as a picture (PNG or JPEG).");

        private static final int FIRST_STATUS = 41;
        private final String why;

        Trouble(String why) {
            this.why = why;
        }

        int status() {
            return FIRST_STATUS + ordinal();
        }

        static Result of(int status) {
            int index = status - FIRST_STATUS;
            // a process that was ended from outside or by the lack of memory has a status of its own
            return new Result.Refused((index >= 0 && index < values().length ? values()[index] : TOO_MUCH).why);
        }
    }

    /**
     * @throws IllegalArgumentException if it is over {@link #MOST_BYTES}
     * @throws IOException if no process can be started
     */
    public static Result paint(byte[] pdf) throws IOException {
        if (pdf.length > MOST_BYTES) throw new IllegalArgumentException("the PDF has " + pdf.length + " bytes, the most are " + MOST_BYTES);
        Path folder = Files.createTempDirectory("lapyard-pdf");
        try {
            return painted(pdf, folder);
        } finally {
            try (var files = Files.walk(folder)) {
                files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
            }
        }
    }

    private static Result painted(byte[] pdf, Path folder) throws IOException {
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
            if (!process.waitFor(MOST_SECONDS, TimeUnit.SECONDS))
                return new Result.Refused("The PDF's first page takes longer than " + MOST_SECONDS + " seconds to paint. Save that page as a picture (PNG or JPEG).");
            return process.exitValue() == 0 ? new Result.Painted(Files.readAllBytes(out)) : Trouble.of(process.exitValue());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IOException("stopped while a PDF was painted", stopped);
        } finally {
            process.destroyForcibly();
        }
    }
}
