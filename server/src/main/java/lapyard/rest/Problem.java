package lapyard.rest;

import jakarta.ws.rs.core.Response;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import lapyard.json.FindingsJson;
import lapyard.plan.Finding;
import lapyard.words.Wording;

/**
 * An error as RFC 9457 writes it: {@code title} is the status in words, {@code detail} says what to put right.
 *
 * @param more  further members, as {@link Json#text} takes them; {@code retryAfter},
 *              whole seconds, goes into the header of that name too
 * @param snags findings, where there are any
 * @param words how they are worded: in the measures of their garden
 */
record Problem(int status, String detail, Map<String, Object> more, List<Finding> snags, Wording words) {
    /** Findings that one answer shows. */
    static final int MOST_SNAGS = 100;

    static final String TYPE = "application/problem+json";

    Problem {
        more = Map.copyOf(more);
        snags = List.copyOf(snags);
    }

    Problem(int status, String detail, Map<String, Object> more) {
        this(status, detail, more, List.of(), Wording.METRIC);
    }

    static Problem of(int status, String detail) {
        return new Problem(status, detail, Map.of());
    }

    /** One that passes by itself: asked again after so many seconds it may well be answered. */
    static Problem later(int status, String detail, long seconds) {
        return new Problem(status, detail, Map.of("retryAfter", seconds));
    }

    /** Empty where asking again would not help. */
    Optional<Long> retryAfter() {
        return Optional.ofNullable((Long) more.get("retryAfter"));
    }

    /** The status in the words of RFC 9110, of RFC 4918 for 507. */
    static String title(int status) {
        return switch (status) {
            case 413 -> "Content Too Large";
            case 421 -> "Misdirected Request";
            case 422 -> "Unprocessable Content";
            case 507 -> "Insufficient Storage";
            default -> {
                Response.Status known = Response.Status.fromStatusCode(status);
                yield known == null ? "Status " + status : known.getReasonPhrase();
            }
        };
    }

    String json() {
        Map<String, Object> told = Json.object("title", title(status), "status", status, "detail", detail);
        told.putAll(new TreeMap<>(more));
        if (!snags.isEmpty()) addSnags(told, snags, words);
        return Json.text(told);
    }

    /** The member {@code snags}, as every answer shows findings: the first of them, and how many more there are. */
    static void addSnags(Map<String, Object> told, List<Finding> findings, Wording words) {
        List<Finding> heaviest = findings.stream().sorted(Comparator.comparing(Finding::weight)).limit(MOST_SNAGS).toList();
        told.put("snags", new Json.Raw(FindingsJson.of(heaviest, words).toString()));
        if (findings.size() > MOST_SNAGS) told.put("moreSnags", findings.size() - MOST_SNAGS);
    }
}
