package lapyard.json;

import java.lang.reflect.RecordComponent;
import java.util.function.BiFunction;
import java.util.stream.Stream;

/** The parts of any record by their names. */
final class RecordParts {
    private RecordParts() {}

    /** What a document calls the part of this name: the name without its unit. */
    static String field(String name) {
        return name.replaceFirst("(Mm|Deg|Percent|KnM3|Kpa|Part|M2PerLitre)$", "");
    }

    /** The same record with each part as {@code other} makes it of the part's name and value, in the order of the parts. */
    static <T extends Record> T with(T record, BiFunction<String, Object, Object> other) {
        RecordComponent[] parts = record.getClass().getRecordComponents();
        Object[] values = new Object[parts.length];
        try {
            for (int i = 0; i < parts.length; i++) values[i] = other.apply(parts[i].getName(), parts[i].getAccessor().invoke(record));
            Class<?>[] types = Stream.of(parts).map(RecordComponent::getType).toArray(Class<?>[]::new);
            @SuppressWarnings("unchecked") // a record's own constructor
            T made = (T) record.getClass().getDeclaredConstructor(types).newInstance(values);
            return made;
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the parts of " + record + " are not to be had", e);
        }
    }
}
