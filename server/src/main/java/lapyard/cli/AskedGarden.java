package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import lapyard.answers.GardenDesk;
import lapyard.json.DocumentText;
import lapyard.working.Progress;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A question about a whole garden file whose answers are gardens themselves. Interrupted, it answers with what was found by then. */
abstract class AskedGarden extends PrintedCommand {
    @Parameters(paramLabel = "GARDEN.json", description = "garden file, or - for standard input")
    private String file;

    @Option(names = "--out", paramLabel = "DIR", description = "write the answer and the garden of each of its entries here")
    private String out;

    private final String kind;
    private final String told;
    private final String entries;

    /**
     * @param kind    as {@link GardenDesk#solve} names it, and the name of its files
     * @param told    what stands between best and bound: {@code beds laid out, of at most}
     * @param entries field of the answer whose entries hold a garden each
     */
    AskedGarden(String kind, String told, String entries) {
        this.kind = kind;
        this.told = told;
        this.entries = entries;
    }

    abstract double seconds();

    /** Prints the answer. @return the exit code */
    abstract int shown(JsonNode answer);

    /** Tells how far it is on standard error where that is a terminal. */
    @Override
    public final Integer call() throws UnusableInput {
        if (!(seconds() > 0 && seconds() <= 600)) {
            throw new UnusableInput("--seconds " + seconds() + " is outside 0 to 600. Give a time such as 5.");
        }
        try (EndedByKey ended = new EndedByKey()) {
            JsonNode answer = solved();
            int exit = shown(answer);
            if (out != null) write(answer);
            out().flush();
            return exit;
        }
    }

    private JsonNode solved() throws UnusableInput {
        String text = Input.text(file);
        try {
            return Input.usable(file, () -> DocumentText.parse(new GardenDesk().solve(kind, text, seconds(), what -> System.console() == null ? Progress.UNHEARD : this::heard)));
        } finally {
            // what is written next is written whole
            Thread.interrupted();
        }
    }

    private void heard(BigDecimal best, BigDecimal bound) {
        System.err.println(best + " " + told + " " + bound + " (Ctrl-C: enough)");
    }

    /** The whole answer as KIND.json, and the garden of each entry as KIND-1.json, KIND-2.json and so on. */
    private void write(JsonNode answer) throws UnusableInput {
        try {
            Path dir = Files.createDirectories(Path.of(out));
            Files.writeString(dir.resolve(kind + ".json"), answer.toPrettyString() + "\n");
            int number = 0;
            for (JsonNode entry : answer.path(entries)) Files.writeString(dir.resolve(kind + "-" + ++number + ".json"), entry.path("garden").toPrettyString() + "\n");
        } catch (IOException | java.nio.file.InvalidPathException e) {
            throw new UnusableInput(out + " cannot be written: " + UnusableInput.why(e) + ".");
        }
    }
}
