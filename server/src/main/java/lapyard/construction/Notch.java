package lapyard.construction;

/**
 * A drain notch on the underside of course 1, {@code atMm} along the wall from its outer start corner, as seams are.
 */
public record Notch(String wall, double atMm) {}
