package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import lapyard.json.SiteFileJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "site-file",
        description = {
            "Shows the layers of a DXF, GeoJSON or CSV file of a site, and what is wrong with it.",
            "With --take and --out, writes the garden with the yard of that file if everything is good.",
            "Exit code 0: good, 2: refused, nothing written."
        },
        mixinStandardHelpOptions = true)
final class SiteFileCommand extends IntoGardenCommand {
    @Parameters(paramLabel = "FILE", description = "the drawing or the coordinates, or - for standard input")
    private String file;

    @Option(names = "--unit", paramLabel = "UNIT", description = "unit of its coordinates where it does not say: mm, cm, m, in or ft")
    private String unit;

    @Option(names = "--take", paramLabel = "LAYER=WHAT", description = "what a layer is: outline, levels, slab, grass, tree and so on; may be given more than once")
    private Map<String, String> take = new LinkedHashMap<>();

    @Override
    public Integer call() throws UnusableInput {
        ObjectNode ask = JsonNodeFactory.instance.objectNode().put("file", Input.text(file));
        if (unit != null) ask.put("unit", unit);
        take.forEach(ask.putObject("take")::put);
        if (garden != null) ask.set("garden", Input.parsed(garden, Input.text(garden)));
        JsonNode preview = Input.usable(file, () -> SiteFileJson.preview(ask.toString()));
        show(preview);
        if (!preview.get("bad").isEmpty() || !preview.get("findings").isEmpty()) {
            return refuse("Nothing was taken: correct what is wrong first.");
        }
        if (out != null) {
            if (preview.get("garden").isNull())
                throw new UnusableInput(preview.get("unit").isNull() ? file + " does not say its unit: give it with --unit." : "say what each layer is with --take LAYER=WHAT.");
            write(preview.get("garden"), "the yard is taken");
        }
        return 0;
    }

    private void show(JsonNode preview) {
        boolean known = !preview.get("unit").isNull();
        out().println(preview.get("format").asText() + ", " + (known ? preview.get("unit").asText() : "unit not said"));
        for (JsonNode layer : preview.get("layers")) {
            String suggested = layer.get("suggested").asText();
            out().println(line("layer \"" + layer.get("name").asText() + "\": " + layer.get("closed").asInt() + " closed, " + layer.get("open").asInt() + " open, " + layer.get("points").asInt()
                    + " points, " + layer.get("width").asText() + " by " + layer.get("depth").asText() + (known ? " mm" : "") + (suggested.isEmpty() ? "" : "; may be " + suggested)));
        }
        for (JsonNode one : preview.get("passedOver")) out().println("Not used: " + one.get("count").asInt() + " " + line(one.get("what").asText()));
        showBad(preview);
    }
}
