package lapyard.bench;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.plan.Garden;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The whole job sheet, the plan and the set of sheets, warm: the 7 beds of a sample, and 100 and 200 beds of 20 types from a fixed seed. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 3)
@Measurement(iterations = 5, time = 3)
public class JobSheetBench {
    /** More than are remembered, so that each changed search is done anew. */
    private static final int SIZES = 400;

    private Garden seven;
    private final List<Garden> sevenOfOtherSizes = new ArrayList<>();
    private final List<Garden> sevenMoved = new ArrayList<>();
    private final List<Garden> nested = new ArrayList<>();
    private int turn;
    private Garden hundred;
    private Garden twoHundred;
    private JobSheet sheetOfTwoHundred;
    private JobSheet sheetOfSeven;

    @Setup
    public void gardens() throws IOException {
        seven = Gardens.garden(Files.readString(sample()));
        JsonMapper mapper = new JsonMapper();
        for (int i = 0; i < SIZES; i++) {
            ObjectNode garden = (ObjectNode) mapper.readTree(Files.readString(sample()));
            ObjectNode border = (ObjectNode) garden.path("beds").get(6);
            border.putArray("at").add(1000 + i % 50).add(10_400);
            sevenMoved.add(Gardens.garden(garden.toString()));
            border.put("depth", 1000 - i);
            sevenOfOtherSizes.add(Gardens.garden(garden.toString()));
            nested.add(Gardens.garden(angled(800 + i)));
        }
        hundred = Gardens.garden(manyBeds(100));
        twoHundred = Gardens.garden(manyBeds(200));
        sheetOfTwoHundred = Job.prepare(twoHundred);
        sheetOfSeven = Job.prepare(seven);
    }

    private static Path sample() {
        Path inModule = Path.of("../samples/village-hall.json");
        return Files.exists(inModule) ? inModule : Path.of("samples/village-hall.json");
    }

    private static String angled(int side) {
        String chamfered = "{\"outline\":[[0,0],[2100,0],[2400,300],[2400,1200],[0,1200]],\"courses\":3,\"at\":[10000,0]}";
        return Gardens.faced(2, "", "2400=17.40 3600=26.40 4800=36.00", List.of(
                Gardens.sided("X", 6, side, 0, ",\"courses\":3"), Gardens.sided("O", 8, 700, 5000, ",\"courses\":2"), chamfered));
    }

    /** Rectangles, Ls and Us of 20 types on a grid; sizes in steps of 50. */
    static String manyBeds(int beds) {
        Random random = new Random(20);
        StringBuilder types = new StringBuilder();
        for (int type = 0; type < 20; type++) {
            int width = 1500 + 50 * random.nextInt(50);
            int depth = 1200 + 50 * random.nextInt(20);
            int third = width / 150 * 50;
            String outline = switch (type % 4) {
                case 0, 1 -> "\"width\":" + width + ",\"depth\":" + depth;
                case 2 -> "\"outline\":[[0,0],[%d,0],[%d,%d],[%d,%d],[%d,%d],[0,%d]]"
                        .formatted(width, width, depth - 500, width - 600, depth - 500, width - 600, depth, depth);
                default -> "\"outline\":[[0,0],[%d,0],[%d,%d],[%d,%d],[%d,%d],[%d,%d],[%d,%d],[0,%d]]"
                        .formatted(width + 900, width + 900, depth, width + 900 - third, depth, width + 900 - third,
                                depth - 600, third, depth - 600, third, depth, depth);
            };
            types.append(type == 0 ? "" : ",").append("{\"id\":\"T%d\",\"courses\":%d,%s}".formatted(type, 2 + type % 3, outline));
        }
        StringBuilder placed = new StringBuilder();
        for (int bed = 0; bed < beds; bed++) {
            placed.append(bed == 0 ? "" : ",").append("{\"type\":\"T%d\",\"at\":[%d,%d],\"weekend\":%d}"
                    .formatted(bed % 20, bed % 20 * 6200, bed / 20 * 4000, 1 + bed / 60));
        }
        return "{\"types\":[" + types + "],\"beds\":[" + placed + "]}";
    }

    @Benchmark
    public JobSheet sevenBeds() {
        return Job.prepare(seven);
    }

    /** A bed has been moved: all searches are remembered. */
    @Benchmark
    public JobSheet sevenBedsOneMoved() {
        return Job.prepare(sevenMoved.get(turn++ % SIZES));
    }

    /** A bed has another size: what it shares with the others is searched for anew. */
    @Benchmark
    public JobSheet sevenBedsOneOfAnotherSize() {
        return Job.prepare(sevenOfOtherSizes.get(turn++ % SIZES));
    }

    /** A hexagon, an octagon and a cut corner of timber with two good faces: every way to nest is searched for anew. */
    @Benchmark
    public JobSheet threeNestedBedsOfAnotherSize() {
        return Job.prepare(nested.get(turn++ % SIZES));
    }

    @Benchmark
    public JobSheet hundredBedsOfTwentyTypes() {
        return Job.prepare(hundred);
    }

    @Benchmark
    public JobSheet twoHundredBedsOfTwentyTypes() {
        return Job.prepare(twoHundred);
    }

    @Benchmark
    public byte[] planSvgOfTwoHundredBeds() throws IOException {
        return written("plan", sheetOfTwoHundred, PrintAsk.usual("", "").onPaper(Optional.of("A1")), "svg");
    }

    @Benchmark
    public byte[] wholeSetOfSevenBedsAsPdf() throws IOException {
        return written(Prints.SET, sheetOfSeven, PrintAsk.usual("", ""), "pdf");
    }

    @Benchmark
    public byte[] wholeSetOfTwoHundredBedsAsPdf() throws IOException {
        return written(Prints.SET, sheetOfTwoHundred, PrintAsk.usual("", "").onPaper(Optional.of("A1")), "pdf");
    }

    private static byte[] written(String name, JobSheet sheet, PrintAsk ask, String format) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Prints.write(name, sheet, ask, format, 1, out);
        return out.toByteArray();
    }
}
