package lapyard.rest;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.store.Stored;

/**
 * Entity tags, of RFC 9110 section 8.8.3. A garden's tag is its revision. If-None-Match is compared weakly, If-Match
 * strongly, as sections 13.1.1 and 13.1.2 say; anything that is no tag matches nothing.
 */
final class Tags {
    private static final Pattern TAG = Pattern.compile("(?:W/)?\"([\\x21\\x23-\\x7e]*)\"");

    private static final Pattern STRONG = Pattern.compile("(?<!W/)\"([\\x21\\x23-\\x7e]*)\"(?:,|\\s|$)");

    private Tags() {}

    static String of(Stored stored) {
        return quoted(Long.toString(stored.revision()));
    }

    static String quoted(String tag) {
        return "\"" + tag + "\"";
    }

    /** True where If-None-Match says that the caller has it already; {@code tag} is in quotes. */
    static boolean has(String ifNoneMatch, String tag) {
        if (ifNoneMatch == null) return false;
        return ifNoneMatch.strip().equals("*") || named(ifNoneMatch, TAG).contains(tag.substring(1, tag.length() - 1));
    }

    /**
     * The revision that a change was made from: the current one where If-Match names it or is a star, else the first
     * that it names, 0 where it names none.
     *
     * @throws ProblemException 428 where there is no If-Match
     */
    static long expected(String ifMatch, Stored current) {
        if (ifMatch == null || ifMatch.isBlank())
            throw new ProblemException(428, "say which revision you changed: send If-Match with the ETag you were given",
                    Map.of("revision", current.revision()));
        if (ifMatch.strip().equals("*")) return current.revision();
        List<String> named = named(ifMatch, STRONG);
        if (named.contains(Long.toString(current.revision()))) return current.revision();
        return named.stream()
                .filter(tag -> tag.matches("[0-9]{1,18}"))
                .mapToLong(Long::parseLong)
                .findFirst()
                .orElse(0);
    }

    private static List<String> named(String header, Pattern form) {
        List<String> tags = new ArrayList<>();
        Matcher tag = form.matcher(header);
        while (tag.find()) tags.add(tag.group(1));
        return tags;
    }
}
