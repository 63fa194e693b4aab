package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import lapyard.construction.BedWork;
import lapyard.ground.Clashes;
import lapyard.ground.GroundSheet;
import lapyard.job.JobSheet.BedSheet;
import lapyard.job.JobSheet.PathSheet;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.FindingKind;
import lapyard.plan.FindingList;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.standing.Standing;
import lapyard.weekends.Weekends;
import lapyard.working.Abandonable;
import lapyard.working.Progress;

/** A garden in, its job sheet out: a pure function, the same garden always gives the same sheet. */
public final class Job {
    private Job() {}

    /** Room for the searches of one garden, which repeat among themselves. */
    private static final long ONE_GARDEN_BYTES = 12L << 20;

    /** STOPs that only show once beds, paths and levels stand together; none means that {@link #prepare} may run. */
    public static List<Finding> stops(Garden garden) {
        return Clashes.stops(garden).stream().filter(finding -> finding.weight() == Weight.STOP).toList();
    }

    /** As below, unheard, with nothing searched for before. */
    public static JobSheet prepare(Garden given) {
        return prepare(given, what -> Progress.UNHEARD, new SearchMemory(ONE_GARDEN_BYTES));
    }

    /**
     * What the tally says that cannot be true only shows here: see {@link JobSheet#stops}.
     *
     * @param progress for what is looked for by its name on the slip, who hears how far it is
     * @param memory   what was searched for before, for this garden or another
     */
    public static JobSheet prepare(Garden given, Function<String, Progress> progress, SearchMemory memory) {
        Costing costing = Costing.of(given, new Looking(given.goods().search(), progress, memory));
        Garden garden = costing.garden();
        GroundSheet ground = costing.ground();
        List<BedWork> works = costing.works();
        List<PathSheet> paths = costing.paths();
        Timber timber = costing.timber();
        Bearers bearers = costing.bearers();
        RollGoods rolls = costing.rolls();
        Slip slip = costing.slip();
        boolean leftOut = costing.leftOut();
        List<Finding> snags = new ArrayList<>(costing.findings());
        List<SectionCutting> offered = costing.offered().cuttings();
        Abandonable.check();
        Map<String, Standing> standing = Stands.of(garden, works, offered);
        List<BedSheet> beds = new ArrayList<>();
        for (int i = 0; i < works.size(); i++) {
            beds.add(new BedSheet(works.get(i), costing.amounts().get(i), standing.get(works.get(i).bed().id())));
        }
        snags.addAll(Lifts.findings(garden, JobSheet.lifting(garden), works, timber.cuttings()));
        snags.addAll(Stands.findings(standing.values()));
        snags.addAll(Sealing.findings(garden, works, offered));
        snags.addAll(timber.findings());
        snags.addAll(bearers.findings());
        snags.addAll(rolls.findings());
        if (garden.terms().wayIn().given()) {
            snags.addAll(Loads.of(garden, slip, rolls.materials()).findings());
        }
        snags.addAll(aboutPrices(garden, slip));
        Abandonable.check();
        garden.paths().stream().filter(path -> path.layers().isEmpty()).forEach(path -> snags.add(bare(path)));
        Weekends weekends = Building.weekends(garden, beds, paths, timber.cuttings(), bearers.cuttings());
        snags.addAll(weekends.findings());
        JobSheet sheet = new JobSheet(garden, ground, beds, paths, timber.cuttings(), bearers.cuttings(), rolls.materials(), slip, weekends,
                List.of(), leftOut);
        if (!garden.people().tally().isEmpty()) {
            snags.addAll(Rest.of(sheet).findings());
        }
        snags.addAll(Buying.of(sheet).findings(garden));
        return sheet.with(FindingList.settled(snags, garden.accepted()));
    }

    /** A path that is drawn and made of nothing costs nothing, which nobody should take for its price. */
    private static Finding bare(GardenPath path) {
        String called = path.name().isEmpty() ? path.id() : path.name();
        return Finding.note("path " + path.id(), "Path " + called + " has no layers, so the order holds none for it", null,
                "give it layers, such as sub-base and gravel, or bark");
    }

    private static List<Finding> aboutPrices(Garden garden, Slip slip) {
        List<Finding> found = new ArrayList<>();
        long unpriced = slip.lines().stream().filter(line -> line.cost().isEmpty()).count();
        if (unpriced > 0) {
            found.add(Finding.of(FindingKind.PRICE_MISSING, Place.of(What.SLIP))
                    .with("lines", Fact.count(unpriced, "lines")).with("total", Fact.money(slip.total(), slip.currency().getCode())).by(Fact.count(unpriced, "lines"))
                    .way(WayKind.GIVE_PRICE, Fact.names(slip.lines().stream().filter(line -> line.cost().isEmpty()).map(SlipLine::label).toList())));
        }
        for (Slip.Order order : slip.orders()) {
            // more goods than three charges' worth is no small addition
            order.shortOfFree().filter(less -> less.compareTo(order.charge().multiply(BigDecimal.valueOf(3))) <= 0).ifPresent(less ->
                    found.add(Finding.of(FindingKind.NEAR_FREE_DELIVERY, Place.of(What.SLIP).then(What.FIELD, order.supplier().name()))
                            .with("supplier", Fact.name(order.supplier().name())).with("charge", Fact.money(order.charge(), slip.currency().getCode()))
                            .by(Fact.money(less, slip.currency().getCode())).way(WayKind.BRING_FORWARD)));
        }
        if (!slip.proven()) {
            found.add(Finding.of(FindingKind.SUPPLIERS_NOT_PROVED, Place.of(What.SLIP))
                    .with("total", Fact.money(slip.total(), slip.currency().getCode())).with("least", Fact.money(slip.lowerBound(), slip.currency().getCode()))
                    .by(Fact.money(slip.total().subtract(slip.lowerBound()), slip.currency().getCode())).way(WayKind.PIN_LINES));
        }
        if (garden.goods().catalogue().examplePrices() && !slip.lines().isEmpty()) {
            found.add(Finding.of(FindingKind.EXAMPLE_PRICES, Place.of(What.SLIP)).way(WayKind.OWN_PRICES));
        }
        return found;
    }
}
