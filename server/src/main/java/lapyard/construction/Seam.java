package lapyard.construction;

/** A joint within a wall, {@code atMm} along the wall from its outer start corner. */
public record Seam(int course, String wall, double atMm) {}
