package lapyard.diagrams;

import java.util.Optional;

/**
 * What a sheet says of the state of the garden that it was made of.
 *
 * @param revision as stamped, empty for none
 * @param date     as it shall be read, empty for none
 * @param stale    why the sheet is not to be worked by, as when the garden was changed since; empty where it is
 */
public record Stamp(String revision, String date, Optional<String> stale) {
    public static final Stamp NONE = new Stamp("", "", Optional.empty());

    /** The date beside the revision; empty where that tells it. */
    String dateBeside() {
        return revision.contains(date) ? "" : date;
    }
}
