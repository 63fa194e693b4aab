package lapyard.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Many beds in few words. */
public final class BedNames {
    private static final Pattern NUMBERED = Pattern.compile("(.*?)(\\d{1,9})");

    private static final int MOST_NAMES = 8;

    private BedNames() {}

    /** Where a finding about these beds stands: {@code bed M}, {@code beds 01-40, X}. */
    public static String where(List<String> ids) {
        return (ids.size() == 1 ? "bed " : "beds ") + compact(inOrder(ids));
    }

    /** Said of the beds whose cut ends are sealed, with their names after it; empty where there is none. */
    public static String sealed(String said, Stream<Bed> beds) {
        List<String> ids = beds.filter(bed -> bed.making().seal().wanted()).map(Bed::id).toList();
        return ids.isEmpty() ? "" : " " + said + " " + where(ids) + ".";
    }

    /** {@code A}, {@code A and B}, {@code 01-40, X and Y}; of very many the first and how many more. */
    public static String listed(List<String> ids) {
        // names of goods may have commas of their own
        return joined(ids.stream().anyMatch(id -> id.contains(", ")) ? ids : List.of(compact(ids).split(", ")));
    }

    /** Texts as a list in a sentence. */
    public static String joined(List<String> runs) {
        if (runs.size() > MOST_NAMES) {
            return String.join(", ", runs.subList(0, MOST_NAMES)) + " and " + (runs.size() - MOST_NAMES) + " more";
        }
        int last = runs.size() - 1;
        return last <= 0 ? runs.get(0) : String.join(", ", runs.subList(0, last)) + " and " + runs.get(last);
    }

    /** Ids in reading order: by their letters, then by their number; 2 comes before 10. */
    public static List<String> inOrder(List<String> ids) {
        return ids.stream().sorted(Comparator.comparing(BedNames::letters).thenComparingLong(BedNames::number)).toList();
    }

    private static String letters(String id) {
        Matcher numbered = NUMBERED.matcher(id);
        return numbered.matches() ? numbered.group(1) : id;
    }

    private static long number(String id) {
        Matcher numbered = NUMBERED.matcher(id);
        return numbered.matches() ? Long.parseLong(numbered.group(2)) : -1;
    }

    /** Ids in their order; three or more that follow each other become a range: {@code 01-40, X}. */
    public static String compact(List<String> ids) {
        List<String> runs = new ArrayList<>();
        int from = 0;
        while (from < ids.size()) {
            int to = from;
            while (to + 1 < ids.size() && follows(ids.get(to), ids.get(to + 1))) to++;
            if (to - from >= 2) {
                runs.add(ids.get(from) + "-" + ids.get(to));
                from = to + 1;
            } else {
                runs.add(ids.get(from++));
            }
        }
        return String.join(", ", runs);
    }

    private static boolean follows(String id, String next) {
        Matcher one = NUMBERED.matcher(id);
        Matcher two = NUMBERED.matcher(next);
        return one.matches()
                && two.matches()
                && one.group(1).equals(two.group(1))
                && Integer.parseInt(two.group(2)) == Integer.parseInt(one.group(2)) + 1;
    }
}
