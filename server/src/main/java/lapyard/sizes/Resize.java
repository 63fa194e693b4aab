package lapyard.sizes;


/** One side longer by {@code byMm}, shorter where that is below 0. */
public record Resize(Side side, double byMm) {}
