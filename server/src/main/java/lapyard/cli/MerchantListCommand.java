package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import lapyard.json.MerchantList;
import lapyard.json.MerchantListJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "merchant-list",
        description = {
            "Shows how a merchant's list in CSV or XLSX is understood: its columns, its lines, and bad lines by number.",
            "With --out, writes the garden with the list in its catalogue if every line is good.",
            "Exit code 0: every line is good, 2: refused, nothing written."
        },
        mixinStandardHelpOptions = true)
final class MerchantListCommand extends IntoGardenCommand {
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
        ObjectNode preview = MerchantListJson.preview(Input.table(file), supplier, columns, document);
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
        showBad(preview);
    }
}
