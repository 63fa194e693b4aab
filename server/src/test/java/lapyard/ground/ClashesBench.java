package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Baseline;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Preparation;
import lapyard.plan.SurfaceKind;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** A garden of 200 beds of 20 types, each fifth one in trouble, 60 paths, 40 things to keep clear, surfaces and levels. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
public class ClashesBench {
    private final Garden tidy = garden(false);
    private final Garden troubled = garden(true);
    private final Garden pegged = Beds.garden(
            new Ground(
                    tidy.ground().outline(), List.of(), List.of(), List.of(), 0, Optional.empty(),
                    Optional.of(new Baseline(new Point(0, 0), new Point(90000, 0), 0)), Preparation.USUAL, List.of(),
                    AccessStandard.USUAL, List.of(), Optional.empty()),
            tidy.beds(), List.of());

    static Garden garden(boolean trouble) {
        List<Bed> beds = new ArrayList<>();
        List<GardenPath> paths = new ArrayList<>();
        for (int row = 0; row < 10; row++) {
            for (int i = 0; i < 20; i++) {
                Outline outline = i % 4 == 3 ? Beds.L : Outline.rectangle(2000 + 50 * i, 900 + 20 * i);
                double shift = trouble && (row * 20 + i) % 5 == 0 ? 2000 : 0;
                beds.add(Beds.bed(
                        "B" + beds.size(),
                        outline,
                        new Placement(
                                new Point(1500 + 4300 * i + shift, 1500 + 4000 * row),
                                trouble && i % 7 == 6 ? 10 : 0,
                                false)));
            }
            paths.add(Beds.path("P" + row, 1200, 0, 700 + 4000 * row, 88000, 700 + 4000 * row));
            for (int i = 1; i <= 5; i++) {
                double x = 850 + 4300 * 3 * i;
                paths.add(Beds.path("P" + row + "-" + i, 1200, x, 1300 + 4000 * row, x, 4000 + 4000 * row));
            }
        }
        List<Ground.KeepClear> kept = new ArrayList<>();
        for (int i = 0; i < 39; i++) {
            double x = 4000 + 2150 * i;
            kept.add(new Ground.KeepClear(KeepClearKind.COVER, Beds.points(x, 300, x + 400, 300, x + 400, 700, x, 700), 300, 0, false, 0));
        }
        kept.add(new Ground.KeepClear(KeepClearKind.GATE, Beds.points(0, 300, 0, 1200), 0, 900, true, 0));
        Outline yard = Outline.rectangle(90000, 42000);
        Ground ground = new Ground(
                List.of(yard),
                List.of(
                        new Ground.Surface(SurfaceKind.SLAB, Outline.rectangle(45000, 42000)),
                        new Ground.Surface(SurfaceKind.GRASS, Beds.outline(45000, 0, 90000, 0, 90000, 42000, 45000, 42000))),
                kept,
                List.of(
                        new Ground.Level(new Point(0, 0), 0),
                        new Ground.Level(new Point(90000, 0), 900),
                        new Ground.Level(new Point(0, 42000), 400)),
                0,
                Optional.empty(),
                Optional.empty(),
                Preparation.USUAL,
                List.of(),
                AccessStandard.ADA_2010,
                List.of(),
                Optional.empty());
        return Beds.garden(ground, beds, paths);
    }

    @Benchmark
    public GroundSheet tidyGardenOf200() {
        return BedGroundTest.sheet(tidy);
    }

    @Benchmark
    public GroundSheet troubledGardenOf200() {
        return BedGroundTest.sheet(troubled);
    }

    @Benchmark
    public List<Finding> stopsAlone() {
        return Clashes.stops(troubled);
    }

    @Benchmark
    public Object pegsOf200() {
        return SettingOut.of(pegged, Optional.empty());
    }

    public static void main(String[] arguments) throws Exception {
        for (boolean trouble : new boolean[] {false, true}) {
            java.util.Map<Finding.Weight, Long> counts = Clashes.of(garden(trouble)).stream()
                    .collect(java.util.stream.Collectors.groupingBy(
                            Finding::weight, java.util.stream.Collectors.counting()));
            System.err.println((trouble ? "troubled " : "tidy ") + counts);
        }
        new Runner(new OptionsBuilder()
                        .include(ClashesBench.class.getSimpleName())
                        .build())
                .run();
    }
}
