package lapyard.construction;

/** A length of ripped bearer strip: {@code use} is {@code bearer} or {@code beam}. */
public record Strip(String id, String use, double lengthMm) {}
