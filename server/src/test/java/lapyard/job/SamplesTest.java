package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import lapyard.construction.Course;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.geometry.Outline;
import lapyard.order.SlipLine;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.working.Look;
import lapyard.working.Progress;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every garden under samples/ goes through the whole job, and what comes out adds up. */
class SamplesTest {
    static Stream<Arguments> looks() throws IOException {
        return Gardens.samples().flatMap(sample -> Stream.of(Look.values()).map(look -> Arguments.of(sample, look)));
    }

    @ParameterizedTest
    @MethodSource("looks")
    void theJobAddsUp(String sample, Look look) throws IOException {
        Garden garden = Gardens.garden(Gardens.text(sample));
        assertEquals(List.of(), Job.stops(garden));
        JobSheet sheet = Job.prepare(garden, what -> Progress.UNHEARD, look, new SearchMemory(Job.ONE_GARDEN_BYTES));

        for (JobSheet.BedSheet bed : sheet.beds()) {
            Outline outline = bed.work().bed().outline();
            double ring = outline.perimeterMm()
                    - bed.work().bed().section().thicknessMm() * java.util.stream.IntStream.range(0, outline.sides()).mapToDouble(i -> Math.tan(Math.toRadians(outline.turnDeg(i) / 2))).sum();
            for (Course course : bed.work().frame().courses()) {
                assertEquals(ring, course.pieces().stream().mapToDouble(Piece::meanMm).sum(), 0.1 * outline.sides(),
                        "bed " + bed.work().bed().id() + ", course " + course.number());
            }
        }
        List<String> wanted = sheet.beds().stream().flatMap(bed -> bed.work().pieces().stream()).map(Piece::mark).sorted().toList();
        List<String> planned = Stream.concat(
                        sheet.cutting().stream().flatMap(cut -> cut.result().plan().stream()).flatMap(board -> board.pieces().stream()),
                        sheet.cutting().stream().flatMap(cut -> cut.result().unplaced().stream()).map(one -> one.id()))
                .flatMap(mark -> Nest.marks(mark).stream())
                .sorted()
                .toList();
        assertEquals(wanted, planned);
        for (JobSheet.SectionCutting cut : sheet.cutting()) {
            assertTrue(cut.result().lowerBound().compareTo(cut.result().cost()) <= 0, cut.section());
        }
        BigDecimal sum = sheet.slip().lines().stream().flatMap(line -> line.cost().stream()).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertEquals(sum, sheet.slip().goods());
        BigDecimal orders = sheet.slip().orders().stream().map(order -> order.total()).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertEquals(0, orders.compareTo(sheet.slip().total()));
        BigDecimal shares = lapyard.order.Savings.shares(sheet.slip()).stream().map(share -> share.cost()).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertEquals(0, shares.compareTo(sheet.slip().total()));
        BigDecimal saved = sheet.slip().lines().stream().flatMap(line -> line.saved().stream()).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertTrue(saved.signum() >= 0, "pooling never costs more: " + saved);
        for (SlipLine line : sheet.slip().lines()) {
            // a bed alone may be joined so that it takes fewer ties and dearer boards
            assertTrue(line.item().equals("cross.ties") || line.saved().orElse(BigDecimal.ZERO).signum() >= 0, "pooling never costs more: " + line);
            assertTrue(line.need() > 0, line.toString());
        }
        assertEquals(garden.beds().stream().map(Bed::id).toList(), sheet.beds().stream().map(bed -> bed.work().bed().id()).toList());
    }
}
