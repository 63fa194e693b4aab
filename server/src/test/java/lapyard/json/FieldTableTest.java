package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The schema as the table from which readers and docs take the fields. */
class FieldTableTest {
    @Test
    void aFieldHasTheBoundsThatStandNearest() {
        FieldTable.Field kerf = FieldTable.GARDEN.inner("saw").field("kerf");
        assertEquals(List.of(0.0, 30.0, 1, "mm"), List.of(kerf.least(), kerf.most(), kerf.decimals(), kerf.unit()));
        FieldTable.Field turn = FieldTable.GARDEN.inner("beds").inner("walls").field("turn");
        assertEquals(List.of(-160.0, 160.0, 2, "degrees", List.of("left", "right")),
                List.of(turn.least(), turn.most(), turn.decimals(), turn.unit(), turn.words()));
        assertEquals(List.of("unknown", "none", "heat", "garden", "methyl-bromide", "cca", "creosote"),
                FieldTable.GARDEN.inner("rack").field("treatment").words());
        assertThrows(IllegalStateException.class, () -> FieldTable.GARDEN.inner("saw").field("teeth"));
    }

    /** {@code -Dlapyard.approve=true} writes the tables anew. */
    @Test
    void theDocsListEveryField() throws IOException {
        StringBuilder text = new StringBuilder("# Fields of the garden document\n\nWhat each field takes and has where it is left out, written from the schema by"
                + " `FieldTableTest`. [The garden document](garden.md)\nexplains them. A type has the fields of a bed.\n");
        table(FieldTable.GARDEN, "", text);
        Path file = Path.of("../docs/fields.md");
        if (Boolean.getBoolean("lapyard.approve")) Files.writeString(file, text);
        assertEquals(text.toString(), Files.readString(file));
    }

    private static void table(FieldTable fields, String path, StringBuilder text) {
        text.append("\n## ").append(path.isEmpty() ? "Garden" : "`" + path.substring(1).replace("/", ".") + "`")
                .append("\n\n| field | takes | default | meaning |\n| --- | --- | --- | --- |\n");
        List<String> names = names(fields);
        for (String name : names) {
            JsonNode usual = fields.field(name).usual();
            String meaning = FieldTable.first(fields.inner(name).forms, "description").asText("");
            text.append("| `").append(name).append("` | ").append(takes(fields, name)).append(" | ")
                    .append(usual.isMissingNode() ? "" : usual.asText(usual.toString())).append(" | ").append(meaning.replace("|", "\\|")).append(" |\n");
        }
        for (String name : names) {
            boolean told = fields.path(name).equals("/types") || path.equals("/defaults");
            if (!told && !names(fields.inner(name)).isEmpty()) table(fields.inner(name), fields.path(name), text);
        }
    }

    private static List<String> names(FieldTable fields) {
        List<String> names = new ArrayList<>();
        for (JsonNode form : fields.forms) form.path("properties").fieldNames().forEachRemaining(names::add);
        return names;
    }

    /** Bounds, step and unit of a number, the words of a choice, the form of anything else. */
    private static String takes(FieldTable fields, String name) {
        FieldTable.Field field = fields.field(name);
        String type = FieldTable.first(fields.inner(name).forms, "type").asText("");
        boolean object = !names(fields.inner(name)).isEmpty();
        if (type.equals("array")) return "list" + (field.entries() < Integer.MAX_VALUE ? " of at most " + field.entries() : "");
        if (object) return type.equals("boolean") ? "true, false or an object" : "object";
        if (!field.words().isEmpty()) return String.join(", ", field.words());
        if (field.least() > Double.NEGATIVE_INFINITY) {
            String step = field.decimals() > 0 && field.decimals() < FieldTable.ANY_DECIMALS ? " by " + field.step().toPlainString() : "";
            return Cursor.plain(BigDecimal.valueOf(field.least())) + " to " + Cursor.plain(BigDecimal.valueOf(field.most())) + step
                    + (field.unit().isEmpty() ? "" : " " + field.unit());
        }
        if (type.equals("string")) return "text" + (field.longest() < Integer.MAX_VALUE ? " of at most " + field.longest() + " characters" : "");
        return type.equals("boolean") ? "true or false" : type;
    }
}
