package lapyard.store;

import java.time.Instant;

/** Leave to read one garden; {@code label} says who has it. */
public record Share(String id, String garden, String label, Instant made) {}
