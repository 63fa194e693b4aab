package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.cutting.Batches;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Ledger;
import lapyard.cutting.SawBoard;
import lapyard.cutting.StagedCutting;
import lapyard.geometry.Outline;
import lapyard.ground.GroundSheet;
import lapyard.order.Quote;
import lapyard.order.Slip;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.FindingList;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Lifting;
import lapyard.plan.Place;
import lapyard.plan.QuoteTerms;
import lapyard.plan.Rate;
import lapyard.sheets.RollResult;
import lapyard.standing.Standing;
import lapyard.weekends.WeekendPlanner;
import lapyard.weekends.Weekends;
import lapyard.working.Look;
import lapyard.working.Quantity;

/**
 * Everything about a garden: quantities with workings, pooled cutting and rolls, one slip, findings.
 *
 * @param strips  how the bearer strips are cut to length, by bearer section
 * @param leftOut whether something could not be made and was left out of the order
 * @param look    how much was looked for; what a first look leaves out is empty
 */
public record JobSheet(
        Garden garden,
        GroundSheet ground,
        List<BedSheet> beds,
        List<PathSheet> paths,
        List<SectionCutting> cutting,
        List<SectionCutting> strips,
        List<MaterialRolls> rolls,
        Slip slip,
        Weekends weekends,
        List<Finding> snags,
        boolean leftOut,
        Look look) {
    public JobSheet {
        beds = List.copyOf(beds);
        paths = List.copyOf(paths);
        cutting = List.copyOf(cutting);
        strips = List.copyOf(strips);
        rolls = List.copyOf(rolls);
        snags = List.copyOf(snags);
    }

    /** What the tally says that cannot be true: a sheet that holds any is refused. */
    public List<Finding> stops() {
        return FindingList.stops(snags);
    }

    JobSheet with(List<Finding> found) {
        return new JobSheet(garden, ground, beds, paths, cutting, strips, rolls, slip, weekends, found, leftOut, look);
    }

    /**
     * What may hurt somebody at a bed, to be read wherever it is sold or built, by the bed's id; accepted findings among
     * them. Beds without a warning are left out.
     */
    public Map<String, List<Finding>> warnings() {
        Map<String, List<Finding>> warnings = new HashMap<>();
        FindingList.singles(snags).stream()
                .filter(one -> one.kind().concern == FindingKind.Concern.DANGER || one.kind() == FindingKind.SCRIBE_DEEP)
                .filter(one -> one.weight() != Finding.Weight.NOTE || one.accepted().isPresent())
                .forEach(one -> one.place().ids(Place.What.BED).stream().distinct()
                        .forEach(bed -> warnings.computeIfAbsent(bed, key -> new ArrayList<>()).add(one)));
        warnings.replaceAll((bed, own) -> FindingList.merged(own));
        return warnings;
    }

    /** Every board on hand: where it comes from, where it may go and where it went. */
    public List<Provenance> provenance() {
        return Provenance.of(garden, works(), cutting);
    }

    /** The rule of what is lifted by hand, with the number of people who come. */
    public Lifting lifting() {
        return lifting(garden);
    }

    static Lifting lifting(Garden garden) {
        return WeekendPlanner.lifting(garden.people().crew(), garden.people().liftLimitKg());
    }

    /** How long a cut of this kind and a setting of the stop take this crew. */
    static Batches.Rates rates(Garden garden, Rate cut) {
        return new Batches.Rates(garden.people().crew().minutes(cut), garden.people().crew().minutes(Rate.SETTING));
    }

    /** At the builder's terms. */
    public Quote quote() {
        QuoteTerms terms = garden.terms().quote();
        return Quote.of(slip, terms.labour().stream().map(work -> new Quote.PaidWork(work.what(), work.hours(), work.rate())).toList(), terms.marginPercent());
    }

    /** The cautions that stand on the sheets beside work that can hurt someone. */
    public List<Caution> cautions() {
        return Caution.of(garden, ground, works());
    }

    /** Inside the walls, by {@code bed M}. */
    public Map<String, Double> areasM2() {
        return works().stream().collect(Collectors.toMap(work -> "bed " + work.bed().id(), work -> work.frame().inner().areaMm2() / 1e6));
    }

    /** As the beds are built, in their order. */
    public List<BedWork> works() {
        return beds.stream().map(BedSheet::work).toList();
    }

    /** {@code quantities} are those of construction and of fill together; those of {@code standing} stand apart. */
    public record BedSheet(BedWork work, List<Quantity> quantities, Standing standing) {
        public BedSheet {
            quantities = List.copyOf(quantities);
        }
    }

    /** {@code quantities}: path.area, path.volume (one a layer by item), edging.length, membrane. */
    public record PathSheet(GardenPath path, List<Outline> cover, List<Quantity> quantities) {
        public PathSheet {
            cover = List.copyOf(cover);
            quantities = List.copyOf(quantities);
        }
    }

    /** Pooled cutting of one section. */
    public record SectionCutting(String section, CuttingResult result, SawWork saw) {
        /** What a search for such a plan is called while it goes on. */
        static String search(String section, boolean strips) {
            return (strips ? "Bearers " : "Timber ") + section;
        }

        public String search() {
            return search(section, saw.ripping().isPresent());
        }

        public boolean priced() {
            return saw.ways().get(0).cost().isPresent();
        }

        /** What its boards take where all is cut on one day, and where no offcut is carried over: it cuts them again. */
        StagedCutting staging() {
            return StagedCutting.of(saw.problem(), result, CuttingSolver.QUICK);
        }

        /** What the orders of each bed alone take together; 0 where that was not asked. */
        public int boardsBedByBed() {
            return saw.ways().size() > 1 ? saw.ways().get(1).boards() : 0;
        }

        /** Whether no plan for these pieces costs less, also in the whole bundles and least counts that are bought; of strips, counted in strips. */
        boolean proven() {
            boolean more = saw.ripping().isEmpty() && saw.ways().get(0).cost().filter(cost -> cost.compareTo(result.paid()) > 0).isPresent();
            return result.proven() && !more;
        }
    }

    /**
     * How a section's plan is sawn.
     *
     * @param problem what was asked of the saw; {@code marks} are the pieces of each of its demands by the demand's id
     * @param boards  numbered in the order in which they are opened, with the place of each cut
     * @param nests   lengths out of which more than one piece is sawn; each is one mark of the boards
     * @param ways    what it takes: all beds pooled with offcuts carried over, then bed by bed
     * @param ripping how the boards of strips are ripped; {@code boards} are then strips; empty where whole boards are cut
     */
    public record SawWork(
            CuttingProblem problem,
            Map<String, List<String>> marks,
            List<SawBoard> boards,
            Batches batches,
            Ledger ledger,
            List<Way> ways,
            List<Nest> nests,
            Optional<Ripping> ripping) {
        /** @param rates of a cut and of a setting, as the crew has them */
        static SawWork of(CuttingProblem problem, Map<String, List<String>> marks, List<SawBoard> boards, Batches.Rates rates,
                List<Way> ways, List<Nest> nests, Optional<Ripping> ripping) {
            return new SawWork(problem, marks, boards, Batches.of(boards, problem.kerfMm(), rates),
                    Ledger.of(boards, problem.kerfMm(), problem.keepOffcutMm()), ways, nests, ripping);
        }

        /** The same pieces on other boards. */
        SawWork with(List<SawBoard> other, List<Way> waysThen) {
            return of(problem, marks, other, batches.rates(), waysThen, nests, ripping);
        }

        /** The same with what the boards are bought like otherwise. */
        SawWork beside(Optional<Way> bedByBed) {
            List<Way> both = Stream.concat(ways.stream(), bedByBed.stream()).toList();
            return new SawWork(problem, marks, boards, batches, ledger, both, nests, ripping);
        }

        public SawWork {
            marks = Map.copyOf(marks);
            boards = List.copyOf(boards);
            ways = List.copyOf(ways);
            nests = List.copyOf(nests);
        }
    }

    /**
     * Boards that are ripped into strips before the strips are cut to length.
     *
     * @param boards         that are bought and ripped
     * @param thicknessMm    of a strip
     * @param stripsPerBoard at most
     * @param ripsPerBoard   cuts along it; one less than the strips where the last of them is what is left
     */
    public record Ripping(int boards, double thicknessMm, int stripsPerBoard, int ripsPerBoard) {
        public int rips() {
            return boards * ripsPerBoard;
        }
    }

    /** What is bought and cut together. */
    public enum Pooling {
        /** All beds, offcuts carried from stage to stage. */
        POOLED,
        /** All beds on one day, no offcut trimmed again. */
        POOLED_ONCE,
        /** Each stage for itself, no offcut carried over. */
        WEEKEND_BY_WEEKEND,
        /** Each bed for itself, as {@link lapyard.order.Apart} has it. */
        BED_BY_BED
    }

    /**
     * One way to buy a section's boards.
     *
     * @param cost empty where the boards have no price
     */
    public record Way(Pooling way, int boards, Optional<BigDecimal> cost) {}

    /**
     * Pooled layout of one roll material; {@code metresBedByBed} is the length in the orders of each bed alone, as
     * {@link lapyard.order.Apart} has them, and {@code costBedByBed} its price, empty where no roll has one; both empty at a
     * first look.
     */
    public record MaterialRolls(
            String material, RollResult result, OptionalDouble metresBedByBed, Optional<BigDecimal> costBedByBed) {
        /** What the material is called on the slip, and a search for such a layout while it goes on. */
        static String title(String material) {
            return material.substring(0, 1).toUpperCase(Locale.ROOT) + material.substring(1);
        }

        public String search() {
            return title(material);
        }
    }
}
