package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
        name = "lay-out",
        description = "Proposes where the beds and paths go in the yard, by what the garden says under layOut. Exit code 1: not all beds have room.",
        mixinStandardHelpOptions = true)
final class LayOutCommand extends AskedGarden {
    @Option(names = "--seconds", paramLabel = "N", defaultValue = "30", description = "how long to look, roughly, in seconds; with many beds and few seconds, some proposals come without their order (default 30)")
    private double seconds;

    LayOutCommand() {
        super("lay-out", "beds laid out, of at most", "proposals");
    }

    @Override
    double seconds() {
        return seconds;
    }

    @Override
    int shown(JsonNode answer) {
        int number = 0;
        for (JsonNode proposal : answer.path("proposals")) {
            out().println(++number + ". " + proposal.path("text").asText() + ".");
            for (JsonNode fall : proposal.path("ground")) out().println("   The ground: " + fall.asText());
        }
        out().println(answer.path("text").asText());
        return number > 0 && answer.path("shortOf").asInt() == 0 ? 0 : 1;
    }
}
