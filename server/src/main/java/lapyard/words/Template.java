package lapyard.words;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.working.OwnFile;

/**
 * One sentence with places for figures. {@code {gap}} is written out with its unit, {@code {gap#}} without; {@code
 * {n|is|are}} chooses by number, 1 taking the first; a part in square brackets with figures is left out where one of them is
 * not given. A figure that begins a sentence begins with a capital.
 */
record Template(String key, String text) {
    private static final Pattern OPTIONAL = Pattern.compile("\\[([^\\[\\]]*)]");
    private static final Pattern FIGURE = Pattern.compile("\\{([\\w-]+#?)(?:\\|([^|{}]*)\\|([^|{}]*))?}");
    private static final Properties ALL = load();
    private static final Map<String, Template> READ = new ConcurrentHashMap<>();

    /** @throws IllegalArgumentException if there are no words for this key: a fault of the program */
    static Template of(String key) {
        return READ.computeIfAbsent(key, wanted -> new Template(wanted, find(wanted)
                .orElseThrow(() -> new IllegalArgumentException("no words for " + wanted))));
    }

    static Optional<String> find(String key) {
        return Optional.ofNullable(ALL.getProperty(key));
    }

    /**
     * @param value  a figure or place written out, by its name
     * @param number the same as a number, for choices
     * @throws IllegalArgumentException if a figure outside brackets is not given: a fault of the program
     */
    String fill(Function<String, Optional<String>> value, Function<String, Optional<Double>> number) {
        String needed = OPTIONAL.matcher(text).replaceAll(part -> {
            List<String> figures = FIGURE.matcher(part.group(1)).results().map(figure -> figure.group(1)).toList();
            if (figures.isEmpty()) return Matcher.quoteReplacement(part.group());
            boolean given = figures.stream().noneMatch(name -> value.apply(name).isEmpty() && number.apply(name).isEmpty());
            return given ? Matcher.quoteReplacement(part.group(1)) : "";
        });
        return FIGURE.matcher(needed).replaceAll(figure -> Matcher.quoteReplacement(figure.group(2) == null
                ? begun(needed, figure.start(), value.apply(figure.group(1)).orElseThrow(() -> lacking(figure.group(1))))
                : number.apply(figure.group(1)).orElseThrow(() -> lacking(figure.group(1))) == 1 ? figure.group(2) : figure.group(3)));
    }

    private static String begun(String text, int at, String figure) {
        return at >= 2 && text.substring(at - 2, at).matches("[.!?] ") ? Wording.capital(figure) : figure;
    }

    private IllegalArgumentException lacking(String name) {
        return new IllegalArgumentException("the sentence " + key + " needs the figure " + name);
    }

    /** All sentences, by their keys. */
    static Properties load() {
        Properties all = new Properties();
        for (String file : List.of("findings", "refusals")) {
            try {
                all.load(new StringReader(OwnFile.text("lapyard/words/" + file + ".properties")));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return all;
    }
}
