package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import lapyard.catalogue.Supplier;
import lapyard.construction.BedWork;
import lapyard.construction.Construction;
import lapyard.construction.SeamSplit;
import lapyard.fill.BedFill;
import lapyard.geometry.Point;
import lapyard.ground.Clashes;
import lapyard.ground.Fall;
import lapyard.ground.GroundSheet;
import lapyard.ground.HiddenWalls;
import lapyard.ground.PathWork;
import lapyard.job.JobSheet.BedSheet;
import lapyard.job.JobSheet.PathSheet;
import lapyard.order.Ordering;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.order.Wanted;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Garden;
import lapyard.standing.Standing;
import lapyard.weekends.Weekends;
import lapyard.working.Progress;
import lapyard.working.Quantity;
import org.joda.money.CurrencyUnit;

/** A garden in, its job sheet out: a pure function, the same garden always gives the same sheet. */
public final class Job {
    private Job() {}

    /** STOPs that only show once beds, paths and levels stand together; none means that {@link #prepare} may run. */
    public static List<Finding> stops(Garden garden) {
        List<Finding> stops = new ArrayList<>(Clashes.stops(garden));
        if (!garden.tally().boards().isEmpty()) {
            stops.addAll(Rest.of(prepare(garden)).findings());
        }
        return stops.stream().filter(finding -> finding.weight() == Weight.STOP).toList();
    }

    public static JobSheet prepare(Garden given) {
        return prepare(given, what -> Progress.UNHEARD);
    }

    /** @param progress for what is looked for by its name on the slip, who hears how far it is */
    public static JobSheet prepare(Garden given, Function<String, Progress> progress) {
        HiddenWalls hidden = HiddenWalls.of(given);
        Garden garden = hidden.garden();
        List<Finding> snags = new ArrayList<>(hidden.findings());
        GroundSheet ground = GroundSheet.of(garden);
        Optional<Fall> fall = ground.fall();
        List<BedWork> works = new ArrayList<>();
        List<List<Quantity>> amounts = new ArrayList<>();
        Map<String, Map<Integer, SeamSplit>> joined = Joining.of(garden);
        Slats slats = Slats.of(garden, bed -> downhill(fall, bed));
        snags.addAll(slats.findings());
        for (Bed drawn : garden.beds()) {
            Bed bed = slats.laid(drawn);
            Optional<Point> downhill = downhill(fall, bed);
            BedWork work = Construction.of(
                    bed,
                    garden.saw(),
                    Timber.longestPieceMm(garden, bed.section()),
                    joined.getOrDefault(bed.id(), Map.of()),
                    downhill,
                    Bearers.longestStockMm(garden, bed),
                    garden.liftLimitKg());
            works.add(work);
        }
        Stripping stripping = Stripping.of(garden, ground.paths());
        List<PathWork> pathWorks = stripping.paths();
        Lining lining = Lining.of(garden, works, pathWorks, bed -> downhill(fall, bed));
        works = lining.works();
        for (BedWork work : works) {
            BedFill fill = BedFill.of(work);
            List<Quantity> quantities = new ArrayList<>(work.quantities());
            quantities.addAll(fill.quantities());
            slats.toBuy(work.bed()).ifPresent(quantities::add);
            quantities.addAll(GroundNeeds.of(ground.beds().get(amounts.size()), garden.catalogue()));
            amounts.add(quantities);
            snags.addAll(work.findings());
            snags.addAll(fill.findings());
        }
        snags.addAll(lining.findings());
        snags.addAll(stripping.findings());
        List<PathSheet> paths =
                pathWorks.stream().map(work -> new PathSheet(work.path(), work.cover(), GroundNeeds.of(work, garden.catalogue()))).toList();
        snags.addAll(ground.findings());

        CurrencyUnit currency = CurrencyUnit.of(garden.currency());
        Looking looking = new Looking(garden.search(), progress);
        Timber timber = Timber.of(garden, works, looking);
        Map<String, Standing> standing = Stands.of(garden, works, timber.cuttings());
        List<BedSheet> beds = new ArrayList<>();
        for (int i = 0; i < works.size(); i++) {
            beds.add(new BedSheet(works.get(i), amounts.get(i), standing.get(works.get(i).bed().id())));
        }
        snags.addAll(Lifts.findings(garden, works, timber.cuttings()));
        snags.addAll(Stands.findings(standing.values()));
        snags.addAll(Sealing.findings(garden, works, timber.cuttings()));
        Bearers bearers = Bearers.of(garden, works, looking);
        RollGoods rolls = RollGoods.of(garden, works, pathWorks, looking);
        List<Wanted> wanted = new ArrayList<>();
        wanted.addAll(timber.lines(currency));
        wanted.addAll(bearers.lines(currency));
        wanted.addAll(rolls.lines(currency));
        List<Supplier> suppliers = garden.catalogue().suppliers();
        wanted.addAll(PackNeeds.of(beds, paths).lines(garden.catalogue(), reach(suppliers), currency));
        Slip chosen = Ordering.slip(currency, wanted, suppliers, false);
        timber = timber.chosen(chosen);
        bearers = bearers.chosen(chosen);
        rolls = rolls.chosen(chosen);
        snags.addAll(timber.findings());
        snags.addAll(bearers.findings());
        snags.addAll(rolls.findings());

        boolean leftOut = timber.leftOut() || bearers.leftOut() || rolls.leftOut()
                || works.stream().anyMatch(BedWork::leftOut);
        Slip slip = leftOut ? chosen.withMoreToCome() : chosen;
        if (garden.wayIn().given()) {
            snags.addAll(Loads.of(garden, slip, rolls.materials()).findings());
        }
        snags.addAll(aboutPrices(garden, slip));
        Weekends weekends = Building.weekends(garden, beds, paths, timber.cuttings(), bearers.cuttings());
        snags.addAll(weekends.findings());
        JobSheet sheet = new JobSheet(garden, ground, beds, paths, timber.cuttings(), bearers.cuttings(), rolls.materials(), slip, weekends,
                List.of(), leftOut);
        if (!garden.tally().isEmpty()) {
            snags.addAll(Rest.of(sheet).findings());
        }
        snags.addAll(Buying.of(sheet).findings(garden));
        return sheet.with(settled(garden, snags));
    }

    /** What all delivery charges that can fall away come to: no line is worth being dearer by more. */
    private static BigDecimal reach(List<Supplier> suppliers) {
        return suppliers.stream()
                .filter(supplier -> supplier.freeOver().isPresent())
                .map(Supplier::charge)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static Optional<Point> downhill(Optional<Fall> fall, Bed bed) {
        return fall.map(Fall::downhill).map(yard -> bed.placement().directionToOwn(yard.x(), yard.y()));
    }

    private static List<Finding> aboutPrices(Garden garden, Slip slip) {
        List<Finding> found = new ArrayList<>();
        long unpriced = slip.lines().stream().filter(line -> line.cost().isEmpty()).count();
        if (unpriced > 0) {
            found.add(Finding.note(
                    "slip",
                    unpriced + (unpriced == 1 ? " line has" : " lines have") + " no price: total is at least " + slip.total(),
                    new Amount(unpriced, "lines"),
                    "give the catalogue a price for "
                            + String.join(", ", slip.lines().stream().filter(line -> line.cost().isEmpty()).map(SlipLine::label).toList())));
        }
        for (Slip.Order order : slip.orders()) {
            // more goods than three charges' worth is no small addition
            order.shortOfFree().filter(less -> less.compareTo(order.charge().multiply(BigDecimal.valueOf(3))) <= 0).ifPresent(less ->
                    found.add(Finding.note("slip, " + order.supplier().name(),
                            less + " under free delivery: anything over that and the charge of " + order.charge() + " falls away",
                            new Amount(less.doubleValue(), slip.currency().getCode()),
                            "bring something forward that you will need anyway")));
        }
        if (!slip.proven()) {
            found.add(Finding.note("slip", "best choice of suppliers found is " + slip.total() + ", none can be under " + slip.lowerBound(),
                    new Amount(slip.total().subtract(slip.lowerBound()).doubleValue(), slip.currency().getCode()),
                    "pin lines to a supplier to make the choice smaller"));
        }
        if (garden.catalogue().examplePrices() && !slip.lines().isEmpty()) {
            found.add(Finding.note("slip", "prices are examples of ours, not your merchant's", null,
                    "put your merchant's prices in the catalogue"));
        }
        return found;
    }

    /** Accepted snags become notes with their reason; no finding stands twice; heaviest first, otherwise as found. */
    private static List<Finding> settled(Garden garden, List<Finding> found) {
        List<Finding> settled = new ArrayList<>();
        Set<Finding> seen = new HashSet<>();
        for (Finding finding : found) {
            if (!seen.add(finding)) {
                continue;
            }
            String reason = garden.accepted().get(finding.where());
            settled.add(reason != null && finding.weight() == Weight.SNAG
                    ? new Finding(Weight.NOTE, finding.where(), finding.text() + " (accepted: " + reason + ")",
                            finding.amount(), finding.ways())
                    : finding);
        }
        settled.sort(Comparator.comparing(Finding::weight));
        return settled;
    }
}
