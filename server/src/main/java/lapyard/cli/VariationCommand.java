package lapyard.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import lapyard.drawing.PdfWriter;
import lapyard.job.JobSheet;
import lapyard.json.JobSheetJson;
import lapyard.order.Variation;
import lapyard.prints.OrderPrint;
import lapyard.prints.PrintAsk;
import lapyard.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "variation",
        description = "Shows what a change to a garden changes in its order, line by line, as JSON; with --out, as a sheet.",
        mixinStandardHelpOptions = true)
final class VariationCommand extends PrintedCommand {
    @Parameters(index = "0", paramLabel = "BEFORE.json", description = "the garden as it was")
    private String before;

    @Parameters(index = "1", paramLabel = "AFTER.json", description = "the garden as it is, or - for standard input")
    private String after;

    @Option(names = "--out", paramLabel = "FILE.pdf", description = "write the variation sheet here")
    private String out;

    @Override
    public Integer call() throws UnusableInput {
        JobSheet was = sheet(before);
        JobSheet is = sheet(after);
        try {
            Variation variation = Variation.between(was.slip(), is.slip(), is.garden().imperial());
            out().print(JobSheetJson.text(JobSheetJson.of(variation, is.garden().imperial())));
            out().flush();
            if (out != null) {
                PrintAsk ask = PrintAsk.usual("", LocalDate.now().toString());
                Files.write(Path.of(out), PdfWriter.write(OrderPrint.variation(was, is, variation, state(before), state(after), ask)));
            }
        } catch (IllegalArgumentException e) {
            throw new UnusableInput(before + ", " + after, e, Wording.of(is.garden().imperial()));
        } catch (IOException e) {
            throw new UnusableInput(out + " cannot be written. Name a file in a folder that is there with --out.");
        }
        return 0;
    }

    /** As a client reads it: the file's name alone, not where it lies. */
    private static String state(String file) {
        return file.equals("-") ? "the garden as it is" : Path.of(file).getFileName().toString().replaceFirst("\\.json$", "");
    }

    private static JobSheet sheet(String file) throws UnusableInput {
        return Input.usable(file, () -> Input.sheet(file));
    }
}
