package lapyard.working;

import java.util.List;

/**
 * How a number came about, as data, so that the page, the prints and the files can all show it.
 *
 * @param inputs  what went in, each with its unit
 * @param formula the arithmetic in words and names of the inputs, for example {@code settled / (1 - settlement)}
 * @param source  where the rule comes from: a published source, or "common practice, no source"
 */
public record Working(List<Input> inputs, String formula, String source) {
    public static final String COMMON_PRACTICE = "common practice, no source";
    public static final String GEOMETRY = "geometry";

    public Working {
        inputs = List.copyOf(inputs);
    }

    public static Working of(String formula, String source, Input... inputs) {
        return new Working(List.of(inputs), formula, source);
    }

    /** One number that went in; {@code unit} is empty for a bare count or ratio. */
    public record Input(String name, double value, String unit) {
        public static Input of(String name, double value, String unit) {
            return new Input(name, value, unit);
        }
    }
}
