package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import lapyard.json.DocumentText;
import lapyard.json.SolveLine;
import lapyard.working.Progress;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "solve",
        description = "Reads problems as JSON lines and writes one result on each line, in the same order, as each ends.",
        mixinStandardHelpOptions = true)
final class SolveCommand extends PrintedCommand {
    /** What can be solved. */
    enum Kind {
        CUTTING,
        ROLLS,
        STAGING
    }

    @Parameters(index = "0", paramLabel = "cutting|rolls|staging", description = "what to solve: cuts in boards, cuts in rolls, or tasks by their resources")
    private Kind kind;

    @Parameters(index = "1", paramLabel = "FILE", description = "one problem a line, or - for standard input")
    private String file;

    @Option(names = "--seconds", paramLabel = "N", defaultValue = "10", description = "at most so many seconds for each problem (default 10)")
    private double seconds;

    @Option(names = "--out", paramLabel = "FILE", description = "where results go (default standard output)")
    private String out;

    @Override
    public Integer call() throws UnusableInput {
        UnusableInput.requireSeconds(seconds, 3600, 10);
        try (BufferedReader lines = open();
                PrintWriter writer = out == null || out.equals("-")
                        ? null
                        : new PrintWriter(Files.newBufferedWriter(Path.of(out), StandardCharsets.UTF_8))) {
            PrintWriter to = writer == null ? out() : writer;
            int number = 0;
            boolean complete = true;
            for (String line; (line = lines.readLine()) != null; ) {
                number++;
                String text = number == 1 ? DocumentText.unmarked(line) : line;
                if (text.isBlank()) continue;
                ObjectNode result = solve(text, number);
                JsonNode unplaced = result.get("unplaced");
                complete &= unplaced == null || unplaced.isEmpty();
                to.println(result);
                to.flush();
            }
            if (number == 0) throw new UnusableInput(file + " is empty. Give one problem a line.");
            return complete ? 0 : 1;
        } catch (IOException | java.nio.file.InvalidPathException e) {
            throw new UnusableInput(file + " cannot be read or written: " + UnusableInput.why(e) + ".");
        }
    }

    private ObjectNode solve(String text, int number) throws UnusableInput {
        return Input.usable(file + ", line " + number, () -> SolveLine.solve(kind.name().toLowerCase(Locale.ROOT), text, seconds, Progress.UNHEARD));
    }

    private BufferedReader open() throws IOException, UnusableInput {
        if (file.equals("-")) return new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        if (!Files.isRegularFile(Path.of(file))) {
            throw new UnusableInput(file + " is not there. Check the name, or give - for standard input.");
        }
        return Files.newBufferedReader(Path.of(file), StandardCharsets.UTF_8);
    }
}
