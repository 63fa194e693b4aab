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
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Finding.Weight;
import lapyard.plan.FindingList;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
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
        if (garden.goods().catalogue().examplePrices() && !slip.lines().isEmpty()) {
            found.add(Finding.note("slip", "prices are examples of ours, not your merchant's", null,
                    "put your merchant's prices in the catalogue"));
        }
        return found;
    }
}
