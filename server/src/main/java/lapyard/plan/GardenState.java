package lapyard.plan;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** How far the job of a garden has come, in the order of the job. Nothing is reckoned from it. */
public enum GardenState {
    PENCILLED,
    QUOTED,
    ORDERED,
    BUILDING,
    DONE;

    /** As documents and addresses write it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Empty where no state is written so. */
    public static Optional<GardenState> of(String code) {
        return Stream.of(values()).filter(state -> state.code().equals(code)).findFirst();
    }
}
