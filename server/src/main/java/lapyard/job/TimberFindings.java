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
import lapyard.cutting.CuttingResult.Unplaced;
import lapyard.cutting.Shortage;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.RackBoard;
import lapyard.plan.Treatment;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;

/** What is to be said of the boards of one section and of what is sawn from them. */
final class TimberFindings {
    /** A way out names at most two kinds of boards: each a count and a length. */
    private static final int MOST_FACTS = 4;

    private TimberFindings() {}

    /**
     * @param rack   boards on hand as stock
     * @param pooled with the pieces' own marks
     */
    static List<Finding> of(Garden garden, Section section, List<BedWork> beds, List<Stock> rack, CuttingResult pooled, List<Blank> blanks) {
        List<Finding> findings = new ArrayList<>(barred(garden, section, beds));
        findings.addAll(offSize(garden, section));
        goodFaces(section, rack, pooled, beds).ifPresent(findings::add);
        nests(section, garden.goods().saw().kerfMm(), blanks).ifPresent(findings::add);
        runOut(section, pooled).ifPresent(findings::add);
        for (Unplaced unplaced : pooled.unplaced()) {
            if (unplaced.scarce()) continue;
            findings.add(Finding.of(FindingKind.PIECE_NO_BOARD, Place.of(What.TIMBER, section.id()).then(What.FIELD, unplaced.id()))
                    .with("piece", Fact.name(unplaced.id())).by(Fact.mm(unplaced.lengthMm()))
                    .way(WayKind.LONGER_STOCK).way(WayKind.JOIN_OR_SHORTEN));
        }
        return findings;
    }

    /** Boards of a section that stay out of the cutting of its beds, each with the reason. */
    private static List<Finding> barred(Garden garden, Section section, List<BedWork> beds) {
        Optional<String> food = beds.stream().filter(work -> work.bed().planting().food()).map(work -> work.bed().id()).findFirst();
        List<Finding> findings = new ArrayList<>();
        for (RackBoard board : garden.goods().rack()) {
            if (!board.section().equals(section.id())) continue;
            if (board.barredEverywhere().isPresent()) {
                findings.add(Finding.of(FindingKind.BOARD_BARRED, Place.of(What.BOARD, board.id()))
                        .with("why", Fact.name(board.barredEverywhere().get())).way(WayKind.LICENSED_TIP));
            } else if (food.isPresent() && board.barredFromFood().isPresent()) {
                String why = board.barredFromFood().get();
                findings.add(Finding.of(FindingKind.BOARD_NOT_FOOD, Place.of(What.BOARD, board.id()))
                        .with("why", Fact.name(board.past().coated() ? "coated" : why)).with("food", Fact.name(food.get()))
                        .way(board.past().coated() ? WayKind.USE_WHERE_NOT_PLANTED : board.past().origin().isEmpty() ? WayKind.NAME_ORIGIN : WayKind.NAME_BOARD_TREATMENT)
                        .way(WayKind.OTHER_SECTION_FOR_REST));
            }
        }
        return findings;
    }

    /** Boards on hand that may not lie in a course with others of their section. */
    private static List<Finding> offSize(Garden garden, Section section) {
        List<Finding> found = new ArrayList<>();
        for (RackBoard board : garden.goods().rack()) {
            if (!board.section().equals(section.id()) || RackRuns.fits(board, section)) continue;
            boolean high = RackRuns.off(board.measured().heightMm(), section.heightMm()) > RackRuns.TOLERANCE_MM;
            double measured = high ? board.measured().heightMm() : board.measured().thicknessMm();
            double meant = high ? section.heightMm() : section.thicknessMm();
            double thick = board.measured().thicknessMm() == 0 ? section.thicknessMm() : board.measured().thicknessMm();
            double tall = board.measured().heightMm() == 0 ? section.heightMm() : board.measured().heightMm();
            found.add(Finding.of(FindingKind.BOARD_OFF_SIZE, Place.of(What.BOARD, board.id()))
                    .with("section", new Fact.Section(section.id())).with(high ? "high" : "thick", Fact.mm(measured)).with("meant", Fact.mm(meant))
                    .with("allowed", Fact.mm(RackRuns.TOLERANCE_MM)).by(Fact.mm(Math.abs(measured - meant)))
                    .way(WayKind.OWN_SECTION, Fact.size(thick, tall)).way(WayKind.MEASURE_AGAIN));
        }
        return found;
    }

    /** Seen walls that the boards on hand cannot serve although plain boards lie idle: how many pieces, and the choices. */
    private static Optional<Finding> goodFaces(Section section, List<Stock> rack, CuttingResult pooled, List<BedWork> beds) {
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
        if (wanting.isEmpty()) return Optional.empty();
        int given = (int) seen.stream().filter(piece -> fromRack.contains(piece.mark())).count();
        int lacking = (int) wanting.stream().filter(piece -> !bought.contains(piece.mark())).count();
        boolean served = lacking == 0;
        Finding found = Finding.of(served ? FindingKind.GOOD_FACES_BOUGHT : FindingKind.GOOD_FACES_LACKING,
                        Place.of(What.TIMBER, section.id()).then(What.FIELD, "good faces"))
                .with("wanted", Fact.count(seen.size(), "pieces")).with("given", Fact.count(given, "pieces"))
                .by(Fact.count(served ? wanting.size() : lacking, "pieces"))
                .way(served ? WayKind.BUY_GOOD_FACES : WayKind.FIND_GOOD_FACES);
        return Optional.of(hiding(beds, wanting).map(found::way).orElse(found));
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

    /** Pieces that are sawn head to tail. */
    private static Optional<Finding> nests(Section section, double kerfMm, List<Blank> blanks) {
        List<Nest> nests = blanks.stream().flatMap(blank -> blank.nest().stream()).toList();
        if (nests.isEmpty()) return Optional.empty();
        int pieces = nests.stream().mapToInt(nest -> nest.parts().size()).sum();
        double saved = nests.stream().mapToDouble(nest -> nest.savedMm(kerfMm)).sum();
        boolean both = nests.stream().anyMatch(nest -> nest.goodFaces() > 1);
        return Optional.of(Finding.of(both ? FindingKind.NESTS_BOTH_FACES : FindingKind.NESTS, Place.of(What.TIMBER, section.id()).then(What.FIELD, "nests"))
                .with("pieces", Fact.count(pieces, "pieces")).with("lengths", Fact.count(nests.size(), "lengths")).by(Fact.mm(Lengths.toTenth(saved)))
                .way(WayKind.SAW_AS_SHOWN).way(both ? WayKind.GOOD_FACES_ONE : WayKind.LOOK_AT_MARKS));
    }

    /** Pieces that are left over when they are used up, and boards that would hold those, the cheapest first. */
    private static Optional<Finding> runOut(Section section, CuttingResult pooled) {
        List<Unplaced> left = pooled.unplaced().stream().filter(Unplaced::scarce).toList();
        if (left.isEmpty()) return Optional.empty();
        Finding finding = Finding.of(pooled.unplacedProven() ? FindingKind.BOARDS_RUN_OUT : FindingKind.BOARDS_RUN_OUT_PERHAPS,
                        Place.of(What.TIMBER, section.id()))
                .with("section", new Fact.Section(section.id()))
                .with("longest", Fact.mm(left.stream().mapToDouble(Unplaced::lengthMm).max().orElseThrow()))
                .by(Fact.count(left.stream().mapToInt(Unplaced::count).sum(), "pieces"));
        for (Shortage.Way way : pooled.shortage().ways()) {
            List<Fact> boards = new ArrayList<>();
            way.boards().stream().filter(more -> !more.stock().isEmpty()).forEach(more -> {
                boards.add(Fact.count(more.count(), "boards"));
                boards.add(Fact.mm(more.leastMm()));
            });
            if (!boards.isEmpty() && boards.size() <= MOST_FACTS) {
                finding = finding.way(boards.size() == 2 ? WayKind.GET_BOARDS : WayKind.GET_BOARDS_AND, boards.toArray(Fact[]::new));
            }
        }
        return Optional.of(finding.way(WayKind.LONGER_STOCK).way(WayKind.JOIN_OR_SHORTEN));
    }

    /**
     * Ends that the saw opens in treated timber and that nobody seals: rot starts there.
     *
     * @param cutting of the walls' timber, which tells what treated boards on hand go into which bed
     */
    static List<Finding> unsealed(Garden garden, List<BedWork> works, List<SectionCutting> cutting) {
        Map<String, Set<String>> onHand = Stands.boardsOnHand(garden, works, cutting);
        List<String> open = new ArrayList<>();
        double areaM2 = 0;
        for (BedWork work : works) {
            String id = work.bed().id();
            if (!work.bed().making().seal().wanted() && treated(garden, work, onHand.getOrDefault(id, Set.of()))) {
                open.add(id);
                areaM2 += Quantity.sum(work.quantities(), QuantityKind.ENDS_AREA) + Quantity.sum(work.quantities(), QuantityKind.NOTCHES_AREA);
            }
        }
        if (open.isEmpty()) return List.of();
        double shown = Math.round(areaM2 * 100) / 100.0;
        return List.of(Finding.of(FindingKind.CUTS_UNSEALED, Place.beds(open).then(What.FIELD, "cut ends")).by(Fact.m2(shown))
                .way(WayKind.CHOOSE_SEAL).way(WayKind.ACCEPT_DURABLE));
    }

    private static boolean treated(Garden garden, BedWork work, Set<String> boards) {
        return work.bed().section().treated()
                || garden.goods().rack().stream().anyMatch(board -> board.past().treatment() == Treatment.GARDEN && boards.contains(board.id()));
    }
}
