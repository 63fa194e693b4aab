package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What a roll job costs at least. A dual feasible function gives each piece a share of the roll's width such that no
 * pieces lying side by side have shares above 1 together; a run is then at least as long as the sum of height times
 * share. The plain share width / roll width gives the area bound; shares of 1 above half the width stack the wide
 * pieces. A piece that may be turned, or laid on another roll, counts with its cheapest way.
 *
 * <p>Sums are floating point and are taken down by a part in a thousand million, far more than they can err, before
 * they are rounded up to whole steps.
 *
 * @see "Fekete and Schepers, New classes of fast lower bounds for bin packing problems, Mathematical Programming 91
 *     (2001)"
 */
final class RollBound {
    private static final double SAFE = 1 - 1e-9;
    private static final int MOST_CUTOFFS = 24;
    private static final int MOST_AMOUNTS = 2_000_000;

    private RollBound() {}

    /** A family of dual feasible functions and its parameter. */
    private record Share(char kind, long parameter) {
        /** @return share of the width; infinite where the piece is wider than the roll */
        double of(long width, long roll) {
            if (width > roll) return Double.POSITIVE_INFINITY;
            long p = parameter;
            switch (kind) {
                case 'u': // rounding down to k-ths
                    return (p + 1) * width % roll == 0 ? (double) width / roll : (double) ((p + 1) * width / roll) / p;
                case 'c': // cutting off the narrow ones
                    if (2 * p > roll) return (double) width / roll;
                    return width > roll - p ? 1 : width < p ? 0 : (double) width / roll;
                case 'f': // counting how many narrow ones fit beside
                    if (2 * p > roll) return (double) width / roll;
                    if (width < p) return 0;
                    double whole = roll / p;
                    return 2 * width > roll ? 1 - (roll - width) / p / whole : 1 / whole;
                default:
                    return (double) width / roll;
            }
        }
    }

    /** @return coins that every layout of all pieces costs; never above the true least */
    static long coins(RollJob job) {
        if (job.types.length == 0) return 0;
        List<RollJob.Roll> rolls = job.rolls.stream().filter(r -> r.runs() > 0).toList();
        List<Share> shares = shares(job);
        long least = Long.MAX_VALUE;
        for (RollJob.Roll roll : rolls) least = Math.min(least, alone(job, roll, shares));
        if (rolls.size() > 1) least = Math.min(least, mixed(job, rolls, shares));
        return least;
    }

    /** @return coins when every piece comes from this roll; {@code Long.MAX_VALUE} where one cannot */
    static long alone(RollJob job, RollJob.Roll roll) {
        return alone(job, roll, shares(job));
    }

    private static long alone(RollJob job, RollJob.Roll roll, List<Share> shares) {
        int[] counts = new int[job.types.length];
        for (int t = 0; t < counts.length; t++) counts[t] = job.types[t].count();
        long length = length(job, counts, roll, shares);
        return length == RollJob.NO_LIMIT ? Long.MAX_VALUE : job.coins(roll, length);
    }

    /** @return the least length of a run with so many of each type; {@code RollJob.NO_LIMIT} where one is too wide */
    static long length(RollJob job, int[] counts, RollJob.Roll roll) {
        return length(job, counts, roll, shares(job));
    }

    private static long length(RollJob job, int[] counts, RollJob.Roll roll, List<Share> shares) {
        double length = 0;
        for (Share share : shares) {
            double sum = 0;
            for (int t = 0; t < counts.length; t++)
                if (counts[t] > 0) sum += counts[t] * lengthShare(job, job.types[t], roll, share);
            if (sum == Double.POSITIVE_INFINITY) return RollJob.NO_LIMIT;
            length = Math.max(length, sum);
        }
        long longestPiece = 0;
        for (int t = 0; t < counts.length; t++)
            if (counts[t] > 0) longestPiece = Math.max(longestPiece, leastHeight(job, job.types[t], roll));
        return Math.max(longestPiece, up(length));
    }

    private static long mixed(RollJob job, List<RollJob.Roll> rolls, List<Share> shares) {
        int types = job.types.length;
        double[][][] coins = new double[rolls.size()][shares.size()][types];
        for (int r = 0; r < rolls.size(); r++)
            for (int s = 0; s < shares.size(); s++)
                for (int t = 0; t < types; t++)
                    coins[r][s][t] = job.types[t].count()
                            * job.coinsPerUnit(rolls.get(r))
                            * lengthShare(job, job.types[t], rolls.get(r), shares.get(s));
        int[] choice = new int[rolls.size()];
        double best = sumOfLeast(coins, choice, -1, null);
        boolean better = true;
        for (int round = 0; round < 3 && better; round++) {
            better = false;
            for (int r = 0; r < choice.length; r++) {
                double[] others = new double[types];
                sumOfLeast(coins, choice, r, others);
                for (int s = 0; s < shares.size(); s++) {
                    double sum = 0;
                    for (int t = 0; t < types; t++) sum += Math.min(others[t], coins[r][s][t]);
                    if (sum > best) {
                        best = sum;
                        choice[r] = s;
                        better = true;
                    }
                }
            }
        }
        long bound = up(best);
        for (RollJob.Type type : job.types) {
            long least = Long.MAX_VALUE;
            for (RollJob.Roll roll : rolls) {
                long height = leastHeight(job, type, roll);
                if (height < RollJob.NO_LIMIT && height <= roll.longest())
                    least = Math.min(least, job.coins(roll, height));
            }
            bound = Math.max(bound, least);
        }
        return payable(bound, rolls);
    }

    private static double sumOfLeast(double[][][] coins, int[] choice, int without, double[] into) {
        int types = coins[0][0].length;
        double sum = 0;
        for (int t = 0; t < types; t++) {
            double least = Double.POSITIVE_INFINITY;
            for (int r = 0; r < choice.length; r++) if (r != without) least = Math.min(least, coins[r][choice[r]][t]);
            if (into != null) into[t] = least;
            sum += least;
        }
        return sum;
    }

    /** The least sum of whole steps that is no less than these coins. */
    static long payable(double coins, List<RollJob.Roll> rolls) {
        return payable(up(coins), rolls);
    }

    private static long up(double sum) {
        return (long) Math.ceil(sum * SAFE);
    }

    /** The least sum of whole steps that is no less than the bound. */
    private static long payable(long bound, List<RollJob.Roll> rolls) {
        long dearest = rolls.stream().mapToLong(RollJob.Roll::stepCoins).max().orElse(0);
        if (dearest == 0 || bound + dearest > MOST_AMOUNTS) return bound;
        boolean[] can = new boolean[(int) (bound + dearest) + 1];
        can[0] = true;
        for (int amount = 0; amount < can.length; amount++) {
            for (RollJob.Roll roll : rolls) {
                long rest = amount - roll.stepCoins();
                if (rest >= 0 && rest < amount && can[(int) rest]) can[amount] = true;
            }
            if (can[amount] && amount >= bound) return amount;
        }
        return bound;
    }

    private static double lengthShare(RollJob job, RollJob.Type type, RollJob.Roll roll, Share share) {
        double given = type.height() <= roll.longest()
                ? share.of(type.width(), roll.width()) * type.height()
                : Double.POSITIVE_INFINITY;
        if (!job.turn || type.width() > roll.longest()) return given;
        return Math.min(given, share.of(type.height(), roll.width()) * type.width());
    }

    private static long leastHeight(RollJob job, RollJob.Type type, RollJob.Roll roll) {
        long given = type.width() <= roll.width() ? type.height() : RollJob.NO_LIMIT;
        long turned = job.turn && type.height() <= roll.width() ? type.width() : RollJob.NO_LIMIT;
        return Math.min(given, turned);
    }

    private static List<Share> shares(RollJob job) {
        List<Share> shares = new ArrayList<>();
        shares.add(new Share('a', 0));
        for (int k = 1; k <= 12; k++) shares.add(new Share('u', k));
        long[] sides = new long[job.types.length * 2];
        for (int t = 0; t < job.types.length; t++) {
            sides[2 * t] = job.types[t].width();
            sides[2 * t + 1] = job.types[t].height();
        }
        for (RollJob.Roll roll : job.rolls) {
            // a piece just over half the width is the first that cannot have its like beside it
            if (roll.width() > 1) shares.add(new Share('c', roll.width() / 2));
        }
        long[] cutoffs = Arrays.stream(sides)
                .flatMap(side -> job.rolls.stream().mapToLong(roll -> roll.width() - side))
                .filter(rest -> rest > 0)
                .sorted()
                .distinct()
                .toArray();
        addSpread(shares, Arrays.stream(sides).sorted().distinct().toArray());
        addSpread(shares, cutoffs);
        return shares;
    }

    private static void addSpread(List<Share> shares, long[] parameters) {
        int step = Math.max(1, (parameters.length + MOST_CUTOFFS - 1) / MOST_CUTOFFS);
        for (int i = 0; i < parameters.length; i += step) {
            shares.add(new Share('c', parameters[i]));
            shares.add(new Share('f', parameters[i]));
        }
    }
}
