package lapyard.cli;

import java.io.IOException;
import java.nio.file.Path;
import lapyard.store.StoreCopy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code lapyard restore}: puts a copy back into an empty folder. */
@Command(
        name = "restore",
        description = "Puts a copy made by lapyard backup into a new or empty data folder.",
        mixinStandardHelpOptions = true)
final class RestoreCommand extends DataFolderCommand {
    @Parameters(paramLabel = "FILE", description = "the copy")
    private Path file;

    @Override
    Outcome work(Path data) throws IOException {
        return BackupCommand.copied(data, StoreCopy.putBack(file, data));
    }

    @Override
    Path target(Path data) {
        return data;
    }
}
