package lapyard.rest;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.answers.GivenDocument;
import lapyard.json.JobSheetPart;
import lapyard.json.SheetAsk;
import lapyard.plan.BedNames;
import lapyard.working.Look;

/** Reads the query parameters of a request; an unusable one is refused by name with status 400. */
final class QueryParameters {
    private QueryParameters() {}

    /** A whole number from {@code least} to {@code most}; empty where it was not given. */
    static OptionalInt number(String name, String text, int least, int most) {
        if (text == null) return OptionalInt.empty();
        if (text.matches("[0-9]{1,9}")) {
            int number = Integer.parseInt(text);
            if (number >= least && number <= most) return OptionalInt.of(number);
        }
        throw new ProblemException(400, name + " should be a whole number from " + least + " to " + most);
    }

    /** A short word of letters and digits; empty where it was not given. */
    static Optional<String> word(String name, String text) {
        return word(name, text, 40);
    }

    static Optional<String> word(String name, String text, int longest) {
        if (text == null) return Optional.empty();
        if (text.matches("[A-Za-z0-9-]{1," + longest + "}")) return Optional.of(text);
        throw new ProblemException(400, name + " should be 1 to " + longest + " letters, digits and dashes");
    }

    /** One of these, by its name in small letters; empty where it was not given. */
    static <E extends Enum<E>> Optional<E> choice(String name, String text, E[] choices) {
        if (text == null) return Optional.empty();
        for (E each : choices) if (code(each).equals(text)) return Optional.of(each);
        throw new ProblemException(400, name + " should be " + Stream.of(choices).map(QueryParameters::code).collect(Collectors.joining(", ")));
    }

    static String code(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT);
    }

    /** A code as documents give it to beds and suppliers, in plain letters; empty where it was not given. */
    static Optional<String> code(String name, String text) {
        if (text == null) return Optional.empty();
        if (text.matches("[\\p{L}\\p{N}][\\p{L}\\p{N}._-]{0,19}")) return Optional.of(text);
        throw new ProblemException(400, name + " should be a code of 1 to 20 letters, digits, points, dashes and underscores");
    }

    /** How much is to be looked for before a job sheet is answered; the whole where it was not given. */
    static Look look(String text) {
        return choice("look", text, Look.values()).orElse(Look.WHOLE);
    }

    /** Words with commas between. */
    static List<String> words(String name, String text) {
        if (text == null || text.isBlank()) return List.of();
        if (text.matches("[,\\s]+")) throw new ProblemException(400, name + " names nothing: give words with commas between, or leave it out");
        return Stream.of(text.split(",")).map(word -> word(name, word).orElse("")).toList();
    }

    /** The part of a job sheet that an address names; 404 for a name of none, with those that there are. */
    static JobSheetPart part(String name) {
        try {
            return JobSheetPart.of(word("the part", name).orElseThrow());
        } catch (IllegalArgumentException unknown) {
            throw new ProblemException(404, unknown.getMessage());
        }
    }

    /** What of a job sheet is asked for; all of the whole where nothing is said. */
    static SheetAsk sheet(String parts, String bed, String look) {
        try {
            return SheetAsk.of(words("parts", parts), code("bed", bed)).at(look(look));
        } catch (IllegalArgumentException unknown) {
            throw new ProblemException(400, unknown.getMessage());
        }
    }

    /** Refuses a bed that this garden does not have. */
    static void checkBed(SheetAsk ask, GivenDocument garden) {
        noBed(ask, garden).ifPresent(refusal -> {
            throw refusal;
        });
    }

    /** The refusal of a bed that this garden does not have; empty where none is asked for. */
    static Optional<ProblemException> noBed(SheetAsk ask, GivenDocument garden) {
        return ask.bed().filter(bed -> !garden.beds().contains(bed)).map(bed -> new ProblemException(400,
                "the garden has no bed " + bed + (garden.beds().isEmpty() ? " and no other" : ": it has " + BedNames.where(garden.beds()))));
    }

    /** What a receipt shall hold besides: nothing, the job sheet or its order. */
    static With with(String text, SheetAsk ask) {
        if (text == null) return With.NOTHING;
        if (text.equals("job-sheet")) return new With("jobSheet", ask);
        if (text.equals("order")) return new With("order", ask);
        throw new ProblemException(400, "with should be job-sheet or order, or left out");
    }

    /**
     * @param called in the receipt; empty for nothing
     * @param ask    what of the job sheet
     */
    record With(String called, SheetAsk ask) {
        static final With NOTHING = new With("", SheetAsk.WHOLE);
    }

    /** True or false; false where it was not given. */
    static boolean flag(String name, String text) {
        if (text == null || text.equals("false")) return false;
        if (text.equals("true")) return true;
        throw new ProblemException(400, name + " should be true or false");
    }
}
