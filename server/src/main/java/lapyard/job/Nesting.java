package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.construction.PieceEnd;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingProblem.Demand;
import lapyard.cutting.CuttingProblem.Stock;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingResult.BoardLine;

/**
 * Which pieces with angled ends are sawn head to tail. A hidden one may be on any board; a seen one only where some board
 * has two good faces, as its neighbour in the nest shows the other one. Each nest is of one weekend.
 *
 * @see "docs/method/cutting.md"
 */
final class Nesting {
    /** @param result under the ids of the demands; its bound holds for every way to nest */
    record Plan(SawDemands asked, CuttingResult result) {}

    private static final double TENTHS = 10;

    /** A piece is at most so much shorter than its length is given. */
    private static final double ROUNDED = 0.05;

    /** Parts of what the ends of a board may leave unsaved that are tried. More of them found little more in made-up gardens. */
    private static final double[] UNSAVED = {1, 0.5};

    private final CuttingProblem saw;
    private final boolean graded;
    private final Predicate<Double> meets;
    private final List<Blank> blanks;
    /** Pieces that could be nested, by their marks. */
    private final Map<String, Piece> could = new LinkedHashMap<>();

    /**
     * @param blanks what is cut square where nothing more is nested
     * @param meets  whether ends of a set may meet
     */
    private Nesting(CuttingProblem saw, boolean graded, List<Blank> blanks, Set<String> asTheyAre, Predicate<Double> meets) {
        this.saw = saw;
        this.meets = meets;
        this.graded = graded;
        this.blanks = blanks;
        boolean seenToo = saw.stock().stream().anyMatch(stock -> stock.goodFaces() == CuttingProblem.MOST_GOOD_FACES);
        for (Blank blank : blanks) {
            Piece piece = blank.pieces().get(0);
            boolean saves = half(piece.start()) > 0 || half(piece.end()) > 0;
            if (blank.nest().isEmpty() && !asTheyAre.contains(blank.mark()) && saves && (seenToo || !piece.seen()) && shortened(piece) > 0) {
                could.put(piece.mark(), piece);
            }
        }
    }

    /**
     * @param saw       with its stock
     * @param blanks    what is cut square where nothing more is nested
     * @param offered   the same pieces nested in another way, which is tried as well; none where there is no other
     * @param asTheyAre marks of those that may be cut already
     * @param graded    whether some boards have no good face
     * @param solve     finds the plan of a problem, told what no way to nest costs less than
     * @param glance    the same, unheard
     * @return what costs least, then takes the fewest boards; of equal plans the one that nests nothing more
     */
    static Plan cheapest(
            CuttingProblem saw,
            List<Blank> blanks,
            List<Blank> offered,
            Set<String> asTheyAre,
            boolean graded,
            BiFunction<CuttingProblem, Optional<BigDecimal>, CuttingResult> solve,
            Function<CuttingProblem, CuttingResult> glance) {
        SawDemands straight = SawDemands.of(saw, blanks, graded);
        Nesting nesting = new Nesting(saw, graded, blanks, asTheyAre, set -> true);
        if (nesting.could.size() < 2) return new Plan(straight, solve.apply(straight.problem(), Optional.empty()));
        BigDecimal least = glance.apply(nesting.shorterPieces()).lowerBound().max(glance.apply(nesting.longerBoards()).lowerBound());
        Plan plan = new Plan(straight, solve.apply(straight.problem(), Optional.of(least)));
        if (!plan.result().unplaced().isEmpty()) return plan;
        plan = best(saw, graded, asTheyAre, plan, least, glance);
        if (offered.stream().anyMatch(blank -> blank.nest().isPresent()) && least.compareTo(plan.result().cost()) < 0) {
            Plan other = cheaper(plan, SawDemands.of(saw, offered, graded), glance);
            plan = other == plan ? plan : best(saw, graded, asTheyAre, other, least, glance);
        }
        return new Plan(plan.asked(), plan.result().bounded(least));
    }

    private static Plan best(CuttingProblem saw, boolean graded, Set<String> asTheyAre, Plan from, BigDecimal least,
            Function<CuttingProblem, CuttingResult> glance) {
        Plan best = from;
        Optional<Plan> better = Optional.of(from);
        while (better.isPresent()) {
            best = better.get();
            better = better(saw, graded, asTheyAre, best, least, glance);
        }
        return best;
    }

    /** The best that nesting more of a plan's single pieces brings, all sets at once or one alone. */
    private static Optional<Plan> better(CuttingProblem saw, boolean graded, Set<String> asTheyAre, Plan than, BigDecimal least,
            Function<CuttingProblem, CuttingResult> glance) {
        List<Blank> blanks = than.asked().blanks().values().stream().flatMap(List::stream).toList();
        Nesting all = new Nesting(saw, graded, blanks, asTheyAre, set -> true);
        Set<Double> sets = new TreeSet<>();
        all.could.values().forEach(piece -> all.sets(piece).stream().filter(set -> set > 0).forEach(sets::add));
        List<Nesting> ways = new ArrayList<>(List.of(all));
        if (sets.size() > 1) sets.forEach(only -> ways.add(new Nesting(saw, graded, blanks, asTheyAre, only::equals)));
        Plan best = than;
        for (Nesting way : ways) {
            for (double unsaved : UNSAVED) {
                if (way.could.size() > 1 && least.compareTo(best.result().cost()) < 0) {
                    best = cheaper(best, SawDemands.of(saw, way.nested(unsaved, glance), graded), glance);
                }
            }
        }
        return Optional.of(best).filter(one -> one != than);
    }

    private static Plan cheaper(Plan than, SawDemands nested, Function<CuttingProblem, CuttingResult> glance) {
        Plan other = new Plan(nested, glance.apply(nested.problem()));
        return less(other.result(), than.result()) ? other : than;
    }

    private static boolean less(CuttingResult one, CuttingResult than) {
        int cost = one.cost().compareTo(than.cost());
        return one.unplaced().isEmpty() && (cost < 0 || cost == 0 && one.boards() < than.boards());
    }

    /** Where two such ends meet, the two pieces take twice this less of a board. */
    private double half(PieceEnd end) {
        return meets.test(end.setDeg()) ? Nest.savedMm(end, saw.kerfMm()) / 2 : 0;
    }

    private double shortened(Piece piece) {
        return piece.lengthMm() - half(piece.start()) - half(piece.end());
    }

    /** Lengths that make no difference to the saw or to a nest. */
    private record Kind(double lengthMm, int stage, int goodFaces, List<Double> sets) {}

    /**
     * No nest takes less of a board than this problem's pieces do: each shorter by what both its ends could save, and each
     * board by the least that its own two ends leave unsaved.
     */
    private CuttingProblem shorterPieces() {
        double unsaved = blanks.stream()
                .mapToDouble(blank -> could(blank) ? Math.min(half(piece(blank).start()), half(piece(blank).end())) : 0)
                .min()
                .orElse(0);
        return problem(board -> -down(2 * unsaved), blank -> new Kind(
                could(blank) ? down(shortened(piece(blank)) - ROUNDED) : blank.lengthMm(),
                blank.stage(),
                oneFace(blank),
                List.of()), new HashMap<>());
    }

    /**
     * Nor more than these pieces as they are on boards that are longer by the most that nests can save on each. It tells
     * more where few boards may hold a nest.
     */
    private CuttingProblem longerBoards() {
        return problem(board -> {
            List<Piece> on = could.values().stream()
                    .filter(piece -> !piece.seen() || board.goodFaces() == CuttingProblem.MOST_GOOD_FACES)
                    .toList();
            double shortest = on.stream().mapToDouble(this::shortened).min().orElse(Double.POSITIVE_INFINITY);
            double joint = on.stream().mapToDouble(this::most).max().orElse(0) * 2;
            double pieces = Math.floor((board.lengthMm() + saw.kerfMm()) / (shortest - ROUNDED + saw.kerfMm()));
            return up(Math.max(0, pieces - 1) * joint + pieces * ROUNDED);
        }, blank -> new Kind(blank.lengthMm(), blank.stage(), oneFace(blank), List.of()), new HashMap<>());
    }

    private int oneFace(Blank blank) {
        return Math.min(blank.goodFaces(graded), graded ? 1 : 0);
    }

    private double most(Piece piece) {
        return Math.max(half(piece.start()), half(piece.end()));
    }

    /**
     * Blanks with nests among them, such as lie together on the boards of a problem in which every end is met.
     *
     * @param part of what the two ends of a board may leave unsaved; below 1 a nest may turn out too long for its board and
     *     then loses its last pieces
     */
    private List<Blank> nested(double part, Function<CuttingProblem, CuttingResult> glance) {
        double unsaved = could.values().stream().mapToDouble(this::most).max().orElse(0) * part;
        Map<String, Double> usable = new HashMap<>();
        saw.stock().forEach(board -> usable.put(board.id(), board.lengthMm() - (board.sawnEnd() ? 1 : 2) * saw.endTrimMm()));
        Map<String, Deque<Blank>> waiting = new HashMap<>();
        CuttingResult result = glance.apply(problem(board -> -up(2 * unsaved), blank -> could(blank)
                ? new Kind(up(shortened(piece(blank))), blank.stage(), piece(blank).seen() ? CuttingProblem.MOST_GOOD_FACES : 0, sets(piece(blank)))
                : new Kind(blank.lengthMm(), blank.stage(), blank.goodFaces(graded), List.of()), waiting));
        List<Blank> nested = new ArrayList<>();
        Set<String> used = new HashSet<>();
        for (BoardLine line : result.plan()) {
            for (int board = 0; board < line.count(); board++) {
                Map<Integer, List<Piece>> byStage = new TreeMap<>();
                for (String id : line.pieces()) {
                    Blank blank = waiting.get(id).poll();
                    if (could(blank)) byStage.computeIfAbsent(blank.stage(), stage -> new ArrayList<>()).add(piece(blank));
                }
                double most = usable.get(line.stock());
                byStage.forEach((stage, pieces) -> chains(pieces).forEach(chain -> fitting(chain, most).ifPresent(nest -> {
                    nested.add(Blank.of(nest, stage));
                    nest.pieces().forEach(piece -> used.add(piece.mark()));
                })));
            }
        }
        blanks.stream().filter(blank -> !used.contains(piece(blank).mark())).forEach(nested::add);
        return nested;
    }

    private Optional<Nest> fitting(List<Piece> chain, double mostMm) {
        Optional<Nest> nest = Nest.of(chain, saw.kerfMm());
        return nest.isPresent() && nest.get().lengthMm() > mostMm ? fitting(chain.subList(0, chain.size() - 1), mostMm) : nest;
    }

    /**
     * @param longerMm how much longer each board is taken to be
     * @param behind   is told the blanks of each demand
     */
    private CuttingProblem problem(ToDoubleFunction<Stock> longerMm, Function<Blank, Kind> kindOf, Map<String, Deque<Blank>> behind) {
        Map<Kind, Deque<Blank>> kinds = new LinkedHashMap<>();
        blanks.forEach(blank -> kinds.computeIfAbsent(kindOf.apply(blank), kind -> new ArrayDeque<>()).add(blank));
        List<Demand> demands = new ArrayList<>();
        kinds.forEach((kind, own) -> {
            String id = String.valueOf(demands.size());
            demands.add(new Demand(id, kind.lengthMm(), own.size(), kind.stage(), kind.goodFaces()));
            behind.put(id, own);
        });
        List<Stock> boards = saw.stock().stream()
                .map(board -> board.longer(longerMm.applyAsDouble(board)))
                .filter(board -> board.lengthMm() > 0)
                .toList();
        return saw.with(boards, demands);
    }

    /**
     * Pieces in rows in which each meets the one before it with an end of the same set. A row begins where nothing could
     * meet it: at a square end, or at an end of a set that an odd number of ends has.
     */
    private List<List<Piece>> chains(Collection<Piece> pieces) {
        List<Piece> left = new ArrayList<>(pieces);
        List<List<Piece>> chains = new ArrayList<>();
        while (!left.isEmpty()) {
            Map<Double, Integer> ends = new TreeMap<>();
            left.forEach(piece -> sets(piece).forEach(set -> ends.merge(set, 1, Integer::sum)));
            Piece piece = left.stream()
                    .min(Comparator.comparingInt(one -> sets(one).stream()
                            .mapToInt(set -> set == 0 ? 0 : ends.get(set) % 2 == 1 ? 1 : 2)
                            .min()
                            .getAsInt()))
                    .orElseThrow();
            double set = sets(piece).stream()
                    .max(Comparator.comparingInt(one -> one == 0 ? 0 : ends.get(one) % 2 == 1 ? 1 : 2))
                    .orElseThrow();
            List<Piece> chain = new ArrayList<>();
            while (piece != null) {
                chain.add(piece);
                left.remove(piece);
                double meets = set;
                piece = set == 0 ? null : next(left, meets);
                set = piece == null ? 0 : other(piece, meets);
            }
            chains.add(chain);
        }
        return chains;
    }

    /** One that leads on: with both its ends of this set, then with another slanted end, then with a square one. */
    private Piece next(List<Piece> left, double set) {
        return left.stream()
                .filter(piece -> sets(piece).contains(set))
                .min(Comparator.comparingInt(piece -> other(piece, set) == set ? 0 : other(piece, set) > 0 ? 1 : 2))
                .orElse(null);
    }

    private double other(Piece piece, double set) {
        List<Double> sets = sets(piece);
        return sets.get(0) == set ? sets.get(1) : sets.get(0);
    }

    /** The saw's sets for both ends; 0 for one that saves nothing by meeting another. */
    private List<Double> sets(Piece piece) {
        return Stream.of(piece.start(), piece.end()).map(end -> half(end) > 0 ? end.setDeg() : 0).sorted().toList();
    }

    private boolean could(Blank blank) {
        return blank.nest().isEmpty() && could.containsKey(blank.mark());
    }

    private static Piece piece(Blank blank) {
        return blank.pieces().get(0);
    }

    private static double down(double mm) {
        return Math.floor(mm * TENTHS + 1e-6) / TENTHS;
    }

    private static double up(double mm) {
        return Math.ceil(mm * TENTHS - 1e-6) / TENTHS;
    }
}
