package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import lapyard.answers.GardenDesk;
import lapyard.json.DocumentText;
import lapyard.working.Progress;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A question about a whole garden file, whose answers are gardens themselves. */
abstract class AskedGardenCommand extends PrintedCommand {
    @Parameters(paramLabel = "GARDEN.json", description = "garden file, or - for standard input")
    private String file;

    /** Tells what was found. @return the exit code */
    abstract int show(JsonNode answer);

    /**
     * Tells how far it is on standard error where that is a terminal. Interrupted, it answers with what was found by then.
     *
     * @param kind    as {@link GardenDesk#solve} names it
     * @param told    what stands between best and bound: {@code beds laid out of at most}
     * @param out     folder that takes the whole answer as KIND.json, and the garden of each entry as KIND-1.json and so on; null for none
     * @param entries where the answer has those
     */
    final int ask(String kind, double seconds, String told, String out, String entries) throws UnusableInput {
        try (EndedByKey ended = new EndedByKey()) {
            JsonNode answer = solve(kind, seconds, told);
            int exit = show(answer);
            if (out != null) write(out, kind, answer, answer.path(entries));
            out().flush();
            return exit;
        }
    }

    private JsonNode solve(String kind, double seconds, String told) throws UnusableInput {
        UnusableInput.requireSeconds(seconds, 600, 5);
        String text = Input.text(file);
        try {
            Progress heard = (best, bound) -> System.err.println(best + " " + told + " " + bound + " (Ctrl-C: enough)");
            return Input.usable(file, () -> DocumentText.parse(new GardenDesk().solve(kind, text, seconds, what -> System.console() == null ? Progress.UNHEARD : heard)));
        } finally {
            // what is written next is written whole
            Thread.interrupted();
        }
    }

    private static void write(String folder, String name, JsonNode answer, JsonNode entries) throws UnusableInput {
        try {
            Path dir = Files.createDirectories(Path.of(folder));
            Files.writeString(dir.resolve(name + ".json"), answer.toPrettyString() + "\n");
            int number = 0;
            for (JsonNode entry : entries) Files.writeString(dir.resolve(name + "-" + ++number + ".json"), entry.path("garden").toPrettyString() + "\n");
        } catch (IOException | InvalidPathException e) {
            throw new UnusableInput(folder + " cannot be written: " + UnusableInput.why(e) + ".");
        }
    }

    @Command(
            name = "lay-out",
            description = "Proposes where the beds and paths go in the yard, by what the garden says under layOut. Exit code 1: not all beds have room.",
            mixinStandardHelpOptions = true)
    static final class LayOutCommand extends AskedGardenCommand {
        @Option(names = "--seconds", paramLabel = "N", defaultValue = "30", description = "how long to look, roughly, in seconds; with many beds and few seconds, some proposals come without their order (default 30)")
        private double seconds;

        @Option(names = "--out", paramLabel = "DIR", description = "write lay-out.json and each proposal's garden here")
        private String out;

        @Override
        public Integer call() throws UnusableInput {
            return ask("lay-out", seconds, "beds laid out, of at most", out, "proposals");
        }

        @Override
        int show(JsonNode laid) {
            int number = 0;
            for (JsonNode proposal : laid.path("proposals")) {
                out().println(++number + ". " + proposal.path("text").asText() + ".");
                for (JsonNode fall : proposal.path("ground")) out().println("   The ground: " + fall.asText());
            }
            out().println(laid.path("text").asText());
            return number > 0 && laid.path("shortOf").asInt() == 0 ? 0 : 1;
        }
    }

    @Command(
            name = "sizes",
            description = "Shows which changes of size make the order cheaper, within what the garden allows under give; few changes come first.",
            mixinStandardHelpOptions = true)
    static final class SizesCommand extends AskedGardenCommand {
        @Option(names = "--seconds", paramLabel = "N", defaultValue = "5", description = "how long to look, roughly, in seconds (default 5)")
        private double seconds;

        @Option(names = "--out", paramLabel = "DIR", description = "write sizes.json and each answer's garden here")
        private String out;

        @Override
        public Integer call() throws UnusableInput {
            return ask("sizes", seconds, "found, not under", out, "front");
        }

        @Override
        int show(JsonNode sizes) {
            out().println(sizes.path("currency").asText() + " " + sizes.path("now").asText() + " as it stands.");
            int number = 0;
            for (JsonNode answer : sizes.path("front")) {
                out().println(++number + ". " + answer.path("text").asText() + (answer.path("proven").asBoolean() ? " (proved: none better)" : "") + ".");
            }
            out().println(sizes.path("text").asText());
            for (JsonNode one : sizes.path("growth")) out().println(one.path("text").asText() + ".");
            for (JsonNode side : sizes.path("growthOpen")) out().println("Growth not known: " + side.asText() + ".");
            return 0;
        }
    }

    /** While it is open, Ctrl-C ends what this thread looks for, and the program ends once what was found by then is told. */
    private static final class EndedByKey implements AutoCloseable {
        private static final long LONGEST_SECONDS = 30;

        private final Thread looking = Thread.currentThread();
        private final CountDownLatch told = new CountDownLatch(1);
        private final Thread ending = new Thread(this::end, "ended by key");

        EndedByKey() {
            Runtime.getRuntime().addShutdownHook(ending);
        }

        private void end() {
            looking.interrupt();
            try {
                told.await(LONGEST_SECONDS, TimeUnit.SECONDS);
            } catch (InterruptedException nobodyWaits) {
                Thread.currentThread().interrupt();
            }
        }

        @Override
        public void close() {
            told.countDown();
            try {
                Runtime.getRuntime().removeShutdownHook(ending);
            } catch (IllegalStateException endingAlready) {
                // the hook runs, and ends now that everything is told
            }
        }
    }
}
