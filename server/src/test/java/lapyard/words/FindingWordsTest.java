package lapyard.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lapyard.plan.FindingKind;
import lapyard.plan.WayKind;
import org.junit.jupiter.api.Test;

/** Every kind has its words, and no words are without a kind. */
class FindingWordsTest {
    @Test
    void everyKindOfFindingAndWayHasItsWordsAndNoWordsAreLeftOver() {
        Set<String> wanted = new TreeSet<>();
        for (FindingKind kind : FindingKind.values()) {
            wanted.add(kind.code);
            wanted.add(kind.code + ".means");
            if (kind.merges) {
                wanted.add(kind.code + ".many");
            }
        }
        for (WayKind way : WayKind.values()) {
            wanted.add("way." + way.code());
        }
        assertEquals(lines(wanted), lines(Template.load().stringPropertyNames()));
    }

    /** {@code -Dlapyard.approve=true} writes the table anew. */
    @Test
    void theDocsListEveryKindWithItsMeaning() throws IOException {
        StringBuilder table = new StringBuilder("# Findings\n\nEvery kind of finding by its `kind`, the most serious first within its concern. STOP must be solved,"
                + " SNAG asks for a look,\nNOTE is for information; the weight is the usual one. A way out is offered where it was tried. Written by"
                + " `FindingWordsTest`.\n\n| kind | concern | weight | meaning | ways out | alike ones |\n| --- | --- | --- | --- | --- | --- |\n");
        Arrays.stream(FindingKind.values())
                .sorted(Comparator.comparing(each -> each.concern))
                .forEach(kind -> table.append("| `").append(kind.code).append("` | ").append(kind.concern.name().toLowerCase(Locale.ROOT)).append(" | ")
                        .append(kind.weight).append(" | ").append(Template.find(kind.code + ".means").orElseThrow()).append(" | ")
                        .append(kind.ways.stream().map(FindingWordsTest::way).collect(Collectors.joining("; "))).append(" | ")
                        .append(kind.merges ? "in one line" : "each by itself").append(" |\n"));
        Path file = Path.of("../docs/findings.md");
        if (Boolean.getBoolean("lapyard.approve")) {
            Files.writeString(file, table);
        }
        assertEquals(table.toString(), Files.readString(file));
    }

    /** The sentence of a way out with its figures left open. */
    private static String way(WayKind way) {
        return Template.find("way." + way.code()).orElseThrow().replaceAll("\\{\\d\\|([^|]*)\\|[^}]*}", "$1").replaceAll("\\{\\d}", "…").replace("|", "\\|");
    }

    /** Every way out belongs to a kind of finding, so none is left from what was once found. */
    @Test
    void everyWayOutIsOfferedByAKind() {
        Set<WayKind> offered = Arrays.stream(FindingKind.values()).flatMap(kind -> kind.ways.stream()).collect(Collectors.toSet());
        assertEquals(Set.of(WayKind.values()), offered);
    }

    @Test
    void everyCodeStandsOnce() {
        List<String> codes = Arrays.stream(FindingKind.values()).map(each -> each.code).toList();
        assertEquals(codes.size(), Set.copyOf(codes).size());
        assertTrue(codes.stream().allMatch(code -> code.matches("[a-z]+([.-][a-z]+)*")), codes.toString());
    }

    private static String lines(Set<String> keys) {
        return new TreeSet<>(keys).stream().collect(Collectors.joining("\n"));
    }
}
