package lapyard.cli;

import java.util.List;
import lapyard.answers.Refused;
import lapyard.job.JobSheet;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.FindingList;
import lapyard.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

@Command(
        name = "snags",
        description = "Lists the findings of a garden, one on each line. Exit code 0: none or notes only, 1: snags, 2: a stop.",
        mixinStandardHelpOptions = true)
final class SnagsCommand extends PrintedCommand {
    @Parameters(paramLabel = "GARDEN.json", description = "garden file, or - for standard input")
    private String file;

    @Override
    public Integer call() throws UnusableInput {
        List<Finding> findings;
        Wording words = Wording.METRIC;
        try {
            JobSheet sheet = Input.sheet(file);
            findings = sheet.snags();
            words = Wording.of(sheet.garden().imperial());
        } catch (Refused refused) {
            findings = refused.findings();
            words = refused.words();
        }
        if (findings.isEmpty()) out().println("Nothing was found to be wrong.");
        for (Finding finding : findings) out().println(Input.line(finding, words));
        Wording.caution(findings).ifPresent(out()::println);
        if (!FindingList.stops(findings).isEmpty()) return Lapyard.REFUSED;
        return findings.stream().anyMatch(finding -> finding.weight() == Weight.SNAG) ? 1 : 0;
    }
}
