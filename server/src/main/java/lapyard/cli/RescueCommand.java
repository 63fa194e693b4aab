package lapyard.cli;

import java.io.IOException;
import java.nio.file.Path;
import lapyard.answers.Answer;
import lapyard.geometry.Measure;
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
