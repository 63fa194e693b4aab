package lapyard.store;

import java.nio.file.Path;
import java.util.OptionalLong;

/** What came of opening a data folder. */
public sealed interface Opening {
    record Open(GardenStore store) implements Opening {}

    /** Another process has it open; {@code process} is its number, where it could be read. */
    record InUse(Path folder, OptionalLong process) implements Opening {}

    /** It cannot be used as it is, and was left as it was. */
    record Unusable(Path folder, String why) implements Opening {}
}
