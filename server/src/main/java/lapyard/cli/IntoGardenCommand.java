package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import lapyard.json.JobSheetJson;
import lapyard.json.MerchantList;
import lapyard.json.SiteFileJson;
import lapyard.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows how a file is understood and, where all of it is good, writes the garden that takes it. */
abstract class IntoGardenCommand extends PrintedCommand {
    @Option(names = "--garden", paramLabel = "GARDEN.json", description = "the garden that takes it (default: an empty one)")
    String garden;

    @Option(names = "--out", paramLabel = "FILE", description = "where the garden is written; may be the garden's own file")
    String out;

    /** Bad places of the file, each with its way out, and findings about the garden as it would be. */
    final void showBad(String file, JsonNode preview) {
        for (JsonNode one : preview.get("bad"))
            err().println(line(file + (one.has("line") ? ", line " + one.get("line").asLong() : "") + ": " + one.get("text").asText() + ". " + Wording.capital(one.get("way").asText()) + "."));
        for (JsonNode one : preview.get("findings")) err().println(line(one.get("where").asText() + ": " + one.get("text").asText()));
    }

    final void write(JsonNode taking, String what) throws UnusableInput {
        OutFolder.replace(out, JobSheetJson.text(taking));
        out().println(what + ", written to " + out);
    }

    @Command(
            name = "merchant-list",
            description = {
                "Shows how a merchant's list in CSV or XLSX is understood: its columns, its lines, and bad lines by number.",
                "With --out, writes the garden with the list in its catalogue if every line is good.",
                "Exit code 0: every line is good, 2: refused, nothing written."
            },
            mixinStandardHelpOptions = true)
    static final class MerchantListCommand extends IntoGardenCommand {
        @Parameters(paramLabel = "LIST", description = "the merchant's list, CSV or XLSX, or - for standard input")
        private String file;

        @Option(names = "--supplier", paramLabel = "ID", defaultValue = "", description = "who sells, as the garden's catalogue names them")
        private String supplier;

        @Option(names = "--column", paramLabel = "HEADING=FIELD", description = "what a column is, where its heading does not say: item, price, length, width, pack, content and so on")
        private Map<String, String> columns = Map.of();

        @Override
        public Integer call() throws UnusableInput {
            ObjectNode document = JsonNodeFactory.instance.objectNode();
            if (garden != null) {
                if (!(Input.parsed(garden, Input.text(garden)) instanceof ObjectNode object)) throw new UnusableInput(garden + " is no garden file: that is one JSON object in curly brackets.");
                document = object;
            }
            for (String field : columns.values()) {
                if (!MerchantList.fields().contains(field)) throw new UnusableInput("no column is called \"" + field + "\": use " + String.join(", ", MerchantList.fields()) + " with --column.");
            }
            ObjectNode preview = MerchantList.preview(Input.table(file), supplier, columns, document);
            show(preview);
            if (preview.get("garden").isNull()) return refuse("Nothing was taken: correct the bad lines first.");
            if (out != null) write(preview.get("garden"), preview.get("lines").size() + " lines taken");
            return 0;
        }

        private void show(ObjectNode preview) {
            for (JsonNode column : preview.get("columns")) {
                out().println("column " + line(column.get("heading").asText()) + " is the " + column.get("field").asText());
            }
            for (JsonNode heading : preview.get("ignored")) out().println("Column \"" + line(heading.asText()).strip() + "\" is not used.");
            for (JsonNode one : preview.get("lines")) {
                StringBuilder fields = new StringBuilder();
                one.get("fields").properties().forEach(field -> fields.append(", ").append(field.getKey()).append(' ').append(field.getValue().asText()));
                out().println(line("line " + one.get("line").asLong() + ": " + one.get("kind").asText() + fields));
            }
            showBad(file, preview);
        }
    }

    @Command(
            name = "site-file",
            description = {
                "Shows the layers of a DXF, GeoJSON or CSV file of a site, and what is wrong with it.",
                "With --take and --out, writes the garden with the yard of that file if everything is good.",
                "Exit code 0: good, 2: refused, nothing written."
            },
            mixinStandardHelpOptions = true)
    static final class SiteFileCommand extends IntoGardenCommand {
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
            showBad(file, preview);
        }
    }
}
