package lapyard.rest;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lapyard.plan.Finding;
import lapyard.prints.PrintAsk;
import lapyard.working.Progress;

/**
 * What computes behind the requests. Every method is a pure function of its arguments, safe for many threads, and
 * takes a document's text, which is one JSON object by then. Nothing heavy is loaded before the first call.
 */
public interface Desk {
    /** What is to be said of a document before it is kept; a STOP means that it cannot be. */
    List<Finding> check(String document);

    /**
     * The whole job sheet as JSON.
     *
     * @throws Refused if the document holds a STOP
     */
    String jobSheetJson(String document);

    /**
     * One part of the job sheet as JSON, for example {@code slip}; empty where there is no part of that name.
     *
     * @throws Refused if the document holds a STOP
     */
    Optional<String> jobSheetPart(String document, String part);

    /**
     * One kind of sheets, or the set of all.
     *
     * @param name   as in {@link lapyard.prints.Prints}
     * @param format {@code pdf} for all pages, {@code svg} or {@code png} for one
     * @param page   the one where one is asked for, from 1
     * @throws Refused if there is no such page, it does not fit, the paper is unknown or the document holds a STOP
     */
    byte[] print(String document, String name, String format, int page, PrintAsk ask);

    /**
     * The order as CSV.
     *
     * @param supplier whose part alone is wanted; empty for the whole
     * @throws Refused if the document holds a STOP or nothing comes from that supplier
     */
    String slipCsv(String document, Optional<String> supplier);

    /**
     * What a change does to the order, line by line, as JSON.
     *
     * @throws Refused if one of the two holds a STOP or they are in two currencies
     */
    String variation(String before, String after);

    /**
     * The same on paper.
     *
     * @param from what the sheet says of the earlier revision, {@code to} of the later
     * @throws Refused as {@link #variation}
     */
    byte[] variationSheet(String before, String after, String from, String to);

    /**
     * How a merchant's list is understood, and the garden with it where every line is good.
     *
     * @param body JSON with {@code list}, the text of the CSV, {@code supplier} and {@code garden}, both of which may be left out
     * @throws Refused if the list or its supplier is no text, or the garden no object
     */
    String merchantList(String body);

    /**
     * The days of work as RFC 5545 text.
     *
     * @param id       of the garden, kept in the events' own names
     * @param made     when the document was kept; where it names no first day of work, work begins on the next after that
     * @param revision grows with each change
     * @throws Refused if the document holds a STOP
     */
    String weekendsIcs(String document, String id, java.time.Instant made, int revision);

    /**
     * What is needed in which weekend as CSV.
     *
     * @throws Refused if the document holds a STOP
     */
    String weekendsCsv(String document);

    /**
     * A garden and a copy of it with changes, side by side as JSON; nothing is kept.
     *
     * @param asked the garden document and its changes as one JSON object
     * @throws Refused if either holds a STOP or a change cannot be made
     */
    String tryOut(String asked);

    /**
     * One problem's result as JSON.
     *
     * @param kind     {@code cutting}, {@code rolls}, {@code staging}, or {@code garden} for a garden document and its slip
     * @param problem  one problem as JSON
     * @param seconds  at most so long, a garden as long as its document says; an interrupt ends it earlier, with the best
     *     found by then
     * @param progress for what is looked for by its name, who hears how far it is
     * @throws Refused if it is not a problem of that kind
     */
    String solve(String kind, String problem, double seconds, Function<String, Progress> progress);

    /** The catalogue that stands where a garden says nothing, as JSON. */
    String exampleCatalogue();

    /** The JSON Schema of the garden document. */
    String schema();

    /** What was asked for cannot be made from what was given; the findings say where, by how much and the ways out. */
    final class Refused extends RuntimeException {
        private final transient List<Finding> findings;

        public Refused(List<Finding> findings) {
            super(
                    findings.isEmpty()
                            ? "refused"
                            : findings.get(0).where() + ": " + lapyard.words.Wording.METRIC.text(findings.get(0)));
            this.findings = List.copyOf(findings);
        }

        public List<Finding> findings() {
            return findings;
        }
    }
}
