package lapyard.plan;

import java.util.List;

/**
 * A board on hand.
 *
 * @param section   id of the section it can stand in for
 * @param bad       spans from-to from its marked end that must not be used, mm
 * @param goodFaces 0, 1 or 2
 * @param origin    where it came from; empty where nobody knows
 */
public record RackBoard(
        String id, String section, double lengthMm, int count, List<Span> bad, int goodFaces, String origin, boolean coated) {
    public RackBoard {
        bad = List.copyOf(bad);
    }

    public record Span(double fromMm, double toMm) {}
}
