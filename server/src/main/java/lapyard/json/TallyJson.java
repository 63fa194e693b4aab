package lapyard.json;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.Replan;
import lapyard.job.JobSheet;
import lapyard.job.SectionReplan;
import lapyard.json.Wire.To;
import lapyard.plan.Tally;

/** The wire form of what was done and of what is left. Lengths in millimetres. */
record TallyJson(int day, List<Tally.Done> done, List<Tally.Bought> bought, List<Section> sections) {
    record Section(String section, int cut, int wanted, @To(3) double needed, @To(3) double there, int fit,
            List<Lacking> lacking, Map<String, Integer> buy, Optional<BigDecimal> extra, CuttingResult result) {}

    record Lacking(@To(3) double length, int count) {}

    static TallyJson of(JobSheet sheet) {
        Tally tally = sheet.garden().people().tally();
        return new TallyJson(
                tally.day(),
                tally.done(),
                tally.bought(),
                tally.boards().isEmpty() ? List.of() : SectionReplan.of(sheet).sections().stream().map(TallyJson::section).toList());
    }

    private static Section section(SectionReplan rest) {
        Replan.Planned planned = rest.planned();
        return new Section(rest.section(), planned.cut(), planned.wanted(), planned.neededMm(), planned.thereMm(), planned.fit(),
                planned.lacking().stream().map(piece -> new Lacking(piece.lengthMm(), piece.count())).toList(), planned.buy(),
                rest.extra(), planned.result());
    }
}
