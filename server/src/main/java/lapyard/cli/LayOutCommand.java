package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "lay-out",
        description = "Proposes where the beds and paths go in the yard, by what the garden says under layOut. Exit code 1: not all beds have room.",
        mixinStandardHelpOptions = true)
final class LayOutCommand extends PrintedCommand {
    @Parameters(paramLabel = "GARDEN.json", description = "garden file, or - for standard input")
    private String file;

    @Option(names = "--seconds", paramLabel = "N", defaultValue = "30", description = "how long to look, roughly, in seconds; with many beds and few seconds, some proposals come without their order (default 30)")
    private double seconds;

    @Option(names = "--out", paramLabel = "DIR", description = "write lay-out.json and each proposal's garden here")
    private String out;

    @Override
    public Integer call() throws UnusableInput {
        try (EndedByKey ended = new EndedByKey()) {
            JsonNode laid = AskedGarden.solve("lay-out", file, seconds, "beds laid out, of at most");
            PrintWriter to = out();
            int number = 0;
            for (JsonNode proposal : laid.path("proposals")) {
                to.println(++number + ". " + proposal.path("text").asText() + ".");
                for (JsonNode fall : proposal.path("ground")) to.println("   The ground: " + fall.asText());
            }
            to.println(laid.path("text").asText());
            if (out != null) AskedGarden.write(out, "lay-out", laid, laid.path("proposals"));
            to.flush();
            return number > 0 && laid.path("shortOf").asInt() == 0 ? 0 : 1;
        }
    }
}
