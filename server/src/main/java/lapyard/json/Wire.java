package lapyard.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.util.TokenBuffer;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import java.util.function.Supplier;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Finding;
import lapyard.plan.KeepClearKind;
import lapyard.words.Wording;
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

    /** Is left out where it is null or an empty optional, text or list. */
    @Retention(RetentionPolicy.RUNTIME)
    @Target(ElementType.FIELD)
    @interface IfGiven {}

    /** A record whose fields stand among those beside it. */
    @Retention(RetentionPolicy.RUNTIME)
    @Target(ElementType.FIELD)
    @interface Unwrapped {}

    /** Is made when it is its turn to be written, and need not be kept after that. */
    record Later(Supplier<?> shape) {}

    /** Some parts of a record, by the names that they have in it. */
    record Picked(Record whole, Predicate<String> names) {}

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
            .nodeFactory(JsonNodeFactory.withExactBigDecimals(true))
            .configure(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES, false)
            .build();

    /** How a value is written that is no field, or whose field says nothing of its decimals. */
    private static final Form PLAIN = new Form(6, false);

    private static final ClassValue<List<Part>> PARTS = new ClassValue<>() {
        @Override
        protected List<Part> computeValue(Class<?> type) {
            List<Part> parts = new ArrayList<>();
            for (Field field : type.getDeclaredFields()) {
                if (!Modifier.isStatic(field.getModifiers())) parts.add(Part.of(field));
            }
            return WireForms.changed(type, parts);
        }
    };

    private Wire() {}

    private record Box(@To(1) double x, @To(1) double y, double widthMm, double depthMm) {}

    record Form(int decimals, boolean exact) {}

    /**
     * A part of a record as it is written.
     *
     * @param of   what it is called in the record
     * @param name what it is called in the answer
     */
    record Part(String of, String name, BiFunction<Object, Wording, Object> value, Form form, boolean ifGiven, boolean unwrapped) {
        /** One that is called as its name says, without its unit. */
        static Part of(String name, BiFunction<Object, Wording, Object> value) {
            String bare = name.endsWith("Mm") ? name.substring(0, name.length() - 2) : name.endsWith("Deg") ? name.substring(0, name.length() - 3) : name;
            return new Part(name, bare, value, new Form(bare.length() < name.length() ? 1 : PLAIN.decimals(), false), false, false);
        }

        static Part of(Field field) {
            field.setAccessible(true);
            Part part = of(field.getName(), (whole, words) -> got(() -> field.get(whole)));
            To to = field.getAnnotation(To.class);
            return new Part(part.of(), part.name(), part.value(), new Form(to != null ? to.value() : part.form().decimals(), field.isAnnotationPresent(Exact.class)),
                    field.isAnnotationPresent(IfGiven.class), field.isAnnotationPresent(Unwrapped.class));
        }

        /** What a method without arguments works out. */
        static Part of(Class<?> type, String method) {
            Method worked = got(() -> type.getMethod(method));
            return of(method, (whole, words) -> got(() -> worked.invoke(whole)));
        }

        private static <T> T got(Callable<T> reading) {
            try {
                return reading.call();
            } catch (Exception e) {
                throw new IllegalStateException("a part of a record cannot be read", e);
            }
        }

        Part called(String other) {
            return new Part(of, other, value, form, ifGiven, unwrapped);
        }

        Part as(Form other) {
            return new Part(of, name, value, other, ifGiven, unwrapped);
        }

        Part amongOthers() {
            return new Part(of, name, value, form, ifGiven, true);
        }

        Part whereGiven() {
            return new Part(of, name, value, form, true, unwrapped);
        }
    }

    static ObjectNode of(Object shape) {
        return of(shape, Wording.METRIC);
    }

    static ObjectNode of(Object shape, Wording words) {
        return (ObjectNode) tree(shape, words);
    }

    static JsonNode tree(Object shape) {
        return tree(shape, Wording.METRIC);
    }

    /** @param words in whose measures findings are told */
    static JsonNode tree(Object shape, Wording words) {
        try (TokenBuffer tokens = new TokenBuffer(MAPPER, false)) {
            new Writing(tokens, words).put(shape, PLAIN);
            return MAPPER.readTree(tokens.asParser());
        } catch (IOException e) {
            throw new UncheckedIOException("a tree is not written anywhere", e);
        }
    }

    /** As {@link #of}, as text in UTF-8 and without its tree; where it fails, what was not yet written stays so. */
    static void write(Object shape, Wording words, OutputStream out) throws IOException {
        write(shape, words, MAPPER.createGenerator(out));
    }

    /** The same with each field on a line, as files have it. */
    static void print(Object shape, Wording words, OutputStream out) throws IOException {
        write(shape, words, MAPPER.createGenerator(out).useDefaultPrettyPrinter());
        out.write('\n');
    }

    private static void write(Object shape, Wording words, JsonGenerator json) throws IOException {
        new Writing(json, words).put(shape, PLAIN);
        json.close();
    }

    /** A plain decimal without trailing zeros; null where it is not finite. */
    static JsonNode number(double value, int decimals) {
        JsonNodeFactory nodes = MAPPER.getNodeFactory();
        if (!Double.isFinite(value)) return nodes.nullNode();
        BigDecimal rounded = rounded(value, decimals);
        return whole(rounded) ? nodes.numberNode(rounded.longValueExact()) : nodes.numberNode(rounded);
    }

    private static BigDecimal rounded(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros();
    }

    private static boolean whole(BigDecimal rounded) {
        return rounded.scale() <= 0 && rounded.precision() - rounded.scale() <= 18;
    }

    /** Onto one generator, findings in the measures of one garden. */
    private record Writing(JsonGenerator json, Wording words) {
        private void putNumber(double value, int decimals) throws IOException {
            if (value == Math.rint(value) && Math.abs(value) < 1e15) {
                json.writeNumber((long) value);
            } else if (Double.isFinite(value)) {
                BigDecimal rounded = rounded(value, decimals);
                if (whole(rounded)) json.writeNumber(rounded.longValueExact());
                else json.writeNumber(rounded);
            } else {
                json.writeNull();
            }
        }

        /** @param form of the field in which the value stands, alone or in a list */
        void put(Object value, Form form) throws IOException {
            if (value == null) json.writeNull();
            else if (value instanceof String text) json.writeString(text);
            else if (value instanceof Double number) putNumber(number, form.decimals());
            else if (value instanceof Integer number) json.writeNumber(number);
            else if (value instanceof Long number) json.writeNumber(number);
            else if (value instanceof Boolean truth) json.writeBoolean(truth);
            else if (value instanceof BigDecimal amount) {
                if (form.exact()) json.writeNumber(amount);
                else json.writeString(amount.toPlainString());
            } else if (value instanceof KeepClearKind kind) json.writeString(kind.code());
            else if (value instanceof Enum<?> constant) json.writeString(constant.name().toLowerCase(Locale.ROOT).replace('_', ' '));
            else if (value instanceof Optional<?> given) put(given.orElse(null), PLAIN);
            else if (value instanceof OptionalDouble given) putNumber(given.orElse(Double.NaN), form.decimals());
            else if (value instanceof OptionalInt given) {
                if (given.isPresent()) json.writeNumber(given.getAsInt());
                else json.writeNull();
            } else if (value instanceof Later later) put(later.shape().get(), PLAIN);
            else if (value instanceof Collection<?> list) putAll(list.iterator(), form);
            else if (value instanceof Iterator<?> list) putAll(list, form);
            else if (value instanceof Map<?, ?> map) {
                json.writeStartObject();
                for (Map.Entry<?, ?> entry : map.entrySet()) {
                    json.writeFieldName((String) entry.getKey());
                    put(entry.getValue(), form);
                }
                json.writeEndObject();
            } else if (value instanceof JsonNode tree) {
                JsonParser tokens = tree.traverse();
                tokens.nextToken();
                json.copyCurrentStructure(tokens);
            } else {
                putShape(value);
            }
        }

        private void putAll(Iterator<?> list, Form form) throws IOException {
            json.writeStartArray();
            while (list.hasNext()) put(list.next(), form);
            json.writeEndArray();
        }

        private void putShape(Object value) throws IOException {
            if (value instanceof Point point) {
                json.writeStartArray();
                putNumber(point.x(), 1);
                putNumber(point.y(), 1);
                json.writeEndArray();
            } else if (value instanceof Outline outline) put(outline.corners(), PLAIN);
            else if (value instanceof Rectangle box) put(new Box(box.x(), box.y(), box.widthMm(), box.depthMm()), PLAIN);
            else if (value instanceof QuantityKey || value instanceof LocalDate || value instanceof LocalTime) json.writeString(value.toString());
            else if (value instanceof Finding finding) put(FindingsJson.shown(finding, words), PLAIN);
            else if (value instanceof Record whole) {
                json.writeStartObject();
                putParts(whole);
                json.writeEndObject();
            } else throw new IllegalArgumentException("no form is known for " + value.getClass());
        }

        private void putParts(Record whole) throws IOException {
            if (whole instanceof Picked picked) putParts(picked.whole(), picked.names());
            else putParts(whole, name -> true);
        }

        private void putParts(Record whole, Predicate<String> names) throws IOException {
            for (Part part : PARTS.get(whole.getClass())) {
                if (!names.test(part.of())) continue;
                Object value = part.value().apply(whole, words);
                if (part.unwrapped()) {
                    putParts((Record) value);
                } else if (!part.ifGiven() || !empty(value)) {
                    json.writeFieldName(part.name());
                    put(value, part.form());
                }
            }
        }
    }

    private static boolean empty(Object value) {
        return value == null
                || value instanceof Optional<?> given && given.isEmpty()
                || value instanceof OptionalDouble number && number.isEmpty()
                || value instanceof OptionalInt count && count.isEmpty()
                || value instanceof String text && text.isEmpty()
                || value instanceof Collection<?> list && list.isEmpty();
    }
}
