package lapyard.construction;

/** A drain notch on the underside of course 1, {@code atMm} along the wall's clear run from its run-past (start) end. */
public record Notch(String wall, double atMm) {}
