package lapyard.layout;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.FreeGround;
import lapyard.job.SearchMemory;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.LayoutWishes;
import lapyard.plan.LayoutWishes.Merit;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.plan.Wish;
import lapyard.working.Abandonable;
import lapyard.working.Progress;
import org.locationtech.jts.geom.Envelope;

/** Lays a yard out in several orders and keeps those that stand every check. */
public final class LayOut {
    /** Part of the beds' ground by which two proposals must differ. */
    private static final double VISIBLY = 0.25;

    /** What an order takes at most on a machine of today, and what each bed adds to it. */
    private static final double ORDER_SECONDS = 0.2;

    private static final double BED_SECONDS = 0.01;

    /** How the slanted sides that rows follow are called. */
    private static final List<String> SLANTED = List.of("longest", "second longest");

    private final Garden garden;
    private final LayoutWishes wishes;
    private final List<Wish> beds;
    private final List<Bed> pinned;
    private final AccessStandard standard;
    private final double pathMm;
    private final double gapMm;
    private final FreeGround ground;
    private final SearchMemory memory;
    private final Map<Proposal, CoveredGrid> covered = new IdentityHashMap<>();

    /** One way to order a yard. */
    private record Order(String words, double deg, Shape shape) {}

    private enum Shape {
        ROWS,
        BLOCKS,
        FITTED
    }

    /** Where beds go in one frame, and what finds more places there. */
    private record Placed(List<BoxSpot> spots, OutlineFit fit) {}

    private LayOut(Garden garden, LayoutWishes wishes, SearchMemory memory) {
        this.garden = garden;
        this.wishes = wishes;
        this.memory = memory;
        this.standard = garden.ground().access();
        this.pathMm = wishes.pathMm() > 0 ? wishes.pathMm() : standard.walking().pathMm();
        this.gapMm = Math.max(pathMm, standard.reaching().standMm());
        this.ground = FreeGround.of(garden, wishes.marginMm());
        this.pinned = garden.beds().stream().filter(bed -> wishes.pinned().contains(bed.id())).toList();
        this.beds = wishes.beds().isEmpty() ? own(garden, wishes.pinned()) : wishes.beds();
        if (beds.isEmpty()) {
            throw new CannotAnswer(Finding.of(FindingKind.LAY_OUT_NOTHING, Place.field("layOut")).way(WayKind.NAME_TYPES).way(WayKind.DRAW_BEDS));
        }
    }

    /**
     * @param seconds  what it may be worth, 0 or more: a number of orders, at least one, that depends on the number of beds and not on a
     *                 clock; a stop of the thread ends it too, and what was laid out by then stands
     * @param progress hears the most beds laid out and the most that could be
     * @return at least three proposals where so many orders give different ones; what became of the rest else
     * @throws IllegalArgumentException where no yard is drawn or no bed is wanted
     */
    public static LaidOut of(Garden garden, LayoutWishes wishes, double seconds, Progress progress, SearchMemory memory) {
        return new LayOut(garden, wishes, memory).run(seconds, progress);
    }

    /** The garden's own beds, those alike as one wish of just so many. */
    private static List<Wish> own(Garden garden, Set<String> pinned) {
        return garden.beds().stream().filter(bed -> !pinned.contains(bed.id()))
                .collect(Collectors.groupingBy(
                        bed -> List.<Object>of(bed.type(), bed.outline(), bed.walls(), bed.making(), bed.inside(), bed.planting()), LinkedHashMap::new, Collectors.toList()))
                .values().stream().map(same -> new Wish(same.get(0), same.size(), same.size())).toList();
    }

    private LaidOut run(double seconds, Progress progress) {
        int bound = 0;
        for (double deg : Stream.concat(Stream.of(0.0), slantedDeg().stream()).toList()) {
            bound = Math.max(bound, NumberBound.of(ground, new Frame(deg), beds, kinds(), gapMm));
        }
        int most = pinned.size() + bound;
        progress.reached(BigDecimal.ZERO, BigDecimal.valueOf(most));
        List<Proposal> proposals = new ArrayList<>();
        List<Order> orders = orders();
        int worth = Math.max(1, (int) Math.min(orders.size(), seconds / (ORDER_SECONDS + BED_SECONDS * most)));
        int tried = 0;
        for (Order order : orders.subList(0, worth)) {
            if (Thread.currentThread().isInterrupted()) break;
            Abandonable.check();
            Optional<Proposal> one = proposal(order);
            // an order that was cut short while its boards were looked for is dearer than it need be
            if (Thread.currentThread().isInterrupted()) break;
            one.ifPresent(proposals::add);
            tried++;
            int beds = proposals.stream().mapToInt(proposal -> proposal.figures().beds()).max().orElse(0);
            progress.reached(BigDecimal.valueOf(beds), BigDecimal.valueOf(most));
        }
        List<Proposal> ranked = different(proposals);
        return new LaidOut(ranked, most, shortOf(ranked), tried == orders.size(), became(tried, proposals, ranked));
    }

    private LaidOut.Orders became(int tried, List<Proposal> proposals, List<Proposal> kept) {
        List<Proposal> dropped = proposals.stream().filter(one -> !kept.contains(one)).toList();
        int alike = (int) dropped.stream().filter(one -> kept.stream().anyMatch(other -> alike(one, other))).count();
        return new LaidOut.Orders(tried, tried - proposals.size(), alike, dropped.size() - alike);
    }

    private boolean alike(Proposal one, Proposal other) {
        return covered(one).differs(covered(other)) < VISIBLY;
    }

    private CoveredGrid covered(Proposal one) {
        return covered.computeIfAbsent(one, proposal -> CoveredGrid.of(proposal.garden()));
    }

    private Optional<Proposal> proposal(Order order) {
        Frame frame = new Frame(order.deg());
        for (double aisle : aisles()) {
            Placed placed = placed(frame, order.shape(), aisle);
            Proposing proposing = new Proposing(garden, beds, pinned, pathMm, ground, frame, placed.fit(), memory);
            Optional<Proposal> proposal = proposing.of(order.words(), placed.spots());
            if (proposal.isPresent()) return proposal;
        }
        return Optional.empty();
    }

    private int shortOf(List<Proposal> proposals) {
        int wanted = beds.stream().mapToInt(Wish::least).sum();
        return proposals.stream().mapToInt(one -> Math.max(0, wanted - (one.figures().beds() - pinned.size()))).min().orElse(wanted);
    }

    /** Between rows a path, or where a standard asks for it room to turn at a path's end. */
    private List<Double> aisles() {
        return standard.named() && standard.walking().turningMm() > gapMm ? List.of(gapMm, standard.walking().turningMm()) : List.of(gapMm);
    }

    private List<Order> orders() {
        List<Order> orders = new ArrayList<>(List.of(
                new Order("rows along the wall", 0, Shape.ROWS),
                new Order("rows away from the wall", 90, Shape.ROWS),
                new Order("blocks round a middle path away from the wall", 0, Shape.BLOCKS),
                new Order("blocks round a middle path along the wall", 90, Shape.BLOCKS),
                new Order("rows along the wall, begun at the back", 180, Shape.ROWS),
                new Order("rows away from the wall, begun at the left", 270, Shape.ROWS)));
        List<Double> slanted = slantedDeg();
        for (int i = slanted.size() - 1; i >= 0; i--) {
            String side = SLANTED.get(i);
            orders.add(1, new Order("rows along the " + side + " slanted side", slanted.get(i), Shape.ROWS));
            orders.add(new Order("rows along the " + side + " slanted side, begun at the back", slanted.get(i) + 180, Shape.ROWS));
        }
        if (kinds().stream().anyMatch(kind -> !kind.rectangle())) {
            orders.add(3, new Order("beds fitted into each other, from the wall", 0, Shape.FITTED));
            orders.add(new Order("beds fitted into each other, from the back", 180, Shape.FITTED));
        }
        return orders;
    }

    /**
     * Directions of the longest sides that are square neither to the house wall nor to one before them, longest first, in 0 up to 180
     * degrees to the thousandth; within a degree counts as square, and a side shorter than half the longest of all is no side to follow.
     */
    private List<Double> slantedDeg() {
        Outline yard = ground.yard();
        List<Integer> longestFirst = IntStream.range(0, yard.sides()).boxed()
                .sorted(Comparator.comparingDouble((Integer side) -> -Math.rint(yard.sideMm(side)))).toList();
        List<Double> degrees = new ArrayList<>();
        for (int side : longestFirst) {
            if (degrees.size() == SLANTED.size() || yard.sideMm(side) < yard.sideMm(longestFirst.get(0)) / 2) break;
            Point along = yard.direction(side);
            double deg = (Math.round(Math.toDegrees(Math.atan2(along.y(), along.x())) * 1000) / 1000.0 % 180 + 180) % 180;
            boolean square = Stream.concat(Stream.of(0.0), degrees.stream()).anyMatch(other -> Math.abs(Math.IEEEremainder(deg - other, 90)) < 1);
            if (!square) degrees.add(deg);
        }
        return degrees;
    }

    private List<BoxedBed> kinds() {
        return IntStream.range(0, beds.size()).boxed().flatMap(i -> BoxedBed.all(i, beds.get(i).making()).stream()).toList();
    }

    /** One for each box that a wish can have. */
    private static List<BoxedBed> boxes(List<BoxedBed> kinds) {
        List<BoxedBed> boxes = new ArrayList<>();
        for (BoxedBed kind : kinds) {
            if (boxes.stream().noneMatch(other -> other.wish() == kind.wish() && other.w() == kind.w() && other.d() == kind.d())) boxes.add(kind);
        }
        return boxes;
    }

    private Placed placed(Frame frame, Shape shape, double aisleMm) {
        List<List<Point>> kept = new ArrayList<>(ground.kept().stream().map(frame::in).toList());
        pinned.forEach(bed -> kept.addAll(Boxes.parts(frame, bed, gapMm)));
        Boxes.apron(ground, pathMm).ifPresent(apron -> kept.add(frame.in(apron)));
        List<List<Point>> within = ground.beds().stream().map(frame::in).toList();
        double middle = Double.NaN;
        if (shape == Shape.BLOCKS) {
            Envelope all = Jts.box(within.stream().flatMap(List::stream).toList());
            middle = Math.rint((all.getMinX() + all.getMaxX()) / 2);
            double half = gapMm / 2;
            kept.add(Boxes.ring(new double[] {middle - half, all.getMinY() - 1, middle + half, all.getMaxY() + 1}));
        }
        Room room = new Room(within, kept, ground.lines().stream().map(frame::in).toList());
        Room standing = new Room(List.of(frame.in(ground.yard())), ground.standing().stream().map(frame::in).toList(), List.of());
        RowSearch rows = new RowSearch(room, standing, beds, boxes(kinds()),
                new RowSearch.Rules(gapMm, aisleMm, standard.reaching().standMm(), standard.reaching().reachMm()), middle, new HashMap<>());
        OutlineFit fit = new OutlineFit(room, standing, rows, beds, kinds(), Math.max(gapMm, aisleMm), standard.reaching().standMm());
        return new Placed(fit.filled(shape == Shape.FITTED ? List.of() : rows.run(), List.of()), fit);
    }

    /**
     * First those that no other equals or betters in every figure. Where they are fewer than three, which is where little but
     * paths differs, others too, unless another has more beds and is better in everything that differs. Of two that hardly differ to look at the one that ranks first stays.
     */
    private List<Proposal> different(List<Proposal> proposals) {
        List<Merit> differing = Arrays.stream(Merit.values())
                .filter(what -> proposals.stream().anyMatch(one -> proposals.get(0).figures().differs(one.figures(), what))).toList();
        List<Proposal> kept = new ArrayList<>();
        for (boolean beaten : new boolean[] {false, true}) {
            for (Proposal one : ranked(proposals)) {
                boolean alike = kept.stream().anyMatch(other -> alike(one, other));
                boolean worse = proposals.stream().anyMatch(other -> beaten
                        ? other.figures().beds() > one.figures().beds() && other.figures().betterInAll(one.figures(), differing)
                        : other.figures().beats(one.figures()));
                if (!alike && !worse && (!beaten || kept.size() < LaidOut.ENOUGH)) kept.add(one);
            }
        }
        return ranked(kept);
    }

    private List<Proposal> ranked(List<Proposal> proposals) {
        List<Proposal> ranked = new ArrayList<>(proposals);
        Comparator<Proposal> order = (a, b) -> 0;
        for (Merit what : wishes.ranking()) {
            order = order.thenComparing(Comparator.comparingDouble((Proposal one) -> Math.round(one.figures().worth(what) * 100)).reversed());
        }
        ranked.sort(order);
        return ranked;
    }

    /**
     * Places of a grid that the beds of a garden cover.
     *
     * @param places ascending, each with its column in the upper half and its row in the lower
     */
    record CoveredGrid(long[] places) {
        private static final double GRID_MM = 200;

        static CoveredGrid of(Garden garden) {
            TreeSet<Long> places = new TreeSet<>();
            for (Bed bed : garden.beds()) {
                List<Point> ring = bed.inYard().corners();
                Envelope box = Jts.box(ring);
                for (int x = (int) Math.ceil(box.getMinX() / GRID_MM); x * GRID_MM < box.getMaxX(); x++) {
                    for (int y = (int) Math.ceil(box.getMinY() / GRID_MM); y * GRID_MM < box.getMaxY(); y++) {
                        if (new Point(x * GRID_MM, y * GRID_MM).within(ring)) places.add((long) x << 32 | y & 0xffffffffL);
                    }
                }
            }
            return new CoveredGrid(places.stream().mapToLong(Long::longValue).toArray());
        }

        /** Part of the beds' ground that is a bed's in one garden only, 0 to 1. */
        double differs(CoveredGrid other) {
            int all = places.length + other.places.length;
            long shared = Arrays.stream(places).filter(place -> Arrays.binarySearch(other.places, place) >= 0).count();
            return all == 0 ? 0 : 1 - 2.0 * shared / all;
        }
    }
}
