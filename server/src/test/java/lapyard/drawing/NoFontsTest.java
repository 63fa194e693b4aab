package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A machine that finds no font is a Java of its own whose fontconfig was told of none. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "other systems do not find their fonts by fontconfig")
class NoFontsTest {
    @TempDir
    Path folder;

    @Test
    void allThreeWritersWorkWithoutAnyFontOnTheMachine() throws Exception {
        Run run = run("draw");
        assertEquals(0, run.exit, run.output);
        assertEquals(
                PngWriter.write(TestPages.plain(), 100).length, Files.size(folder.resolve("page.png")), 2000, run.output);
        assertEquals(SvgWriter.write(TestPages.plain()), Files.readString(folder.resolve("page.svg")));
        assertEquals(PdfWriter.write(List.of(TestPages.plain())).length, Files.size(folder.resolve("page.pdf")));
    }

    /** Shows that the machine of the test above has no fonts indeed. */
    @Test
    void thatMachineIsOneOnWhichJavaAloneFails() throws Exception {
        Run run = run("bare");
        assertTrue(run.exit != 0 && run.output.contains("Fontconfig"), run.output);
    }

    private record Run(int exit, String output) {}

    private Run run(String what) throws Exception {
        Path none = folder.resolve("fonts.conf");
        Files.writeString(none, "<?xml version=\"1.0\"?><fontconfig><cachedir>" + folder + "</cachedir></fontconfig>");
        Path out = folder.resolve("out.txt");
        ProcessBuilder builder = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC",
                // Java remembers fonts it found on earlier runs below this folder.
                "-Duser.home=" + folder,
                "-cp", System.getProperty("java.class.path"),
                Forked.class.getName(), what, folder.toString());
        builder.environment().put("FONTCONFIG_FILE", none.toString());
        builder.environment().put("FONTCONFIG_PATH", folder.toString());
        builder.environment().remove("DISPLAY");
        builder.redirectErrorStream(true).redirectOutput(new File(out.toString()));
        Process process = builder.start();
        try {
            assertTrue(process.waitFor(120, TimeUnit.SECONDS), "the other Java does not end");
        } finally {
            process.destroyForcibly();
        }
        return new Run(process.exitValue(), Files.readString(out, StandardCharsets.UTF_8));
    }

    /** What runs in the other Java. */
    static final class Forked {
        private Forked() {}

        public static void main(String[] args) throws Exception {
            if (args[0].equals("bare")) {
                System.setProperty("java.awt.headless", "true");
                new Font("Dialog", Font.PLAIN, 12).getStringBounds("x", new FontRenderContext(null, true, true));
                return;
            }
            Path folder = Path.of(args[1]);
            Files.writeString(folder.resolve("page.svg"), SvgWriter.write(TestPages.plain()));
            Files.write(folder.resolve("page.png"), PngWriter.write(TestPages.plain(), 100));
            Files.write(folder.resolve("page.pdf"), PdfWriter.write(List.of(TestPages.plain())));
        }
    }
}
