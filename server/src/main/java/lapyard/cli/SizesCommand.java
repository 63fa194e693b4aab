package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
        name = "sizes",
        description = "Shows which changes of size make the order cheaper, within what the garden allows under give; few changes come first.",
        mixinStandardHelpOptions = true)
final class SizesCommand extends AskedGarden {
    @Option(names = "--seconds", paramLabel = "N", defaultValue = "5", description = "how long to look, roughly, in seconds (default 5)")
    private double seconds;

    SizesCommand() {
        super("sizes", "found, not under", "front");
    }

    @Override
    double seconds() {
        return seconds;
    }

    @Override
    int shown(JsonNode answer) {
        out().println(answer.path("currency").asText() + " " + answer.path("now").asText() + " as it stands.");
        int number = 0;
        for (JsonNode one : answer.path("front")) {
            out().println(++number + ". " + one.path("text").asText() + (one.path("proven").asBoolean() ? " (proved: none better)" : "") + ".");
        }
        out().println(answer.path("text").asText());
        for (JsonNode one : answer.path("growth")) out().println(one.path("text").asText() + ".");
        for (JsonNode side : answer.path("growthOpen")) out().println("Growth not known: " + side.asText() + ".");
        return 0;
    }
}
