package lapyard.sheets;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import lapyard.working.BrokenRule;
import lapyard.working.CommonMeasure;

/**
 * A {@link RollProblem} in whole numbers: lengths in units of the greatest common divisor of all piece sizes (a whole
 * number of micrometres), money in coins of the greatest common divisor of all step prices. Equal pieces are one
 * {@link Type}. Pieces that no roll can hold are already set aside.
 */
final class RollJob {
    /** Equal pieces; with turning allowed, {@code width >= height}. */
    record Type(long width, long height, int count) {
        long area() {
            return width * height;
        }
    }

    /**
     * @param longest   the longest run, in units; {@code Long.MAX_VALUE / 4} where there is none
     * @param runs      how many runs may be cut
     * @param stepCoins price of one sold step
     */
    record Roll(int index, String id, long width, long stepMicro, long longest, int runs, long stepCoins) {}

    static final long NO_LIMIT = Long.MAX_VALUE / 4;

    final RollProblem problem;
    final long unitMicro;
    final BigDecimal coin;
    final Type[] types;
    final List<Roll> rolls;
    final List<RollResult.Unplaced> unplaced;
    /** Ids of the pieces of each type, in the order of the problem. */
    final List<List<RollProblem.Piece>> members;

    final boolean turn;

    private RollJob(
            RollProblem problem,
            long unitMicro,
            BigDecimal coin,
            Map<List<Long>, List<RollProblem.Piece>> classes,
            List<Roll> rolls,
            List<RollResult.Unplaced> unplaced) {
        this.problem = problem;
        this.unitMicro = unitMicro;
        this.coin = coin;
        this.rolls = rolls;
        this.unplaced = unplaced;
        this.turn = problem.turn();
        this.members = List.copyOf(classes.values());
        this.types = new Type[classes.size()];
        int i = 0;
        for (var entry : classes.entrySet()) {
            int count =
                    entry.getValue().stream().mapToInt(RollProblem.Piece::count).sum();
            types[i++] = new Type(entry.getKey().get(0), entry.getKey().get(1), count);
        }
    }

    static RollJob of(RollProblem problem) {
        RollCheck.check(problem);
        List<RollResult.Unplaced> unplaced = new ArrayList<>();
        List<RollProblem.Piece> fitting = new ArrayList<>();
        for (RollProblem.Piece piece : problem.pieces()) {
            String why = RollCheck.whyNoRollHolds(piece, problem);
            if (why == null) fitting.add(piece);
            else
                unplaced.add(
                        new RollResult.Unplaced(piece.id(), piece.widthMm(), piece.heightMm(), piece.count(), why));
        }
        long unit = unit(fitting);
        List<BigDecimal> stepPrices = problem.rolls().stream()
                .map(r -> r.price().multiply(BigDecimal.valueOf(RollCheck.micro(r.stepMm()), 6)))
                .toList();
        BigDecimal coin = CommonMeasure.of(stepPrices);
        RollJob job = new RollJob(problem, unit, coin, classes(problem, fitting, unit), rolls(problem, unit, stepPrices, coin), unplaced);
        job.refuseOverflow();
        return job;
    }

    /** The largest length of which the sides of all pieces are multiples, in millionths of a millimetre. */
    private static long unit(List<RollProblem.Piece> fitting) {
        return CommonMeasure.of(fitting.stream().flatMapToLong(piece -> LongStream.of(RollCheck.micro(piece.widthMm()), RollCheck.micro(piece.heightMm()))));
    }

    /** Pieces by their width and height in units, the longer side first where they may be turned. */
    private static Map<List<Long>, List<RollProblem.Piece>> classes(RollProblem problem, List<RollProblem.Piece> fitting, long unit) {
        Map<List<Long>, List<RollProblem.Piece>> classes = new LinkedHashMap<>();
        for (RollProblem.Piece piece : fitting) {
            long width = RollCheck.micro(piece.widthMm()) / unit;
            long height = RollCheck.micro(piece.heightMm()) / unit;
            List<Long> size = problem.turn() && height > width ? List.of(height, width) : List.of(width, height);
            classes.computeIfAbsent(size, s -> new ArrayList<>()).add(piece);
        }
        return classes;
    }

    private static List<Roll> rolls(RollProblem problem, long unit, List<BigDecimal> stepPrices, BigDecimal coin) {
        List<Roll> rolls = new ArrayList<>();
        for (int i = 0; i < problem.rolls().size(); i++) {
            RollProblem.Stock stock = problem.rolls().get(i);
            long step = RollCheck.micro(stock.stepMm());
            long longest = stock.maxLengthMm().isPresent()
                    ? Math.min(NO_LIMIT - 1, RollCheck.micro(stock.maxLengthMm().getAsDouble()) / step * step / unit)
                    : NO_LIMIT;
            rolls.add(new Roll(
                    i,
                    stock.id(),
                    RollCheck.micro(stock.widthMm()) / unit,
                    step,
                    longest,
                    stock.available().orElse(Integer.MAX_VALUE),
                    stepPrices.get(i).divideToIntegralValue(coin).longValueExact()));
        }
        return rolls;
    }

    /** Areas and money must stay inside 64 bits, with room to add and multiply by small numbers. */
    private void refuseOverflow() {
        double widest = 0;
        double along = 0;
        double coins = 0;
        for (Roll roll : rolls) {
            widest = Math.max(widest, roll.width());
            coins = Math.max(coins, coinsPerUnit(roll) + roll.stepCoins());
        }
        for (Type type : types) along += (double) Math.max(type.width(), type.height()) * type.count();
        double largest = Math.max(Math.max(along * widest, along * unitMicro), along * coins);
        if (largest > 1e17)
            throw BrokenRule.of(BrokenRule.Rule.ROLLS_NOT_EXACT, "problem");
    }

    /** The same pieces on a slice of a roll, of which each unit of length costs one coin. Null where a piece is too wide for it. */
    RollJob onSlice(long width) {
        return on(width, false);
    }

    /** The same pieces, each turned by 90 degrees, on a roll as wide as a run of this one may be long; as {@link #onSlice}. */
    RollJob turned(long width) {
        return on(width, !turn);
    }

    private RollJob on(long width, boolean swapped) {
        Map<List<Long>, List<RollProblem.Piece>> classes = new LinkedHashMap<>();
        for (int t = 0; t < types.length; t++) {
            long across = swapped ? types[t].height() : types[t].width();
            long along = swapped ? types[t].width() : types[t].height();
            if (across > width && (!turn || along > width)) return null;
            classes.put(List.of(across, along), members.get(t));
        }
        Roll slice = new Roll(0, "", width, unitMicro, NO_LIMIT, 1, 1);
        return new RollJob(problem, unitMicro, BigDecimal.ONE, classes, List.of(slice), List.of());
    }

    int pieces() {
        int sum = 0;
        for (Type type : types) sum += type.count();
        return sum;
    }

    long area() {
        long sum = 0;
        for (Type type : types) sum += type.area() * type.count();
        return sum;
    }

    /** Sold steps that hold a run of this many units. */
    long steps(Roll roll, long used) {
        long micro = Math.multiplyExact(used, unitMicro);
        return (micro + roll.stepMicro() - 1) / roll.stepMicro();
    }

    /** Units that fit in so many sold steps. */
    long unitsIn(Roll roll, long steps) {
        return Math.multiplyExact(steps, roll.stepMicro()) / unitMicro;
    }

    long coins(Roll roll, long used) {
        return steps(roll, used) * roll.stepCoins();
    }

    /** Coins by the unit of length, not rounded up to steps. */
    double coinsPerUnit(Roll roll) {
        return (double) roll.stepCoins() * unitMicro / roll.stepMicro();
    }

    BigDecimal money(long coins) {
        return plain(coin.multiply(BigDecimal.valueOf(coins)));
    }

    static BigDecimal plain(BigDecimal amount) {
        BigDecimal stripped = amount.stripTrailingZeros();
        return stripped.scale() < 2 ? stripped.setScale(2) : stripped;
    }
}
