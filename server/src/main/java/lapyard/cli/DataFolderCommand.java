package lapyard.cli;

import java.io.IOException;
import java.nio.file.Path;
import lapyard.answers.Answer;
import lapyard.geometry.Measure;
import lapyard.rest.GardenFile;
import lapyard.store.Rescue;
import lapyard.store.StoreCopy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A command that works on a data folder beside the server. */
abstract class DataFolderCommand extends PrintedCommand {
    @Option(names = "--data", defaultValue = ".lapyard", paramLabel = "DIR", description = "the data folder (default: ${DEFAULT-VALUE})")
    private Path data;

    /** What came of it. */
    record Outcome(String line, int exit) {}

    /** @throws IllegalArgumentException if the folder, or what is given beside it, cannot be used, in a line */
    abstract Outcome work(Path data) throws IOException;

    /** What it writes to, for the case that this cannot be done. */
    Path target(Path data) {
        return data;
    }

    @Override
    public final Integer call() throws UnusableInput {
        try {
            Outcome outcome = work(data);
            out().println(outcome.line());
            out().flush();
            return outcome.exit();
        } catch (IllegalArgumentException refused) {
            throw new UnusableInput(refused.getMessage());
        } catch (IOException cannot) {
            throw new UnusableInput(target(data) + " cannot be written: " + cannot.getMessage());
        }
    }

    private static Outcome copied(Path into, StoreCopy.Held held) {
        return new Outcome(into + " holds " + Measure.counted(held.gardens(), "garden") + " with " + Measure.counted(held.revisions(), "revision"), 0);
    }

    @Command(
            name = "backup",
            description = "Copies the gardens of a data folder into one file, also while a server is running on it.",
            mixinStandardHelpOptions = true)
    static final class BackupCommand extends DataFolderCommand {
        @Option(names = "--out", required = true, paramLabel = "FILE", description = "a new file for the copy")
        private Path out;

        @Override
        Outcome work(Path data) throws IOException {
            return copied(out, StoreCopy.make(data, out));
        }

        @Override
        Path target(Path data) {
            return out;
        }
    }

    @Command(
            name = "restore",
            description = "Puts a copy made by lapyard backup into a new or empty data folder.",
            mixinStandardHelpOptions = true)
    static final class RestoreCommand extends DataFolderCommand {
        @Parameters(paramLabel = "FILE", description = "the copy")
        private Path file;

        @Override
        Outcome work(Path data) throws IOException {
            return copied(data, StoreCopy.putBack(file, data));
        }
    }

    @Command(
            name = "rescue",
            description = "Saves what can be read of a damaged data folder, one file for each garden, so that another server can bring it in."
                    + " The folder itself is not changed. Exit code 0: all could be read, 1: something is lost.",
            mixinStandardHelpOptions = true)
    static final class RescueCommand extends DataFolderCommand {
        @Option(names = "--out", required = true, paramLabel = "DIR", description = "a new or empty folder for the files")
        private Path out;

        @Override
        Outcome work(Path data) throws IOException {
            Rescue.Taken taken = Rescue.from(data, out, photo -> Answer.hash(photo.bytes()).equals(photo.id()), GardenFile::text);
            return new Outcome(Measure.counted(taken.gardens(), "garden") + " with " + Measure.counted(taken.revisions(), "revision") + " and "
                    + Measure.counted(taken.photos(), "photo") + " in " + out + "; " + Measure.counted(taken.lost(), "revision") + " and "
                    + Measure.counted(taken.photosLost(), "photo") + " could not be read", taken.lost() + taken.photosLost() == 0 ? 0 : 1);
        }

        @Override
        Path target(Path data) {
            return out;
        }
    }
}
