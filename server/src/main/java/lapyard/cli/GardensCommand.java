package lapyard.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lapyard.plan.GardenState;
import lapyard.store.GardenList;
import lapyard.store.GardenStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code lapyard gardens}: which gardens there are. */
@Command(
        name = "gardens",
        description = "Lists the gardens of a data folder or database: code, state, revision, last change, client and name, with tabs between. Exit code 0: there are some, 1: none.",
        mixinStandardHelpOptions = true)
final class GardensCommand extends StoreReadCommand {
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
