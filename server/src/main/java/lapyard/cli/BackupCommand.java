package lapyard.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import lapyard.store.StoreCopy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code lapyard backup}: all gardens as one file, also while a server writes to them. */
@Command(
        name = "backup",
        description = "Copy the gardens of a data folder into one file, also while a server is running on it.",
        mixinStandardHelpOptions = true)
final class BackupCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--data", defaultValue = ".lapyard", paramLabel = "DIR", description = "Folder that keeps the gardens (default: ${DEFAULT-VALUE}).")
    private Path data;

    @Option(names = "--out", required = true, paramLabel = "FILE", description = "A new file for the copy.")
    private Path out;

    @Override
    public Integer call() throws UnusableInput {
        try {
            StoreCopy.Held held = StoreCopy.make(data, out);
            spec.commandLine().getOut().println(out + " holds " + held.gardens() + " gardens with " + held.revisions() + " revisions");
            return 0;
        } catch (IllegalArgumentException refused) {
            throw new UnusableInput(refused.getMessage());
        } catch (IOException cannot) {
            throw new UnusableInput(out + " cannot be written: " + cannot.getMessage());
        }
    }
}
