package lapyard.cli;

import java.util.List;
import java.io.IOException;
import java.nio.file.Path;
import lapyard.rest.GardenFile;
import lapyard.store.Rescue;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code lapyard rescue}: what can still be read of a damaged data folder, a file a garden. */
@Command(
        name = "rescue",
        description = "Saves what can be read of a damaged data folder, one file for each garden, so that another server can bring it in."
                + " The folder itself is not changed. Exit code 0: all could be read, 1: something is lost.",
        mixinStandardHelpOptions = true)
final class RescueCommand extends DataFolderCommand {
    @Option(names = "--out", required = true, paramLabel = "DIR", description = "A new or empty folder for the files.")
    private Path out;

    @Override
    Outcome work(Path data) throws IOException {
        Rescue.Taken taken = Rescue.from(data, out, (name, history) -> GardenFile.text(name, history, List.of()));
        return new Outcome(taken.gardens() + " gardens with " + taken.revisions() + " revisions are in " + out + "; "
                + taken.lost() + " revisions could not be read", taken.lost() == 0 ? 0 : 1);
    }

    @Override
    Path target(Path data) {
        return out;
    }
}
