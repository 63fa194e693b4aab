package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import lapyard.fill.BedFill;
import lapyard.geometry.FewestRectangles;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.RandomOutlines;
import lapyard.plan.Bed;
import lapyard.plan.Lap;
import lapyard.plan.Saw;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * Two hundred beds of twenty outlines, built and filled on paper; one outline in ten with as many inside corners as
 * get all their splits.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class BedsBench {
    /**
     * {@code rectangles}: all alike four-sided; {@code mixed}: twenty random outlines; {@code six}: six inside
     * corners each.
     */
    @Param({"rectangles", "mixed", "six"})
    public String kind;

    private List<Bed> beds;

    @Setup
    public void draw() {
        Random random = new Random(200);
        List<Outline> outlines = new ArrayList<>();
        while (outlines.size() < 20) {
            Outline outline = kind.equals("rectangles")
                    ? Outline.rectangle(1500 + random.nextInt(6000), 900 + random.nextInt(1500))
                    : RandomOutlines.of(random, 700, 2400);
            if (!kind.equals("six") || outline.insideCorners() == FewestRectangles.ALL_SPLITS_UP_TO) {
                outlines.add(outline);
            }
        }
        beds = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            beds.add(Beds.bed("B" + i, outlines.get(i % 20), 3, i % 2 == 0 ? Lap.TURNING : Lap.LONG_WALL));
        }
    }

    @Benchmark
    public void twoHundredBeds(Blackhole sink) {
        for (Bed bed : beds) {
            BedWork work = Beds.work(bed, Saw.USUAL, 4780, Map.of(), Optional.of(new Point(0.002, 0.0125)), 2400, 25);
            sink.consume(work);
            sink.consume(BedFill.of(work, 60, false));
        }
    }
}
