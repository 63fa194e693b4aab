package lapyard.order;

import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import lapyard.catalogue.PackGoods;
import org.joda.money.CurrencyUnit;
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

/** One line of the slip: 200 beds with needs of their own, and a need of 1e9. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class OrderingBench {
    private static final CurrencyUnit GBP = CurrencyUnit.of("GBP");

    private final PackGoods tins = OrderingTest.goods(
            "oil",
            "l",
            0,
            OrderingTest.pack("1 l", 1, "16.00"),
            OrderingTest.pack("2.5 l", 2.5, "30.00"),
            OrderingTest.pack("5 l", 5, "52.00"));
    private final PackGoods cubicFeet = OrderingTest.goods(
            "soil",
            "m3",
            0,
            OrderingTest.pack("2 cu ft", 0.0566337, "6.10"),
            OrderingTest.pack("3 cu ft", 0.0849505, "8.95"),
            OrderingTest.pack("1 cu yd", 0.7645549, "79.00"));
    private final List<Double> needs = new Random(1).doubles(200, 0, 5).boxed().toList();

    @Benchmark
    public SlipLine tinsFor200Beds() {
        return OrderingTest.line(tins, needs, GBP);
    }

    @Benchmark
    public SlipLine oddBagsFor200Beds() {
        return OrderingTest.line(cubicFeet, needs, GBP);
    }

    @Benchmark
    public SlipLine oddBagsForAThousandMillion() {
        return OrderingTest.line(cubicFeet, List.of(1e9), GBP);
    }

    public static void main(String[] arguments) throws Exception {
        new Runner(new OptionsBuilder()
                        .include(OrderingBench.class.getSimpleName())
                        .build())
                .run();
    }
}
