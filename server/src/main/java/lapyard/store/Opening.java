package lapyard.store;

import java.nio.file.Path;
import java.util.OptionalLong;

/** What came of opening a store. */
public sealed interface Opening {
    record Open(GardenStore store) implements Opening {}

    /** Another process has the folder open; {@code process} is its number, where it could be read. */
    record InUse(Path folder, OptionalLong process) implements Opening {}

    /** It cannot be used as it is, and was left as it was; {@code place} is the folder or database in words. */
    record Unusable(String place, String why) implements Opening {}
}
