package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "sizes",
        description = "Shows which changes of size make the order cheaper, within what the garden allows under give; few changes come first.",
        mixinStandardHelpOptions = true)
final class SizesCommand extends PrintedCommand {
    @Parameters(paramLabel = "GARDEN.json", description = "garden file, or - for standard input")
    private String file;

    @Option(names = "--seconds", paramLabel = "N", defaultValue = "5", description = "how long to look, roughly, in seconds (default 5)")
    private double seconds;

    @Option(names = "--out", paramLabel = "DIR", description = "write sizes.json and each answer's garden here")
    private String out;

    @Override
    public Integer call() throws UnusableInput {
        try (EndedByKey ended = new EndedByKey()) {
            JsonNode sizes = AskedGarden.solve("sizes", file, seconds, "found, not under");
            PrintWriter to = out();
            to.println(sizes.path("currency").asText() + " " + sizes.path("now").asText() + " as it stands.");
            int number = 0;
            for (JsonNode answer : sizes.path("front")) {
                to.println(++number + ". " + answer.path("text").asText() + (answer.path("proven").asBoolean() ? " (proved: none better)" : "") + ".");
            }
            to.println(sizes.path("text").asText());
            for (JsonNode one : sizes.path("growth")) to.println(one.path("text").asText() + ".");
            for (JsonNode side : sizes.path("growthOpen")) to.println("Growth not known: " + side.asText() + ".");
            if (out != null) AskedGarden.write(out, "sizes", sizes, sizes.path("front"));
            to.flush();
            return 0;
        }
    }
}
