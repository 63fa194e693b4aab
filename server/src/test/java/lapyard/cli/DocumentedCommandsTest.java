package lapyard.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.diagrams.PlanLayer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import picocli.CommandLine;

/**
 * Every command that README and docs show does what they say: command blocks are run line by line in one folder, commands
 * in running text are checked for their names and options.
 */
@ResourceLock("standard streams")
class DocumentedCommandsTest {
    private static final Path TOP = Path.of("..");
    private static final Set<String> WITH_DATA = Set.of("serve", "backup", "restore", "rescue");
    private static final Set<String> PATH_OPTIONS = Set.of("--out", "--data", "--garden");
    private static final Pattern BLOCK = Pattern.compile("(?ms)^```([a-z]*)\\n(.*?)^```");
    private static final Pattern IN_TEXT = Pattern.compile("`lapyard ([^`]+)`");

    @TempDir
    Path folder;

    private static List<Path> documents() throws IOException {
        List<Path> found = new ArrayList<>(List.of(TOP.resolve("README.md"), TOP.resolve("DEVELOPERS.md")));
        for (String folder : List.of("docs", "docs/method", "docs/benchmarks")) {
            try (Stream<Path> docs = Files.list(TOP.resolve(folder))) {
                docs.filter(file -> file.toString().endsWith(".md") && !file.endsWith("CHANGELOG.md")).sorted().forEach(found::add);
            }
        }
        return found;
    }

    @Test
    void everyCommandBlockRunsLineByLine() throws IOException {
        int run = 0;
        for (Path document : documents()) {
            Matcher block = BLOCK.matcher(Files.readString(document));
            while (block.find()) {
                for (String line : block.group(2).split("\n")) {
                    for (String command : line.strip().split(" && ")) {
                        String shown = document.getFileName() + ": " + command;
                        if (command.startsWith("mvn ")) {
                            namesWhatIsThere(shown, command);
                        } else if (command.matches("(server/target/lapyard/bin/)?lapyard .*")) {
                            runs(shown, command.substring(command.indexOf("lapyard ") + 8).split(" +"));
                            run++;
                        }
                    }
                }
            }
        }
        assertTrue(run >= 8, run + " commands were run");
        assertTrue(Files.exists(folder.resolve("three-entries/sheets.pdf")));
        assertTrue(Files.exists(folder.resolve("variation.pdf")));
    }

    /** A server answers one round of its own requests and ends; every path lies in the test's folder or in the checkout. */
    private void runs(String shown, String... words) {
        List<String> args = new ArrayList<>(List.of(words[0]));
        for (int i = 1; i < words.length; i++) {
            boolean path = !words[i].startsWith("-") && (PATH_OPTIONS.contains(words[i - 1]) || words[i].contains("."));
            boolean given = path && !words[i - 1].equals("--out") && Files.isRegularFile(TOP.resolve(words[i]));
            args.add(!path ? words[i] : (given ? TOP : folder).resolve(words[i]).toString());
        }
        if (WITH_DATA.contains(words[0]) && !args.contains("--data")) {
            args.addAll(List.of("--data", folder.resolve(".lapyard").toString()));
        }
        if (words[0].equals("serve")) {
            args.addAll(List.of("--port", "0", "--once"));
        }
        PrintStream oldOut = System.out;
        PrintStream oldErr = System.err;
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        System.setOut(new PrintStream(told, true, StandardCharsets.UTF_8));
        System.setErr(new PrintStream(told, true, StandardCharsets.UTF_8));
        int code;
        try {
            code = Lapyard.run(args.toArray(String[]::new));
        } finally {
            System.setOut(oldOut);
            System.setErr(oldErr);
        }
        int most = Set.of("snags", "take-off").contains(words[0]) ? 1 : 0;
        assertTrue(code <= most, shown + " ends with " + code + ": " + told.toString(StandardCharsets.UTF_8));
        assertFalse(told.toString(StandardCharsets.UTF_8).isBlank(), shown + " says nothing");
    }

    /** Profiles and test classes by their names. */
    private static void namesWhatIsThere(String shown, String command) throws IOException {
        String poms = Files.readString(TOP.resolve("pom.xml")) + Files.readString(TOP.resolve("server/pom.xml"));
        Matcher profile = Pattern.compile(" -P ?([a-z]+)").matcher(command);
        while (profile.find()) {
            assertTrue(poms.contains("<id>" + profile.group(1) + "</id>"), shown);
        }
        Matcher test = Pattern.compile("test='(\\w+)'").matcher(command);
        while (test.find()) {
            try (Stream<Path> all = Files.walk(Path.of("src/test/java"))) {
                assertTrue(all.anyMatch(file -> file.endsWith(test.group(1) + ".java")), shown);
            }
        }
    }

    @Test
    void commandsInRunningTextHaveTheirNamesAndOptions() throws IOException {
        CommandLine all = Lapyard.commands();
        for (Path document : documents()) {
            Matcher one = IN_TEXT.matcher(Files.readString(document));
            while (one.find()) {
                List<String> words = Arrays.asList(one.group(1).split("\\s+"));
                String shown = document.getFileName() + ": " + one.group();
                if (words.get(0).equals("COMMAND") || words.get(0).startsWith("-")) continue;
                CommandLine command = all.getSubcommands().get(words.get(0));
                assertNotNull(command, shown);
                int positional = 0;
                for (int i = 1; i < words.size(); i++) {
                    if (words.get(i).startsWith("--")) {
                        var option = command.getCommandSpec().findOption(words.get(i).replaceAll("=.*", ""));
                        assertNotNull(option, shown);
                        if (option.arity().max() > 0 && !words.get(i).contains("=")) i++;
                    } else {
                        positional++;
                    }
                }
                assertTrue(positional <= command.getCommandSpec().positionalParameters().size(), shown);
            }
        }
    }

    @Test
    void helpAndDocsNameTheLayersOfAPlanAsThePlanDoes() throws IOException {
        String all = Arrays.stream(PlanLayer.values()).map(PlanLayer::label).collect(Collectors.joining(", "));
        String left = Arrays.stream(PlanLayer.values()).filter(layer -> !PlanLayer.USUAL.contains(layer)).map(PlanLayer::label).collect(Collectors.joining(", "))
                .replaceFirst(", ([^,]*)$", " and $1");
        String help = String.join("", Lapyard.commands().getSubcommands().get("take-off").getCommandSpec().findOption("--layers").description());
        for (String text : List.of(help, Files.readString(TOP.resolve("docs/api.md")))) {
            assertTrue(text.contains(all), all);
            assertTrue(text.contains("all but " + left), left);
        }
    }

    /** Words that no tradesperson says, or that are kept for another thing: a joint is not a seam, a reading is no freeboard. */
    @Test
    void helpAndDocsSpeakTheWordsOfTheTrade() throws IOException {
        Pattern not = Pattern.compile("(?i)\\b(runs? past|stops short|turning lap|freeboard|green-salted|gassed|tarred|chalk(ed|ings?)|load-in|drop spot"
                + "|seam allowance|server is away|stand a bed|let it follow)\\b");
        List<String> texts = new ArrayList<>();
        for (Path document : documents()) texts.add(Files.readString(document).replaceAll("```[^`]*```|`[^`]*`", ""));
        Lapyard.commands().getSubcommands().values().forEach(command -> texts.add(command.getUsageMessage()));
        for (String text : texts) {
            Matcher found = not.matcher(text);
            assertFalse(found.find(), () -> found.group() + " in: " + text.substring(0, Math.min(60, text.length())));
        }
    }

    @Test
    void theLeastGardenOfTheReadmeIsASample() throws IOException {
        Matcher block = BLOCK.matcher(Files.readString(TOP.resolve("README.md")));
        assertTrue(block.find() && block.group(1).equals("json"));
        ObjectMapper mapper = new ObjectMapper();
        assertEquals(mapper.readTree(TOP.resolve("samples/three-entries.json").toFile()), mapper.readTree(block.group(2)));
    }
}
