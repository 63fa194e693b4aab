package lapyard.answers;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.function.Function;
import lapyard.plan.Finding;
import lapyard.plan.FindingList;
import lapyard.prints.PrintAsk;
import lapyard.working.Progress;

/**
 * What computes behind the answers. Every method is a pure function of its arguments, safe for many threads; nothing
 * heavy is loaded before the first call, and no answer is remembered here.
 */
public interface Desk {
    /**
     * What is to be said of a document before it is kept; a STOP means that it cannot be. Quick.
     *
     * @param onlyTheSheetTells whether more STOPs may show once the job sheet is prepared
     */
    record Checked(List<Finding> findings, boolean onlyTheSheetTells) {
        public Checked {
            findings = List.copyOf(findings);
        }

        public boolean holdsStop() {
            return !FindingList.stops(findings).isEmpty();
        }
    }

    Checked check(GivenDocument document);

    /** Whether its job sheet may take long, seen without working it out. */
    boolean isLarge(GivenDocument document);

    /**
     * The job sheet, once for all its forms. An interrupt ends its searches early, with the best found by then.
     *
     * @param progress listener that hears how far a search is, by the name of the search
     * @throws Refused if the document holds a STOP
     */
    Prepared prepare(GivenDocument document, Function<String, Progress> progress);

    /** A job sheet and its forms. Each call makes one anew. */
    interface Prepared {
        /** What it takes in memory, roughly. */
        long sizeBytes();

        /** Writes the whole job sheet as JSON. */
        void jobSheet(OutputStream out) throws IOException;

        /** The order as JSON. */
        String slipJson();

        /**
         * Writes one part of the job sheet as JSON, for example {@code slip}.
         *
         * @return false where there is no part of that name, and nothing is written
         */
        boolean part(String part, OutputStream out) throws IOException;

        /**
         * One kind of sheets, or the set of all, written page by page.
         *
         * @param name   as in {@link lapyard.prints.Prints}
         * @param format {@code pdf} for all pages, {@code svg} or {@code png} for one
         * @param page   the one where one is asked for, from 1
         * @throws Refused if there is no such page, it does not fit or the paper is unknown
         */
        void print(String name, String format, int page, PrintAsk ask, OutputStream out) throws IOException;

        /**
         * Writes a file that is no sheet.
         *
         * @throws Refused if it is of a supplier from whom nothing comes
         */
        void file(FileAsk ask, OutputStream out) throws IOException;
    }

    /**
     * What a change does to the order, line by line, as JSON.
     *
     * @throws Refused if they are in two currencies
     */
    String variation(Prepared before, Prepared after);

    /**
     * The same on paper.
     *
     * @param from what the sheet says of the earlier revision, {@code to} of the later
     * @throws Refused as {@link #variation}
     */
    void variationSheet(Prepared before, Prepared after, String from, String to, OutputStream out) throws IOException;

    /**
     * How a merchant's list is understood, and the garden with it where every line is good.
     *
     * @param body JSON with {@code list}, the text of the CSV, {@code supplier} and {@code garden}, both of which may be left out
     * @throws Refused if the list or its supplier is no text, or the garden no object
     */
    String merchantList(String body);

    /**
     * The contents of a site file, and the garden with the layers taken from it; nothing is stored.
     *
     * @param body JSON with {@code file}, the text of a DXF, GeoJSON or CSV file; {@code unit}, {@code take} and {@code garden} may be left out
     * @throws Refused if one of them is not what it should be
     */
    String siteFile(String body);

    /**
     * A garden and a copy of it with changes, side by side as JSON; nothing is kept.
     *
     * @param asked  the garden document and its changes as one JSON object
     * @param sheets prepares each of the two
     * @throws Refused if either holds a STOP or a change cannot be made
     */
    String tryOut(String asked, Function<GivenDocument, Prepared> sheets);

    /**
     * One problem's result as JSON.
     *
     * @param kind     {@code cutting}, {@code rolls} or {@code staging}; {@code sizes} and {@code lay-out} of a garden document
     * @param problem  one problem as JSON
     * @param seconds  at most so long; an interrupt ends it earlier, with the best found by then
     * @throws Refused if it is not a problem of that kind
     */
    String solve(String kind, String problem, double seconds, Function<String, Progress> progress);
}
