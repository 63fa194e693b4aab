package lapyard.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import lapyard.rest.GardenFile;
import lapyard.store.Rescue;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code lapyard rescue}: what can still be read of a damaged data folder, a file a garden. */
@Command(
        name = "rescue",
        description = "Take out of a damaged data folder what can be read: a garden file each, to be brought into another"
                + " server. The folder is only read. Exit 0 where all could be read, 1 where something is lost.",
        mixinStandardHelpOptions = true)
public final class RescueCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--data", defaultValue = ".lapyard", paramLabel = "DIR", description = "The damaged folder (default: ${DEFAULT-VALUE}).")
    private Path data;

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "A new or empty folder for the files.")
    private Path out;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        try {
            Rescue.Taken taken = Rescue.from(data, out, GardenFile::text);
            err.println(taken.gardens() + " gardens with " + taken.revisions() + " revisions are in " + out + "; "
                    + taken.lost() + " revisions could not be read");
            err.flush();
            return taken.lost() == 0 ? 0 : 1;
        } catch (IllegalArgumentException refused) {
            err.println(refused.getMessage());
        } catch (IOException cannot) {
            err.println(out + " cannot be written (" + cannot.getMessage() + ")");
        }
        err.flush();
        return 2;
    }
}
