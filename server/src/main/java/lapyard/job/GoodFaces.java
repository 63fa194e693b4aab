package lapyard.job;

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
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;

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
        for (BoardLine line : pooled.plan()) {
            used.merge(line.stock(), line.count(), Integer::sum);
            boolean own = onHand.containsKey(line.stock());
            line.pieces().forEach(mark -> (own ? fromRack : bought).addAll(Nest.marks(mark)));
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
        if (wanting.isEmpty()) return List.of();
        int given = (int) seen.stream().filter(piece -> fromRack.contains(piece.mark())).count();
        int lacking = (int) wanting.stream().filter(piece -> !bought.contains(piece.mark())).count();
        boolean served = lacking == 0;
        Finding found = Finding.of(served ? FindingKind.GOOD_FACES_BOUGHT : FindingKind.GOOD_FACES_LACKING,
                        Place.of(What.TIMBER, section.id()).then(What.FIELD, "good faces"))
                .with("wanted", Fact.count(seen.size(), "pieces")).with("given", Fact.count(given, "pieces"))
                .by(Fact.count(served ? wanting.size() : lacking, "pieces"))
                .way(served ? WayKind.BUY_GOOD_FACES : WayKind.FIND_GOOD_FACES);
        return List.of(hiding(beds, wanting).map(found::way).orElse(found));
    }

    /** The wall that would set most of these pieces free; the first of those that do as much. */
    private static Optional<WayOut> hiding(List<BedWork> beds, List<Piece> wanting) {
        Map<String, Integer> byWall = new LinkedHashMap<>();
        Set<String> marks = new HashSet<>(wanting.stream().map(Piece::mark).toList());
        for (BedWork work : beds) {
            for (Piece piece : work.pieces()) {
                if (marks.contains(piece.mark())) byWall.merge("wall " + piece.wall() + " of bed " + work.bed().id(), 1, Integer::sum);
            }
        }
        return byWall.entrySet().stream()
                .max(Comparator.comparingInt(Map.Entry<String, Integer>::getValue))
                .map(entry -> WayOut.of(WayKind.HIDE_WALL, Fact.name(entry.getKey()), Fact.count(entry.getValue(), "pieces")));
    }
}
