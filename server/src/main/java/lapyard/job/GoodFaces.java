package lapyard.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Section;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingResult.BoardLine;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;

/** Seen walls that the boards on hand cannot serve although plain boards lie idle: how many pieces, and the choices. */
final class GoodFaces {
    private GoodFaces() {}

    /** @param pooled with the pieces' own marks */
    static List<Finding> findings(Section section, List<Stock> rack, CuttingResult pooled, List<BedWork> beds) {
        Map<String, Stock> onHand = new HashMap<>();
        rack.forEach(stock -> onHand.put(stock.id(), stock));
        Map<String, Integer> used = new HashMap<>();
        Set<String> fromRack = new HashSet<>();
        Set<String> bought = new HashSet<>();
        int boards = 0;
        for (BoardLine line : pooled.plan()) {
            used.merge(line.stock(), line.count(), Integer::sum);
            boolean own = onHand.containsKey(line.stock());
            line.pieces().forEach(mark -> (own ? fromRack : bought).addAll(Nest.marks(mark)));
            boards += own ? 0 : line.count();
        }
        double idle = rack.stream()
                .filter(stock -> stock.goodFaces() == 0 && used.getOrDefault(stock.id(), 0) < stock.available().orElse(0))
                .mapToDouble(Stock::lengthMm)
                .max()
                .orElse(0);
        List<Piece> seen = beds.stream().flatMap(work -> work.pieces().stream()).filter(Piece::seen).toList();
        List<Piece> wanting = seen.stream()
                .filter(piece -> !fromRack.contains(piece.mark()) && piece.lengthMm() <= idle)
                .toList();
        if (wanting.isEmpty()) {
            return List.of();
        }
        int given = (int) seen.stream().filter(piece -> fromRack.contains(piece.mark())).count();
        boolean served = wanting.stream().allMatch(piece -> bought.contains(piece.mark()));
        String text = seen.size() + " pieces with a good face are wanted by seen walls, the rack gives " + given
                + (served ? ": the rest is bought while plain boards lie idle" : ": " + wanting.size() + " have no board");
        List<String> ways = new ArrayList<>();
        if (!served) {
            ways.add("put stock lengths in the catalogue, or boards with a good face in the rack");
        } else {
            ways.add("buy them: " + boards + (boards == 1 ? " board" : " boards") + " are on the slip in all");
        }
        hiding(beds, wanting).ifPresent(ways::add);
        Amount amount = new Amount(wanting.size(), "pieces");
        String where = "timber " + section.id() + ", good faces";
        return List.of(
                served
                        ? Finding.note(where, text, amount, ways.toArray(String[]::new))
                        : Finding.snag(where, text, amount, ways.toArray(String[]::new)));
    }

    /** The wall that would set most of these pieces free; the first of those that do as much. */
    private static Optional<String> hiding(List<BedWork> beds, List<Piece> wanting) {
        Map<String, Integer> byWall = new LinkedHashMap<>();
        Set<String> marks = new HashSet<>(wanting.stream().map(Piece::mark).toList());
        for (BedWork work : beds) {
            for (Piece piece : work.pieces()) {
                if (marks.contains(piece.mark())) {
                    byWall.merge("wall " + piece.wall() + " of bed " + work.bed().id(), 1, Integer::sum);
                }
            }
        }
        return byWall.entrySet().stream()
                .max(Comparator.comparingInt(Map.Entry<String, Integer>::getValue))
                .map(entry -> "hide " + entry.getKey() + ": " + entry.getValue()
                        + (entry.getValue() == 1 ? " piece" : " pieces") + " may then be plain");
    }
}
