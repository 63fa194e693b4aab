package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the guide sets in italics is written on the page. */
class GuideLabelsTest {
    private static final Pattern LABEL = Pattern.compile("(?<![*\\w])\\*([A-Z][^*]{1,60})\\*(?!\\*)");

    /** In the browser's own menu. */
    private static final Set<String> BROWSERS = Set.of("Install");

    @Test
    void everyItalicLabelOfTheGuideStandsInThePage() throws IOException {
        String page;
        try (Stream<Path> files = Files.walk(Path.of("../web/src/main/resources"))) {
            page = plain(files.filter(file -> file.toString().matches(".*\\.(js|html)")).map(GuideLabelsTest::text).collect(Collectors.joining("\n")));
        }
        Set<String> labels = LABEL.matcher(text(Path.of("../docs/guide.md"))).results().map(label -> plain(label.group(1))).collect(Collectors.toCollection(TreeSet::new));
        assertTrue(labels.size() > 40, labels::toString);
        labels.removeIf(label -> page.contains(label.replaceAll("[.,]$", "")) || BROWSERS.contains(label));
        assertEquals(Set.of(), labels);
    }

    private static String plain(String text) {
        return text.replaceAll("\\s+", " ").replace('\u2019', '\'');
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
