package lapyard.cli;

import java.io.IOException;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** A command that works on a data folder beside the server. */
abstract class DataFolderCommand extends PrintedCommand {
    @Option(names = "--data", defaultValue = ".lapyard", paramLabel = "DIR", description = "the data folder (default: ${DEFAULT-VALUE})")
    private Path data;

    /** What came of it. */
    record Outcome(String line, int exit) {}

    /** @throws IllegalArgumentException if the folder, or what is given beside it, cannot be used, in a line */
    abstract Outcome work(Path data) throws IOException;

    /** What it writes to, for the case that this cannot be done. */
    abstract Path target(Path data);

    @Override
    public final Integer call() throws UnusableInput {
        try {
            Outcome outcome = work(data);
            out().println(outcome.line());
            out().flush();
            return outcome.exit();
        } catch (IllegalArgumentException refused) {
            throw new UnusableInput(refused.getMessage());
        } catch (IOException cannot) {
            throw new UnusableInput(target(data) + " cannot be written: " + cannot.getMessage());
        }
    }
}
