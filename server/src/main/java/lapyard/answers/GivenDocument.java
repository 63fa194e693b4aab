package lapyard.answers;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import lapyard.json.DocumentText;
import lapyard.json.GardenReader;
import lapyard.plan.CannotAnswer;
import lapyard.words.Wording;

/** A garden's text, parsed once however often its parts are looked at. */
public final class GivenDocument {
    private final String text;
    private final String garden;
    private Optional<JsonNode> tree;
    private String hash;

    private GivenDocument(String text, String garden, Optional<JsonNode> tree) {
        this.text = text;
        this.garden = garden;
        this.tree = tree;
    }

    /** One that is parsed where it is needed. */
    public static GivenDocument of(String text) {
        return new GivenDocument(text, "", Optional.empty());
    }

    /** @param garden code of the kept garden, by which turns are shared out fairly */
    public static GivenDocument of(String text, String garden) {
        return new GivenDocument(text, garden, Optional.empty());
    }

    /** One whose tree is known; nobody changes the tree from here on. */
    public static GivenDocument of(String text, JsonNode tree) {
        return new GivenDocument(text, "", Optional.of(tree));
    }

    /** As both above. */
    public static GivenDocument of(String text, JsonNode tree, String garden) {
        return new GivenDocument(text, garden, Optional.of(tree));
    }

    public String text() {
        return text;
    }

    /** @throws CannotAnswer with line and column where it is no JSON value */
    synchronized JsonNode tree() {
        if (tree.isEmpty()) tree = Optional.of(DocumentText.parse(text));
        return tree.get();
    }

    /** Codes of its beds. */
    public List<String> beds() {
        return GardenReader.beds(tree());
    }

    /** How findings of this garden are worded: in its own measures, in millimetres where it cannot be read. */
    public Wording words() {
        try {
            return Wording.of(tree().path("units").asText().equals("imperial"));
        } catch (CannotAnswer e) {
            return Wording.METRIC;
        }
    }

    /** SHA-256 of the text, in hexadecimal. */
    synchronized String hash() {
        if (hash == null) hash = Answer.hash(text.getBytes(StandardCharsets.UTF_8));
        return hash;
    }

    /** Whether a kept garden stands so. */
    boolean isKept() {
        return !garden.isEmpty();
    }

    /** The kept garden's code, or the hash of a text that is not kept. */
    String garden() {
        return garden.isEmpty() ? hash() : garden;
    }
}
