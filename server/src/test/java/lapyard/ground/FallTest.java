package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Ground.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ojalgo.matrix.decomposition.QR;
import org.ojalgo.matrix.store.MatrixStore;
import org.ojalgo.matrix.store.R064Store;

class FallTest {
    private static final List<Level> THREE = List.of(level(0, 0, 412), level(3000, 0, 412), level(0, 2400, 442));

    private static Level level(double x, double y, double drop) {
        return new Level(new Point(x, y), drop);
    }

    private static List<Level> and(List<Level> levels, Level... more) {
        List<Level> all = new ArrayList<>(levels);
        all.addAll(List.of(more));
        return all;
    }

    @Test
    void thirtyInTwentyFourHundredIsOneInEightyToTheRear() {
        Fall fall = Fall.of(THREE).orElseThrow();
        assertEquals(80, fall.oneIn(), 1e-9);
        assertEquals(0, fall.downhill().x(), 1e-12);
        assertTrue(fall.downhill().y() > 0);
        assertEquals(427, fall.dropMm(new Point(1000, 1200)), 1e-9);
        fall.residualsMm().forEach(residual -> assertEquals(0, residual, 1e-9));
    }

    @Test
    void aFourthReadingIsFittedWithTheOthersAndLeavesResidualsButNoSnag() {
        List<Level> four = and(THREE, level(3000, 1500, 455));
        Fall fall = Fall.of(four).orElseThrow();
        assertEquals(56.5, fall.oneIn(), 0.05);
        double[] worked = {5.4, -8.7, -5.4, 8.7};
        for (int i = 0; i < 4; i++) {
            assertEquals(worked[i], fall.residualsMm().get(i), 0.05);
        }
        assertEquals(List.of(), Fall.findings(four));
    }

    /** General-purpose reference: the QR decomposition of ojAlgo 57. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void thePlaneIsThatOfAGeneralLeastSquaresSolver(long seed) {
        Random random = new Random(seed);
        List<Level> levels = new ArrayList<>();
        int n = 4 + random.nextInt(20);
        R064Store left = R064Store.FACTORY.make(n, 3);
        R064Store right = R064Store.FACTORY.make(n, 1);
        for (int i = 0; i < n; i++) {
            Level level = level(random.nextInt(12000), random.nextInt(9000), random.nextInt(600));
            levels.add(level);
            left.set(i, 0, level.at().x());
            left.set(i, 1, level.at().y());
            left.set(i, 2, 1);
            right.set(i, 0, level.dropMm());
        }
        QR<Double> qr = QR.R064.make(left);
        qr.decompose(left);
        MatrixStore<Double> plane = qr.getSolution(right);
        Fall fall = Fall.of(levels).orElseThrow();
        assertEquals(plane.doubleValue(0, 0), fall.a(), 1e-9);
        assertEquals(plane.doubleValue(1, 0), fall.b(), 1e-9);
        assertEquals(plane.doubleValue(2, 0), fall.c(), 1e-6);
    }

    /** Normal equations of least squares: residuals sum to nothing, alone and weighted by x and by y. */
    @Test
    void residualsAreSquareToThePlane() {
        List<Level> five = and(THREE, level(3000, 1500, 455), level(900, 2100, 401));
        Fall fall = Fall.of(five).orElseThrow();
        double sum = 0;
        double x = 0;
        double y = 0;
        for (int i = 0; i < five.size(); i++) {
            double residual = fall.residualsMm().get(i);
            sum += residual;
            x += residual * five.get(i).at().x();
            y += residual * five.get(i).at().y();
        }
        assertEquals(0, sum, 1e-9);
        assertEquals(0, x, 1e-6);
        assertEquals(0, y, 1e-6);
    }

    @Test
    void tooFewReadingsOrAllInALineStop() {
        assertEquals(List.of(), Fall.findings(List.of()));
        assertEquals(Optional.empty(), Fall.of(THREE.subList(0, 2)));
        Finding few = Fall.findings(THREE.subList(0, 2)).get(0);
        assertEquals(Finding.Weight.STOP, few.weight());
        assertEquals("There are 2 level readings; a fall needs 3 readings. Take 1 reading more, not all in a line.", Spoken.of(few));
        List<Level> line =
                List.of(level(0, 0, 0), level(1000, 500.1, 10), level(2000, 1000, 20), level(4000, 2000, 44));
        assertEquals(Optional.empty(), Fall.of(line));
        assertEquals(Finding.Weight.STOP, Fall.findings(line).get(0).weight());
    }

    @Test
    void aReadingFarOffThePlaneIsASnagThatNamesIt() {
        List<Level> lumpy = List.of(
                level(0, 0, 400),
                level(6000, 0, 400),
                level(6000, 6000, 460),
                level(0, 6000, 460),
                level(3000, 3000, 460));
        List<Finding> findings = Fall.findings(lumpy);
        assertEquals(1, findings.size());
        assertEquals(Finding.Weight.SNAG, findings.get(0).weight());
        assertEquals("levels, reading 5", findings.get(0).where());
        assertEquals(24, findings.get(0).amount().orElseThrow().value(), "30 x 4/5 by hand");
    }

    /** Worked by hand for the L bed on ground that falls 1:80 to the rear; limit a quarter of 200. */
    @ParameterizedTest(name = "wall {0} is scribed {1} to {2}")
    @CsvSource({"A,30,30", "B,30,11.25", "C,11.25,11.25", "D,11.25,0", "E,0,0", "F,0,30"})
    void theWorkedBedIsScribedAsByHand(String wall, double start, double end) {
        BedFall fall =
                BedFall.of(Beds.bed("M", Beds.L, 800, 1500), Fall.of(THREE).orElseThrow());
        BedFall.Scribe scribe = fall.scribes().stream()
                .filter(s -> s.wall().equals(wall))
                .findFirst()
                .orElseThrow();
        assertEquals(start, scribe.startMm(), 1e-9);
        assertEquals(end, scribe.endMm(), 1e-9);
        assertEquals(List.of(), fall.findings());
        assertEquals(
                end,
                fall.quantities().stream()
                        .filter(q -> q.key().toString().equals("scribe." + wall + ".end"))
                        .findFirst()
                        .orElseThrow()
                        .value(),
                1e-9);
    }

    @Test
    void levelsOfTheCornersAreThoseOfThePlane() {
        BedFall fall =
                BedFall.of(Beds.bed("M", Beds.L, 800, 1500), Fall.of(THREE).orElseThrow());
        assertEquals(412 + 1500 / 80.0, fall.quantities().get(0).value(), 1e-9);
        assertEquals(412 + 3900 / 80.0, fall.quantities().get(5).value(), 1e-9);
        fall.quantities().forEach(q -> assertTrue(q.working().inputs().size() >= 2));
    }

    @Test
    void sixtyOffTheBottomCourseIsASnagWithItsLimit() {
        Fall steep = Fall.of(List.of(level(0, 0, 412), level(3000, 0, 412), level(0, 2400, 472)))
                .orElseThrow();
        Finding snag = BedFall.of(Beds.bed("M", Beds.L, 0, 0), steep).findings().get(0);
        assertEquals(
                "The fall takes 60 mm off the bottom course of bed M, walls A, B and F; 50 mm is the most. "
                        + "Level a strip under the walls, or step the base.",
                Spoken.of(snag));
        assertEquals(60, snag.amount().orElseThrow().value());
        assertEquals("bed M, walls A, B, F", snag.where());
        assertEquals(Finding.Weight.SNAG, snag.weight());
    }

    @Test
    void aTurnedBedIsScribedByHowItLies() {
        Bed turned = Beds.bed("M", Beds.L, new Placement(new Point(5000, 1000), 90, false));
        BedFall fall = BedFall.of(turned, Fall.of(THREE).orElseThrow());
        assertEquals(37.5, fall.scribes().get(0).startMm(), 1e-9, "wall A now runs 3000 down the slope");
        assertEquals(0, fall.scribes().get(0).endMm(), 1e-9);
    }

    /**
     * Readings beside a line, half of them as far to the left as half to the right: their mean square distance from it is that
     * distance. Under a millimetre, or a thousandth of their spread along it, they give no plane, however the line lies.
     */
    @ParameterizedTest(name = "{0} off, {1} between readings: a plane is {2}")
    @CsvSource({"0.97,200,false", "1.03,200,true", "8.4,5000,false", "8.8,5000,true"})
    void readingsBesideALineGiveAPlaneOnlyWhereTheyAreWideEnough(double off, double apart, boolean plane) {
        for (int turn = 0; turn < 360; turn += 15) {
            double cos = Math.cos(Math.toRadians(turn));
            double sin = Math.sin(Math.toRadians(turn));
            List<Level> levels = new ArrayList<>();
            // pairs across the line; along it 0 to 5 times the distance, whose mean square distance from their middle is 35 / 12
            for (int i = 0; i < 12; i++) {
                double x = i / 2 * apart;
                double y = i % 2 == 0 ? off : -off;
                levels.add(level(700 + x * cos - y * sin, 300 + x * sin + y * cos, 400 + i));
            }
            assertEquals(plane, Fall.of(levels).isPresent(), turn + " degrees; the limit is " + Math.max(1, apart * Math.sqrt(35 / 12.0) / 1000));
        }
    }
}
