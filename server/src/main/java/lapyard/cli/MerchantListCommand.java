package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.concurrent.Callable;
import lapyard.json.DocumentText;
import lapyard.json.JobSheetJson;
import lapyard.json.MerchantListJson;
import lapyard.json.UnreadableDocument;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "merchant-list",
        description = {
            "Shows how a merchant's list in CSV is understood: its columns, its lines, and bad lines by number.",
            "With --out, writes the garden with the list in its catalogue if every line is good.",
            "Exit code 0: every line is good, 2: refused, nothing written."
        },
        mixinStandardHelpOptions = true)
final class MerchantListCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "LIST.csv", description = "the merchant's list, or - for standard input")
    private String file;

    @Option(names = "--garden", paramLabel = "GARDEN.json", description = "the garden that takes it (default: an empty one)")
    private String garden;

    @Option(names = "--supplier", paramLabel = "ID", defaultValue = "", description = "who sells, as the garden's catalogue names them")
    private String supplier;

    @Option(names = "--out", paramLabel = "FILE", description = "where the garden with the list is written; may be the garden's own file")
    private String out;

    @Override
    public Integer call() throws UnusableInput {
        ObjectNode document = JsonNodeFactory.instance.objectNode();
        if (garden != null) {
            try {
                JsonNode read = DocumentText.parse(Input.text(garden));
                if (!(read instanceof ObjectNode object)) {
                    throw new UnusableInput(garden + ": is no garden, which is one JSON object");
                }
                document = object;
            } catch (UnreadableDocument e) {
                throw new UnusableInput(garden + ": " + e.getMessage());
            }
        }
        ObjectNode preview = MerchantListJson.preview(Input.text(file), supplier, document);
        show(preview);
        if (preview.get("garden").isNull()) {
            spec.commandLine().getErr().println("Nothing is taken while a line is bad.");
            return Lapyard.REFUSED;
        }
        if (out != null) {
            OutFolder.replace(out, JobSheetJson.text(preview.get("garden")));
            spec.commandLine().getOut().println(preview.get("lines").size() + " lines taken, written to " + out);
        }
        return 0;
    }

    private void show(ObjectNode preview) {
        var to = spec.commandLine().getOut();
        for (JsonNode column : preview.get("columns")) {
            to.println("column " + line(column.get("heading").asText()) + " is the " + column.get("field").asText());
        }
        for (JsonNode heading : preview.get("ignored")) {
            to.println("column " + line(heading.asText()) + " is passed over");
        }
        for (JsonNode one : preview.get("lines")) {
            StringBuilder fields = new StringBuilder();
            one.get("fields").properties().forEach(field -> fields.append(", ").append(field.getKey()).append(' ').append(field.getValue().asText()));
            to.println(line("line " + one.get("line").asLong() + ": " + one.get("kind").asText() + fields));
        }
        for (JsonNode one : preview.get("bad")) {
            spec.commandLine().getErr().println(line("line " + one.get("line").asLong() + ": " + one.get("text").asText() + ". Way out: " + one.get("way").asText()));
        }
        for (JsonNode one : preview.get("findings")) {
            spec.commandLine().getErr().println(line(one.get("where").asText() + ": " + one.get("text").asText()));
        }
    }

    private static String line(String text) {
        return text.replaceAll("\\p{Cntrl}+", " ");
    }
}
