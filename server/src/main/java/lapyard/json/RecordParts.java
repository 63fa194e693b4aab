package lapyard.json;

import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.function.BiFunction;
import java.util.stream.Stream;

/** The parts of any record by what a document calls them: their names without a unit. */
final class RecordParts {
    private record Shape(String[] fields, Method[] values, Constructor<?> whole) {}

    private static final ClassValue<Shape> SHAPES = new ClassValue<>() {
        @Override
        protected Shape computeValue(Class<?> type) {
            RecordComponent[] parts = type.getRecordComponents();
            try {
                return new Shape(
                        Stream.of(parts).map(part -> part.getName().replaceFirst("(Mm|Deg|Percent|KnM3|Kpa|Part|M2PerLitre)$", "")).toArray(String[]::new),
                        Stream.of(parts).map(RecordComponent::getAccessor).toArray(Method[]::new),
                        type.getDeclaredConstructor(Stream.of(parts).map(RecordComponent::getType).toArray(Class<?>[]::new)));
            } catch (NoSuchMethodException e) {
                throw new IllegalStateException(type + " is no record", e);
            }
        }
    };

    private RecordParts() {}

    /** The same record with each part as {@code other} makes it of its field and value, in the order of the parts. */
    static <T extends Record> T with(T record, BiFunction<String, Object, Object> other) {
        Shape shape = SHAPES.get(record.getClass());
        Object[] values = new Object[shape.fields().length];
        try {
            for (int i = 0; i < values.length; i++) values[i] = other.apply(shape.fields()[i], shape.values()[i].invoke(record));
            @SuppressWarnings("unchecked") // a record's own constructor
            T made = (T) shape.whole().newInstance(values);
            return made;
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the parts of " + record + " are not to be had", e);
        }
    }
}
