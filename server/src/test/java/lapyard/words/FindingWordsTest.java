package lapyard.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
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
            wanted.add(kind.code());
            wanted.add(kind.code() + ".means");
            if (kind.merges()) {
                wanted.add(kind.code() + ".many");
            }
        }
        for (WayKind way : WayKind.values()) {
            wanted.add("way." + way.code());
        }
        assertEquals(lines(wanted), lines(Template.keys()));
    }

    @Test
    void everyCodeStandsOnce() {
        List<String> codes = Arrays.stream(FindingKind.values()).map(FindingKind::code).toList();
        assertEquals(codes.size(), Set.copyOf(codes).size());
        assertTrue(codes.stream().allMatch(code -> code.matches("[a-z]+([.-][a-z]+)*")), codes.toString());
    }

    private static String lines(Set<String> keys) {
        return new TreeSet<>(keys).stream().collect(Collectors.joining("\n"));
    }
}
