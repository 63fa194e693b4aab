package lapyard.loadin;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lapyard.catalogue.Supplier;
import lapyard.catalogue.Vehicle;
import lapyard.geometry.Point;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Lifting;
import lapyard.plan.Place;
import lapyard.plan.Rate;
import lapyard.plan.WayIn;
import lapyard.plan.WayKind;
import lapyard.working.Whole;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/**
 * How everything that is bought comes in.
 *
 * @param lifts      what is over the limit for one person, heaviest first
 * @param longest    the longest rigid thing; empty where there is none
 * @param roundTurn  the longest of its width that goes round the turn of the passage, mm; empty where none is known
 * @param bags       places that bulk bags and heaps take until they are wheeled in
 * @param bagPlaces  middles of places for them; empty where no yard is drawn
 * @param barrows    what is wheeled in, good by good
 */
public record LoadIn(
        List<Drop> drops,
        List<Lift> lifts,
        Optional<Load> longest,
        OptionalDouble roundTurn,
        long bags,
        Optional<List<Point>> bagPlaces,
        List<Barrows> barrows,
        List<Finding> findings,
        List<String> cautions) {
    private static final int MOST_PLACES = 200;

    private static final List<String> CAUTIONS = List.of(
            "Weights are of wet timber and loose fill as the catalogue has them; look at the ticket before you lift or load.",
            "Keep to the plate of vehicle, trailer and coupling; load heavy and low, over the axle, and strap it. The driver answers for it.",
            "Stand clear of a crane or tail lift. A bulk bag is never walked under, nor set on a cover, a slab over a void or a deck.",
            "Over the limit: two people or more, or wheels. Gloves and stout boots; plan where it is put down before it is picked up.",
            "Local rules for lifting and for standing things in the road go first.");

    /**
     * What one supplier brings, or is fetched there.
     *
     * @param massAtLeast whether some weights are not known
     * @param vehicle     whose trips are counted; empty where it is brought and nobody told by what
     */
    public record Drop(
            Supplier supplier,
            List<Load> loads,
            double massKg,
            boolean massAtLeast,
            double volumeM3,
            Optional<Vehicle> vehicle,
            Optional<Trips> trips) {}

    /**
     * A bulk bag is not lifted by hand.
     *
     * @param people     that it takes
     * @param beyondCrew whether it takes more than come: wheels
     * @param overGuide  whether it is more than those people are good for together
     */
    public record Lift(Load load, double massKg, int people, boolean beyondCrew, boolean overGuide, Working working) {}

    /** Runs of a barrow for one good. */
    public record Barrows(String item, String label, double volumeM3, long runs, double hours, Working working) {}

    /** What comes from one supplier, as the order has it. */
    public record Coming(Supplier supplier, List<Load> loads) {}

    /** A good that is wheeled in loose. */
    public record Wheeled(String item, String label, double volumeM3) {}

    public static LoadIn of(Garden garden, Lifting lifting, List<Coming> coming, List<Wheeled> wheeled) {
        WayIn way = garden.terms().wayIn();
        List<Finding> findings = new ArrayList<>();
        List<Drop> drops = coming.stream().map(one -> drop(one, way, findings)).toList();
        List<Load> all = drops.stream().flatMap(drop -> drop.loads().stream()).toList();
        List<Lift> lifts = lifts(all, lifting);
        Optional<Load> longest = all.stream()
                .filter(load -> load.acrossMm() > 0)
                .max(Comparator.comparingDouble(Load::lengthMm).thenComparingDouble(Load::acrossMm));
        if (way.passageMm().isPresent()) {
            Set<String> told = new HashSet<>();
            all.stream()
                    .filter(load -> load.acrossMm() > 0 && told.add(load.name() + load.acrossMm()))
                    .forEach(load -> passage(load, way, findings));
        }
        OptionalDouble roundTurn = longest.isPresent() && way.passageMm().isPresent() && way.afterTurnMm().isPresent()
                ? OptionalDouble.of(Passage.longestMm(
                        way.passageMm().getAsDouble(), way.afterTurnMm().getAsDouble(), longest.get().acrossMm()))
                : OptionalDouble.empty();
        long bags = all.stream().filter(Load::bulk).mapToLong(Load::places).sum();
        Optional<List<Point>> places = bags == 0
                ? Optional.empty()
                : BagPlaces.of(garden, way.bagMm(), way.dropSpot(), (int) Math.min(bags, MOST_PLACES));
        if (places.isPresent() && places.get().size() < Math.min(bags, MOST_PLACES)) {
            int found = places.get().size();
            findings.add(Finding.of(FindingKind.BAGS_NO_ROOM, Place.field("delivery, bags"))
                    .with("bags", Fact.count(bags, "places")).with("room", Fact.count(found, "places")).by(Fact.count(bags - found, "places"))
                    .way(WayKind.BAGS_LATER, Fact.count(bags - found, "places")).way(WayKind.WHEEL_FIRST));
        }
        List<Barrows> barrows = wheeled.stream().map(good -> barrows(good, way, garden.people().crew().minutes(Rate.BARROW))).toList();
        return new LoadIn(drops, lifts, longest, roundTurn, bags, places, barrows, findings, CAUTIONS);
    }

    private static Drop drop(Coming coming, WayIn way, List<Finding> findings) {
        Supplier supplier = coming.supplier();
        double mass = 0;
        double volume = 0;
        boolean atLeast = false;
        for (Load load : coming.loads()) {
            mass += load.massKg().orElse(0) * load.count();
            volume += load.volumeM3() * load.count();
            atLeast |= load.massKg().isEmpty();
        }
        boolean brought = supplier.charge().signum() > 0;
        Optional<Vehicle> vehicle = supplier.lorry().isPresent() ? supplier.lorry() : brought ? Optional.empty() : way.vehicle();
        Optional<Trips> trips = vehicle.map(of -> Trips.of(coming.loads(), of));
        trips.ifPresent(shared -> shared.tooMuch().forEach(load -> findings.add(tooMuch(supplier, load, vehicle.orElseThrow()))));
        return new Drop(supplier, coming.loads(), mass, atLeast, volume, vehicle, trips);
    }

    private static Finding tooMuch(Supplier supplier, Load load, Vehicle vehicle) {
        double longer = load.longerThanMm(vehicle.bedLengthMm());
        double heavier = load.massKg().orElse(0) - vehicle.payloadKg();
        Finding found = Finding.of(longer > 0 ? FindingKind.LOAD_LONG : heavier > 0 ? FindingKind.LOAD_HEAVY : FindingKind.LOAD_LARGE,
                        Place.field("delivery, " + supplier.name() + ", " + load.name()))
                .with("load", Fact.name(load.name())).with("vehicle", Fact.name(vehicle.name()));
        if (longer > 0) {
            return found.with("bed-length", Fact.mm(vehicle.bedLengthMm())).by(Fact.mm(longer))
                    .way(WayKind.FIRST_CUT_TO, Fact.mm(vehicle.bedLengthMm())).way(WayKind.HAVE_BROUGHT);
        }
        return (heavier > 0 ? found.with("payload", Fact.kg(vehicle.payloadKg())).by(Fact.kg(heavier)) : found.by(Fact.m3(load.volumeM3() - vehicle.volumeM3())))
                .way(WayKind.HAVE_BROUGHT).way(WayKind.SMALLER_PACKS);
    }

    private static void passage(Load longest, WayIn way, List<Finding> findings) {
        double width = way.passageMm().getAsDouble();
        if (way.afterTurnMm().isEmpty()) {
            if (longest.acrossMm() > width) {
                findings.add(Finding.of(FindingKind.PASSAGE_NARROW, Place.field("delivery, passage")).with("load", Fact.name(longest.name()))
                        .with("passage", Fact.mm(width)).by(Fact.mm(longest.acrossMm() - width)).way(WayKind.OVER_FENCE).way(WayKind.CARRY_ON_EDGE));
            }
            return;
        }
        double most = Passage.longestMm(width, way.afterTurnMm().getAsDouble(), longest.acrossMm());
        if (longest.lengthMm() > most) {
            double over = longest.lengthMm() - most;
            Finding found = Finding.of(FindingKind.PASSAGE_TURN, Place.field("delivery, passage")).with("load", Fact.name(longest.name()))
                    .with("from", Fact.mm(width)).with("to", Fact.mm(way.afterTurnMm().getAsDouble())).with("most", Fact.mm(most)).by(Fact.mm(over));
            findings.add((most > 0 ? found.way(WayKind.FIRST_CUT_TO, Fact.mm(most)).way(WayKind.BUY_SHORTER) : found).way(WayKind.OVER_FENCE));
        }
    }

    private static List<Lift> lifts(List<Load> loads, Lifting lifting) {
        List<Lift> lifts = new ArrayList<>();
        for (Load load : loads) {
            double kg = load.massKg().orElse(0);
            if (lifting.heavy(kg) && !load.bulk()) {
                int people = lifting.people(kg);
                lifts.add(new Lift(load, kg, people, lifting.beyondCrew(kg), lifting.overGuide(kg), Working.of(
                        "weight / limit a person, rounded up; over the guide where weight > limit x people x share",
                        Lifting.SOURCE,
                        Input.of("weight", kg, "kg"),
                        Input.of("limit", lifting.limitKg(), "kg"),
                        Input.of("guide for " + people, lifting.guideKg(people), "kg"))));
            }
        }
        lifts.sort(Comparator.comparingDouble(Lift::massKg).reversed());
        return lifts;
    }

    private static Barrows barrows(Wheeled good, WayIn way, double minutes) {
        long runs = (long) Whole.up(good.volumeM3() * 1000 / way.barrowLitres());
        double hours = runs * minutes / 60;
        return new Barrows(good.item(), good.label(), good.volumeM3(), runs, hours, Working.of(
                "volume / barrow, rounded up; runs x minutes a run",
                Working.COMMON_PRACTICE,
                Input.of("volume", good.volumeM3(), "m3"),
                Input.of("barrow", way.barrowLitres(), "l"),
                Input.of("a run", minutes, "min")));
    }
}
