package lapyard.json;

import com.fasterxml.jackson.annotation.JsonAutoDetect.Visibility;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.BeanProperty;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.ser.ContextualSerializer;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.KeepClearKind;
import lapyard.working.QuantityKey;

/**
 * Writes records as JSON, field by field in their order. A field is called as in the record without its unit: {@code
 * lengthMm} is {@code length}. Millimetres and degrees have one decimal, other numbers six, or as {@link To} says; a number
 * that is not finite is null. Money is text, so that no reader rounds it, or a number where {@link Exact} says so. An
 * empty optional is null, a constant its word in small letters, a point {@code [x, y]}, an outline its corners.
 */
final class Wire {
    /** Decimals of a number where they are not those of its unit. */
    @Retention(RetentionPolicy.RUNTIME)
    @Target(ElementType.FIELD)
    @interface To {
        int value();
    }

    /** An exact amount that is a number and no text. */
    @Retention(RetentionPolicy.RUNTIME)
    @Target(ElementType.FIELD)
    @interface Exact {}

    /** Is made when it is its turn to be written, and need not be kept after that. */
    record Later(Supplier<?> shape) {}

    private static final Decimal<Double> DECIMAL = new Decimal<>(Double.class, 6, one -> one);

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
            .nodeFactory(JsonNodeFactory.withExactBigDecimals(true))
            .configure(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES, false)
            .visibility(PropertyAccessor.ALL, Visibility.NONE)
            .visibility(PropertyAccessor.FIELD, Visibility.ANY)
            .propertyNamingStrategy(new WithoutUnit())
            .addModule(new SimpleModule()
                    .addSerializer(DECIMAL)
                    .addSerializer(Double.TYPE, DECIMAL)
                    .addSerializer(new Money(false))
                    .addSerializer(new Written<>(Optional.class, Optional::isEmpty, one -> one.orElse(null)))
                    .addSerializer(new Written<>(OptionalInt.class, OptionalInt::isEmpty, OptionalInt::getAsInt))
                    .addSerializer(new Decimal<>(OptionalDouble.class, 6, one -> one.orElse(Double.NaN)))
                    .addSerializer(new Written<>(Enum.class, one -> false, one -> one.name().toLowerCase(Locale.ROOT).replace('_', ' ')))
                    .addSerializer(new Written<>(KeepClearKind.class, one -> false, KeepClearKind::code))
                    .addSerializer(new Written<>(Point.class, one -> false, one -> List.of(mm(one.x()), mm(one.y()))))
                    .addSerializer(new Written<>(Later.class, one -> false, one -> one.shape().get()))
                    .addSerializer(new Written<>(Outline.class, one -> false, Outline::corners))
                    .addSerializer(new Written<>(Rectangle.class, one -> false, one -> new Box(one.x(), one.y(), one.widthMm(), one.depthMm())))
                    .addSerializer(QuantityKey.class, ToStringSerializer.instance)
                    .addSerializer(LocalDate.class, ToStringSerializer.instance)
                    .addSerializer(LocalTime.class, ToStringSerializer.instance))
            .build();

    private Wire() {}

    private record Box(@To(1) double x, @To(1) double y, double widthMm, double depthMm) {}

    static ObjectNode of(Object shape) {
        return MAPPER.valueToTree(shape);
    }

    /** As {@link #of}, as text in UTF-8 and without its tree. */
    static void write(Object shape, OutputStream out) throws IOException {
        try {
            MAPPER.writeValue(out, shape);
        } catch (JsonMappingException wrapped) {
            if (wrapped.getCause() instanceof RuntimeException ours) throw ours;
            throw wrapped;
        }
    }

    static ArrayNode list(List<?> shapes) {
        return MAPPER.valueToTree(shapes);
    }

    private static JsonNode mm(double value) {
        return number(value, 1);
    }

    /** A plain decimal without trailing zeros; null where it is not finite. */
    static JsonNode number(double value, int decimals) {
        JsonNodeFactory nodes = MAPPER.getNodeFactory();
        if (!Double.isFinite(value)) return nodes.nullNode();
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros();
        return rounded.scale() <= 0 && rounded.precision() - rounded.scale() <= 18
                ? nodes.numberNode(rounded.longValueExact())
                : nodes.numberNode(rounded);
    }

    private static final class WithoutUnit extends PropertyNamingStrategies.NamingBase {
        @Override
        public String translate(String name) {
            return name.replaceFirst("(Mm|Deg)$", "");
        }
    }

    private static int decimals(BeanProperty property, int otherwise) {
        if (property == null) return otherwise;
        To to = property.getAnnotation(To.class);
        return to != null ? to.value() : property.getMember().getName().matches(".*(Mm|Deg)") ? 1 : otherwise;
    }

    /** A plain decimal without trailing zeros. */
    private static final class Decimal<T> extends StdSerializer<T> implements ContextualSerializer {
        private final int decimals;
        private final ToDoubleFunction<T> as;

        Decimal(Class<T> type, int decimals, ToDoubleFunction<T> as) {
            super(type);
            this.decimals = decimals;
            this.as = as;
        }

        @Override
        public JsonSerializer<?> createContextual(SerializerProvider provider, BeanProperty property) {
            return new Decimal<>(handledType(), decimals(property, decimals), as);
        }

        @Override
        public boolean isEmpty(SerializerProvider provider, T value) {
            return value.equals(OptionalDouble.empty());
        }

        @Override
        public void serialize(T value, JsonGenerator json, SerializerProvider provider) throws IOException {
            json.writeTree(number(as.applyAsDouble(value), decimals));
        }
    }

    private static final class Money extends StdSerializer<BigDecimal> implements ContextualSerializer {
        private final boolean number;

        Money(boolean number) {
            super(BigDecimal.class);
            this.number = number;
        }

        @Override
        public JsonSerializer<?> createContextual(SerializerProvider provider, BeanProperty property) {
            return new Money(property != null && property.getAnnotation(Exact.class) != null);
        }

        @Override
        public void serialize(BigDecimal value, JsonGenerator json, SerializerProvider provider) throws IOException {
            if (number) json.writeNumber(value);
            else json.writeString(value.toPlainString());
        }
    }

    /** Something written as something else, null where it is empty. */
    private static final class Written<T> extends StdSerializer<T> {
        private final java.util.function.Predicate<T> empty;
        private final java.util.function.Function<T, Object> as;

        Written(Class<T> type, java.util.function.Predicate<T> empty, java.util.function.Function<T, Object> as) {
            super(type);
            this.empty = empty;
            this.as = as;
        }

        @Override
        public boolean isEmpty(SerializerProvider provider, T value) {
            return empty.test(value);
        }

        @Override
        public void serialize(T value, JsonGenerator json, SerializerProvider provider) throws IOException {
            if (empty.test(value)) json.writeNull();
            else provider.defaultSerializeValue(as.apply(value), json);
        }
    }
}
