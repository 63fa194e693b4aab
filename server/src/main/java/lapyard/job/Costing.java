package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import lapyard.catalogue.Supplier;
import lapyard.construction.BedWork;
import lapyard.construction.SeamSplit;
import lapyard.construction.UnjoinedBed;
import lapyard.fill.BedFill;
import lapyard.geometry.Point;
import lapyard.ground.BySurface;
import lapyard.ground.Fall;
import lapyard.ground.GroundSheet;
import lapyard.ground.HiddenWalls;
import lapyard.ground.PathWork;
import lapyard.ground.WallReach;
import lapyard.job.JobSheet.PathSheet;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.order.Ordering;
import lapyard.order.Slip;
import lapyard.order.Wanted;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.working.Abandonable;
import lapyard.working.Look;
import lapyard.working.Progress;
import lapyard.working.Quantity;
import lapyard.working.SecondThread;
import org.joda.money.CurrencyUnit;

/**
 * What a garden is made of and what all of it costs: the part of a job sheet that the order needs. {@link Job} adds what
 * people do with it; a search over sizes asks for the {@link #total} alone.
 *
 * @param built    beds and paths, before anything was bought for them
 * @param offered  cutting of the timber before the suppliers were chosen
 * @param leftOut  whether something cannot be made and is missing in the order
 * @param look     how much was looked for
 */
public record Costing(Built built, List<SectionCutting> offered, PooledTimber timber, Bearers bearers, RollGoods rolls, Slip slip, boolean leftOut, Look look) {

    /**
     * Without what each bed would take alone, where that changes no plan.
     *
     * @param memory shared by the gardens that are compared, which repeat most of their searches
     */
    public static Costing of(Garden garden, SearchMemory memory) {
        boolean alone = garden.beds().stream().anyMatch(PooledTimber::angled);
        return of(garden, new SearchOptions(garden.goods().search(), what -> Progress.UNHEARD, alone, Look.WHOLE, memory));
    }

    /** The cost of the order, as {@link Job#prepare} finds it. */
    public BigDecimal total() {
        return slip.total();
    }

    List<SectionCutting> cutting() {
        return SoldGoods.cuttings(timber, slip);
    }

    List<SectionCutting> strips() {
        return SoldGoods.cuttings(bearers, slip);
    }

    /** The rest of the job sheet. */
    public JobSheet sheet(SearchMemory memory) {
        return Job.sheet(this, List.of(), memory);
    }

    static Costing of(Garden given, SearchOptions looking) {
        Planned planned = Planned.of(given, looking);
        Built built = planned.built();
        Garden garden = built.garden();
        CurrencyUnit currency = CurrencyUnit.of(garden.terms().currency());
        List<Supplier> suppliers = garden.goods().catalogue().suppliers();
        PooledTimber offered = PooledTimber.of(garden, built.works(), planned.own(), looking);
        Abandonable.check();
        Bearers bearers = Bearers.of(garden, built.works(), looking);
        RollGoods rolls = RollGoods.of(garden, planned.own(), built.pathWorks(), looking);
        PackNeeds packs = PackNeeds.of(built.works(), built.amounts(), built.paths());
        List<Wanted> wanted = new ArrayList<>(offered.lines(currency, garden.imperial()));
        wanted.addAll(bearers.lines(currency, garden.imperial()));
        wanted.addAll(rolls.lines(currency, garden.imperial()));
        wanted.addAll(packs.lines(garden.goods().catalogue(), reach(suppliers), currency, garden.imperial()));
        BuyersApart buyers = new BuyersApart();
        if (looking.alone()) {
            planned.own().ways().forEach(ways -> buyers.ways("bed " + ways.get(0).bed().id(), ways.size()));
            offered.apart(buyers, currency);
            bearers.apart(buyers, currency);
            rolls.apart(buyers, currency);
            planned.apart(packs, buyers, currency);
        }
        if (looking.isFirst()) wanted.replaceAll(Wanted::withoutApart);
        Slip slip = Ordering.slip(currency, wanted, buyers.buyers(), suppliers);
        PooledTimber timber = offered.chosen(slip, new PooledTimber());
        bearers = bearers.chosen(slip, new Bearers());
        rolls = rolls.chosen(slip, new RollGoods());
        boolean leftOut = timber.leftOut() || bearers.leftOut() || rolls.leftOut() || built.works().stream().anyMatch(BedWork::leftOut);
        return new Costing(built, SoldGoods.cuttings(offered, slip), timber, bearers, rolls, leftOut ? slip.withMoreToCome() : slip, leftOut, looking.look());
    }

    /**
     * The beds and paths as they are built, before anything is bought.
     *
     * @param garden   with the walls hidden that nobody sees
     * @param amounts  of each bed, in the order of the document
     * @param findings of beds, liner, membrane and ground, in the order of a job sheet
     */
    record Built(Garden garden, GroundSheet ground, List<BedWork> works, List<List<Quantity>> amounts, List<PathSheet> paths, List<PathWork> pathWorks,
            List<Finding> findings) {}

    /** @param own the ways of which each bed alone chooses: many, and asked for until the order stands */
    private record Planned(Built built, OwnWays own) {
        static Planned of(Garden given, SearchOptions looking) {
            HiddenWalls hidden = HiddenWalls.of(given);
            BySurface floors = BySurface.of(hidden.garden());
            Garden garden = floors.garden();
            List<Finding> findings = new ArrayList<>(hidden.findings());
            findings.addAll(floors.findings());
            Abandonable.check();
            GroundSheet ground = GroundSheet.of(
                    garden, asked -> looking.memory().part(asked, WallReach::worst, reach -> asked.stretches().size()));
            Abandonable.check();
            Function<Bed, Optional<Point>> downhill = bed -> downhill(ground.fall(), bed);
            Slats slats = Slats.of(garden, downhill);
            findings.addAll(slats.findings());
            return joined(new Amounts(garden, ground, slats), downhill, looking, findings);
        }

        /** Walls are joined, floors lined and paths stripped together; what is found of all that comes behind {@code findings}. */
        private static Planned joined(Amounts needed, Function<Bed, Optional<Point>> downhill, SearchOptions looking, List<Finding> findings) {
            Garden garden = needed.garden();
            GroundSheet ground = needed.ground();
            List<Bed> beds = garden.beds().stream().map(needed.slats()::laid).toList();
            try (Alone alone = new Alone(garden, beds, needed, looking)) {
                Map<String, Map<Integer, SeamSplit>> joined = Joining.of(garden, looking);
                List<Making> makings = new ArrayList<>();
                List<BedWork> built = new ArrayList<>();
                for (Bed bed : beds) {
                    Abandonable.check();
                    Making making = Making.of(garden, bed, downhill.apply(bed), looking.memory());
                    makings.add(making);
                    built.add(making.joined(joined.getOrDefault(bed.id(), Map.of())));
                }
                Abandonable.check();
                Lining lining = new Lining(garden, built, downhill, looking);
                alone.built(built, lining, (bed, other) -> other.equals(joined.getOrDefault(beds.get(bed).id(), Map.of())) ? built.get(bed)
                        : makings.get(bed).joined(other));
                Stripping stripping = Stripping.of(garden, ground.paths());
                lining.choose(stripping.paths());
                AlikeParts parts = new AlikeParts();
                List<BedWork> works = lining.works().stream().map(parts::of).toList();
                List<List<Quantity>> amounts = filled(works, needed, parts, findings);
                findings.addAll(lining.findings());
                findings.addAll(stripping.findings());
                findings.addAll(ground.findings());
                List<PathSheet> paths = stripping.paths().stream()
                        .map(work -> new PathSheet(work.path(), work.cover(), GroundNeeds.of(work, garden.goods().catalogue())))
                        .toList();
                return new Planned(new Built(garden, ground, works, amounts, paths, stripping.paths(), findings), alone.ways(works));
            }
        }

        private static List<List<Quantity>> filled(List<BedWork> works, Amounts needed, AlikeParts parts, List<Finding> findings) {
            List<List<Quantity>> amounts = new ArrayList<>();
            for (int i = 0; i < works.size(); i++) {
                BedFill fill = needed.fill(works.get(i));
                amounts.add(parts.of(needed.of(i, works.get(i), fill)));
                findings.addAll(works.get(i).findings());
                findings.addAll(fill.findings());
            }
            return amounts;
        }

        /** What each bed and path would buy of {@code packs} by itself, in each way to build it. */
        void apart(PackNeeds packs, BuyersApart buyers, CurrencyUnit currency) {
            Map<String, List<Map<String, Double>>> ways = new HashMap<>();
            Set<String> open = new HashSet<>();
            for (int i = 0; i < built.works().size(); i++) {
                String owner = "bed " + built.works().get(i).bed().id();
                List<Map<String, Double>> each = own.ways().get(i).stream().map(BedWay::goods).toList();
                if (each.size() > 1) ways.put(owner, each);
                if (!own.all().get(i)) open.add(owner);
            }
            packs.apart(built.garden().goods().catalogue(), reach(built.garden().goods().catalogue().suppliers()), ways, open, buyers, currency);
        }
    }

    /** The ways of which each bed alone chooses, looked for by a second thread while the first builds for the garden. */
    private static final class Alone implements AutoCloseable {
        private final Amounts needed;
        private final Optional<SecondThread<List<Joining.Ways>>> joints;
        private Optional<SecondThread<OwnWays>> ways = Optional.empty();

        Alone(Garden garden, List<Bed> beds, Amounts needed, SearchOptions looking) {
            this.needed = needed;
            joints = looking.alone() ? Optional.of(new SecondThread<>(() -> OwnWays.joints(garden, beds, looking))) : Optional.empty();
        }

        void built(List<BedWork> built, Lining lining, BiFunction<Integer, Map<Integer, SeamSplit>, BedWork> joined) {
            ways = joints.map(first -> new SecondThread<>(() -> OwnWays.all(built, first.result(), lining, joined, needed::packed)));
        }

        /** @param works as the garden builds them */
        OwnWays ways(List<BedWork> works) {
            return ways.map(found -> found.result().behind(works, needed::packed)).orElseGet(() -> OwnWays.none(works));
        }

        @Override
        public void close() {
            joints.ifPresent(SecondThread::close);
            ways.ifPresent(SecondThread::close);
        }
    }

    /** What goes into the beds of a garden. */
    record Amounts(Garden garden, GroundSheet ground, Slats slats) {
        BedFill fill(BedWork work) {
            return BedFill.of(work, garden.terms().wayIn().barrowLitres(), garden.imperial());
        }

        List<Quantity> of(int bed, BedWork work, BedFill fill) {
            List<Quantity> quantities = new ArrayList<>(work.quantities());
            quantities.addAll(fill.quantities());
            slats.toBuy(work.bed()).ifPresent(quantities::add);
            quantities.addAll(GroundNeeds.of(ground.beds().get(bed), garden.goods().catalogue()));
            return quantities;
        }

        /** Of what is sold in packs, by item. */
        Map<String, Double> packed(int bed, BedWork way) {
            return PackNeeds.amounts(way.bed(), of(bed, way, fill(way)));
        }
    }

    /** All that the work on a bed depends on. */
    private record BuildAsked(UnjoinedBed.Asked bed, Map<Integer, SeamSplit> joined) {}

    /** Makes one bed with its walls joined in any way, each way once as long as it is remembered. */
    private record Making(UnjoinedBed unjoined, SearchMemory memory) {
        /** @param downhill in the bed's own frame */
        static Making of(Garden garden, Bed bed, Optional<Point> downhill, SearchMemory memory) {
            return new Making(new UnjoinedBed(new UnjoinedBed.Asked(bed, garden.goods().saw(), PooledTimber.longestPieceMm(garden, bed.section()), downhill,
                    Bearers.longestStockMm(garden, bed), garden.people().liftLimitKg())), memory);
        }

        BedWork joined(Map<Integer, SeamSplit> joined) {
            return memory.part(new BuildAsked(unjoined.asked(), joined), asked -> unjoined.joined(joined),
                    work -> work.quantities().size() + 2 * work.pieces().size());
        }
    }

    /** @param downhill in the bed's own frame */
    static BedWork work(Garden garden, Bed bed, Map<Integer, SeamSplit> joined, Optional<Point> downhill, SearchMemory memory) {
        return Making.of(garden, bed, downhill, memory).joined(joined);
    }

    /** What all delivery charges that can fall away come to: no line is worth being dearer by more. */
    private static BigDecimal reach(List<Supplier> suppliers) {
        return suppliers.stream()
                .filter(supplier -> supplier.freeOver().isPresent())
                .map(Supplier::charge)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    static Optional<Point> downhill(Optional<Fall> fall, Bed bed) {
        return fall.map(Fall::downhill).map(yard -> bed.placement().directionToOwn(yard.x(), yard.y()));
    }
}
