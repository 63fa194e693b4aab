package lapyard.order;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import lapyard.catalogue.Supplier;

/**
 * Who brings what, goods and delivery charges taken together: a fixed-charge problem with charges that fall away above
 * a limit, solved exactly.
 *
 * <p>A state says which suppliers may be used, and of these which bring free, so that goods for more than their limit
 * come from them. In a state each line is bought at its cheapest, with a share of what is spent at a supplier who must
 * be lifted over a limit given back: for any share that sum is a bound, and the shares that raise it most are looked for.
 * States are searched from the lowest bound up, lines one after another, until the bound reaches the best found.
 *
 * @see "A. M. Geoffrion, Lagrangean relaxation for integer programming, Mathematical Programming Study 2 (1974), 82-114,
 *     from memory: the bound; it is proved by its words above"
 */
final class SupplierChoice {
    /** For the one order of a garden. */
    static final int MOST_STEPS = 3_000_000;
    private static final int ROUNDS = 40;
    /** A share given back is counted in this many parts, so that bounds are whole numbers. */
    private static final long PARTS = 1024;

    /**
     * @param lines      one a wanted line, in their order
     * @param lowerBound no choice of these ways costs less, goods and charges together
     * @param proven     whether nothing cheaper is possible: the search ended and the bound is the cost
     */
    record Chosen(List<SlipLine> lines, BigDecimal lowerBound, boolean proven) {}

    /** One way in whole units of the smallest decimal. */
    private record Way(SlipLine line, long cost, long[] spend, int set) {}

    /** Suppliers that may be used, and of these the ones that bring free. */
    private record State(int used, int free, long bound) {}

    private final List<List<Way>> lines = new ArrayList<>();
    private final List<Supplier> charging;
    private final long[] charge;
    private final long[] freeOver;
    private final int scale;
    private long best = Long.MAX_VALUE;
    private Way[] found;
    private final int mostSteps;
    private int steps;

    private SupplierChoice(List<Wanted> wanted, List<Supplier> suppliers, int decimals, int mostSteps) {
        this.mostSteps = mostSteps;
        charging = suppliers.stream().filter(supplier -> supplier.charge().signum() > 0).toList();
        int finest = decimals;
        for (Supplier supplier : charging) finest = Math.max(finest, supplier.freeOver().map(BigDecimal::scale).orElse(0));
        scale = finest;
        charge = charging.stream()
                .mapToLong(supplier -> units(supplier.charge().setScale(decimals, RoundingMode.HALF_UP)))
                .toArray();
        freeOver = charging.stream()
                .mapToLong(supplier -> supplier.freeOver().map(this::units).orElse(Long.MAX_VALUE))
                .toArray();
        wanted.forEach(one -> lines.add(ways(one)));
    }

    /**
     * @param decimals  to which charges are rounded half up; the ways' costs are rounded already
     * @param mostSteps after which the best choice found stands beside a bound
     */
    static Chosen of(List<Wanted> wanted, List<Supplier> suppliers, int decimals, int mostSteps) {
        return new SupplierChoice(wanted, suppliers, decimals, mostSteps).solve();
    }

    private long units(BigDecimal amount) {
        return amount.setScale(scale, RoundingMode.HALF_UP).unscaledValue().longValueExact();
    }

    private List<Way> ways(Wanted wanted) {
        boolean priced = wanted.ways().stream().anyMatch(line -> line.cost().isPresent());
        List<Way> ways = new ArrayList<>();
        for (SlipLine line : wanted.ways()) {
            if (priced && line.cost().isEmpty()) continue;
            Map<String, BigDecimal> parts = line.parts();
            long[] spend = new long[charging.size()];
            int set = 0;
            for (int s = 0; s < spend.length; s++) {
                spend[s] = units(parts.getOrDefault(charging.get(s).id(), BigDecimal.ZERO));
                set |= spend[s] != 0 ? 1 << s : 0;
            }
            ways.add(new Way(line, units(line.cost().orElse(BigDecimal.ZERO)), spend, set));
        }
        ways.sort(Comparator.comparingLong(Way::cost));
        return ways;
    }

    private Chosen solve() {
        List<State> states = states();
        states.sort(Comparator.comparingLong(State::bound).thenComparingInt(state -> Integer.bitCount(state.used())));
        for (State state : states) tryCheapest(state.used());
        long lower = Long.MAX_VALUE;
        for (State state : states) {
            if (state.bound() >= best) break;
            if (steps >= mostSteps) {
                lower = state.bound();
                break;
            }
            new Within(state).search();
            if (steps >= mostSteps) {
                lower = state.bound();
                break;
            }
        }
        List<SlipLine> chosen = Arrays.stream(found).map(Way::line).toList();
        long proved = Math.min(lower, best);
        return new Chosen(chosen, BigDecimal.valueOf(proved, scale), proved == best);
    }

    private static boolean within(Way way, int set) {
        return (way.set() & ~set) == 0;
    }

    /** Every state that can be reached, with each line at its cheapest and the charges of those who do not bring free. */
    private List<State> states() {
        List<State> states = new ArrayList<>();
        for (int used = 0; used < 1 << charging.size(); used++) {
            long goods = 0;
            long[] most = new long[charging.size()];
            for (List<Way> ways : lines) {
                long least = Long.MAX_VALUE;
                long[] mostHere = new long[most.length];
                for (Way way : ways) {
                    if (within(way, used)) {
                        least = Math.min(least, way.cost());
                        for (int s = 0; s < most.length; s++) mostHere[s] = Math.max(mostHere[s], way.spend()[s]);
                    }
                }
                goods = least == Long.MAX_VALUE || goods == Long.MAX_VALUE ? Long.MAX_VALUE : goods + least;
                for (int s = 0; s < most.length; s++) most[s] += mostHere[s];
            }
            int canBeFree = 0;
            for (int s = 0; s < most.length; s++) canBeFree |= most[s] > freeOver[s] ? 1 << s : 0;
            if (goods < Long.MAX_VALUE) {
                for (int free = canBeFree; ; free = free - 1 & canBeFree) {
                    states.add(new State(used, free, goods + charges(used & ~free)));
                    if (free == 0) break;
                }
            }
        }
        return states;
    }

    private long charges(int set) {
        long sum = 0;
        for (int s = 0; s < charge.length; s++) sum += (set >> s & 1) == 1 ? charge[s] : 0;
        return sum;
    }

    /** A first choice: each line at its cheapest within a set. */
    private void tryCheapest(int used) {
        Way[] picked = new Way[lines.size()];
        for (int i = 0; i < picked.length; i++) {
            picked[i] = lines.get(i).stream().filter(way -> within(way, used)).findFirst().orElseThrow();
        }
        offer(picked);
    }

    /** Kept where it costs less than the best, charges as they really fall. */
    private void offer(Way[] picked) {
        long total = 0;
        long[] goods = new long[charging.size()];
        for (Way way : picked) {
            total += way.cost();
            for (int s = 0; s < goods.length; s++) goods[s] += way.spend()[s];
        }
        for (int s = 0; s < goods.length; s++) total += goods[s] != 0 && goods[s] <= freeOver[s] ? charge[s] : 0;
        if (total < best) {
            best = total;
            found = picked.clone();
        }
    }

    /** The search in one state; all bounds are in {@link #PARTS} of a unit. */
    private final class Within {
        private final State state;
        private final List<List<Way>> own = new ArrayList<>();
        private final long[] share = new long[charging.size()];
        private final int[] order = new int[lines.size()];
        private long[][] reduced;
        private long[] restLeast;
        private long[][] restMost;
        private final Way[] picked = new Way[lines.size()];

        Within(State state) {
            this.state = state;
            lines.forEach(ways -> own.add(ways.stream().filter(way -> within(way, state.used())).toList()));
        }

        void search() {
            raiseShares();
            prepare();
            from(0, fixed(share), new long[charging.size()]);
        }

        private long reduced(Way way, long[] shares) {
            long cost = way.cost() * PARTS;
            for (int s = 0; s < shares.length; s++) cost -= shares[s] * way.spend()[s];
            return cost;
        }

        /** Charges that are paid, and what the shares ask of those who bring free. */
        private long fixed(long[] shares) {
            long sum = charges(state.used() & ~state.free()) * PARTS;
            for (int s = 0; s < shares.length; s++) sum += shares[s] * (freeOver[s] + 1);
            return sum;
        }

        /** Steps along what each supplier falls short of its limit, half as long after every few rounds. */
        private void raiseShares() {
            long[] now = new long[share.length];
            long highest = Long.MIN_VALUE;
            for (int round = 0; round < ROUNDS && state.free() != 0; round++) {
                long[] goods = new long[now.length];
                long bound = fixed(now);
                Way[] chosen = new Way[own.size()];
                for (int i = 0; i < chosen.length; i++) {
                    long least = Long.MAX_VALUE;
                    for (Way way : own.get(i)) {
                        steps++;
                        long cost = reduced(way, now);
                        if (cost < least) {
                            least = cost;
                            chosen[i] = way;
                        }
                    }
                    bound += least;
                    for (int s = 0; s < goods.length; s++) goods[s] += chosen[i].spend()[s];
                }
                offer(chosen);
                if (bound > highest) {
                    highest = bound;
                    System.arraycopy(now, 0, share, 0, now.length);
                }
                if (highest >= best * PARTS) return;
                for (int s = 0; s < now.length; s++) {
                    if ((state.free() >> s & 1) == 1) {
                        double shortBy = (double) (freeOver[s] + 1 - goods[s]) / (freeOver[s] + 1);
                        double step = 600.0 / (1 << round / 6);
                        now[s] = Math.max(0, Math.min(PARTS * 4, now[s] + Math.round(step * Math.max(-1, Math.min(1, shortBy)))));
                    }
                }
            }
        }

        /** Lines whose choice costs most first, in each the ways by their reduced cost. */
        private void prepare() {
            List<Integer> sorted = new ArrayList<>();
            for (int i = 0; i < order.length; i++) {
                List<Way> ways = new ArrayList<>(own.get(i));
                ways.sort(Comparator.comparingLong(way -> reduced(way, share)));
                own.set(i, ways);
                sorted.add(i);
            }
            sorted.sort(Comparator.comparingLong((Integer i) -> -second(own.get(i))));
            reduced = new long[order.length][];
            restLeast = new long[order.length + 1];
            restMost = new long[order.length + 1][charging.size()];
            for (int k = order.length - 1; k >= 0; k--) {
                order[k] = sorted.get(k);
                List<Way> ways = own.get(order[k]);
                reduced[k] = ways.stream().mapToLong(way -> reduced(way, share)).toArray();
                restLeast[k] = restLeast[k + 1] + reduced[k][0];
                for (int s = 0; s < charging.size(); s++) {
                    int supplier = s;
                    restMost[k][s] = restMost[k + 1][s] + ways.stream().mapToLong(way -> way.spend()[supplier]).max().orElse(0);
                }
            }
        }

        private long second(List<Way> ways) {
            return ways.size() < 2 ? 0 : reduced(ways.get(1), share) - reduced(ways.get(0), share);
        }

        private void from(int k, long cost, long[] goods) {
            if (k == order.length) {
                offer(picked);
                return;
            }
            List<Way> ways = own.get(order[k]);
            for (int w = 0; w < ways.size(); w++) {
                long more = cost + reduced[k][w];
                if (steps >= mostSteps || more + restLeast[k + 1] >= best * PARTS) return;
                steps++;
                long[] then = goods.clone();
                boolean canBeFree = true;
                for (int s = 0; s < then.length; s++) {
                    then[s] += ways.get(w).spend()[s];
                    canBeFree &= (state.free() >> s & 1) == 0 || then[s] + restMost[k + 1][s] > freeOver[s];
                }
                if (canBeFree) {
                    picked[order[k]] = ways.get(w);
                    from(k + 1, more, then);
                }
            }
        }
    }
}
