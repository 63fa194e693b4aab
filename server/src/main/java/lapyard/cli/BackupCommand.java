package lapyard.cli;

import java.io.IOException;
import java.nio.file.Path;
import lapyard.geometry.Measure;
import lapyard.store.StoreCopy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code lapyard backup}: all gardens as one file, also while a server writes to them. */
@Command(
        name = "backup",
        description = "Copies the gardens of a data folder into one file, also while a server is running on it.",
        mixinStandardHelpOptions = true)
final class BackupCommand extends DataFolderCommand {
    @Option(names = "--out", required = true, paramLabel = "FILE", description = "a new file for the copy")
    private Path out;

    @Override
    Outcome work(Path data) throws IOException {
        return copied(out, StoreCopy.make(data, out));
    }

    static Outcome copied(Path into, StoreCopy.Held held) {
        return new Outcome(into + " holds " + Measure.counted(held.gardens(), "garden") + " with " + Measure.counted(held.revisions(), "revision"), 0);
    }

    @Override
    Path target(Path data) {
        return out;
    }
}
