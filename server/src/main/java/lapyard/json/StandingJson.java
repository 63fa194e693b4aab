package lapyard.json;

import java.util.List;
import lapyard.standing.Standing;
import lapyard.standing.Verdict;
import lapyard.words.Wording;
import lapyard.working.Quantity;

/** Whether a bed would stand, as it is sent out. */
record StandingJson(String caution, List<String> notDesigned, List<Said> verdicts, List<Quantity> quantities) {
    record Said(String about, Verdict.Outcome outcome, String text, List<String> ways) {}

    static StandingJson of(Standing standing, Wording words) {
        return new StandingJson(
                Standing.CAUTION,
                standing.notDesigned().stream().map(words::text).toList(),
                standing.verdicts().stream()
                        .map(one -> new Said(one.about(), one.outcome(), words.text(one.finding()), words.ways(one.finding())))
                        .toList(),
                standing.quantities());
    }
}
