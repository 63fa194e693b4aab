package lapyard.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class RetentionTest {
    private static Revision revision(long number, Revision.Kind kind, String saved) {
        return new Revision(number, kind, OptionalLong.empty(), "A", Instant.parse(saved), Optional.empty(), false, false);
    }

    /** Of one hour long ago 6 is the last; 5 and 4 delete and restore, 2 is the first that a file brought in. */
    @Test
    void theFirstAndWhatIsNoSaveStay() {
        List<Revision> newestFirst = List.of(
                revision(7, Revision.Kind.SAVED, "2026-05-04T10:00:00Z"),
                revision(6, Revision.Kind.SAVED, "2020-01-01T10:50:00Z"),
                revision(5, Revision.Kind.RESTORED, "2020-01-01T10:40:00Z"),
                revision(4, Revision.Kind.DELETED, "2020-01-01T10:30:00Z"),
                revision(3, Revision.Kind.SAVED, "2020-01-01T10:20:00Z"),
                revision(2, Revision.Kind.SAVED, "2020-01-01T10:10:00Z"));
        assertEquals(List.of(3L), new Retention(30, 365).dropped(newestFirst));
    }
}
