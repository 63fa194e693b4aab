package lapyard.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.ground.FreeGround;
import lapyard.job.SearchMemory;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.LayoutWishes;
import lapyard.plan.Wish;
import lapyard.working.Abandonable;

/** Lays a yard out in several orders and keeps those that stand every check. */
public final class LayOut {
    /** Part of the beds' ground by which two proposals must differ. */
    private static final double VISIBLY = 0.25;

    private final Garden garden;
    private final LayoutWishes wishes;
    private final List<Wish> beds;
    private final List<Bed> pinned;
    private final AccessStandard standard;
    private final double pathMm;
    private final double gapMm;
    private final FreeGround ground;
    private final SearchMemory memory;

    /** One way to order a yard. */
    private record Order(String words, double deg, boolean blocks) {}

    private LayOut(Garden garden, LayoutWishes wishes, SearchMemory memory) {
        this.garden = garden;
        this.wishes = wishes;
        this.memory = memory;
        this.standard = garden.ground().access();
        this.pathMm = wishes.pathMm() > 0 ? wishes.pathMm() : standard.pathMm();
        this.gapMm = Math.max(pathMm, standard.standMm());
        this.ground = FreeGround.of(garden, wishes.marginMm());
        this.pinned = garden.beds().stream().filter(bed -> wishes.pinned().contains(bed.id())).toList();
        this.beds = wishes.beds().isEmpty() ? own(garden, wishes.pinned()) : wishes.beds();
        if (beds.isEmpty()) {
            throw new IllegalArgumentException("no bed is wanted; name types and how many in layOut, beds, or draw the beds to lay out");
        }
    }

    /**
     * @return at least three proposals where so many orders give different ones
     * @throws IllegalArgumentException where no yard is drawn or no bed is wanted
     */
    public static LaidOut of(Garden garden, LayoutWishes wishes, SearchMemory memory) {
        return new LayOut(garden, wishes, memory).run();
    }

    /** The garden's own beds, those alike as one wish of just so many. */
    private static List<Wish> own(Garden garden, Set<String> pinned) {
        Map<List<Object>, List<Bed>> alike = new LinkedHashMap<>();
        garden.beds().stream().filter(bed -> !pinned.contains(bed.id()))
                .forEach(bed -> alike.computeIfAbsent(
                        List.of(bed.type(), bed.outline(), bed.walls(), bed.making(), bed.inside(), bed.planting()), key -> new ArrayList<>()).add(bed));
        return alike.values().stream().map(same -> new Wish(same.get(0), same.size(), same.size())).toList();
    }

    private LaidOut run() {
        List<Proposal> proposals = new ArrayList<>();
        for (Order order : orders()) {
            Abandonable.check();
            for (double aisle : aisles()) {
                Proposing proposing = new Proposing(garden, beds, pinned, standard, pathMm, ground, new Frame(order.deg()), memory);
                List<BoxSpot> spots = spots(new Frame(order.deg()), order.blocks(), aisle);
                var proposal = proposing.of(order.words(), spots);
                if (proposal.isPresent()) {
                    proposals.add(proposal.get());
                    break;
                }
            }
        }
        int most = pinned.size();
        int bound = 0;
        for (double deg : degrees()) {
            bound = Math.max(bound, NumberBound.of(ground, new Frame(deg), beds, kinds(new Frame(deg)), gapMm));
        }
        List<Proposal> ranked = ranked(different(proposals));
        return new LaidOut(ranked, most + bound, shortOf(ranked));
    }

    private int shortOf(List<Proposal> proposals) {
        int wanted = beds.stream().mapToInt(Wish::least).sum();
        return proposals.stream().mapToInt(one -> Math.max(0, wanted - (one.figures().beds() - pinned.size()))).min().orElse(wanted);
    }

    /** Between rows a path, or where a standard asks for it room to turn at a path's end. */
    private List<Double> aisles() {
        return standard.named() && standard.turningMm() > gapMm ? List.of(gapMm, standard.turningMm()) : List.of(gapMm);
    }

    private List<Double> degrees() {
        double longest = longestSideDeg();
        return longest % 90 == 0 ? List.of(0.0) : List.of(0.0, longest);
    }

    private List<Order> orders() {
        double longest = longestSideDeg();
        List<Order> orders = new ArrayList<>(List.of(
                new Order("rows along the wall", 0, false),
                new Order("rows away from the wall", 90, false),
                new Order("blocks round a middle path away from the wall", 0, true),
                new Order("blocks round a middle path along the wall", 90, true),
                new Order("rows along the wall, begun at the back", 180, false),
                new Order("rows away from the wall, begun at the left", 270, false)));
        if (longest % 90 != 0) {
            orders.add(1, new Order("rows along the longest side", longest, false));
            orders.add(new Order("rows along the longest side, begun at the back", longest + 180, false));
        }
        return orders;
    }

    /** Whole degrees tenths, in 0 up to 180; a side within a degree of an axis counts as along it. */
    private double longestSideDeg() {
        Outline yard = ground.yard();
        int longest = 0;
        for (int i = 1; i < yard.sides(); i++) {
            if (yard.sideMm(i) > yard.sideMm(longest) + 1) longest = i;
        }
        Point along = yard.direction(longest);
        double deg = Math.round(Math.toDegrees(Math.atan2(along.y(), along.x())) * 1000) / 1000.0;
        double half = (deg % 180 + 180) % 180;
        double off = Math.abs(half - Math.rint(half / 90) * 90);
        return off < 1 ? 0 : half;
    }

    private List<BoxedBed> kinds(Frame frame) {
        List<BoxedBed> kinds = new ArrayList<>();
        for (int i = 0; i < beds.size(); i++) {
            Bed bed = beds.get(i).making();
            double w = Boxes.width(bed.outline());
            double d = Boxes.depth(bed.outline());
            double best = Math.min(w, d) / 2;
            kinds.add(new BoxedBed(i, bed, false, w, d, best));
            if (w != d || bed.outline().sides() != 4) kinds.add(new BoxedBed(i, bed, true, d, w, best));
        }
        return kinds;
    }

    private List<BoxSpot> spots(Frame frame, boolean blocks, double aisleMm) {
        List<List<Point>> kept = new ArrayList<>(ground.kept().stream().map(frame::in).toList());
        pinned.forEach(bed -> kept.add(Boxes.around(frame, bed, gapMm)));
        Boxes.apron(ground, pathMm).ifPresent(apron -> kept.add(frame.in(apron)));
        List<List<Point>> within = ground.beds().stream().map(frame::in).toList();
        double middle = Double.NaN;
        if (blocks) {
            double least = within.stream().flatMap(List::stream).mapToDouble(Point::x).min().orElseThrow();
            double most = within.stream().flatMap(List::stream).mapToDouble(Point::x).max().orElseThrow();
            double front = within.stream().flatMap(List::stream).mapToDouble(Point::y).min().orElseThrow();
            double back = within.stream().flatMap(List::stream).mapToDouble(Point::y).max().orElseThrow();
            middle = Math.rint((least + most) / 2);
            double half = gapMm / 2;
            kept.add(List.of(new Point(middle - half, front - 1), new Point(middle + half, front - 1),
                    new Point(middle + half, back + 1), new Point(middle - half, back + 1)));
        }
        Room room = new Room(within, kept, ground.lines().stream().map(frame::in).toList());
        Room standing = new Room(List.of(frame.in(ground.yard())), ground.standing().stream().map(frame::in).toList(), List.of());
        RowSearch search = new RowSearch(room, standing, beds, kinds(frame),
                new RowSearch.Rules(gapMm, aisleMm, standard.standMm(), standard.reachMm()), middle);
        return search.filled(search.run());
    }

    /** Of two that hardly differ the one that ranks first stays. */
    private List<Proposal> different(List<Proposal> proposals) {
        List<Proposal> kept = new ArrayList<>();
        for (Proposal one : ranked(proposals)) {
            boolean alike = kept.stream().anyMatch(other -> Boxes.differ(one.garden(), other.garden()) < VISIBLY);
            boolean worse = proposals.stream().anyMatch(other -> other != one
                    && LayoutWishes.COUNTS.stream().allMatch(what -> other.figures().worth(what) > one.figures().worth(what)));
            if (!alike && !worse) kept.add(one);
        }
        return kept;
    }

    private List<Proposal> ranked(List<Proposal> proposals) {
        List<Proposal> ranked = new ArrayList<>(proposals);
        Comparator<Proposal> order = (a, b) -> 0;
        for (String what : wishes.ranking()) {
            order = order.thenComparing(Comparator.comparingDouble((Proposal one) -> Math.round(one.figures().worth(what) * 100)).reversed());
        }
        ranked.sort(order);
        return ranked;
    }

    static Set<String> taken(List<Bed> beds) {
        Set<String> ids = new HashSet<>();
        beds.forEach(bed -> ids.add(bed.id()));
        return ids;
    }
}
