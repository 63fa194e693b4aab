package lapyard.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import lapyard.json.JobSheetPart;
import lapyard.json.SheetAsk;
import lapyard.plan.Finding;
import lapyard.plan.Told;
import lapyard.working.Look;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;

/** A save and the reads after it, of a garden with a tally. */
class TallyCheckTest {
    private static GivenDocument garden(String secondCut) {
        return GivenDocument.of("{\"beds\":[{\"id\":\"N\",\"width\":1800,\"depth\":900,\"courses\":3}],\"tally\":{\"boards\":["
                + "{\"board\":\"#1\",\"stock\":\"2400\",\"cut\":[\"N-1A\"]},{\"board\":\"#2\",\"stock\":\"2400\",\"cut\":[\"" + secondCut + "\"]}]}}");
    }

    @Test
    void isPreparedOnceForTheSaveAndAllThatIsReadAfterIt() {
        AtomicInteger prepared = new AtomicInteger();
        AnswerService answers = new AnswerService(new CountedDesk(prepared), 2, 50, 16 << 20);
        assertTrue(answers.check(garden("N-2A")).stream().noneMatch(finding -> finding.weight() == Finding.Weight.STOP));
        assertTrue(answers.jobSheet(garden("N-2A"), SheetAsk.WHOLE).length() > 1000);
        assertTrue(answers.part(garden("N-2A"), JobSheetPart.TALLY).length() > 100);
        assertEquals(1, prepared.get());
    }

    /** Two beds of 3 courses and 4 walls are 24 timbers. */
    @Test
    void aGardenOfMoreTimbersThanThereIsRoomForIsRefusedByNumber() {
        GivenDocument two = GivenDocument.of("{\"beds\":[{\"width\":1800,\"depth\":900,\"courses\":3},"
                + "{\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[4000,0]}]}");
        assertTrue(new GardenDesk(24).check(two).findings().stream().noneMatch(finding -> finding.weight() == Finding.Weight.STOP));
        GardenDesk.Checked checked = new GardenDesk(23).check(two);
        assertTrue(checked.holdsStop());
        assertTrue(Told.text(checked.findings().get(checked.findings().size() - 1)).contains("24 timbers"), checked.toString());
    }

    @Test
    void isRefusedForWhatCannotBeTrue() {
        AnswerService answers = new AnswerService(new GardenDesk(), 2, 50, 16 << 20);
        List<Finding> findings = answers.check(garden("N-1A"));
        assertTrue(findings.stream().anyMatch(finding -> finding.weight() == Finding.Weight.STOP && Told.text(finding).contains("cut twice")), findings.toString());
    }

    private static final class CountedDesk extends GardenDesk {
        private final AtomicInteger prepared;

        CountedDesk(AtomicInteger prepared) {
            this.prepared = prepared;
        }

        @Override
        public PreparedGarden prepare(GivenDocument document, Function<String, Progress> progress, Look look) {
            prepared.incrementAndGet();
            return super.prepare(document, progress, look);
        }
    }
}
