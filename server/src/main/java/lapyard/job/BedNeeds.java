package lapyard.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import lapyard.construction.BedWork;
import lapyard.construction.LinerPiece;
import lapyard.construction.LinerWays;
import lapyard.construction.Piece;
import lapyard.construction.Strip;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.working.Quantity;

/**
 * What a bed takes of all that is bought, at one size or at the least over several: lengths, sheets and amounts. At the
 * least over several sizes, the i-th longest length is the least of all the i-th longest, and there are as few as at any
 * size; so whatever goods serve the bed at one of the sizes serve these lengths too.
 *
 * @param boardsMm  wall pieces by how many good faces their board must have, longest first
 * @param stripsMm  bearers, longest first
 * @param linerMm   width and height of each piece; empty where sizes do not have equally many
 * @param linerMm2  area of the liner, over every way to split it
 * @param runs      each wall in each course, always in the same order; of one size only
 * @param meanMm    sum of the wall pieces' mean lengths, which is their material
 * @param amounts   by the name of the goods that are sold in packs, walls joined in the usual way
 * @param sure      the same at the least, however walls are joined
 * @param joined    whether a wall is joined at one of the sizes, or could be, so that other pieces could be cut for it
 * @param sizes     how many it is the least over
 */
record BedNeeds(
        Bed bed,
        Map<Integer, double[]> boardsMm,
        double[] stripsMm,
        Optional<List<double[]>> linerMm,
        double linerMm2,
        List<Run> runs,
        double meanMm,
        Map<String, Double> amounts,
        Map<String, Double> sure,
        boolean joined,
        int sizes) {

    /** A wall in one course: as long as all its parts, of which there are no fewer however it is joined. */
    record Run(double lengthMm, int parts) {
        Run and(Run more) {
            return new Run(lengthMm + more.lengthMm, parts + more.parts);
        }

        /** Whether some part of it must be longer than this. */
        boolean longerThan(double mm) {
            return lengthMm > parts * (mm + 1e-6);
        }
    }

    static Collection<Run> runs(List<Piece> pieces) {
        Map<List<Object>, Run> runs = new LinkedHashMap<>();
        for (Piece piece : pieces) runs.merge(List.of(piece.course(), piece.wall()), new Run(piece.lengthMm(), 1), Run::and);
        return runs.values();
    }

    /**
     * @param quantities construction and fill together, with what the ground takes
     * @param boughtMm   longest piece that a board gives of which more can be bought
     */
    static BedNeeds of(BedWork work, List<Quantity> quantities, Optional<Point> downhill, double boughtMm) {
        Map<Integer, List<Double>> boards = new TreeMap<>();
        Collection<Run> runs = runs(work.pieces());
        boolean joined = !work.frame().seams().isEmpty() || work.bed().walls().seams() && runs.stream().anyMatch(run -> run.longerThan(boughtMm));
        for (Piece piece : work.pieces()) boards.computeIfAbsent(piece.seen() ? 1 : 0, faces -> new ArrayList<>()).add(piece.lengthMm());
        Map<Integer, double[]> lengths = new TreeMap<>();
        boards.forEach((faces, own) -> lengths.put(faces, longestFirst(own)));
        List<double[]> liner = work.liner().stream().map(piece -> new double[] {piece.widthMm(), piece.heightMm()}).toList();
        double area = area(work.liner());
        for (List<LinerPiece> other : LinerWays.otherSplits(work, downhill)) area = Math.min(area, area(other));
        Map<String, Double> amounts = PackNeeds.amounts(work.bed(), quantities);
        double mean = work.pieces().stream().mapToDouble(Piece::meanMm).sum();
        return new BedNeeds(work.bed(), lengths, longestFirst(work.bottom().strips().stream().map(Strip::lengthMm).toList()),
                Optional.of(liner), area, List.copyOf(runs), mean, amounts, amounts, joined, 1);
    }

    /** @param less what other ways to join its walls may take less, by the name of the goods */
    BedNeeds surely(Map<String, Double> less) {
        Map<String, Double> least = new LinkedHashMap<>(amounts);
        less.forEach((item, amount) -> least.computeIfPresent(item, (same, all) -> Math.max(0, all - amount)));
        return new BedNeeds(bed, boardsMm, stripsMm, linerMm, linerMm2, runs, meanMm, amounts, least, joined, sizes);
    }

    /** The answer if nothing is known. */
    static BedNeeds nothing(Bed bed) {
        return new BedNeeds(bed, Map.of(), new double[0], Optional.empty(), 0, List.of(), 0, Map.of(), Map.of(), true, 0);
    }

    /**
     * The least over all sizes from this one on, where no wall is joined: every wall, the liner along each split and what
     * goes by lengths and areas grow with each span. How many bearers and slats a floor takes does not, so they count nothing.
     */
    BedNeeds orLarger() {
        Map<String, Double> grown = new LinkedHashMap<>(sure);
        grown.remove("slats");
        return new BedNeeds(bed, new TreeMap<>(Map.of(0, allBoards())), new double[0],
                linerMm.filter(pieces -> pieces.size() <= 1), linerMm2, List.of(), meanMm, grown, grown, joined, sizes + 1);
    }

    /** The least of both. Which walls are seen may differ, so the faces are not asked for any more. */
    BedNeeds or(BedNeeds other) {
        Map<Integer, double[]> boards = new TreeMap<>(Map.of(0, least(allBoards(), other.allBoards())));
        Optional<List<double[]>> liner = Optional.empty();
        if (linerMm.isPresent() && other.linerMm.isPresent() && linerMm.get().size() == other.linerMm.get().size()) {
            List<double[]> pieces = new ArrayList<>();
            for (int i = 0; i < linerMm.get().size(); i++) {
                pieces.add(new double[] {
                    Math.min(linerMm.get().get(i)[0], other.linerMm.get().get(i)[0]),
                    Math.min(linerMm.get().get(i)[1], other.linerMm.get().get(i)[1])
                });
            }
            liner = Optional.of(pieces);
        }
        Map<String, Double> both = new LinkedHashMap<>();
        sure.forEach((item, amount) -> {
            if (other.sure.containsKey(item)) both.put(item, Math.min(amount, other.sure.get(item)));
        });
        return new BedNeeds(bed, boards, least(stripsMm, other.stripsMm), liner, Math.min(linerMm2, other.linerMm2), List.of(),
                Math.min(meanMm, other.meanMm), both, both, joined || other.joined, sizes + other.sizes);
    }

    private double[] allBoards() {
        return boardsMm.values().stream().flatMapToDouble(Arrays::stream).boxed()
                .sorted(java.util.Comparator.reverseOrder()).mapToDouble(Double::doubleValue).toArray();
    }

    private static double[] least(double[] one, double[] other) {
        double[] least = new double[Math.min(one.length, other.length)];
        for (int i = 0; i < least.length; i++) least[i] = Math.min(one[i], other[i]);
        return least;
    }

    private static double area(List<LinerPiece> pieces) {
        return pieces.stream().mapToDouble(piece -> piece.widthMm() * piece.heightMm()).sum();
    }

    private static double[] longestFirst(List<Double> lengths) {
        return lengths.stream().sorted(java.util.Comparator.reverseOrder()).mapToDouble(Double::doubleValue).toArray();
    }
}
