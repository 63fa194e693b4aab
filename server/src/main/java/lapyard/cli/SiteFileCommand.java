package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import lapyard.json.DocumentText;
import lapyard.json.JobSheetJson;
import lapyard.json.SiteFileJson;
import lapyard.json.UnreadableDocument;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "site-file",
        description = {
            "Shows the layers of a DXF, GeoJSON or CSV file of a site, and what is wrong with it.",
            "With --take and --out, writes the garden with the yard of that file if everything is good.",
            "Exit code 0: good, 2: refused, nothing written."
        },
        mixinStandardHelpOptions = true)
final class SiteFileCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "the drawing or the coordinates, or - for standard input")
    private String file;

    @Option(names = "--unit", paramLabel = "UNIT", description = "unit of its coordinates where it does not say: mm, cm, m, in or ft")
    private String unit;

    @Option(names = "--take", paramLabel = "LAYER=WHAT", description = "what a layer is: outline, levels, slab, grass, tree and so on; may be given more than once")
    private Map<String, String> take = new LinkedHashMap<>();

    @Option(names = "--garden", paramLabel = "GARDEN.json", description = "the garden that takes it (default: an empty one)")
    private String garden;

    @Option(names = "--out", paramLabel = "FILE", description = "where the garden with the yard is written; may be the garden's own file")
    private String out;

    @Override
    public Integer call() throws UnusableInput {
        ObjectNode ask = JsonNodeFactory.instance.objectNode().put("file", Input.text(file));
        if (unit != null) ask.put("unit", unit);
        take.forEach(ask.putObject("take")::put);
        JsonNode preview;
        try {
            if (garden != null) ask.set("garden", DocumentText.parse(Input.text(garden)));
            preview = SiteFileJson.preview(ask.toString());
        } catch (UnreadableDocument | IllegalArgumentException e) {
            throw new UnusableInput((garden == null ? file : file + ", " + garden) + ": " + e.getMessage());
        }
        show(preview);
        if (!preview.get("bad").isEmpty() || !preview.get("findings").isEmpty()) {
            spec.commandLine().getErr().println("Nothing is taken while something is wrong.");
            return Lapyard.REFUSED;
        }
        if (out != null) {
            if (preview.get("garden").isNull())
                throw new UnusableInput(preview.get("unit").isNull() ? file + " does not say its unit: give it with --unit." : "say what each layer is with --take LAYER=WHAT.");
            OutFolder.replace(out, JobSheetJson.text(preview.get("garden")));
            spec.commandLine().getOut().println("the yard is taken, written to " + out);
        }
        return 0;
    }

    private void show(JsonNode preview) {
        var to = spec.commandLine().getOut();
        boolean known = !preview.get("unit").isNull();
        to.println(preview.get("format").asText() + ", " + (known ? preview.get("unit").asText() : "unit not said"));
        for (JsonNode layer : preview.get("layers")) {
            String suggested = layer.get("suggested").asText();
            to.println(line("layer \"" + layer.get("name").asText() + "\": " + layer.get("closed").asInt() + " closed, " + layer.get("open").asInt() + " open, " + layer.get("points").asInt()
                    + " points, " + layer.get("width").asText() + " by " + layer.get("depth").asText() + (known ? " mm" : "") + (suggested.isEmpty() ? "" : "; may be " + suggested)));
        }
        for (JsonNode one : preview.get("passedOver")) to.println("passed over: " + one.get("count").asInt() + " " + line(one.get("what").asText()));
        for (JsonNode one : preview.get("bad"))
            spec.commandLine().getErr().println(line((one.has("line") ? "line " + one.get("line").asLong() + ": " : "") + one.get("text").asText() + ". Way out: " + one.get("way").asText()));
        for (JsonNode one : preview.get("findings")) spec.commandLine().getErr().println(line(one.get("where").asText() + ": " + one.get("text").asText()));
    }

    private static String line(String text) {
        return text.replaceAll("\\p{Cntrl}+", " ");
    }
}
