package lapyard.sheets;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Jobs as a garden gives them, from a seed: liner pieces of 1.2 to 5.1 m by 0.6 to 1.6 m on rolls of 1 to 6 m width,
 * sold by the whole metre, at 1.7 to 2.1 money a square metre (made-up prices).
 */
public final class TradeJobs {
    private TradeJobs() {}

    public static RollProblem job(int pieces, long seed, boolean straightCuts) {
        Random random = new Random(seed);
        List<RollProblem.Stock> rolls = new ArrayList<>();
        double[] metrePrices = {2.1, 3.9, 5.6, 7.2, 9.0, 10.9};
        for (int metres = 1; metres <= 6; metres++) {
            double price = metrePrices[metres - 1] * (0.93 + 0.14 * random.nextDouble());
            rolls.add(RollSolverTest.roll(
                    "W" + metres,
                    metres * 1000,
                    BigDecimal.valueOf(Math.round(price * 100), 2).toString(),
                    1000));
        }
        List<RollProblem.Piece> wanted = new ArrayList<>();
        for (int i = 0; i < pieces; i++)
            wanted.add(
                    new RollProblem.Piece("p" + i, 1200 + 10 * random.nextInt(391), 600 + 10 * random.nextInt(101), 1));
        return new RollProblem("trade " + pieces + ", seed " + seed, rolls, wanted, true, straightCuts);
    }
}
