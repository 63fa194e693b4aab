package lapyard.cli;

import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.Locale;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.words.Wording;

/** The command line or a file cannot be used; the message is one line for standard error. */
final class UnusableInput extends Exception {
    UnusableInput(String message) {
        super(message);
    }

    /**
     * The first thing that is wrong.
     *
     * @param where the file that holds it
     * @throws IllegalArgumentException the one given, where it tells of a fault of the program
     */
    UnusableInput(String where, IllegalArgumentException refused, Wording words) {
        this(where, CannotAnswer.findings(refused).get(0), words);
    }

    private UnusableInput(String where, Finding finding, Wording words) {
        this(where + ": " + (finding.where().equals("document") ? "" : words.place(finding.place()) + ": ") + words.paragraph(finding));
    }

    /** @param given of {@code --seconds} */
    static void requireSeconds(double given, int most, int usual) throws UnusableInput {
        if (!(given > 0 && given <= most)) {
            throw new UnusableInput("--seconds is " + given + "; above 0 and at most " + most + " is possible. Give a time such as " + usual + ".");
        }
    }

    /** What a disk or network says, in our words. */
    static String why(Exception failed) {
        if (failed instanceof AccessDeniedException) return "permission is missing";
        if (failed instanceof NoSuchFileException) return "there is no such folder";
        if (failed instanceof FileAlreadyExistsException || failed instanceof NotDirectoryException) return "there is a file where a folder should be";
        if (failed instanceof InvalidPathException) return "the name holds a character that no file name may have";
        if (failed instanceof FileSystemException file && file.getReason() != null) return file.getReason().toLowerCase(Locale.ROOT);
        return failed.getMessage();
    }
}
