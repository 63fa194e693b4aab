package lapyard.job;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.catalogue.Roll;
import lapyard.construction.BedWork;
import lapyard.construction.LinerPiece;
import lapyard.construction.LinerWays;
import lapyard.geometry.Point;
import lapyard.ground.PathWork;
import lapyard.job.RollGoods.Least;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;

/** How the liner of each bed is cut: pieces too wide for every roll in parts, and along another split where that is cheaper. */
final class Lining {
    /** Layouts of the whole garden that are looked at for a material, and pieces in all of them: of very many beds all change at once. */
    private static final int MOST_LAYOUTS = 8;
    private static final int MOST_LAID = 2_400;
    /** Roll widths and longest runs at which a piece may be divided. */
    private static final int MOST_LIMITS = 6;

    /** One way to cut the liner of a bed, with what it takes alone. */
    private record Way(List<LinerPiece> pieces, Least alone, List<Finding> findings) {
        /** Fewer laps come before less roll. */
        static final Comparator<Way> ORDER = Comparator.comparingInt((Way way) -> way.alone().unplaced())
                .thenComparingInt(way -> way.pieces().size())
                .thenComparing(Way::alone);

        boolean noWorse(Way than) {
            return alone.unplaced() <= than.alone().unplaced() && pieces.size() <= than.pieces().size();
        }
    }

    private final Garden garden;
    private final Function<Bed, Optional<Point>> downhill;
    private final RollGoods.Leasts leasts;
    private final List<BedWork> works;
    private final List<Finding> findings = new ArrayList<>();

    /** @param downhill in the bed's own frame */
    Lining(Garden garden, List<BedWork> works, Function<Bed, Optional<Point>> downhill, SearchOptions looking) {
        this.garden = garden;
        this.leasts = new RollGoods.Leasts(garden, looking);
        this.works = new ArrayList<>(works);
        this.downhill = downhill;
    }

    /** For the whole garden, with the cloth of these paths. */
    void choose(List<PathWork> paths) {
        Map<String, List<Integer>> byMaterial = new LinkedHashMap<>();
        for (int i = 0; i < works.size(); i++) {
            if (!works.get(i).liner().isEmpty()) {
                byMaterial.computeIfAbsent(works.get(i).bed().inside().liner().material(), m -> new ArrayList<>()).add(i);
            }
        }
        byMaterial.forEach((material, beds) -> {
            if (!garden.goods().catalogue().rolls(material).isEmpty()) choose(material, beds, strips(material, paths));
        });
    }

    List<BedWork> works() {
        return List.copyOf(works);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    /** The ways to cut the liner of a bed that is built alone, whatever is chosen meanwhile: none has more parts than along the base's own split. */
    List<List<LinerPiece>> alone(BedWork built) {
        String material = built.bed().inside().liner().material();
        if (built.liner().isEmpty() || garden.goods().catalogue().rolls(material).isEmpty()) return List.of(built.liner());
        Way own = whole(built, material, built.liner());
        return Stream.concat(
                        Stream.of(own),
                        LinerWays.otherSplits(built, downhill.apply(built.bed())).stream()
                                .map(pieces -> whole(built, material, pieces))
                                .filter(other -> other.noWorse(own)))
                .map(Way::pieces)
                .toList();
    }

    private static List<double[]> strips(String material, List<PathWork> paths) {
        return paths.stream()
                .filter(path -> path.path().membrane().equals(material))
                .flatMap(path -> path.strips().stream())
                .map(strip -> new double[] {strip.widthMm(), strip.lengthMm()})
                .toList();
    }

    private void choose(String material, List<Integer> beds, List<double[]> strips) {
        Map<Integer, Way> chosen = new LinkedHashMap<>();
        Map<String, List<Integer>> groups = new LinkedHashMap<>();
        Map<Integer, Way> others = new HashMap<>();
        for (int bed : beds) {
            BedWork work = works.get(bed);
            Way own = whole(work, material, work.liner());
            chosen.put(bed, own);
            LinerWays.otherSplits(work, downhill.apply(work.bed())).stream()
                    .map(pieces -> whole(work, material, pieces))
                    .min(Way.ORDER)
                    .filter(other -> other.noWorse(own))
                    .ifPresent(other -> {
                        others.put(bed, other);
                        groups.computeIfAbsent(key(own.pieces()) + " or " + key(other.pieces()), k -> new ArrayList<>()).add(bed);
                    });
        }
        if (!groups.isEmpty()) tryOthers(material, chosen, groups.values(), others, strips);
        chosen.forEach((bed, way) -> {
            findings.addAll(way.findings());
            if (!way.pieces().equals(works.get(bed).liner())) works.set(bed, LinerWays.lined(works.get(bed), way.pieces()));
        });
    }

    /**
     * Beds of one shape change together, and keep the change where the whole garden then takes less; where there are very many, all
     * that take less by themselves.
     */
    private void tryOthers(
            String material,
            Map<Integer, Way> chosen,
            Collection<List<Integer>> groups,
            Map<Integer, Way> others,
            List<double[]> strips) {
        int pieces = strips.size() + chosen.values().stream().mapToInt(way -> way.pieces().size()).sum();
        if (groups.size() > 1 && Math.min(MOST_LAYOUTS, groups.size() + 1) * pieces > MOST_LAID) {
            List<Integer> less = others.keySet().stream().filter(bed -> Way.ORDER.compare(others.get(bed), chosen.get(bed)) < 0).sorted().toList();
            if (!less.isEmpty()) tryEach(material, chosen, List.of(less), others, strips);
        } else {
            tryEach(material, chosen, groups, others, strips);
        }
    }

    private void tryEach(
            String material,
            Map<Integer, Way> chosen,
            Iterable<List<Integer>> groups,
            Map<Integer, Way> others,
            List<double[]> strips) {
        Least now = all(material, chosen, strips);
        int layouts = 1;
        for (List<Integer> group : groups) {
            if (layouts++ >= MOST_LAYOUTS) return;
            Map<Integer, Way> changed = new LinkedHashMap<>(chosen);
            group.forEach(bed -> changed.put(bed, others.get(bed)));
            Least then = all(material, changed, strips);
            boolean fewerParts = group.stream().anyMatch(bed -> others.get(bed).pieces().size() < chosen.get(bed).pieces().size());
            int fewer = Integer.compare(then.unplaced(), now.unplaced());
            if (fewer < 0 || fewer == 0 && (fewerParts || then.compareTo(now) < 0)) {
                for (int bed : group) {
                    Way other = others.get(bed);
                    List<Finding> told = new ArrayList<>(other.findings());
                    told.add(otherSplit(works.get(bed).bed(), material, other, then, (now.metres() - then.metres()) / group.size()));
                    changed.put(bed, new Way(other.pieces(), other.alone(), told));
                }
                chosen.putAll(changed);
                now = then;
            }
        }
    }

    /** @param savedM the bed's part of what all that change together save */
    private static Finding otherSplit(Bed bed, String material, Way other, Least after, double savedM) {
        return Finding.of(FindingKind.LINER_SPLIT, Place.bed(bed.id()).then(What.LINER))
                .with("material", Fact.name(material)).with("pieces", Fact.count(other.pieces().size(), "pieces")).with("after", Fact.mm(after.metres() * 1000))
                .by(new Fact.Plain(Math.round(savedM * 1000) / 1000.0, "m"));
    }

    private Least all(String material, Map<Integer, Way> chosen, List<double[]> strips) {
        List<double[]> sizes = new ArrayList<>(strips);
        chosen.values().forEach(way -> sizes.addAll(sizes(way.pieces())));
        return leasts.of(material, sizes);
    }

    /** The pieces as they are, those that no roll holds in parts. */
    private Way whole(BedWork work, String material, List<LinerPiece> given) {
        List<LinerPiece> pieces = given;
        List<Finding> told = new ArrayList<>();
        for (LinerPiece wide : given) {
            if (leasts.of(material, sizes(List.of(wide))).unplaced() == 0) continue;
            int index = pieces.stream().map(LinerPiece::id).toList().indexOf(wide.id());
            List<Way> ways = LinerWays.divided(work, pieces, index, limits(material), downhill.apply(work.bed())).stream()
                    .map(parts -> new Way(parts, leasts.of(material, sizes(parts)), List.of()))
                    .sorted(Way.ORDER)
                    .toList();
            int before = leasts.of(material, sizes(pieces)).unplaced();
            if (ways.isEmpty() || ways.get(0).alone().unplaced() >= before) {
                if (work.bed().inside().liner().edges().lapMm() >= widest(material) - 1e-6) told.add(lapTooWide(work.bed(), wide, material));
                continue;
            }
            Way best = ways.get(0);
            told.add(divided(work.bed(), wide, best));
            pieces = best.pieces();
        }
        return new Way(pieces, leasts.of(material, sizes(pieces)), told);
    }

    private Finding lapTooWide(Bed bed, LinerPiece wide, String material) {
        double lap = bed.inside().liner().edges().lapMm();
        return Finding.of(FindingKind.LINER_LAP_WIDE, Place.bed(bed.id()).then(What.LINER, wide.id()))
                .with("lap", Fact.mm(lap)).with("widest", Fact.mm(widest(material))).with("size", Fact.size(wide.widthMm(), wide.heightMm()))
                .by(Fact.mm(lap - widest(material))).way(WayKind.LAP_BY, Fact.mm(300)).way(WayKind.LARGER_ROLL);
    }

    private Finding divided(Bed bed, LinerPiece wide, Way best) {
        List<LinerPiece> parts = best.pieces().stream()
                .filter(piece -> piece.id().startsWith(wide.id()))
                .sorted(Comparator.comparingInt(LinerPiece::layingOrder))
                .toList();
        double needed = Math.min(wide.widthMm(), wide.heightMm());
        return Finding.of(FindingKind.LINER_DIVIDED, Place.bed(bed.id()).then(What.LINER, wide.id()))
                .with("size", Fact.size(wide.widthMm(), wide.heightMm())).with("parts", Fact.count(parts.size(), "parts"))
                .with("lap", Fact.mm(bed.inside().liner().edges().lapMm())).with("first", Fact.name(parts.get(0).id()))
                .by(new Fact.Plain(best.alone().metres(), "m")).way(WayKind.WIDER_ROLL, Fact.mm(needed));
    }

    private double widest(String material) {
        return rolls(material).stream().mapToDouble(Roll::widthMm).max().orElseThrow();
    }

    private List<Roll> rolls(String material) {
        return RollGoods.usable(garden.goods().catalogue().rolls(material));
    }

    /** The widest widths, and the longest runs where runs end. */
    private List<Double> limits(String material) {
        LinkedHashSet<Double> limits = new LinkedHashSet<>();
        rolls(material).stream().map(Roll::widthMm).sorted(Comparator.reverseOrder()).distinct().limit(MOST_LIMITS).forEach(limits::add);
        if (rolls(material).stream().allMatch(roll -> roll.maxLengthMm().isPresent())) {
            limits.add(rolls(material).stream().mapToDouble(Roll::longestMm).max().orElseThrow());
        }
        return List.copyOf(limits);
    }

    private static List<double[]> sizes(List<LinerPiece> pieces) {
        return pieces.stream().map(piece -> new double[] {piece.widthMm(), piece.heightMm()}).toList();
    }

    private static String key(List<LinerPiece> pieces) {
        return pieces.stream().map(piece -> piece.widthMm() + " x " + piece.heightMm()).collect(Collectors.joining(", "));
    }
}
