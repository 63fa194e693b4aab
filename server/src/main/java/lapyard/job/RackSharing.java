package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.IntStream;

/**
 * Boards on hand shared out over buyers who each buy for themselves, so that all together pay little. Every board goes to one
 * buyer, or to none.
 *
 * <p>Where few shares are to be looked at, all of them are and the result is the least there is. Else the buyers take what they like
 * in a few orders, and single boards go from one to another as long as that saves; bounded by the number of buys that are tried.
 */
final class RackSharing<B extends RackSharing.Buy> {
    /** What one buys with some of the boards on hand. */
    interface Buy {
        BigDecimal cost();

        /** How many of each kind of board on hand are used, at most those offered. */
        int[] used();
    }

    /** Buys of all shares that are looked at one by one; each is a search of its own. */
    private static final int MOST_OF_ALL = 64;

    /** Further buys that are tried where they are more. */
    private static final int MOST_BUYS = 24;

    private final int buyers;
    private final int[] boards;
    private final BiFunction<Integer, int[], B> buy;
    private final Map<List<Integer>, B> known = new HashMap<>();

    private RackSharing(int buyers, int[] boards, BiFunction<Integer, int[], B> buy) {
        this.buyers = buyers;
        this.boards = boards.clone();
        this.buy = buy;
    }

    /**
     * @param boards of each kind on hand
     * @param buy    what a buyer, from 0, buys where so many of each kind are offered; equal offers have equal answers
     * @return what each buys who is offered no more than what it uses then, in their order
     */
    static <B extends Buy> List<B> of(int buyers, int[] boards, BiFunction<Integer, int[], B> buy) {
        RackSharing<B> sharing = new RackSharing<>(buyers, boards, buy);
        List<B> shared = buyers > 1 && looksAtAll(buyers, boards) ? sharing.best() : sharing.better();
        return IntStream.range(0, buyers).mapToObj(buyer -> sharing.buys(buyer, shared.get(buyer).used())).toList();
    }

    /** Whether every share is looked at, so that no other costs less. */
    static boolean looksAtAll(int buyers, int[] boards) {
        long shares = buyers;
        for (int count : boards) shares = Math.min(Integer.MAX_VALUE, shares * (count + 1));
        return buyers <= 1 || shares == buyers || shares <= MOST_OF_ALL;
    }

    private B buys(int buyer, int[] offered) {
        List<Integer> key = new ArrayList<>(List.of(buyer));
        for (int count : offered) key.add(count);
        return known.computeIfAbsent(key, asked -> buy.apply(buyer, offered.clone()));
    }

    /** Least cost by buyers so far and boards left, each buyer offered every part of them. */
    private List<B> best() {
        Map<List<Integer>, List<B>> reached = new HashMap<>(Map.of(list(boards), List.of()));
        for (int buyer = 0; buyer < buyers; buyer++) {
            Map<List<Integer>, List<B>> next = new HashMap<>();
            for (Map.Entry<List<Integer>, List<B>> one : reached.entrySet()) {
                int[] left = one.getKey().stream().mapToInt(Integer::intValue).toArray();
                for (int[] offered : parts(left)) {
                    B bought = buys(buyer, offered);
                    List<B> all = new ArrayList<>(one.getValue());
                    all.add(bought);
                    next.merge(list(less(left, bought.used())), all, (a, b) -> cost(a).compareTo(cost(b)) <= 0 ? a : b);
                }
            }
            reached = next;
        }
        return reached.values().stream().min((a, b) -> cost(a).compareTo(cost(b))).orElseThrow();
    }

    /** Every part of some boards, all of them first. */
    private static List<int[]> parts(int[] boards) {
        List<int[]> parts = new ArrayList<>(List.of(new int[boards.length]));
        for (int kind = 0; kind < boards.length; kind++) {
            List<int[]> more = new ArrayList<>();
            for (int count = boards[kind]; count >= 0; count--) {
                for (int[] part : parts) {
                    int[] one = part.clone();
                    one[kind] = count;
                    more.add(one);
                }
            }
            parts = more;
        }
        return parts;
    }

    private List<B> better() {
        List<B> best = inOrder(false);
        if (Arrays.stream(boards).sum() == 0 || buyers < 2) return best;
        List<B> reversed = inOrder(true);
        if (cost(reversed).compareTo(cost(best)) < 0) best = reversed;
        int limit = known.size() + MOST_BUYS;
        Optional<List<B>> moved = Optional.of(best);
        while (moved.isPresent() && known.size() < limit) {
            best = moved.get();
            moved = moved(best, limit);
        }
        return best;
    }

    private List<B> inOrder(boolean reversed) {
        List<B> bought = new ArrayList<>();
        int[] left = boards.clone();
        for (int i = 0; i < buyers; i++) {
            B next = buys(reversed ? buyers - 1 - i : i, left);
            bought.add(reversed ? 0 : i, next);
            left = less(left, next.used());
        }
        return bought;
    }

    /** One board from who uses it to another saves; empty where none does. */
    private Optional<List<B>> moved(List<B> now, int limit) {
        int[] left = boards;
        for (B one : now) left = less(left, one.used());
        for (int kind = 0; kind < boards.length; kind++) {
            for (int giver = 0; giver < buyers; giver++) {
                if (now.get(giver).used()[kind] == 0) continue;
                for (int taker = 0; taker < buyers; taker++) {
                    if (taker == giver || known.size() >= limit) continue;
                    int[] fewer = plus(now.get(giver).used(), left);
                    fewer[kind] = now.get(giver).used()[kind] - 1;
                    B gives = buys(giver, fewer);
                    int[] more = plus(now.get(taker).used(), less(plus(now.get(giver).used(), left), gives.used()));
                    B takes = buys(taker, more);
                    if (gives.cost().add(takes.cost()).compareTo(now.get(giver).cost().add(now.get(taker).cost())) < 0) {
                        List<B> then = new ArrayList<>(now);
                        then.set(giver, gives);
                        then.set(taker, takes);
                        return Optional.of(then);
                    }
                }
            }
        }
        return Optional.empty();
    }

    private BigDecimal cost(List<B> all) {
        return all.stream().map(Buy::cost).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static List<Integer> list(int[] counts) {
        return Arrays.stream(counts).boxed().toList();
    }

    private static int[] less(int[] from, int[] taken) {
        return IntStream.range(0, from.length).map(i -> from[i] - taken[i]).toArray();
    }

    private static int[] plus(int[] some, int[] more) {
        return IntStream.range(0, some.length).map(i -> some[i] + more[i]).toArray();
    }
}
