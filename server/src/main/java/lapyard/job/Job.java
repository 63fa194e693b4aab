package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.IntStream;
import lapyard.construction.BedWork;
import lapyard.ground.Clashes;
import lapyard.job.JobSheet.BedSheet;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.FindingList;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.standing.Standing;
import lapyard.working.Abandonable;
import lapyard.working.Look;
import lapyard.working.Progress;

/** A garden in, its job sheet out: a pure function, the same garden always gives the same whole sheet. */
public final class Job {
    private Job() {}

    /** Room for the searches of one garden, which repeat among themselves. */
    static final long ONE_GARDEN_BYTES = 12L << 20;

    /** STOPs that only show once beds, paths and levels stand together; none means that {@link #prepare} may run. */
    public static List<Finding> stops(Garden garden) {
        return Clashes.stops(garden);
    }

    /** As below, unheard, with nothing searched for before. */
    public static JobSheet prepare(Garden given) {
        return prepare(given, what -> Progress.UNHEARD, new SearchMemory(ONE_GARDEN_BYTES));
    }

    /** As below, the whole. */
    public static JobSheet prepare(Garden given, Function<String, Progress> progress, SearchMemory memory) {
        return prepare(given, progress, Look.WHOLE, memory);
    }

    /** As below, of a garden of which its reader has nothing to say. */
    public static JobSheet prepare(Garden given, Function<String, Progress> progress, Look look, SearchMemory memory) {
        return prepare(given, List.of(), progress, look, memory);
    }

    /**
     * What the tally says that cannot be true only shows here: see {@link JobSheet#stops}.
     *
     * @param read     what was found when its document was read; the sheet tells it with the rest
     * @param progress for what is looked for by its name on the slip, who hears how far it is
     * @param look     how much is looked for; a garden of which something is bought or built always has the whole
     * @param memory   what was searched for before, for this garden or another; the whole does not depend on it
     */
    public static JobSheet prepare(Garden given, List<Finding> read, Function<String, Progress> progress, Look look, SearchMemory memory) {
        return sheet(Costing.of(given, SearchOptions.of(given, progress, look, memory)), read, memory);
    }

    static JobSheet sheet(Costing costing, List<Finding> read, SearchMemory memory) {
        Abandonable.check();
        List<BedSheet> beds = judged(costing);
        Abandonable.check();
        JobSheet sheet = new JobSheet(
                costing.built().garden(), costing.built().ground(), beds, costing.built().paths(), costing.cutting(), costing.strips(),
                costing.rolls().materials(costing.slip()), costing.slip(), Building.weekends(costing.built().garden(), beds, costing.built().paths(), costing.cutting(), costing.strips(), memory), List.of(), costing.leftOut(), costing.look());
        List<Finding> found = new ArrayList<>(read);
        found.addAll(findings(costing, sheet));
        Map<String, String> accepted = costing.built().garden().accepted();
        // a first look may still lack what is accepted
        if (costing.look() == Look.WHOLE) found.addAll(FindingList.acceptedNowhere(found, accepted));
        return sheet.with(FindingList.settled(found, accepted));
    }

    /** The beds as costed, each with whether it would stand. */
    private static List<BedSheet> judged(Costing costing) {
        List<BedWork> works = costing.built().works();
        Map<String, Standing> standing = Stands.of(costing.built().garden(), costing.built().ground().beds(), works, costing.offered());
        return IntStream.range(0, works.size())
                .mapToObj(i -> new BedSheet(works.get(i), costing.built().amounts().get(i), standing.get(works.get(i).bed().id())))
                .toList();
    }

    /** The findings of each step, in the order of the steps. */
    private static List<Finding> findings(Costing costing, JobSheet sheet) {
        Garden garden = costing.built().garden();
        List<BedWork> works = costing.built().works();
        List<Finding> found = new ArrayList<>(costing.built().findings());
        found.addAll(Lifts.findings(garden, JobSheet.lifting(garden), works, costing.cutting()));
        found.addAll(Stands.findings(sheet.beds().stream().map(BedSheet::standing).toList()));
        found.addAll(TimberFindings.unsealed(garden, works, costing.offered()));
        found.addAll(costing.timber().findings());
        found.addAll(costing.bearers().findings());
        found.addAll(costing.rolls().findings());
        if (garden.terms().wayIn().given()) {
            found.addAll(Loads.of(garden, costing.slip(), costing.rolls().materials(costing.slip())).findings());
        }
        found.addAll(aboutPrices(garden, costing.slip()));
        garden.paths().stream().filter(path -> path.layers().isEmpty()).forEach(path -> found.add(bare(path)));
        found.addAll(sheet.weekends().findings());
        if (!garden.people().tally().isEmpty()) found.addAll(SectionReplan.of(sheet).findings());
        found.addAll(Buying.of(sheet).findings(garden));
        return found;
    }

    /** A path that is drawn and made of nothing costs nothing, which nobody should take for its price. */
    private static Finding bare(GardenPath path) {
        String called = path.name().isEmpty() ? path.id() : path.name();
        return Finding.of(FindingKind.PATH_BARE, Place.of(What.PATH, path.id())).with("name", Fact.name(called)).way(WayKind.GIVE_LAYERS);
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
