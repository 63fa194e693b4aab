package lapyard.working;

/**
 * Which quantity it is.
 *
 * @param part which one of its kind, empty exactly where the kind's code has no {@code *}
 */
public record QuantityKey(QuantityKind kind, String part) {
    public QuantityKey {
        if (part.isEmpty() == kind.code.contains("*")) throw new IllegalArgumentException(kind + " does not go with part '" + part + "'");
    }

    /** The fixed name in the job sheet: {@code soil.loose}, {@code level.2}. */
    @Override
    public String toString() {
        return kind.code.replace("*", part);
    }
}
