package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import lapyard.json.JobSheetJson;
import lapyard.words.Wording;
import picocli.CommandLine.Option;

/** Shows how a file is understood and, where all of it is good, writes the garden that takes it. */
abstract class IntoGardenCommand extends PrintedCommand {
    @Option(names = "--garden", paramLabel = "GARDEN.json", description = "the garden that takes it (default: an empty one)")
    String garden;

    @Option(names = "--out", paramLabel = "FILE", description = "where the garden is written; may be the garden's own file")
    String out;

    /** Bad places, each with its way out, and findings about the garden as it would be. */
    final void showBad(JsonNode preview) {
        for (JsonNode one : preview.get("bad"))
            err().println(line((one.has("line") ? "Line " + one.get("line").asLong() + ": " : "") + one.get("text").asText() + ". " + Wording.capital(one.get("way").asText()) + "."));
        for (JsonNode one : preview.get("findings")) err().println(line(one.get("where").asText() + ": " + one.get("text").asText()));
    }

    final void write(JsonNode taking, String what) throws UnusableInput {
        OutFolder.replace(out, JobSheetJson.text(taking));
        out().println(what + ", written to " + out);
    }
}
