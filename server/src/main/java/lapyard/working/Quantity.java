package lapyard.working;

/**
 * One amount with its working.
 *
 * @param key   its fixed name in the job sheet, for example {@code soil.loose}
 * @param value in {@code unit}, not rounded except where the trade counts whole things
 * @param unit  {@code m}, {@code m2}, {@code m3}, {@code kg}, {@code l} or a counted thing's plain word such as {@code screws}
 */
public record Quantity(String key, double value, String unit, Working working) {}
