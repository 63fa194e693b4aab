package lapyard.drawing;

/** Placeholder until the drawing core is written. */
public record Page(double widthMm, double heightMm) {}
