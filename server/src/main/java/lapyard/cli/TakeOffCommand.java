package lapyard.cli;

import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import lapyard.answers.Refused;
import lapyard.geometry.Measure;
import lapyard.job.JobSheet;
import lapyard.plan.Finding;
import lapyard.prints.PhotosAtHand;
import lapyard.prints.PrintAsk;
import lapyard.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "take-off",
        description = {
            "Writes a garden's plan (plan.svg), order (slip.csv, slip.json), set of all sheets (sheets.pdf) and data (job-sheet.json)",
            "into a folder; with --only what is named, with --all everything.",
            "What cannot be written is told with its reason, and the rest is written.",
            "Exit code 0: all is in, 1: something was left out, 2: refused, nothing written."
        },
        mixinStandardHelpOptions = true)
final class TakeOffCommand extends PrintedCommand {
    private int lineLength;

    @Parameters(paramLabel = "GARDEN.json", description = "garden file, or one that a server gave out with its history and photos (its newest revision), or - for standard input")
    private String file;

    @Option(names = "--out", paramLabel = "DIR", required = true, description = "folder, made where it is not there")
    private String out;

    @Option(names = "--only", paramLabel = "NAME", split = ",", description = "write only these, with commas between: plan, slip, sheets, data, saw-day, course-cards and so on")
    private List<String> only = List.of();

    @Option(names = "--all", description = "write everything, each kind of sheet by itself too")
    private boolean all;

    @Option(names = "--as", paramLabel = "pdf|svg|png", split = ",", description = "forms of what is drawn, with commas between (default: the plan as svg, all else as pdf)")
    private List<String> forms = List.of();

    @Option(names = "--scale", paramLabel = "N", description = "draw the plan at 1:N (default: the largest that fits)")
    private Integer scale;

    @Option(names = "--paper", paramLabel = "A4..A0|Letter|Tabloid", description = "paper of the plan (default A3, A4 for one bed; Tabloid and Letter in feet and inches)")
    private String paper;

    @Option(names = "--layers", paramLabel = "NAME", split = ",", description = "layers of the plan, with commas between: sun, ground, keep-clear, levels, paths, beds, dimensions, pegs, snags, stages (default: all but sun, pegs and stages)")
    private List<String> layers = List.of();

    @Option(names = "--split", description = "a plan too large for its paper goes on several sheets with match lines")
    private boolean split;

    @Option(names = "--mono", description = "draw for a printer without colours")
    private boolean mono;

    @Option(names = "--longest", paramLabel = "MM", description = "longest part of a board that can be carried in: prints the first cuts to ask of the merchant")
    private Double longest;

    @Option(names = "--labels", paramLabel = "COLUMNSxROWS[,LEFT,TOP[,ACROSS,DOWN]]", description = "labels on a sheet with its margins and gaps in mm (default: 3x8,0,0.5 on A4: 24 of 70 x 37; 30 on Letter)")
    private String labels;

    @Option(names = "--minutes-a-cut", paramLabel = "MIN", description = "time of one cut of timber (default: as the crew of the garden has it)")
    private Double minutesACut;

    @Option(names = "--minutes-a-setting", paramLabel = "MIN", description = "time of one setting of the saw stop (default: as the crew of the garden has it)")
    private Double minutesASetting;

    @Override
    public Integer call() throws UnusableInput {
        Set<String> names = asked();
        progress("working out the job sheet");
        Input.Given given;
        try {
            given = Input.garden(file);
        } catch (Refused refused) {
            refused.findings().forEach(finding -> err().println(Input.line(finding, refused.words())));
            return Lapyard.REFUSED;
        }
        PrintAsk ask = ask(given.photos());
        try {
            ask.check();
        } catch (IllegalArgumentException e) {
            throw new UnusableInput("take-off", e, Wording.of(given.sheet().garden().imperial()));
        }
        return write(given.sheet(), ask, names);
    }

    private int write(JobSheet sheet, PrintAsk ask, Set<String> names) throws UnusableInput {
        Map<String, Finding> refused;
        int files;
        try (OutFolder folder = new OutFolder(out)) {
            try {
                refused = new TakeOffFiles(sheet, ask, folder, this::progress).write(names, Set.copyOf(forms), !only.isEmpty());
                if (!folder.files().isEmpty()) folder.keep(file -> TakeOffFiles.writes(file) && (only.isEmpty() || only.stream().anyMatch(name -> file.startsWith(name + "-"))));
            } catch (IOException e) {
                throw folder.cannot(e);
            } finally {
                progress("");
            }
            files = folder.files().size();
        }
        Wording words = Wording.of(sheet.garden().imperial());
        refused.forEach((name, finding) -> err().println(name + " is not written: " + line(words.paragraph(finding))));
        if (files == 0) return Lapyard.REFUSED;
        sheet.snags().stream()
                .filter(finding -> finding.weight() != Finding.Weight.NOTE)
                .forEach(finding -> err().println(Input.line(finding, words)));
        out().println((sheet.slip().atLeast() ? "at least " : "") + sheet.slip().currency() + " "
                + sheet.slip().total() + " for " + Measure.counted(sheet.garden().beds().size(), "bed") + "; " + Measure.counted(files, "file") + " in " + out);
        return sheet.leftOut() || !refused.isEmpty() ? 1 : 0;
    }

    private PrintAsk ask(PhotosAtHand photos) {
        return new PrintAsk(
                Optional.ofNullable(paper), mono, new PrintAsk.OfPlan(scale == null ? OptionalInt.empty() : OptionalInt.of(scale), layers, split),
                new PrintAsk.OfSaw(optional(longest), optional(minutesACut), optional(minutesASetting)), Optional.ofNullable(labels),
                PrintAsk.usual("", LocalDate.now().toString()).stamp(), photos);
    }

    /** What is asked for; refused by name where there is no such thing. */
    private Set<String> asked() throws UnusableInput {
        if (all && !only.isEmpty()) throw new UnusableInput("--all and --only cannot stand together: leave one out.");
        for (String form : forms) {
            if (!TakeOffFiles.FORMS.contains(form)) throw new UnusableInput("there is no form \"" + form + "\": use pdf, svg or png with --as.");
        }
        for (String name : only) {
            if (!TakeOffFiles.names().contains(name)) {
                throw new UnusableInput("Nothing called \"" + name + "\" can be written. With --only, give one of: " + String.join(", ", TakeOffFiles.names()) + ".");
            }
        }
        return Set.copyOf(all ? TakeOffFiles.names() : only.isEmpty() ? TakeOffFiles.USUAL : only);
    }

    /** One line on a terminal, written over by the next. */
    private void progress(String text) {
        if (System.console() != null) {
            err().print("\r" + text + " ".repeat(Math.max(0, lineLength - text.length())) + (text.isEmpty() ? "\r" : ""));
            err().flush();
            lineLength = text.length();
        }
    }

    private static OptionalDouble optional(Double told) {
        return told == null ? OptionalDouble.empty() : OptionalDouble.of(told);
    }
}
