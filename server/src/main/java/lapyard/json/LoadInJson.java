package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.geometry.Point;
import lapyard.json.Wire.To;
import lapyard.loadin.Load;
import lapyard.loadin.LoadIn;
import lapyard.loadin.Trips;
import lapyard.words.Wording;
import lapyard.working.Working;

/** The wire form of the load-in. */
public final class LoadInJson {
    private LoadInJson() {}

    private record Whole(List<Drop> drops, List<Lift> lifts, Optional<One> longest, @To(1) OptionalDouble roundTurn, long bags,
            Optional<List<Point>> bagPlaces, List<Barrows> barrows, ArrayNode findings, List<String> cautions) {}

    private record Drop(String supplier, String name, int leadDays, @To(1) double massKg, boolean massAtLeast,
            @To(3) double volumeM3, List<One> loads, Optional<Vehicle> vehicle, Optional<Journeys> trips) {}

    private record Vehicle(String name, @To(1) double payload, double bedLengthMm, @To(3) double volume) {}

    private record Journeys(int count, int atLeast, boolean proven, List<Trip> trips, List<One> tooMuch) {}

    private record Trip(@To(1) double massKg, @To(3) double volumeM3, List<Count> loads) {}

    private record Count(String item, String name, long count) {}

    private record One(String item, String label, String name, long count, @To(1) OptionalDouble massKg, @To(4) double volumeM3,
            double lengthMm, boolean bulk) {}

    private record Lift(String item, String label, String name, long count, @To(1) OptionalDouble massKg, @To(4) double volumeM3,
            double lengthMm, boolean bulk, int people, boolean beyondCrew, boolean overGuide, Working working) {}

    private record Barrows(String item, String label, double volumeM3, long runs, @To(2) double hours, Working working) {}

    public static ObjectNode of(LoadIn loads, Wording words) {
        return Wire.of(new Whole(
                loads.drops().stream().map(LoadInJson::drop).toList(),
                loads.lifts().stream().map(LoadInJson::lift).toList(),
                loads.longest().map(LoadInJson::load), loads.roundTurn(), loads.bags(), loads.bagPlaces(),
                loads.barrows().stream()
                        .map(good -> new Barrows(good.item(), good.label(), good.volumeM3(), good.runs(), good.hours(), good.working()))
                        .toList(),
                FindingsJson.of(loads.findings(), words), loads.cautions()));
    }

    private static Drop drop(LoadIn.Drop drop) {
        return new Drop(
                drop.supplier().id(), drop.supplier().name(), drop.supplier().leadDays(), drop.massKg(), drop.massAtLeast(),
                drop.volumeM3(), loads(drop.loads()),
                drop.vehicle().map(one -> new Vehicle(one.name(), one.payloadKg(), one.bedLengthMm(), one.volumeM3())),
                drop.trips().map(LoadInJson::trips));
    }

    private static Journeys trips(Trips trips) {
        return new Journeys(
                trips.trips().size(), trips.atLeast(), trips.proved(),
                trips.trips().stream()
                        .map(trip -> new Trip(trip.massKg(), trip.volumeM3(), trip.counts().entrySet().stream()
                                .map(of -> new Count(of.getKey().item(), of.getKey().name(), of.getValue()))
                                .toList()))
                        .toList(),
                loads(trips.tooMuch()));
    }

    private static List<One> loads(List<Load> loads) {
        return loads.stream().map(LoadInJson::load).toList();
    }

    private static One load(Load load) {
        return new One(load.item(), load.label(), load.name(), load.count(), load.massKg(), load.volumeM3(), load.lengthMm(), load.bulk());
    }

    private static Lift lift(LoadIn.Lift lift) {
        Load load = lift.load();
        return new Lift(load.item(), load.label(), load.name(), load.count(), load.massKg(), load.volumeM3(), load.lengthMm(),
                load.bulk(), lift.people(), lift.beyondCrew(), lift.overGuide(), lift.working());
    }
}
