package lapyard.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import lapyard.answers.Refused;
import lapyard.job.BuildingCalendar;
import lapyard.job.Buying;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.job.Quoting;
import lapyard.job.SawAdvice;
import lapyard.json.JobSheetJson;
import lapyard.json.LoadInJson;
import lapyard.json.QuoteJson;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import lapyard.plan.Finding;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;
import lapyard.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "take-off",
        description = {
            "Everything about a garden into a folder: plan.svg plan.pdf plan.png slip.csv slip.json job-sheet.json",
            "sheets.pdf, the set of all sheets; each kind alone as saw-day.pdf, rolls.pdf and so on, and each of their pages as",
            "saw-day-01.svg, rolls-01.svg and so on.",
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

    @Option(names = "--layers", paramLabel = "NAME", split = ",", description = "layers of the plan, with commas between: sun, ground, keep-clear, levels, paths, beds, dimensions, pegs, snags, weekends (default: all but sun, pegs and weekends)")
    private List<String> layers = List.of();

    @Option(names = "--split", description = "a plan too large for its paper goes on several sheets with match lines")
    private boolean split;

    @Option(names = "--mono", description = "draw for a printer without colours")
    private boolean mono;

    @Option(names = "--longest", paramLabel = "MM", description = "longest part of a board that can be carried in: prints the first cuts to ask of the merchant")
    private Double longest;

    @Option(names = "--minutes-a-cut", paramLabel = "MIN", defaultValue = "4", description = "time of one cut (default ${DEFAULT-VALUE})")
    private double minutesACut;

    @Option(names = "--minutes-a-setting", paramLabel = "MIN", defaultValue = "10", description = "time of one setting of the saw stop (default ${DEFAULT-VALUE})")
    private double minutesASetting;

    @Override
    public Integer call() throws Refusal {
        progress("working out the job sheet");
        JobSheet sheet;
        try {
            sheet = Input.sheet(file);
        } catch (Refused refused) {
            refused.findings().forEach(finding -> spec.commandLine().getErr().println(Input.line(finding, Wording.METRIC)));
            return Lapyard.REFUSED;
        }
        List<SawAdvice> advice = SawAdvice.of(sheet);
        Map<String, byte[]> files = new LinkedHashMap<>();
        PrintAsk ask = new PrintAsk(
                Optional.ofNullable(paper), mono, scale == null ? OptionalInt.empty() : OptionalInt.of(scale), layers, split,
                longest == null ? OptionalDouble.empty() : OptionalDouble.of(longest), OptionalDouble.of(minutesACut),
                OptionalDouble.of(minutesASetting), "", LocalDate.now().toString(), Optional.empty());
        progress("drawing the sheets");
        try {
            files.putAll(Prints.takeOff(sheet, ask));
        } catch (IllegalArgumentException e) {
            throw new Refusal(e.getMessage());
        }
        files.put("slip.csv", utf8(SlipCsv.write(sheet.slip())));
        for (Slip.Order order : sheet.slip().orders()) {
            if (!order.supplier().id().isEmpty()) {
                files.put("slip-" + order.supplier().id() + ".csv", utf8(SlipCsv.write(order, sheet.slip().currency().getCode())));
            }
        }
        files.put("slip.json", utf8(JobSheetJson.text(JobSheetJson.slip(sheet))));
        files.put("weekends.csv", utf8(Buying.of(sheet).csv(sheet.garden().people().crew().dates().start())));
        files.put("weekends.ics", utf8(BuildingCalendar.ics(sheet, gardenId(sheet.garden().name()), Instant.now(), 1)));
        ObjectNode json = JobSheetJson.of(sheet, Optional.empty());
        json.set("weekends", JobSheetJson.weekends(sheet));
        json.set("advice", JobSheetJson.advice(advice));
        json.set("loads", LoadInJson.of(Loads.of(sheet), Wording.of(sheet.garden().imperial())));
        if (sheet.garden().terms().quote().given()) {
            json.set("quote", QuoteJson.of(Quoting.of(sheet), sheet.garden().terms().quote()));
        }
        files.put("job-sheet.json", utf8(JobSheetJson.text(json)));
        write(files);
        sheet.snags().stream()
                .filter(finding -> finding.weight() != Finding.Weight.NOTE)
                .forEach(finding -> spec.commandLine().getErr().println(Input.line(finding, Wording.of(sheet.garden().imperial()))));
        spec.commandLine().getOut().println((sheet.slip().atLeast() ? "at least " : "") + sheet.slip().currency() + " "
                + sheet.slip().total() + " for " + sheet.garden().beds().size() + " beds; " + files.size() + " files in " + out);
        return sheet.leftOut() ? 1 : 0;
    }

    /** The same for every file of one garden, so that a calendar replaces what it read before. */
    private static String gardenId(String name) {
        String id = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return id.isEmpty() ? "garden" : id;
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
                Path part = folder.resolve("." + file.getKey() + ".part");
                moves.put(part, folder.resolve(file.getKey()));
                Files.write(part, file.getValue());
            }
            for (Map.Entry<Path, Path> move : moves.entrySet()) {
                Files.move(move.getKey(), move.getValue(), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            }
            removeOlderSheets(folder, files.keySet());
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

    /** Sheets that an earlier run left behind and this one does not have: nobody shall saw by them. */
    private static void removeOlderSheets(Path folder, Set<String> written) throws IOException {
        try (Stream<Path> there = Files.list(folder)) {
            for (Path file : there.toList()) {
                String name = file.getFileName().toString();
                if (name.matches("(plan|" + String.join("|", Prints.names()) + ")-[0-9]{2,}\\.(svg|png)") && !written.contains(name)) {
                    Files.delete(file);
                }
            }
        }
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
