package lapyard.diagrams;

import java.util.List;
import java.util.concurrent.TimeUnit;
import lapyard.construction.BedWork;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.PdfWriter;
import lapyard.drawing.PngWriter;
import lapyard.drawing.SvgWriter;
import lapyard.plan.Garden;
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

/** The plan of 200 beds of three outlines, drawn and written; the test gardens live in this package. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class PlanBench {
    /** A1 gives every bed its label; on A3 most labels have to be searched a place. */
    @Param({"A1", "A3"})
    public Paper paper;

    private Garden garden;
    private List<BedWork> works;
    private PlanOptions options;
    private Page page;

    @Setup
    public void stand() {
        garden = TestGardens.field(200);
        works = garden.beds().stream().map(TestGardens::work).toList();
        options = TestOptions.on(TestOptions.plan(false), paper);
        page = draw();
    }

    @Benchmark
    public Page draw() {
        return TestGardens.draw(garden, works, List.of(), List.of(), options);
    }

    @Benchmark
    public String svg() {
        return SvgWriter.write(draw());
    }

    /** The drawing not counted. */
    @Benchmark
    public byte[] pdf() {
        return PdfWriter.write(List.of(page));
    }

    /** The drawing not counted. */
    @Benchmark
    public byte[] png() {
        return PngWriter.write(page, 72);
    }
}
