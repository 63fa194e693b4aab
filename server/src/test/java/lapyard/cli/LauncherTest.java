package lapyard.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The scripts of the build: with which flags Java is started, and which commit a folder is of. */
@ResourceLock("standard streams")
class LauncherTest {
    private static final Path SCRIPTS = Path.of("src/main/launcher");

    @TempDir
    Path folder;

    @BeforeEach
    void needsAShell() {
        assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "there is no shell here");
    }

    private record Ended(int code, String out) {}

    private static Ended run(Path in, String... command) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(command).directory(in.toFile()).redirectErrorStream(true);
        builder.environment().put("JAVA_HOME", in.resolve("java").toString());
        builder.environment().keySet().removeIf(name -> name.startsWith("GIT_") || name.startsWith("LAPYARD_"));
        Process process = builder.start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ended(process.waitFor(), out.strip());
    }

    @ParameterizedTest(name = "{0}: second compiler {1}, bounded heap {2}")
    @CsvSource({"snags, false, false", "take-off, false, false", "--version, false, false", "serve, false, true", "solve, true, false", "sizes, true, false"})
    void onlyLongSearchesStartWithTheSecondCompiler(String command, boolean second, boolean bounded) throws Exception {
        Path lib = packaged("#!/bin/sh\nfor each; do echo \"$each\"; done\n");

        List<String> given = run(folder, "sh", "a b/bin/lapyard", command, "a garden.json").out().lines().toList();

        assertEquals(!second, given.contains("-XX:TieredStopAtLevel=1"), given::toString);
        assertEquals(!second, given.contains("-XX:TLABSize=64k"), given::toString);
        assertEquals(bounded, given.contains("-Xmx256m"), given::toString);
        assertEquals(bounded, given.stream().anyMatch(each -> each.startsWith("-XX:CompileThresholdScaling=0.")), given::toString);
        assertEquals(bounded, given.contains("-XX:CICompilerCount=1"), given::toString);
        assertEquals(givesLargePages(), given.contains("-XX:+UseTransparentHugePages"), given::toString);
        assertTrue(given.contains("-XX:SharedArchiveFile=" + lib.resolve("lapyard.jsa")), given::toString);
        assertEquals(List.of("-jar", lib.resolve("lapyard.jar").toString(), command, "a garden.json"), given.subList(given.size() - 4, given.size()));
    }

    /** As the kernel's documentation has it (Documentation/admin-guide/mm/transhuge.rst): the word in brackets holds. */
    private static boolean givesLargePages() throws IOException {
        Path system = Path.of("/sys/kernel/mm/transparent_hugepage/enabled");
        return Files.isReadable(system) && !Files.readString(system).contains("[never]");
    }

    /** @return the folder of the program in {@code a b}, started with that script for its Java */
    private Path packaged(String script) throws IOException {
        Path java = Files.createDirectories(folder.resolve("java/bin")).resolve("java");
        Files.writeString(java, script);
        Files.setPosixFilePermissions(java, PosixFilePermissions.fromString("rwxr-xr-x"));
        Files.createDirectories(folder.resolve("a b/bin"));
        Path lib = Files.createDirectories(folder.resolve("a b/lib")).toRealPath();
        Files.createFile(lib.resolve("lapyard.jsa"));
        Files.copy(SCRIPTS.resolve("lapyard"), folder.resolve("a b/bin/lapyard"));
        return lib;
    }

    /** Java refuses one thread for two compilers: whoever asks for both gets it started. */
    @ParameterizedTest
    @ValueSource(strings = {"", "-XX:TieredStopAtLevel=4", "-XX:+TieredCompilation -XX:TieredStopAtLevel=1"})
    void aServerStartsWithTheCompilersThatOneAsksFor(String options) throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        packaged("#!/bin/sh\nfor each; do case $each in -jar) exec '" + java + "' $flags -version ;; -XX:Shared*) ;; *) flags=\"$flags $each\" ;; esac; done\n");

        Ended started = run(folder, "env", "LAPYARD_JAVA_OPTS=" + options, "sh", "a b/bin/lapyard", "serve");

        assertEquals(0, started.code(), started.out());
    }

    @Test
    void theRoundForTheArchiveDoesItsWork() throws IOException {
        assertEquals(0, ClassRound.run(folder));
        assertTrue(Files.exists(folder.resolve("take-off/sheets.pdf")));
    }

    @Test
    void aCloneAndAnExportTellTheirCommitAndAPlainFolderNone() throws Exception {
        Path clone = Files.createDirectories(folder.resolve("clone")).toRealPath();
        Path script = Path.of("server").resolve(SCRIPTS).resolve("commit");
        Files.createDirectories(clone.resolve(script).getParent());
        Files.copy(SCRIPTS.resolve("commit"), clone.resolve(script));
        Files.copy(Path.of("../.gitattributes"), clone.resolve(".gitattributes"));
        assertEquals("", run(clone, "sh", script.toString()).out(), "a plain folder");

        assumeTrue(Files.isExecutable(Path.of("/usr/bin/git")), "there is no git here");
        run(clone, "git", "init", "-q");
        run(clone, "git", "add", ".");
        Ended made = run(clone, "git", "-c", "user.name=a", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false", "commit", "-qm", "first");
        assertEquals(0, made.code(), made.out());
        String commit = run(clone, "git", "rev-parse", "HEAD").out().substring(0, 12);
        assertEquals(commit, run(clone, "sh", script.toString()).out(), "a clone");

        Path export = Files.createDirectories(clone.resolve("inside"));
        assertEquals(0, run(clone, "sh", "-c", "git archive HEAD | tar x -C inside").code());
        assertEquals(commit, run(export, "sh", script.toString()).out(), "an export");
        Files.copy(SCRIPTS.resolve("commit"), export.resolve(script), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        assertEquals("", run(export, "sh", script.toString()).out(), "a copy inside another clone");
    }
}
