package lapyard.diagrams;

import java.util.Optional;
import lapyard.drawing.Paper;

/**
 * How the sheets for the saw bench are to be drawn; they always lie on the long side.
 *
 * @param mono     black on white, without fills
 * @param revision as stamped, empty for none
 * @param date     as it shall be read, empty for none
 * @param stale    why these sheets are not to be worked by, as when the garden was changed since; empty where they are
 */
public record BenchOptions(Paper paper, boolean mono, String revision, String date, Optional<String> stale) {

    /** In colour on A4, or Letter for a garden in feet and inches. */
    public static BenchOptions usual(boolean imperial) {
        return new BenchOptions(imperial ? Paper.LETTER : Paper.A4, false, "", "", Optional.empty());
    }

    public BenchOptions on(Paper other) {
        return new BenchOptions(other, mono, revision, date, stale);
    }

    public BenchOptions inMono() {
        return new BenchOptions(paper, true, revision, date, stale);
    }

    public BenchOptions stamped(String newRevision, String newDate) {
        return new BenchOptions(paper, mono, newRevision, newDate, stale);
    }

    public BenchOptions stale(String why) {
        return new BenchOptions(paper, mono, revision, date, Optional.of(why));
    }
}
