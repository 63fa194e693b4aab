package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import lapyard.answers.GardenDesk;
import lapyard.json.DocumentText;
import lapyard.working.Progress;

/** A question about a whole garden file, and answers that are gardens themselves. */
final class AskedGarden {
    private AskedGarden() {}

    /**
     * Tells how far it is on standard error where that is a terminal. Interrupted, it answers with what was found by then.
     *
     * @param kind as {@link GardenDesk#solve} names it
     * @param told what stands between best and bound: {@code beds laid out of at most}
     */
    static JsonNode solve(String kind, String file, double seconds, String told) throws UnusableInput {
        if (!(seconds > 0 && seconds <= 600)) {
            throw new UnusableInput("--seconds " + seconds + " is outside 0 to 600. Give a time such as 5.");
        }
        String text = Input.text(file);
        try {
            return Input.usable(file, () -> DocumentText.parse(new GardenDesk().solve(kind, text, seconds, what -> System.console() == null ? Progress.UNHEARD : heard(told))));
        } finally {
            // what is written next is written whole
            Thread.interrupted();
        }
    }

    private static Progress heard(String told) {
        return (best, bound) -> System.err.println(best + " " + told + " " + bound + " (Ctrl-C: enough)");
    }

    /** The whole answer as NAME.json, and the garden of each entry as NAME-1.json, NAME-2.json and so on. */
    static void write(String folder, String name, JsonNode answer, JsonNode entries) throws UnusableInput {
        try {
            Path dir = Files.createDirectories(Path.of(folder));
            Files.writeString(dir.resolve(name + ".json"), answer.toPrettyString() + "\n");
            int number = 0;
            for (JsonNode entry : entries) {
                ObjectNode garden = (ObjectNode) entry.path("garden");
                Files.writeString(dir.resolve(name + "-" + ++number + ".json"), garden.toPrettyString() + "\n");
            }
        } catch (IOException | java.nio.file.InvalidPathException e) {
            throw new UnusableInput(folder + " cannot be written: " + UnusableInput.why(e) + ".");
        }
    }
}
