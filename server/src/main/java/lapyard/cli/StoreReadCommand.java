package lapyard.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import lapyard.store.GardenStore;
import lapyard.store.Opening;
import lapyard.store.StoreCopy;
import picocli.CommandLine.Option;

/** A command that reads gardens, also while a server is running on them; a folder is read from a copy of this moment. */
abstract class StoreReadCommand extends PrintedCommand {
    @Option(names = "--data", defaultValue = ".lapyard", paramLabel = "DIR", description = "the data folder (default: ${DEFAULT-VALUE})")
    private Path data;

    @Option(names = "--database", paramLabel = "URL", description = "PostgreSQL database instead of a folder; user and password as for serve")
    private String database;

    /** @return the exit code */
    abstract int read(GardenStore store) throws UnusableInput;

    @Override
    public final Integer call() throws UnusableInput {
        if (database != null) return read(GardenStore.open(database, ServeCommand.login(System.getenv())));
        try {
            Path copied = Files.createTempDirectory("lapyard-read");
            try {
                StoreCopy.make(data, copied.resolve("copy"));
                StoreCopy.putBack(copied.resolve("copy"), copied.resolve("data"));
                return read(GardenStore.open(copied.resolve("data")));
            } finally {
                StoreCopy.remove(copied);
            }
        } catch (IllegalArgumentException refused) {
            throw new UnusableInput(refused.getMessage());
        } catch (IOException | UncheckedIOException cannot) {
            throw new UnusableInput("the gardens cannot be copied to be read: " + cannot.getMessage());
        }
    }

    private int read(Opening opening) throws UnusableInput {
        if (opening instanceof Opening.Unusable unusable) throw new UnusableInput(unusable.place() + " cannot be used: " + unusable.why());
        if (!(opening instanceof Opening.Open open)) throw new UnusableInput("the gardens are in use: try again");
        try (GardenStore store = open.store()) {
            return read(store);
        } finally {
            out().flush();
        }
    }
}
