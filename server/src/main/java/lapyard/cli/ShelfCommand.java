package lapyard.cli;

import java.nio.file.Path;
import lapyard.store.GardenStore;
import lapyard.store.ShelfItem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code lapyard shelf}: what is kept once for all gardens. */
@Command(
        name = "shelf",
        description = {
            "Lists what is kept once for all gardens: code, kind, revision, how many gardens have it, and name, with tabs between.",
            "With --show, prints the content of one as a garden has it."
        },
        mixinStandardHelpOptions = true)
final class ShelfCommand extends StoreReadCommand {
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
