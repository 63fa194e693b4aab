package lapyard.construction;

/** {@code count} slats of one length. */
public record SlatCut(double lengthMm, int count) {}
