package lapyard.job;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import lapyard.construction.Piece;
import lapyard.cutting.Assignment;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingResult.BoardLine;
import lapyard.cutting.CuttingResult.Unplaced;

/**
 * Which timber is chalked on which board. Timbers of one length and weekend may change places; among them a seen one
 * comes only from a board with a good face, then the best faces go to seen walls and there to the rim first, then the
 * heavy boards go low. The sum of it all is the least there is.
 */
final class Chalking {
    /** A board as far as it is known: the weight of its wood and the number of its good faces. */
    record Quality(double densityKgM3, int goodFaces) {}

    /** Wanted of one length; which it is does not matter to the saw. */
    record Timbers(double lengthMm, int stage, int goodFaces, List<Blank> blanks) {}

    private record Use(int course, boolean seen, boolean rim) {}

    /** @param uses of its pieces, each of the same part of the length */
    private record Kind(List<Use> uses, int goodFaces) {}

    private record Wanted(String mark, Kind kind) {}

    private record Length(double mm, int stage) {}

    private record Slot(int line, int place, Quality quality) {}

    /** Faces outweigh weight: more than any stack of the heaviest boards can make up. */
    private static final long FACE = 1_000_000_000L;

    private Chalking() {}

    /**
     * The same plan with one line a board and each piece's own mark.
     *
     * @param wanted    by the ids of the plan
     * @param rimOf     course number of the rim of a piece's bed
     * @param qualityOf by the stock ids of the plan
     */
    static CuttingResult of(CuttingResult result, Map<String, Timbers> wanted, ToIntFunction<Piece> rimOf, Function<String, Quality> qualityOf) {
        Map<Length, List<Wanted>> waiting = new LinkedHashMap<>();
        Map<String, Deque<Wanted>> byId = new HashMap<>();
        wanted.forEach((id, timbers) -> byId.put(id, timbers.blanks().stream()
                .map(blank -> new Wanted(blank.mark(), kind(blank, timbers.goodFaces(), rimOf)))
                .collect(Collectors.toCollection(ArrayDeque::new))));
        List<Unplaced> unplaced = new ArrayList<>();
        for (Unplaced one : result.unplaced()) {
            for (int i = 0; i < one.count(); i++) {
                String mark = byId.get(one.id()).pollLast().mark();
                unplaced.add(new Unplaced(mark, one.lengthMm(), 1, one.why(), one.scarce()));
            }
        }
        wanted.forEach((id, timbers) -> waiting
                .computeIfAbsent(new Length(timbers.lengthMm(), timbers.stage()), l -> new ArrayList<>())
                .addAll(byId.get(id)));

        List<BoardLine> boards = new ArrayList<>();
        Map<Length, List<Slot>> slots = new LinkedHashMap<>();
        for (BoardLine line : result.plan()) {
            for (int i = 0; i < line.count(); i++) {
                for (int place = 0; place < line.pieces().size(); place++) {
                    Timbers timbers = wanted.get(line.pieces().get(place));
                    slots.computeIfAbsent(new Length(timbers.lengthMm(), timbers.stage()), l -> new ArrayList<>())
                            .add(new Slot(boards.size(), place, qualityOf.apply(line.stock())));
                }
                boards.add(new BoardLine(line.stock(), 1, line.pieces(), line.lengthsMm(), line.leftMm()));
            }
        }
        List<String[]> marks = boards.stream().map(board -> new String[board.pieces().size()]).collect(Collectors.toList());
        slots.forEach((length, open) -> chalk(length.mm(), open, waiting.get(length), marks));
        for (int i = 0; i < boards.size(); i++) {
            BoardLine line = boards.get(i);
            boards.set(i, new BoardLine(line.stock(), 1, List.of(marks.get(i)), line.lengthsMm(), line.leftMm()));
        }
        return result.renamed(boards, unplaced);
    }

    private static Kind kind(Blank blank, int goodFaces, ToIntFunction<Piece> rimOf) {
        return new Kind(
                blank.pieces().stream()
                        .map(piece -> new Use(piece.course(), piece.seen(), piece.course() == rimOf.applyAsInt(piece)))
                        .toList(),
                goodFaces);
    }

    private static void chalk(double lengthMm, List<Slot> slots, List<Wanted> blanks, List<String[]> marks) {
        List<Quality> qualities = slots.stream().map(Slot::quality).distinct().toList();
        Map<Kind, Deque<Wanted>> kinds = new LinkedHashMap<>();
        blanks.forEach(blank -> kinds.computeIfAbsent(blank.kind(), k -> new ArrayDeque<>()).add(blank));
        List<Kind> list = List.copyOf(kinds.keySet());
        int[] there = list.stream().mapToInt(kind -> kinds.get(kind).size()).toArray();
        int[] places = qualities.stream()
                .mapToInt(quality -> (int) slots.stream().filter(slot -> slot.quality().equals(quality)).count())
                .toArray();
        long[][] cost = new long[there.length][places.length];
        for (int i = 0; i < there.length; i++) {
            for (int j = 0; j < places.length; j++) cost[i][j] = cost(list.get(i), qualities.get(j), lengthMm);
        }
        int[][] flow = Assignment.cheapest(there, places, cost);
        Map<String, Integer> order = new HashMap<>();
        blanks.forEach(blank -> order.put(blank.mark(), order.size()));
        for (Slot slot : slots) {
            int j = qualities.indexOf(slot.quality());
            int best = -1;
            for (int i = 0; i < list.size(); i++) {
                if (flow[i][j] > 0 && (best < 0 || first(kinds, list, order, i) < first(kinds, list, order, best))) best = i;
            }
            flow[best][j]--;
            marks.get(slot.line())[slot.place()] = kinds.get(list.get(best)).poll().mark();
        }
    }

    private static int first(Map<Kind, Deque<Wanted>> kinds, List<Kind> list, Map<String, Integer> order, int i) {
        return order.get(kinds.get(list.get(i)).peek().mark());
    }

    private static long cost(Kind kind, Quality quality, double lengthMm) {
        if (quality.goodFaces() < kind.goodFaces()) return Assignment.NEVER;
        long faces = 0;
        double low = 0;
        for (Use use : kind.uses()) {
            faces += use.seen() ? (use.rim() ? 3L : 2L) * (2 - quality.goodFaces()) * FACE : 0;
            low += use.course() * lengthMm / kind.uses().size() * quality.densityKgM3();
        }
        return faces + Math.round(low);
    }
}
