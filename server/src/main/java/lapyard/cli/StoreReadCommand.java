package lapyard.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lapyard.plan.GardenState;
import lapyard.store.GardenList;
import lapyard.store.GardenStore;
import lapyard.store.ShelfItem;
import lapyard.store.StoreCopy;
import lapyard.store.StoreFault;
import picocli.CommandLine.Command;
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
        try {
            if (database != null) return closing(GardenStore.open(database, ServeCommand.login(System.getenv())));
            Path copied = Files.createTempDirectory("lapyard-read");
            try {
                StoreCopy.make(data, copied.resolve("copy"));
                StoreCopy.putBack(copied.resolve("copy"), copied.resolve("data"));
                return closing(GardenStore.open(copied.resolve("data")));
            } finally {
                StoreCopy.remove(copied);
            }
        } catch (IllegalArgumentException refused) {
            throw new UnusableInput(refused.getMessage());
        } catch (IOException | UncheckedIOException cannot) {
            throw new UnusableInput("the gardens cannot be copied to be read: " + cannot.getMessage());
        } catch (StoreFault fault) {
            throw new UnusableInput("the gardens cannot be read: " + fault.getMessage());
        }
    }

    private int closing(GardenStore opened) throws UnusableInput {
        try (GardenStore store = opened) {
            return read(store);
        } finally {
            out().flush();
        }
    }

    @Command(
            name = "gardens",
            description = "Lists the gardens of a data folder or database: code, state, revision, last change, client and name, with tabs between. Exit code 0: there are some, 1: none.",
            mixinStandardHelpOptions = true)
    static final class GardensCommand extends StoreReadCommand {
        private static final int PAGE = 200;

        @Option(names = "--find", paramLabel = "WORD", split = ",", description = "words in the name or the client, with commas between")
        private List<String> words = List.of();

        @Option(names = "--state", paramLabel = "pencilled|quoted|ordered|building|done", description = "only gardens of this state")
        private GardenState state;

        @Option(names = "--order", defaultValue = "name", paramLabel = "name|changed|client|state", description = "how they are ordered (default: ${DEFAULT-VALUE})")
        private GardenList.Order order;

        @Option(names = "--place", defaultValue = "standing", paramLabel = "standing|archived|deleted", description = "which to list (default: ${DEFAULT-VALUE})")
        private GardenList.Place place;

        @Override
        int read(GardenStore store) {
            Optional<String> after = Optional.empty();
            long listed = 0;
            do {
                GardenList page = store.list(new GardenList.Ask(PAGE, after, place, Optional.ofNullable(state), new ArrayList<>(words), order));
                for (GardenList.Row row : page.rows()) {
                    out().println(String.join("\t", row.id(), row.state().name().toLowerCase(Locale.ROOT), "" + row.revision(), row.changed().toString(), line(row.client()), line(row.name())));
                }
                listed += page.rows().size();
                after = page.next();
            } while (after.isPresent());
            if (listed == 0) err().println("No garden matches. Leave out --find, --state or --place to list more.");
            return listed == 0 ? 1 : 0;
        }
    }

    @Command(
            name = "shelf",
            description = {
                "Lists what is kept once for all gardens: code, kind, revision, how many gardens have it, and name, with tabs between.",
                "With --show, prints the content of one as a garden has it."
            },
            mixinStandardHelpOptions = true)
    static final class ShelfCommand extends StoreReadCommand {
        @Option(names = "--show", paramLabel = "CODE", description = "the piece whose content is wanted")
        private String show;

        @Option(names = "--out", paramLabel = "FILE", description = "where the content is written (default: standard output)")
        private Path out;

        @Override
        int read(GardenStore store) throws UnusableInput {
            if (show == null) {
                for (ShelfItem item : store.shelf().list()) out().println(String.join("\t", item.id(), item.kind(), "" + item.revision(), "" + item.gardens(), line(item.name())));
                return 0;
            }
            ShelfItem item = store.shelf().find(show).orElseThrow(() -> new UnusableInput("the shelf has no piece " + line(show) + ": list it without --show"));
            if (out == null) out().println(item.content());
            else OutFolder.replace(out.toString(), item.content());
            return 0;
        }
    }
}
