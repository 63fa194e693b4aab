package lapyard.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import lapyard.drawing.Page;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.json.JobSheetJson;
import lapyard.json.Reading;
import lapyard.order.SlipCsv;
import lapyard.plan.Finding;
import lapyard.rest.PlanPrint;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "take-off",
        description = {
            "Everything about a garden into a folder: plan.svg plan.pdf plan.png slip.csv slip.json job-sheet.json.",
            "Exit code 0: all is in, 1: something was left out, 2: refused, nothing written."
        },
        mixinStandardHelpOptions = true)
final class TakeOffCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "GARDEN.json", description = "garden file, or - for standard input")
    private String file;

    @Option(names = "--out", paramLabel = "DIR", required = true, description = "folder, made where it is not there")
    private String out;

    @Option(names = "--scale", paramLabel = "N", description = "draw the plan at 1:N (default: the largest that fits)")
    private Integer scale;

    @Option(names = "--paper", paramLabel = "A4..A0|Letter|Tabloid", description = "paper of the plan (default A3, or Tabloid in feet and inches)")
    private String paper;

    @Option(names = "--mono", description = "draw for a printer without colours")
    private boolean mono;

    @Override
    public Integer call() throws Refusal {
        Reading reading = Input.garden(file);
        if (!(reading instanceof Reading.Read read)) {
            reading.findings().forEach(finding -> spec.commandLine().getErr().println(Input.line(finding)));
            return Lapyard.REFUSED;
        }
        progress("working out " + read.garden().beds().size() + " beds");
        JobSheet sheet = Job.prepare(read.garden());
        Map<String, byte[]> files = new LinkedHashMap<>();
        progress("drawing the plan");
        try {
            OptionalInt oneTo = scale == null ? OptionalInt.empty() : OptionalInt.of(scale);
            Page plan = PlanPrint.page(sheet, Optional.ofNullable(paper), oneTo, mono, "", LocalDate.now().toString());
            for (String format : List.of("svg", "pdf", "png")) {
                files.put("plan." + format, PlanPrint.file(plan, format));
            }
        } catch (IllegalArgumentException e) {
            throw new Refusal(e.getMessage());
        }
        files.put("slip.csv", utf8(SlipCsv.write(sheet.slip())));
        files.put("slip.json", utf8(JobSheetJson.text(JobSheetJson.slip(sheet.slip()))));
        files.put("job-sheet.json", utf8(JobSheetJson.text(JobSheetJson.of(sheet, Optional.empty()))));
        write(files);
        sheet.snags().stream()
                .filter(finding -> finding.weight() != Finding.Weight.NOTE)
                .forEach(finding -> spec.commandLine().getErr().println(Input.line(finding)));
        spec.commandLine().getOut().println((sheet.slip().atLeast() ? "at least " : "") + sheet.slip().currency() + " "
                + sheet.slip().total() + " for " + read.garden().beds().size() + " beds; " + files.size() + " files in " + out);
        return sheet.leftOut() ? 1 : 0;
    }

    private void progress(String text) {
        if (System.console() != null) {
            spec.commandLine().getErr().println(text);
        }
    }

    /** All files or none: they are written beside their names first and then moved. */
    private void write(Map<String, byte[]> files) throws Refusal {
        Map<Path, Path> moves = new LinkedHashMap<>();
        try {
            Path folder = Path.of(out);
            Files.createDirectories(folder);
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                Path part = Files.createTempFile(folder, "." + file.getKey(), ".part");
                moves.put(part, folder.resolve(file.getKey()));
                Files.write(part, file.getValue());
            }
            for (Map.Entry<Path, Path> move : moves.entrySet()) {
                Files.move(move.getKey(), move.getValue(), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            }
        } catch (FileAlreadyExistsException e) {
            throw new Refusal(out + " is a file, not a folder. Name another folder with --out.");
        } catch (IOException | java.nio.file.InvalidPathException e) {
            throw new Refusal(out + " cannot be written: " + e.getMessage() + ". Name another folder with --out.");
        } finally {
            for (Path part : moves.keySet()) {
                try {
                    Files.deleteIfExists(part);
                } catch (IOException e) {
                    spec.commandLine().getErr().println(part + " could not be removed: " + e.getMessage());
                }
            }
        }
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
