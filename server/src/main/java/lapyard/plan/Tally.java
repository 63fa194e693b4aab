package lapyard.plan;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.SectionGoods;

/**
 * What has really been done, cut and bought so far. It is never moved by a new plan: the rest is planned round it.
 *
 * @param day  of the plan, from 0, on which the rest begins
 */
public record Tally(int day, List<Done> done, List<Board> boards, List<Bought> bought) {
    /** Boards of one stock that are counted. */
    private static final int MOST_BOARDS = 1_000_000;

    public static final Tally NONE = new Tally(0, List.of(), List.of(), List.of());

    public Tally {
        done = List.copyOf(done);
        boards = List.copyOf(boards);
        bought = List.copyOf(bought);
    }

    /** A task by its id, {@code M.course-1}, and the day of the plan on which it was done. */
    public record Done(String task, int day) {}

    /**
     * @param name    its own number, {@code #7}
     * @param section of it
     * @param stock   stock length or id of the board on hand
     * @param opened  whether the saw has been at it
     * @param cut     marks of good pieces
     * @param spoiled marks of pieces cut wrong: their length is gone and they are still wanted
     * @param lostMm  further length that cannot be used
     * @param leftMm  what was measured as left; empty where it follows from the cuts
     * @param sawnMm  how long the pieces were sawn, by their marks, good and spoiled ones; one that is not told of is as long as
     *     it is wanted
     */
    public record Board(
            String name, String section, String stock, boolean opened, List<String> cut, List<String> spoiled, double lostMm, OptionalDouble leftMm,
            Map<String, Double> sawnMm) {
        /** How far a sawn piece may be off what is wanted and still be that piece; common practice, no source. */
        public static final double ALIKE_MM = 1;

        public Board {
            cut = List.copyOf(cut);
            spoiled = List.copyOf(spoiled);
            sawnMm = Map.copyOf(sawnMm);
        }

        /** Good pieces that are wanted as they were sawn. @param wantedMm by mark */
        public List<String> good(Map<String, Double> wantedMm) {
            return cut.stream().filter(mark -> asWanted(mark, wantedMm)).toList();
        }

        /** Spoiled pieces of lengths that are still wanted. @param wantedMm by mark */
        public List<String> wrong(Map<String, Double> wantedMm) {
            return spoiled.stream().filter(mark -> asWanted(mark, wantedMm)).toList();
        }

        /** Lengths sawn off for what the garden wants no more, or wants otherwise, mm. @param wantedMm by mark */
        public List<Double> goneMm(Map<String, Double> wantedMm) {
            return Stream.concat(cut.stream(), spoiled.stream()).filter(mark -> sawnMm.containsKey(mark) && !asWanted(mark, wantedMm)).map(sawnMm::get).toList();
        }

        private boolean asWanted(String mark, Map<String, Double> wantedMm) {
            Double wanted = wantedMm.get(mark);
            return wanted != null && Math.abs(sawnMm.getOrDefault(mark, wanted) - wanted) <= ALIKE_MM;
        }
    }

    /**
     * Packs of an item that are bought.
     *
     * @param arrived number of them that have arrived
     * @param supplier who sold them; empty where it was not tallied
     * @param paid    for all of them, delivery left out; empty where it was not tallied
     */
    public record Bought(String item, String pack, int count, int arrived, String supplier, Optional<BigDecimal> paid) {}

    /** Boards of this section in the tally. */
    public List<Board> boards(String section) {
        return boards.stream().filter(board -> board.section().equals(section)).toList();
    }

    /** How many boards of this section there are of each stock, those that are bought among them. */
    public Map<String, Integer> countsThere(String section) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        boards(section).forEach(board -> counts.merge(board.stock(), 1, Integer::sum));
        Map<String, Integer> paid = new LinkedHashMap<>();
        bought.stream().filter(one -> one.item().equals(SectionGoods.TIMBER.item(section)))
                .forEach(one -> PackCode.stock(one.pack()).ifPresent(stock -> paid.merge(stock, one.count(), (first, more) -> Math.min(first + more, MOST_BOARDS))));
        paid.forEach((stock, count) -> counts.merge(stock, count, Math::max));
        return counts;
    }

    /**
     * The boards of this section, and after them the whole boards that are bought beyond those, by the code of their pack.
     *
     * @param most of one stock that are of use: as many as pieces are wanted
     */
    public List<Board> boardsThere(String section, int most) {
        List<Board> told = boards(section);
        List<Board> there = new ArrayList<>(told);
        Map<String, Long> known = told.stream().collect(Collectors.groupingBy(Board::stock, Collectors.counting()));
        countsThere(section).forEach((stock, count) -> {
            long from = known.getOrDefault(stock, 0L);
            for (long more = from + 1; more <= Math.min(count, from + most); more++) there.add(new Board(PackCode.board(stock) + ", " + more, section, stock, false, List.of(), List.of(), 0, OptionalDouble.empty(), Map.of()));
        });
        return there;
    }

    /** The day on which each task was done, by its id. */
    public Map<String, Integer> doneOn() {
        return done.stream().collect(Collectors.toMap(Done::task, Done::day, (first, last) -> last, LinkedHashMap::new));
    }

    public boolean isEmpty() {
        return day == 0 && done.isEmpty() && boards.isEmpty() && bought.isEmpty();
    }
}
