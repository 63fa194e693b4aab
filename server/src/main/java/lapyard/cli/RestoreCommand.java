package lapyard.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import lapyard.store.StoreCopy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code lapyard restore}: puts a copy back into an empty folder. */
@Command(
        name = "restore",
        description = "Put a copy made by lapyard backup into an empty data folder.",
        mixinStandardHelpOptions = true)
final class RestoreCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The copy.")
    private Path file;

    @Option(names = "--data", defaultValue = ".lapyard", paramLabel = "DIR", description = "A new or empty folder (default: ${DEFAULT-VALUE}).")
    private Path data;

    @Override
    public Integer call() throws UnusableInput {
        try {
            StoreCopy.Held held = StoreCopy.putBack(file, data);
            spec.commandLine().getOut().println(data + " holds " + held.gardens() + " gardens with " + held.revisions() + " revisions");
            return 0;
        } catch (IllegalArgumentException refused) {
            throw new UnusableInput(refused.getMessage());
        } catch (IOException cannot) {
            throw new UnusableInput(data + " cannot be written: " + cannot.getMessage());
        }
    }
}
